"""trade.conditioning and trade.recovery: steps, gates, normals, and what they refuse."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fieldtally.trade.bad_input import BadInput
from fieldtally.trade.conditioning import CAUTIONS, SOURCES, course_minutes, interval_steps, step_words, steps_for
from fieldtally.trade.recovery import Check, next_set, recovery
from fieldtally.trade.rulebook import Level, Value


def level(**numbers):
    stated = {name: Value(name, number, "", "an invented rulebook", "secondary") for name, number in numbers.items()}
    return Level("low", "Low", 1, {"cross_country": stated})


def test_steps_grow_to_the_length_of_the_course():
    steps = interval_steps(5.2, 450)
    assert [(step.work_min, step.walk_min) for step in steps] == [(3, 3), (4, 3), (5, 2), (6, 2)]
    assert step_words(steps[0]) == "3 x 3 min at 350 to 400 m/min, 3 min walk between"


def test_a_short_slow_course_asks_less():
    assert [step_words(step) for step in interval_steps(2, 300)] == ["3 x 3 min at 300 m/min, 3 min walk between"]


def test_a_long_course_asks_no_more_than_the_longest_canter_published():
    assert interval_steps(12, 570)[-1].work_min == 6


def test_steps_of_a_level():
    novice = level(length_max_m=2200, speed_min_mpm=350, speed_max_mpm=400)
    assert course_minutes(novice) == 5.5
    assert steps_for(novice)[-1].work_min == 6
    assert steps_for(level(speed_mpm=400)) == ()


def test_every_plan_has_sources_and_cautions():
    assert {source.grade for source in SOURCES} == {"secondary", "from_memory"}
    assert any("vet" in caution for caution in CAUTIONS)


@pytest.mark.parametrize("minutes, mpm, field", [(0, 400, "course_min"), (5, math.nan, "course_speed_mpm")])
def test_steps_that_cannot_be(minutes, mpm, field):
    with pytest.raises(BadInput, match=field):
        interval_steps(minutes, mpm)


# --- recovery


def states(found):
    return {each.gate.id: each.state for each in found.answers}


def test_a_good_recovery():
    found = recovery([Check(2, 96, 60), Check(10, 56, 30)])
    assert found.state == "as_expected"
    assert set(states(found).values()) == {"passed"}
    assert any("vet" in caution for caution in found.cautions)


@pytest.mark.parametrize("check", [Check(10, 84, 30), Check(10, 70, 44), Check(12, 84)])
def test_a_slow_recovery(check):
    assert recovery([check]).state == "slow"


def test_not_yet_fit_is_not_slow():
    found = recovery([Check(2, 110, 60), Check(10, 72, 36)])
    assert found.state == "as_expected"
    assert states(found)["heart_2"] == states(found)["heart_10_fit"] == "missed"


def test_breathing_faster_than_the_heart_calls_the_vet():
    found = recovery([Check(10, 60, 72)])
    assert found.state == "call_vet"
    assert "call the vet" in found.words


def test_low_enough_early_passes_and_low_enough_late_is_not_told():
    assert states(recovery([Check(5, 76)]))["heart_10"] == "passed"
    assert states(recovery([Check(20, 76)]))["heart_10"] == "not_measured"
    assert recovery([Check(5, 130)]).state == "not_known"


def test_own_normals_come_first():
    high, low = recovery([Check(10, 60), Check(45, 44)], 36), recovery([Check(10, 60), Check(45, 40)], 36)
    assert (high.state, low.state) == ("slow", "as_expected")  # 36 + 15 % = 41.4
    assert recovery([Check(15, 44)], 36, rigorous=False).state == "slow"
    assert recovery([Check(10, 60, 20), Check(45, 38, 20)], 36, 12).state == "slow"  # breathing: 12 + 15 % = 13.8


def test_the_next_canter():
    assert next_set(118, 78).state == "as_expected"
    waiting = next_set(120, 70)
    assert waiting.state == "slow" and waiting.words.startswith("Wait")
    assert next_set(110, None).state == "not_known"
    assert next_set(70, 79).state == "call_vet"


@pytest.mark.parametrize("checks, normal, field", [
    ([], None, "checks"), ([Check(-1, 60)], None, "checks[0].minute"),
    ([Check(10, 60), Check(12, 0)], None, "checks[1].heart_rate_bpm"),
    ([Check(10, 60, math.nan)], None, "checks[0].respiration_bpm"),
    ([Check(10, 60)], 0, "resting_heart_rate_bpm"),
])  # fmt: skip
def test_checks_that_cannot_be(checks, normal, field):
    with pytest.raises(BadInput) as refusal:
        recovery(checks, normal)
    assert refusal.value.field == field


RANK = ["as_expected", "not_known", "slow", "call_vet"]


@given(st.integers(20, 240), st.integers(0, 60))
def test_a_higher_heart_rate_is_never_judged_better(heart, more):
    one, other = recovery([Check(10, heart, 10)], 36), recovery([Check(10, heart + more, 10)], 36)
    assert RANK.index(other.state) >= RANK.index(one.state)
