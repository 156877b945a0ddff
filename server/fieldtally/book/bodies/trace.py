"""Where a pair was, as the phone or a file says: a second witness beside the stopwatch, never evidence."""

from itertools import accumulate

from marshmallow import ValidationError, fields, validates_schema

from fieldtally.book import words
from fieldtally.book.bodies.body import Body, optional
from fieldtally.book.fields import Choice, Number, RecordId, Text, fail

MOST_POINTS = 2000
DEGREE = 1_000_000  # a millionth of a degree of latitude is 0.11 m
LONGEST_STEP_MS = 210 * 365 * 86_400_000  # a file may hold rides of many years

MISMATCH = fail(
    "missing",
    "The lists of this trace do not go with each other.",
    "Give every point a latitude and a longitude, and a time or an accuracy to all of them or to none.",
)
TOO_MANY = fail("too_many", f"A trace may have {MOST_POINTS} points.", "Thin it out before it is saved.")
NOT_ON_EARTH = fail(
    "out_of_range",
    "A point lies outside 90 degrees of latitude or 180 of longitude.",
    "Check that each value is the difference from the point before, in millionths of a degree.",
)


def steps(least: float, most: float, unit: str, **kwargs) -> fields.List:
    return fields.List(Number(least, most, unit, whole=True), **kwargs)


class Trace(Body):
    """The points of one ride, or of a course drawn beforehand (then without times).

    `latitude_udeg` and `longitude_udeg` are WGS 84 in millionths of a degree: the first as it is, each further
    one as the difference from the one before. `started_at_ms` is when the first point was, since 1970, and
    `dt_ms` the time since the point before (the first is 0); null and empty where times are not known.
    `accuracy_m` is the radius that the phone gave; empty where nobody said. `breaks` are the places in the lists
    at which the trace begins anew after a gap, so that no distance leads across it. `left_out` counts the points
    that did not fit.
    """

    outing_id = RecordId(required=True)
    canter_id = optional(RecordId)
    source = Choice(words.TRACE_SOURCES, required=True)
    name = optional(Text, 120)
    started_at_ms = optional(Number, 631_152_000_000, 7_258_118_400_000, "ms", whole=True)
    dt_ms = steps(0, LONGEST_STEP_MS, "ms", load_default=list)
    latitude_udeg = steps(-180 * DEGREE, 180 * DEGREE, "millionths of a degree", required=True)
    longitude_udeg = steps(-360 * DEGREE, 360 * DEGREE, "millionths of a degree", required=True)
    accuracy_m = steps(0, 100_000, "m", load_default=list)
    breaks = steps(1, MOST_POINTS - 1, "place in the list", load_default=list)
    left_out = Number(0, 10_000_000, "points", whole=True, load_default=0)

    @validates_schema
    def lists_go_together(self, data, **kwargs):
        count = len(data["latitude_udeg"])
        timed = data.get("started_at_ms") is not None
        if count == 0 or len(data["longitude_udeg"]) != count or len(data.get("dt_ms", ())) != count * timed:
            raise ValidationError({"latitude_udeg": MISMATCH.messages})
        if len(data.get("accuracy_m", ())) not in (0, count) or any(place >= count for place in data.get("breaks", ())):
            raise ValidationError({"latitude_udeg": MISMATCH.messages})
        if count > MOST_POINTS:
            raise ValidationError({"latitude_udeg": TOO_MANY.messages})

    @validates_schema
    def points_are_on_earth(self, data, **kwargs):
        for name, most in (("latitude_udeg", 90 * DEGREE), ("longitude_udeg", 180 * DEGREE)):
            if any(abs(at) > most for at in accumulate(data[name])):
                raise ValidationError({name: NOT_ON_EARTH.messages})
