"""The forecast of a typical course: silent on little evidence, and moved the right way by more."""

from types import SimpleNamespace

import numpy as np
import pytest

from fieldtally.readiness.bar import shipped_bars
from fieldtally.readiness.forecast import too_little
from fieldtally.readiness.forecast_worked_out import forecast_worked_out
from fieldtally.readiness.other_phases import clock, dressage, show_jumping
from fieldtally.readiness.plain import percent
from fieldtally.readiness.pool import Pool
from fieldtally.readiness.standing import compute_standings
from fieldtally.readiness.stops import ELIMINATED, Rules, at_one_effort, penalties, stopped_efforts
from fieldtally.readiness.typical_course import mix
from fieldtally.readiness.what_if import Case, More, Question, supposed, what_if
from readiness.made_up import TODAY, Logbook


def schooled(outcomes=("clear",) * 6, level_id="second"):
    """A pair that has met every question of the level on several days."""
    return what_if(*schooling(outcomes, level_id)).after


def schooling(outcomes=("clear",) * 6, level_id="second"):
    logbook = Logbook()
    asked = [each.requirement.id for each in logbook.standing(level_id).findings if each.requirement.condition]
    case = Case(logbook.records, logbook.book, shipped_bars(), TODAY, 1, logbook.horse, level_id)
    return case, Question(more=tuple(More(each, len(outcomes), 3) for each in asked))


def test_it_keeps_silent_on_little_evidence_and_says_why():
    found = Logbook().standing().forecast
    text = "Not enough evidence: 0 of 17 questions of this level met lately, a forecast needs 11."
    values = {"met": 0, "asked": 17, "least": 11}
    assert found == {
        "spoken": False,
        "text": text,
        "silence": {"code": "forecast_few_met", "values": values, "text": text},
    }


def test_it_keeps_silent_on_many_questions_met_once_long_ago():
    findings = schooled(("clear",)).findings
    faded = SimpleNamespace(pool=Pool(2.3, 2.3))
    silence = too_little(findings, faded, shipped_bars().forecast_numbers)
    assert silence.text == "Not enough evidence: what was met weighs as 2.3 fresh attempts, a forecast needs 8."
    assert silence.values == {"weight": 2.3, "least": 8}


def test_the_explanation_says_the_pairs_own_numbers():
    found = schooled().forecast
    for share in ("clear_chance", "clear_low", "clear_high", "second_clear_chance"):
        assert f"{percent(found[share])}" in found["explanation"]
    said = {each["code"]: each["values"] for each in found["worked_out"]}
    counted = said["worked_chances"]
    assert f"{counted['clear']} clear out of {counted['weight']} fresh" in found["explanation"]
    assert said["worked_course"] == {"efforts": 17} and "17 efforts" in found["explanation"]
    assert f"{said['worked_multiplied']['chance']} %" == percent(found["clear_chance"])
    assert "total" not in found["explanation"]
    with_total = forecast_worked_out(found | {"total": {"expected": 60.0, "low": 45.5, "high": 78.0}}, Pool(9, 9))
    assert "between 45.5 and 78.0" in with_total[-1].text and len(with_total) == len(found["worked_out"]) + 1


def test_another_level_stands_beside_the_present_one_and_the_present_one_alone():
    case, question = schooling()
    records = supposed(case, question, case.standing(case.records))
    book = {case.rulebook.id: case.rulebook}
    present, other, *_ = compute_standings(records, book, shipped_bars(), case.as_of, 1, case.horse_id)
    assert present.is_present_level and present.forecast["spoken"] and "present_level" not in present.forecast
    beside = other.forecast["present_level"]
    assert beside["level_id"] == "lowest" and beside["clear_chance"] == present.forecast["clear_chance"]
    assert beside["jumping_penalties"] == present.forecast["jumping_penalties"]


def test_it_speaks_of_chances_with_intervals_and_promises_nothing():
    found = schooled().forecast
    assert found["spoken"] and 0.5 < found["clear_low"] < found["clear_chance"] < found["clear_high"] < 1
    assert "not a promise" in found["text"] and "safe" not in found["text"].lower()
    assert sum(each["chance"] for each in found["jumping_penalties"]) + found["elimination_chance"] == pytest.approx(
        1, abs=1e-3
    )
    assert found["efforts"] == 17  # the middle of the made-up level's 14 to 20


def test_more_evidence_narrows_the_interval():
    little, much = schooled(("clear",) * 3).forecast, schooled(("clear",) * 12).forecast
    assert much["clear_high"] - much["clear_low"] < little["clear_high"] - little["clear_low"]


def test_total_is_there_only_with_evidence_of_every_phase():
    logbook = Logbook()
    assert schooled().forecast["total"] is None
    outing = logbook.outing(3)
    for each in (64, 66, 65):
        logbook.add(
            "flatwork_test",
            horse_id=logbook.horse,
            date="2026-05-01",
            test="T",
            level_id="second",
            rulebook_id=logbook.book.id,
            percent=each,
        )
        logbook.add("jumping_round", horse_id=logbook.horse, date="2026-05-02", height_cm=90, efforts=10, knockdowns=1)
        logbook.add(
            "timed_canter",
            outing_id=outing,
            distance_m=400,
            measured_by="tape",
            elapsed_ms=61_000,
            target_speed_mpm=400,
        )
    weighing, numbers = logbook.standing().weighing, shipped_bars().forecast_numbers
    assert dressage(weighing, 365).mean() == pytest.approx(35, abs=0.1)
    assert 2 < show_jumping(weighing, 365, numbers).mean() < 8
    assert clock(weighing, 365, numbers).mean() > 0


def test_stops_cost_what_the_rulebook_says():
    # two of three stops at one fence: 20 + 40; a third eliminates
    assert at_one_effort(0.75, Rules()) == [(1, 20.0, 0.75), (2, 60.0, pytest.approx(0.1875))]
    certain = penalties(np.array([0, 1.0]), 1.0, Rules())
    assert certain == {ELIMINATED: 0.0, 20.0: 1.0}


def test_too_many_stops_on_the_course_eliminate():
    two, three = np.array([0, 0, 1.0]), np.array([0, 0, 0, 1.0])
    assert penalties(two, 1.0, Rules(on_course_that_eliminate=3))[40.0] == 1.0
    assert penalties(three, 1.0, Rules(on_course_that_eliminate=3))[ELIMINATED] == 1.0
    assert penalties(three, 1.0, Rules(on_course_that_eliminate=4))[60.0] == 1.0


def test_the_distribution_is_the_one_simulation_gives():
    random = np.random.default_rng(1)
    course = [(6, 20.0, 1.5), (3, 8.0, 1.0), (2, 5.0, 0.8)]
    exact = penalties(stopped_efforts(course), 0.7, Rules(), 0.02)
    clear = np.mean([all(random.beta(a, b) ** n > random.random() for n, a, b in course) for _ in range(20_000)]) * 0.98
    assert exact[0.0] == pytest.approx(clear, abs=0.012)  # three standard errors of 20,000 draws
    assert sum(exact.values()) == pytest.approx(1)


def test_efforts_are_shared_out_whole():
    assert mix(["fixed", "ditch", "water"], 10, {"fixed": 6.0}) == {"fixed": 8, "ditch": 1, "water": 1}
    assert sum(mix(list("abcdefg"), 18, {"a": 2.5}).values()) == 18
