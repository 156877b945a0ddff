"""trade.optimum and trade.time_penalties: seconds, rounding, over and under."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fieldtally.trade.bad_input import BadInput
from fieldtally.trade.optimum import clock_words, recorded_s, seconds_begun, time_at_speed_s
from fieldtally.trade.time_penalties import CourseTimes, TimeRules, course_times, time_score

RULES = TimeRules(time_penalties_per_second=0.4, time_limit_factor=2)
LENGTHS, SPEEDS = st.integers(500, 7000), st.integers(250, 600)
TIMES_MS = st.integers(1, 3_000_000)


@pytest.mark.parametrize("rounding, seconds", [("up", 231), ("nearest", 231), ("none", 3000 / 13)])
def test_each_rounding(rounding, seconds):
    assert time_at_speed_s(2000, 520, rounding) == pytest.approx(seconds)


def test_a_whole_second_stays_whole_however_the_length_is_written():
    assert time_at_speed_s(2300.0, 600) == time_at_speed_s(2300, 600.0) == 230
    assert time_at_speed_s(0.1 * 3 * 1000, 300) in (60, 61)  # 300.00000000000006 m is what was given
    assert recorded_s(31_000) == 31
    assert recorded_s(31_000.5) == 32


@pytest.mark.parametrize("seconds, begun", [(-5, 0), (0, 0), (0.01, 1), (1, 1), (10.2, 11)])
def test_seconds_begun(seconds, begun):
    assert seconds_begun(seconds) == begun


@pytest.mark.parametrize("seconds, words", [(230, "3:50"), (59.6, "1:00"), (61.4, "1:01"), (0, "0:00")])
def test_clock_words(seconds, words):
    assert clock_words(seconds) == words


@pytest.mark.parametrize("length_m, speed_mpm, field", [
    (0, 400, "length_m"), (-1, 400, "length_m"), (math.nan, 400, "length_m"),
    (1800, 0, "speed_mpm"), (1800, -400, "speed_mpm"), (1800, math.inf, "speed_mpm"), (1800, None, "speed_mpm"),
])  # fmt: skip
def test_what_cannot_be(length_m, speed_mpm, field):
    with pytest.raises(BadInput) as refusal:
        time_at_speed_s(length_m, speed_mpm)
    assert refusal.value.field == field


def test_an_unknown_rounding():
    with pytest.raises(BadInput, match="rounding"):
        time_at_speed_s(1800, 400, "down")


@pytest.mark.parametrize("elapsed_ms", [0, -1, math.nan, None])
def test_a_round_without_a_time(elapsed_ms):
    with pytest.raises(BadInput, match="elapsed_ms"):
        time_score(course_times(1800, 360, RULES), elapsed_ms, RULES)


def test_no_penalty_where_the_rulebook_has_none_to_give():
    silent = TimeRules()
    score = time_score(course_times(1800, 360, silent), 311_000, silent)
    assert (score.penalties, score.seconds_over, score.eliminated) == (None, 11, False)
    assert "not stated" in score.reason


def test_the_time_limit_itself_is_still_in():
    times = course_times(1800, 360, RULES)
    assert not time_score(times, 600_000, RULES).eliminated
    over = time_score(times, 600_001, RULES)
    assert (over.eliminated, over.penalties) == (True, None)
    assert "10:00" in over.reason


def test_a_window_under_the_optimum():
    rules = TimeRules(time_penalties_per_second=0.4, too_fast_penalties_per_second=0.4, too_fast_window_s=20)
    times = course_times(1800, 360, rules)
    assert times.fastest_s == 280
    assert time_score(times, 280_000, rules).penalties == 0
    assert time_score(times, 275_000, rules).penalties == 2.0


@given(LENGTHS, SPEEDS, TIMES_MS, TIMES_MS)
def test_over_the_optimum_slower_never_costs_less(length_m, speed_mpm, one_ms, other_ms):
    times: CourseTimes = course_times(length_m, speed_mpm, RULES)
    quick, slow = sorted((one_ms, other_ms))
    costs = [math.inf if s.eliminated else s.penalties for s in (time_score(times, t, RULES) for t in (quick, slow))]
    assert costs[0] <= costs[1]


@given(LENGTHS, SPEEDS, SPEEDS)
def test_a_higher_speed_never_has_a_longer_optimum_time(length_m, one, other):
    slow, quick = sorted((one, other))
    assert time_at_speed_s(length_m, slow) >= time_at_speed_s(length_m, quick)


@given(LENGTHS, SPEEDS)
def test_rounding_up_is_the_next_whole_second(length_m, speed_mpm):
    assert time_at_speed_s(length_m, speed_mpm, "up") == -(-60 * length_m // speed_mpm)


@given(LENGTHS, st.integers(300, 400), TIMES_MS, TIMES_MS)
def test_under_the_speed_fault_time_quicker_never_costs_less(length_m, speed_mpm, one_ms, other_ms):
    rules = TimeRules(0.4, too_fast_penalties_per_second=1, too_fast_speed_mpm=speed_mpm + 70)
    times = course_times(length_m, speed_mpm, rules)
    quick, slow = sorted(min(t, int(times.optimum_s * 1000)) for t in (one_ms, other_ms))
    assert time_score(times, quick, rules).penalties >= time_score(times, slow, rules).penalties
