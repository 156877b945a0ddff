"""trade.pace and its neighbours: speed, lateness, words, pace sense, and what they refuse."""

import json
import math

import make_pace_vectors
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from fieldtally.trade.bad_input import BadInput
from fieldtally.trade.lateness import lateness
from fieldtally.trade.pace import default_distance_u, differ, difference_u, elapsed_u, speed
from fieldtally.trade.pace_sense import pace_sense
from fieldtally.trade.pace_words import detail, early_or_late, headline, rounded

VECTORS = json.loads(make_pace_vectors.TARGET.read_text(encoding="utf-8"))
DISTANCES = st.floats(10, 10_000)
TIMES_MS = st.floats(500, 7_200_000)
TARGETS = st.floats(100, 1000)


def answer(distance_m, elapsed_ms, distance_u_m, measured_by, resolution_ms, target_speed_mpm):
    """What a client must answer for one vector's input."""
    try:
        pace = speed(distance_m, elapsed_ms, distance_u_m, measured_by, resolution_ms)
        late = None if target_speed_mpm is None else lateness(pace, target_speed_mpm)
    except BadInput as refusal:
        return {"refused": refusal.field}
    found = {"speed_mpm": pace.speed_mpm, "speed_u_mpm": pace.speed_u_mpm, "headline": headline(pace, late)}
    if late:
        found |= {"seconds_late": late.seconds_late, "seconds_late_u": late.seconds_late_u,
                  "metres_late": late.metres_late, "metres_late_u": late.metres_late_u,
                  "verdict": late.verdict}  # fmt: skip
    return found


@pytest.mark.parametrize("vector", VECTORS, ids=lambda v: json.dumps(v["input"]))
def test_every_vector(vector):
    found = answer(**vector["input"])
    assert found.keys() == vector["expected"].keys()
    for key, value in vector["expected"].items():
        assert found[key] == (value if isinstance(value, str) else pytest.approx(value, rel=1e-9, abs=1e-9)), key


def test_the_vectors_on_file_are_the_ones_the_independent_arithmetic_makes():
    assert make_pace_vectors.TARGET.read_text(encoding="utf-8") == make_pace_vectors.text()


def test_the_wording_of_the_design():
    pace = speed(420, 61_200)
    assert headline(pace, lateness(pace, 420)) == "412 ± 4 m/min, 8 slow"
    assert headline(pace) == "412 ± 4 m/min"


def test_a_perfect_measurement_still_shows_some_doubt():
    assert headline(speed(400, 60_000, distance_u_m=0)) == "400 ± 1 m/min"


def test_close_to_the_target_is_no_miss():
    near = lateness(speed(396, 60_000), 400)
    assert near.verdict == "on_target"
    assert detail(near) == ("0.6 s late, 4.0 m late at the second flag; "
                            "too close to the target for this watch and distance to tell")  # fmt: skip


def test_early_is_negative():
    early = lateness(speed(400, 55_000, measured_by="tape"), 400)
    assert (early.verdict, early.seconds_late < 0, early.metres_late < 0) == ("fast", True, True)
    assert detail(early) == "5.0 s early, 33.3 m early at the second flag"


@pytest.mark.parametrize("value, shown", [(1.84, "1.8 s late"), (-1.85, "1.9 s early"), (0.04, "0.0 s")])
def test_early_or_late_in_words(value, shown):
    assert early_or_late(value, "s") == shown


@pytest.mark.parametrize("value, whole", [(0.5, 1), (1.5, 2), (2.5, 3), (-0.4, 0)])
def test_halves_round_up_as_in_javascript(value, whole):
    assert rounded(value) == whole


@pytest.mark.parametrize("field, arguments", [
    ("elapsed_ms", (420, 0)), ("elapsed_ms", (420, -5)), ("elapsed_ms", (420, math.nan)),
    ("elapsed_ms", (420, math.inf)), ("elapsed_ms", (420, True)), ("elapsed_ms", (420, "63.2")),
    ("distance_m", (0, 60_000)), ("distance_m", (-420, 60_000)), ("distance_m", (math.nan, 60_000)),
    ("distance_u_m", (420, 60_000, -1)), ("distance_u_m", (420, 60_000, math.nan)),
    ("measured_by", (420, 60_000, None, "eye")),
    ("resolution_ms", (420, 60_000, None, "wheel", -1)), ("timing_sd_s", (420, 60_000, None, "wheel", 0, -1)),
])  # fmt: skip
def test_what_cannot_be_is_refused_with_the_field_and_the_fix(field, arguments):
    with pytest.raises(BadInput) as refusal:
        speed(*arguments)
    assert refusal.value.field == field
    assert refusal.value.fix and field in str(refusal.value)


