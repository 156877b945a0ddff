"""The vectors of fixtures/contract that the TypeScript client runs too, against the Python."""

import json

import make_course_vectors
import make_score_vectors
import pytest

from fieldtally.trade.bad_input import BadInput
from fieldtally.trade.course import course_card
from fieldtally.trade.cross_country_score import CrossCountryRules, cross_country_score
from fieldtally.trade.dressage_score import DressageRules, Sheet, dressage_score
from fieldtally.trade.jump_faults import Fault
from fieldtally.trade.show_jumping_score import ShowJumpingRules, show_jumping_score
from fieldtally.trade.time_penalties import TimeRules, course_times, time_score
from fieldtally.trade.total import Result, places


def faults(given):
    return [Fault(**each) for each in given]


def timed(rules, length_m, speed_mpm, elapsed_ms):
    rules = TimeRules(**rules)
    return time_score(course_times(length_m, speed_mpm, rules), elapsed_ms, rules)


ANSWERS = {
    "cross_country": lambda g: cross_country_score(faults(g["faults"]), CrossCountryRules(**g["rules"])),
    "show_jumping": lambda g: show_jumping_score(faults(g["faults"]), ShowJumpingRules(**g["rules"])),
    "time": lambda g: timed(**g),
    "dressage": lambda g: dressage_score([Sheet(**s) for s in g["sheets"]], DressageRules(**g["rules"]), g["errors"]),
    "places": lambda g: places([Result(**each) for each in g["results"]]),
}


def read(module):
    return json.loads(module.TARGET.read_text(encoding="utf-8"))


def picked(found, expected):
    if isinstance(expected, list):
        return [picked(one, other) for one, other in zip(found, expected, strict=True)]
    return {key: pytest.approx(getattr(found, key)) for key in expected}


@pytest.mark.parametrize("vector", read(make_score_vectors), ids=lambda v: v["why"])
def test_score(vector):
    given = dict(vector["input"])
    answer = ANSWERS[given.pop("what")]
    if "refused" in vector["expected"]:
        with pytest.raises(BadInput) as refusal:
            answer(given)
        assert refusal.value.field == vector["expected"]["refused"]
    else:
        assert picked(answer(given), vector["expected"]) == vector["expected"]


def card(length_m, speed_mpm, rules, fences):
    found = course_card(length_m, speed_mpm, TimeRules(**rules), fences)
    return {"optimum_s": found.times.optimum_s, "limit_s": found.times.limit_s, "fastest_s": found.times.fastest_s,
            "minute_markers_m": [mark.distance_m for mark in found.minute_markers],
            "fence_clocks_s": [pytest.approx(mark.clock_s) for mark in found.fences]}  # fmt: skip


@pytest.mark.parametrize("vector", read(make_course_vectors), ids=lambda v: json.dumps(v["input"]))
def test_course(vector):
    if "refused" in vector["expected"]:
        with pytest.raises(BadInput) as refusal:
            card(**vector["input"])
        assert refusal.value.field == vector["expected"]["refused"]
    else:
        assert card(**vector["input"]) == vector["expected"]


@pytest.mark.parametrize("module", [make_score_vectors, make_course_vectors])
def test_the_vectors_on_file_are_the_worked_ones(module):
    assert module.TARGET.read_text(encoding="utf-8") == module.text()
