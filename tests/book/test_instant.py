"""Instants: RFC 3339, checked against its own examples and against the standard library."""

from datetime import UTC, datetime, timedelta, timezone

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fieldtally.book.instant import EARLIEST_MS, LATEST_MS, parse_instant, show_instant

# RFC 3339 section 5.8 (July 2002) gives these examples with the instants they mean.
RFC_EXAMPLES = [
    ("1985-04-12T23:20:50.52Z", datetime(1985, 4, 12, 23, 20, 50, 520_000, UTC)),
    ("1996-12-19T16:39:57-08:00", datetime(1996, 12, 20, 0, 39, 57, 0, UTC)),
    ("1937-01-01T12:00:27.87+00:20", datetime(1937, 1, 1, 11, 40, 27, 870_000, UTC)),
]


@pytest.mark.parametrize(("text", "moment"), RFC_EXAMPLES)
def test_the_examples_of_rfc_3339(text, moment):
    assert parse_instant(text) == (moment - datetime(1970, 1, 1, tzinfo=UTC)) // timedelta(milliseconds=1)


def test_leap_seconds_are_not_taken():
    """RFC 3339's remaining examples. No phone's clock can show a 61st second; we refuse rather than guess."""
    assert parse_instant("1990-12-31T23:59:60Z") is None
    assert parse_instant("1990-12-31T15:59:60-08:00") is None


@given(
    st.datetimes(datetime(1990, 1, 2), datetime(2199, 12, 30)).map(
        lambda moment: moment.replace(microsecond=moment.microsecond // 1000 * 1000)
    ),
    st.integers(-1439, 1439),
)
def test_agrees_with_the_standard_library(moment, offset_min):
    """Every instant, in every offset, to the millisecond, there and back."""
    there = moment.replace(tzinfo=timezone(timedelta(minutes=offset_min)))
    instant_ms = parse_instant(there.isoformat(timespec="milliseconds"))
    assert datetime.fromtimestamp(0, UTC) + timedelta(milliseconds=instant_ms) == there
    assert show_instant(instant_ms) == there.astimezone(UTC).isoformat(timespec="milliseconds")[:-6] + "Z"
    assert parse_instant(show_instant(instant_ms)) == instant_ms


@pytest.mark.parametrize(
    "text",
    [
        "", "2026-05-03", "2026-05-03T09:12:33", "2026-05-03T09:12Z", "2026-05-03T09:12:33.Z",
        "2026-05-03T09:12:33.1234Z", "2026-05-03T09:12:33+0200", "2026-05-03T09:12:33+2:00",
        "2026-05-03 09:12:33Z", "2026-02-29T00:00:00Z", "2026-13-01T00:00:00Z", "2026-05-03T24:00:00Z",
        "2026-05-03T09:60:00Z", "2026-05-03T09:12:33+24:00", "2026-05-03T09:12:33+02:60",
        "٢٠٢٦-05-03T09:12:33Z", " 2026-05-03T09:12:33Z", "2026-05-03T09:12:33Z\n", "0000-01-01T00:00:00Z",
    ],
)  # fmt: skip
def test_what_is_no_instant(text):
    assert parse_instant(text) is None


def test_the_two_hours_of_a_clock_change_are_told_apart():
    summer, winter = parse_instant("2026-10-25T02:30:00+02:00"), parse_instant("2026-10-25T02:30:00+01:00")
    assert winter - summer == 3_600_000


def test_the_range():
    assert (show_instant(EARLIEST_MS), show_instant(LATEST_MS)) == (
        "1990-01-01T00:00:00.000Z", "2199-12-31T23:59:59.999Z",
    )  # fmt: skip
