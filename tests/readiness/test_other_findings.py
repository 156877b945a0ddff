"""Findings of the other phases, of rider, horse, results and breadth."""

from datetime import timedelta
from math import comb

import pytest

from fieldtally.readiness.weigh_attitude import Felt, is_falling
from readiness.made_up import TODAY, Logbook


@pytest.fixture
def logbook():
    return Logbook()


def day(days_ago):
    return (TODAY - timedelta(days=days_ago)).isoformat()


def canter(logbook, speed_mpm, days_ago, target=400, over_fences=False):
    outing = logbook.outing(days_ago, activity="fitness")
    logbook.add(
        "timed_canter",
        outing_id=outing,
        distance_m=400,
        measured_by="tape",
        elapsed_ms=round(400 / speed_mpm * 60_000),
        target_speed_mpm=target,
        over_fences=over_fences,
    )


def round_(logbook, days_ago, height_cm=90, **body):
    logbook.add("jumping_round", horse_id=logbook.horse, date=day(days_ago), height_cm=height_cm, efforts=10, **body)


def result(logbook, days_ago, event, **body):
    body = {"status": "completed", "cross_country_jump_penalties": 0, "dressage_penalties": 33,
            "show_jumping_jump_penalties": 4, "level_id": "lowest", "rulebook_id": logbook.book.id} | body  # fmt: skip
    logbook.add("event_result", horse_id=logbook.horse, date=day(days_ago), event=event, **body)


def test_pace_is_shown_by_canters_near_the_levels_speed(logbook):
    assert logbook.finding("pace_flat")["state"] == "untried"
    for days_ago, speed in ((9, 398), (7, 404), (5, 395), (3, 402)):
        canter(logbook, speed, days_ago)
    assert logbook.finding("pace_flat")["state"] == "shown"
    assert logbook.finding("pace_fences")["state"] == "untried"


def test_pace_that_is_steadily_slow_is_shaky_and_says_by_how_much(logbook):
    for days_ago in (9, 7, 5, 3):
        canter(logbook, 360, days_ago)
    found = logbook.finding("pace_flat")
    assert found["state"] == "shaky" and found["needs"][0]["text"] == "Ride about 40 m/min faster."


def test_canters_against_a_slower_target_do_not_count(logbook):
    for days_ago in (9, 7, 5, 3):
        canter(logbook, 350, days_ago, target=350)
    assert logbook.finding("pace_flat")["state"] == "untried"


def test_rounds_at_height_count_and_one_rail_is_allowed(logbook):
    for days_ago in (9, 6, 3):
        round_(logbook, days_ago, knockdowns=1)
    assert logbook.finding("rounds_at_height")["state"] == "shown"
    assert logbook.finding("rounds_above")["state"] == "untried"
    round_(logbook, 2, knockdowns=3)
    assert logbook.finding("rounds_at_height")["state"] == "shaky"
    round_(logbook, 1, rider_fall=True)
    assert logbook.finding("rounds_at_height")["state"] == "on_hold"


def test_flatwork_needs_steady_tests_of_the_level(logbook):
    for days_ago, percent in ((30, 64.0), (20, 66.0), (10, 65.0)):
        logbook.add(
            "flatwork_test",
            horse_id=logbook.horse,
            date=day(days_ago),
            test="B",
            level_id="second",
            rulebook_id=logbook.book.id,
            percent=percent,
        )
    assert logbook.finding("tests")["state"] == "shown"
    assert logbook.finding("tests", "third")["state"] == "untried"
    marks = [{"movement": "Halt", "mark": 4}, {"movement": "Trot", "mark": 6, "coefficient": 2}]
    for days_ago in (3, 2):
        logbook.add(
            "flatwork_test",
            horse_id=logbook.horse,
            date=day(days_ago),
            test="B",
            level_id="second",
            rulebook_id=logbook.book.id,
            marks=marks,
        )
    found = logbook.finding("tests")
    assert found["state"] == "shaky"
    assert "Again and again 5 or less for Halt." in [reason["text"] for reason in found["reasons"]]
    assert found["evidence"][0]["outcome"] == "53.3 %"  # (4 + 2 × 6) / 30, by hand


def test_results_must_be_clean_and_at_more_than_one_venue(logbook):
    for days_ago in (60, 40, 20):
        result(logbook, days_ago, "Spring Cup")
    assert logbook.finding("results")["state"] == "building"
    result(logbook, 10, "Summer Cup")
    assert logbook.finding("results")["state"] == "shown"
    result(logbook, 5, "Late Cup", cross_country_jump_penalties=20)
    assert logbook.finding("results")["state"] == "shaky"
    result(logbook, 2, "Last Cup", status="eliminated", rider_fall=True, cross_country_jump_penalties=None)
    assert logbook.finding("results")["state"] == "on_hold"


def test_a_result_without_its_cross_country_score_is_not_taken_as_clean(logbook):
    result(logbook, 5, "Cup", cross_country_jump_penalties=None)
    assert logbook.finding("results")["numbers"]["clean"] == 0


