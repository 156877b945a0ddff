"""Instants on the wire: RFC 3339 text with an offset, kept as whole milliseconds since 1970 UTC."""

import re
from datetime import UTC, date, datetime, timedelta

from marshmallow import fields

from fieldtally.book.fields import EARLIEST, LATEST, fail

RFC_3339 = re.compile(
    r"([0-9]{4}-[0-9]{2}-[0-9]{2})[Tt]([0-9]{2}):([0-9]{2}):([0-9]{2})(?:\.([0-9]{1,3}))?"
    r"(?:[Zz]|([+-])([0-9]{2}):([0-9]{2}))"
)
DAY_MS = 86_400_000
EPOCH = date(1970, 1, 1)
EARLIEST_MS = (EARLIEST - EPOCH).days * DAY_MS
LATEST_MS = ((LATEST - EPOCH).days + 1) * DAY_MS - 1


def parse_instant(text: str) -> int | None:
    """Milliseconds since 1970 UTC, or None if the text is not an instant with offset.

    Source: RFC 3339 section 5.6, with at most three decimals and without leap seconds: no phone makes them.
    """
    match = RFC_3339.fullmatch(text)
    if match is None:
        return None
    day, hour, minute, second, decimals, sign, *offset = match.groups()
    try:
        days = (date.fromisoformat(day) - EPOCH).days
    except ValueError:
        return None
    parts = [int(part or 0) for part in (hour, minute, second, *offset)]
    if any(part > most for part, most in zip(parts, (23, 59, 59, 23, 59), strict=True)):
        return None
    hours, minutes, seconds, offset_h, offset_min = parts
    local_s = ((days * 24 + hours) * 60 + minutes) * 60 + seconds
    offset_s = (offset_h * 60 + offset_min) * 60 * (-1 if sign == "-" else 1)
    return (local_s - offset_s) * 1000 + int((decimals or "").ljust(3, "0"))


def show_instant(instant_ms: int) -> str:
    """`2026-05-03T09:12:33.120Z`."""
    moment = datetime.fromtimestamp(0, UTC) + timedelta(milliseconds=instant_ms)
    return moment.strftime("%Y-%m-%dT%H:%M:%S.") + f"{instant_ms % 1000:03d}Z"


class Instant(fields.Field):
    """An instant as RFC 3339 text with offset; loads as whole milliseconds since 1970 UTC."""

    def _deserialize(self, value, attr, data, **kwargs):
        instant_ms = parse_instant(value) if isinstance(value, str) else None
        if instant_ms is None:
            raise fail("bad_time", "This is not a moment in time with its offset from UTC.",
                       "Write it as 2026-05-03T09:12:33.120Z or with an offset such as +02:00.")
        if not EARLIEST_MS <= instant_ms <= LATEST_MS:
            raise fail("out_of_range", f"{value} is outside {EARLIEST} to {LATEST}.",
                       "Check the date of the phone's clock.")
        return instant_ms
