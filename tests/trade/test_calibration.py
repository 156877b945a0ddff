"""trade.calibration: what walking a taped stretch says of an instrument, and what it refuses."""

import json
import math
import statistics

import make_calibration_vectors
import make_pace_sense_vectors
import pytest
from hypothesis import given
from hypothesis import strategies as st

from fieldtally.trade.bad_input import BadInput
from fieldtally.trade.calibration import calibrate, put_right
from fieldtally.trade.pace import speed
from fieldtally.trade.pace_sense import pace_sense

VECTORS = json.loads(make_calibration_vectors.TARGET.read_text(encoding="utf-8"))
SENSES = json.loads(make_pace_sense_vectors.TARGET.read_text(encoding="utf-8"))
WALKS = st.lists(st.floats(30, 70), min_size=3, max_size=10)


def answer(taped_distance_m, walked_m, taped_u_m, reading_step_m, reading_m):
    """What a client must answer for one vector's input."""
    try:
        by = calibrate(taped_distance_m, walked_m, taped_u_m, reading_step_m)
        right = put_right(reading_m, by)
    except BadInput as refusal:
        return {"refused": refusal.field}
    return {"factor": by.factor, "factor_u": by.factor_u, "mean_m": by.mean_m, "scatter_m": by.scatter_m,
            "distance_m": right.distance_m, "distance_u_m": right.distance_u_m}  # fmt: skip


@pytest.mark.parametrize("vector", VECTORS, ids=lambda v: json.dumps(v["input"]))
def test_every_vector(vector):
    found = answer(**vector["input"])
    assert found.keys() == vector["expected"].keys()
    for key, value in vector["expected"].items():
        assert found[key] == (value if isinstance(value, str) else pytest.approx(value, rel=1e-9, abs=1e-12)), key


@pytest.mark.parametrize("module", [make_calibration_vectors, make_pace_sense_vectors])
def test_the_vectors_on_file_are_the_ones_the_independent_arithmetic_makes(module):
    assert module.TARGET.read_text(encoding="utf-8") == module.text()


@pytest.mark.parametrize("vector", SENSES, ids=lambda v: json.dumps(v["input"]))
def test_a_set_of_canters_against_its_target(vector):
    given = vector["input"]
    paces = [speed(given["distance_m"], ms, given["distance_u_m"]) for ms in given["elapsed_ms"]]
    found = pace_sense([(pace, given["target_speed_mpm"]) for pace in paces])
    for key, value in vector["expected"].items():
        assert getattr(found, key) == (None if value is None else pytest.approx(value, rel=1e-9, abs=1e-9)), key


@given(WALKS)
def test_walking_the_taped_stretch_again_gives_the_tape_s_length(walks):
    by = calibrate(50, walks)
    assert put_right(statistics.fmean(walks), by).distance_m == pytest.approx(50)


@given(WALKS, st.floats(0.5, 3))
def test_an_instrument_with_another_unit_measures_the_same_metres(walks, unit):
    """What a wheel calls a metre cancels out."""
    plain = put_right(400, calibrate(50, walks))
    other = put_right(400 * unit, calibrate(50, [reading * unit for reading in walks]))
    assert other.distance_m == pytest.approx(plain.distance_m)
    assert other.distance_u_m == pytest.approx(plain.distance_u_m)


@given(WALKS)
def test_more_walks_that_scatter_alike_say_more_of_the_factor(walks):
    if statistics.stdev(walks) < 1e-6:
        return
    once, twice = (calibrate(50, walks * times, taped_u_m=0) for times in (1, 2))
    assert twice.factor_u < once.factor_u


def test_a_calibrated_wheel_is_better_known_than_an_assumed_one():
    right = put_right(412.5, calibrate(50, [50.3, 50.5, 50.4], reading_step_m=0.1))
    assert right.distance_u_m < 0.01 * right.distance_m
    with_it = speed(right.distance_m, 61_200, right.distance_u_m)
    without = speed(412.5, 61_200)
    assert with_it.speed_mpm == pytest.approx(without.speed_mpm * 50 / 50.4)
    assert with_it.speed_u_mpm < 0.4 * without.speed_u_mpm


@pytest.mark.parametrize("reading", [0, -1, math.nan, math.inf, None, "400", True])
def test_no_reading_is_no_length(reading):
    with pytest.raises(BadInput) as refusal:
        put_right(reading, calibrate(50, [50, 50.1, 49.9]))
    assert refusal.value.field == "reading_m"
