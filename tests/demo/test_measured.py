"""What the demonstration shows of instruments: nothing of it empty at a first look, and each agrees with the others."""

import math
from datetime import date
from itertools import accumulate, pairwise

import pytest

from fieldtally.demo.measured import differences, metres_after
from fieldtally.demo.scenario import read_scenario, scenario_files

EARTH_M = 6_371_008.8  # mean radius R1 of GRS 80 (Moritz, Geodetic Reference System 1980; from memory)
NORTH_SEA = ((54.0, 57.0), (1.5, 5.0))  # degrees: well off every coast


@pytest.fixture(scope="module")
def bodies():
    wren = next(path for path in scenario_files() if path.stem == "wren")
    found: dict[str, list[dict]] = {}
    for written in read_scenario(wren, date(2026, 6, 1)).entries:
        found.setdefault(written.entry["kind"], []).append(written.entry["body"])
    return found


def points(trace: dict) -> list[tuple[float, float]]:
    """In degrees, summed up as docs/protocol.md says."""
    whole = (accumulate(trace[name]) for name in ("latitude_udeg", "longitude_udeg"))
    return [(latitude / 1e6, longitude / 1e6) for latitude, longitude in zip(*whole, strict=True)]


def haversine_m(one: tuple[float, float], other: tuple[float, float]) -> float:
    """R. W. Sinnott, Virtues of the Haversine, Sky and Telescope 68 (1984), 159 (from memory)."""
    (lat1, lon1), (lat2, lon2) = ([math.radians(degree) for degree in place] for place in (one, other))
    h = math.sin((lat2 - lat1) / 2) ** 2 + math.cos(lat1) * math.cos(lat2) * math.sin((lon2 - lon1) / 2) ** 2
    return 2 * EARTH_M * math.asin(math.sqrt(h))


def test_calibrations_flags_sets_with_recoveries_and_a_trace_are_there(bodies):
    assert {"wheel", "paces"} <= {one["measured_by"] for one in bodies["calibration"]}
    assert any(track.get("flags_m") and track.get("calibration_id") for track in bodies["track"])
    assert sum(len(one["recoveries"]) >= 2 for one in bodies["interval_set"]) >= 2
    assert len(bodies["trace"]) == 1 and bodies["trace"][0]["canter_id"]


def test_a_track_is_put_right_by_its_wheel(bodies):
    """Taped over mean read, by hand: 50 / 50.4 of 564.2 m."""
    track = next(one for one in bodies["track"] if one.get("calibration_id"))
    assert track["distance_m"] == pytest.approx(564.2 * 50 / 50.4, abs=0.06)
    assert 0.5 < track["distance_u_m"] < 3  # better than the 1 % assumed of a wheel that nobody tried


def test_the_trace_is_as_long_and_as_slow_as_the_canter_and_lies_at_sea(bodies):
    trace = bodies["trace"][0]
    canter = next(one for one in bodies["timed_canter"] if one["splits_ms"])
    places = points(trace)
    length_m = sum(haversine_m(one, other) for one, other in pairwise(places))
    assert length_m == pytest.approx(canter["distance_m"], rel=0.03)
    assert sum(trace["dt_ms"]) == pytest.approx(canter["elapsed_ms"], abs=1000)
    (south, north), (west, east) = NORTH_SEA
    assert all(south < latitude < north and west < longitude < east for latitude, longitude in places)


def test_splits_say_where_the_pair_was():
    canter = {"splits_ms": [10_000], "flags_m": [100], "elapsed_ms": 30_000, "distance_m": 200}
    assert [metres_after(canter, ms) for ms in (0, 5_000, 10_000, 20_000, 30_000, 32_000)] == [
        0,
        50,
        100,
        150,
        200,
        210,
    ]
    assert list(differences([5, 7, 4])) == [5, 2, -3]
