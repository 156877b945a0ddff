"""What instruments would have said in an invented season: a track put right by its calibration, a phone's trace.

The traces lie in the middle of the North Sea, so that no field of anybody's is shown.
"""

import math
from collections.abc import Iterator
from itertools import pairwise

from fieldtally.trade.calibration import calibrate, put_right

M_PER_DEGREE = 111_195  # of latitude, on a ball of 6 371 km
MILLION = 1_000_000
BESIDE_M = 1.4  # how far the invented phone strays to either side


def measured(track: dict, calibrations: dict[str, dict]) -> dict:
    """A track read off a calibrated instrument, with the distance and its uncertainty in m that follow."""
    if "calibration" not in track:
        return track
    by = calibrations[track["calibration"]]
    found = calibrate(by["taped_distance_m"], by["walked_m"], reading_step_m=by.get("reading_step_m", 0.1))
    right = put_right(track["reading_m"], found)
    return {**track, "distance_m": round(right.distance_m, 1), "distance_u_m": round(right.distance_u_m, 2)}


def trace_of(line: dict, canter: dict, ended_at_ms: int) -> dict:
    """One point a second along a line from `latitude`, `longitude` in degrees towards `bearing_deg`, ridden as the
    stopwatch has it. `ended_at_ms` is since 1970."""
    elapsed_ms = canter["elapsed_ms"]
    seconds = math.ceil(elapsed_ms / 1000)
    metres = [metres_after(canter, second * 1000) for second in range(seconds + 1)]
    points = [point(line, along, BESIDE_M * math.sin(second / 7)) for second, along in enumerate(metres)]
    return {
        "outing_id": canter["outing_id"],
        "source": "phone",
        "started_at_ms": ended_at_ms - elapsed_ms,
        "dt_ms": [0] + [1000] * seconds,
        "latitude_udeg": list(differences(latitude for latitude, _ in points)),
        "longitude_udeg": list(differences(longitude for _, longitude in points)),
        "accuracy_m": [3 + second % 3 for second in range(seconds + 1)],
    }


def metres_after(canter: dict, ms: int) -> float:
    """Where the canter's own splits put the pair, and on at the last speed after the last flag."""
    times = [0, *canter["splits_ms"], canter["elapsed_ms"]]
    places = [0, *canter["flags_m"], canter["distance_m"]]
    legs = list(zip(pairwise(times), pairwise(places), strict=True))
    (began, ended), (here, there) = next((leg for leg in legs if ms < leg[0][1]), legs[-1])
    return here + (there - here) * (ms - began) / (ended - began)


def point(line: dict, along_m: float, beside_m: float) -> tuple[int, int]:
    """Latitude and longitude in millionths of a degree."""
    bearing = math.radians(line["bearing_deg"])
    north = along_m * math.cos(bearing) - beside_m * math.sin(bearing)
    east = along_m * math.sin(bearing) + beside_m * math.cos(bearing)
    east_per_degree = M_PER_DEGREE * math.cos(math.radians(line["latitude"]))
    latitude = line["latitude"] + north / M_PER_DEGREE
    longitude = line["longitude"] + east / east_per_degree
    return round(latitude * MILLION), round(longitude * MILLION)


def differences(values) -> Iterator[int]:
    """The first as it is, each further one as its difference from the one before."""
    before = 0
    for value in values:
        yield value - before
        before = value