@pytest.mark.parametrize("target", [0, -1, math.nan, None])
def test_a_target_speed_that_cannot_be(target):
    with pytest.raises(BadInput, match="target_speed_mpm"):
        lateness(speed(420, 60_000), target)


@given(DISTANCES, TIMES_MS, TIMES_MS)
def test_a_longer_time_is_never_faster(distance_m, one_ms, other_ms):
    assume(one_ms < other_ms)
    assert speed(distance_m, one_ms).speed_mpm >= speed(distance_m, other_ms).speed_mpm


@given(DISTANCES, TIMES_MS, TARGETS)
def test_slow_late_in_seconds_and_late_in_metres_agree_in_sign(distance_m, elapsed_ms, target):
    late = lateness(speed(distance_m, elapsed_ms), target)
    assume(abs(late.slow_mpm) > 1e-6)
    assert (late.slow_mpm > 0) == (late.seconds_late > 0) == (late.metres_late > 0)


@given(DISTANCES, TIMES_MS, st.floats(0, 100), st.floats(0, 100))
def test_a_worse_wheel_never_makes_a_surer_speed(distance_m, elapsed_ms, one_u, other_u):
    better, worse = sorted((one_u, other_u))
    assert speed(distance_m, elapsed_ms, better).speed_u_mpm <= speed(distance_m, elapsed_ms, worse).speed_u_mpm


def test_a_whole_second_reading_is_far_less_sure():
    assert elapsed_u(1000) == pytest.approx(math.hypot(0.10, 1 / math.sqrt(12)))
    assert elapsed_u(1000) > 3 * elapsed_u()


def test_two_canters_on_one_track_share_its_error():
    one, other = speed(400, 60_000), speed(400, 59_000)
    assert not differ(one, other)  # 7 m/min, against 2 x 5.8 from two wheels
    assert differ(one, other, same_track=True)  # the wheel's error is common to both
    assert difference_u(one, other, same_track=True) < difference_u(one, other, same_track=False)


def test_timing_alone_cannot_tell_two_runs_a_quarter_second_apart():
    one, other = speed(100, 12_000), speed(100, 12_270)
    assert not differ(one, other, same_track=True)  # under 2·√2·0.10 s = 0.28 s
    assert differ(one, speed(100, 12_300), same_track=True)


def test_default_uncertainties_keep_their_order():
    wheel, known, tape = (default_distance_u(400, how) for how in ("wheel", "known", "tape"))
    assert wheel > known > tape > 0


def canters(*speeds_mpm, target=400):
    return [(speed(400, 24_000_000 / mpm, measured_by="tape"), target) for mpm in speeds_mpm]


def test_pace_sense_of_nothing_and_of_one():
    assert pace_sense([]) is None
    one = pace_sense(canters(390))
    assert (one.canters, one.spread_mpm, one.bias_u_mpm, one.told_apart) == (1, None, None, False)
    assert one.bias_mpm == pytest.approx(-10)


def test_pace_sense_bias_and_spread():
    sense = pace_sense(canters(380, 390, 400))
    assert sense.bias_mpm == pytest.approx(-10)
    assert sense.spread_mpm == pytest.approx(10)  # sample deviation of -20, -10, 0
    assert sense.rider_spread_mpm == pytest.approx(math.sqrt(100 - sense.timing_mpm**2))
    assert not sense.told_apart  # 10 / √3 = 5.8: the bias is under two of these


def test_a_steady_bias_shows():
    sense = pace_sense(canters(380, 381, 379, 380))
    assert sense.told_apart
    assert sense.spread_mpm < 1


def test_different_targets_each_count_against_their_own():
    sense = pace_sense([*canters(410, target=400), *canters(460, target=450)])
    assert (sense.bias_mpm, sense.spread_mpm) == (pytest.approx(10), pytest.approx(0, abs=1e-9))
    assert sense.rider_spread_mpm == 0