def test_confidence_counts_jumping_days_only(logbook):
    for days_ago, felt in ((20, 4), (15, 4), (10, 5), (5, 4)):
        logbook.outing(days_ago, rider_confidence=felt)
    logbook.outing(2, activity="flatwork", rider_confidence=1)
    assert logbook.finding("confidence")["state"] == "shown"
    logbook.outing(1, rider_confidence=2)
    assert logbook.finding("confidence")["state"] == "shaky"


def test_breadth_needs_other_fields(logbook):
    here, there = (logbook.add("field", name=name) for name in ("Here", "There"))
    for days_ago in (20, 15, 10, 5):
        logbook.outing(days_ago, here)
    assert logbook.finding("breadth")["needs"][0]["text"] == "An outing at one other field."
    logbook.outing(3, there)
    assert logbook.finding("breadth")["state"] == "shown"


def test_attitude_looks_at_how_not_only_whether(logbook):
    fence = logbook.fence(height_cm=90)
    outing = logbook.outing(3)
    logbook.attempt(outing, fence, times=12, attitude="willing")
    assert logbook.finding("attitude")["state"] == "shown"
    logbook.attempt(logbook.outing(2), fence, times=10, attitude="backed_off")
    assert logbook.finding("attitude")["state"] == "shaky"


def test_an_attitude_on_its_way_down_is_shaky_though_enough_of_it_is_willing(logbook):
    fence = logbook.fence(height_cm=90)
    logbook.attempt(logbook.outing(9), fence, times=18, attitude="bold")
    logbook.attempt(logbook.outing(6), fence, times=6, attitude="willing")
    assert logbook.finding("attitude")["state"] == "shown"
    logbook.attempt(logbook.outing(3), fence, times=4, attitude="looky")
    found = logbook.finding("attitude")
    assert found["numbers"] == {
        "attempts": 28, "willing": 24, "willing_fraction": 24 / 28, "lately": 10, "lately_willing": 6,
    }  # fmt: skip
    assert found["state"] == "shaky"
    assert found["reasons"][1]["text"] == "It is going down: 6 of the last 10, after 18 of 18 before."
    assert "Of the last 10 it was 6, of the 18 before them 18." in found["explanation"]
    logbook.attempt(logbook.outing(1), fence, times=2, attitude="bold")
    assert logbook.finding("attitude")["numbers"]["lately_willing"] == 6  # two bold ones came, two fell out of the ten
    logbook.attempt(logbook.outing(0), fence, times=2, attitude="bold")
    assert logbook.finding("attitude")["state"] == "shaky"
    logbook.attempt(logbook.outing(0), fence, times=4, attitude="bold")
    assert logbook.finding("attitude")["state"] == "shown"


def test_a_horse_that_stays_as_it_is_is_seldom_called_falling():
    """Every way that 20 attempts and then 10 can go for a horse that is willing nine times in ten."""
    numbers = {"lately": 10, "willing_fraction": 0.75, "falling_fraction": 0.2}
    chance = sum(
        comb(20, earlier) * comb(10, lately) * 0.9 ** (earlier + lately) * 0.1 ** (30 - earlier - lately)
        for earlier in range(21)
        for lately in range(11)
        if is_falling(Felt(earlier, 20), Felt(lately, 10), numbers)
    )
    assert chance == pytest.approx(0.05, abs=0.01)


def test_hours_horses_and_recovery_are_not_required(logbook):
    logbook.outing(3, minutes_in_saddle=90)
    assert logbook.finding("hours")["numbers"]["hours"] == 1.5
    logbook.records[logbook.horse].body["resting_heart_rate_bpm"] = 36
    for days_ago in (10, 5):
        logbook.add(
            "interval_set",
            outing_id=logbook.outing(days_ago, activity="fitness"),
            intervals=[{"work_s": 180, "rest_s": 180}],
            recoveries=[{"minute": 10, "heart_rate_bpm": 58}],
        )
    assert logbook.finding("recovery")["state"] == "shown"
    assert not any(logbook.finding(each)["required"] for each in ("hours", "rides", "horses", "recovery"))


def test_outings_on_any_horse_count_for_the_rider(logbook):
    assert logbook.finding("rides")["state"] == "untried"
    other = logbook.add("horse", name="Other")
    for days_ago in range(1, 19):
        logbook.outing(days_ago, activity="flatwork")
    logbook.outing(91, activity="flatwork")
    found = logbook.finding("rides")
    assert (found["state"], found["needs"][0]["text"]) == ("building", "Two more outings.")
    for days_ago in (1, 90):
        logbook.add("outing", horse_id=other, date=day(days_ago), activity="fitness")
    assert logbook.finding("rides")["state"] == "shown" and len(logbook.finding("rides")["evidence"]) == 20


def test_every_finding_explains_itself_with_numbers(logbook):
    logbook.outing(3, rider_confidence=4, minutes_in_saddle=60)
    for finding in logbook.standing("third").to_json()["findings"]:
        assert finding["explanation"].strip() and finding["worked_out"], finding["requirement_id"]
        nothing_to_count = {each["code"] for each in finding["reasons"]} & {"not_stated", "no_resting_rate"}
        if not nothing_to_count:
            assert any(character.isdigit() for character in finding["explanation"]), finding["requirement_id"]
