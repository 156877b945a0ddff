"""What a trace may say: lists that go together, points on Earth, no more than fit an entry."""

import json

import pytest

from fieldtally.book.bodies.trace import MOST_POINTS
from fieldtally.book.entry import Entry, Refusal, check
from fieldtally.book.measure import MOST_BYTES
from support.bodies import FULL, OUTING

DRAWN = {"outing_id": OUTING, "source": "file", "latitude_udeg": [51_500_000, 60], "longitude_udeg": [-1_250_000, 3]}


def answer(body: dict) -> Entry | Refusal:
    return check({
        "id": "019dee92-bc71-76cc-9e55-cd613e2c47fd", "record_id": "019dee92-bc71-79b3-81c2-64d77b2c04a0",
        "supersedes": [], "kind": "trace", "kind_version": 1, "body": body, "recorded_at": "2026-05-03T09:12:33.120Z",
        "utc_offset_min": 60, "local_date": "2026-05-03", "clock": None,
    })  # fmt: skip


def test_a_trace_with_and_without_times_is_taken():
    assert isinstance(answer(FULL["trace"]), Entry)
    assert isinstance(answer(DRAWN), Entry)


@pytest.mark.parametrize(
    "change, field, code",
    [
        ({"longitude_udeg": [1]}, "latitude_udeg", "missing"),
        ({"latitude_udeg": [], "longitude_udeg": []}, "latitude_udeg", "missing"),
        ({"dt_ms": [0, 1000]}, "latitude_udeg", "missing"),  # times without a start
        ({"started_at_ms": 1_777_799_553_120}, "latitude_udeg", "missing"),  # a start without times
        ({"accuracy_m": [5]}, "latitude_udeg", "missing"),
        ({"breaks": [2]}, "latitude_udeg", "missing"),  # behind the last point
        ({"latitude_udeg": [89_999_999, 2]}, "latitude_udeg", "out_of_range"),
        ({"longitude_udeg": [-179_999_999, -2]}, "longitude_udeg", "out_of_range"),
        ({"latitude_udeg": [51.5, 60]}, "latitude_udeg.0", "not_whole"),
        ({"dt_ms": [0, -1], "started_at_ms": 1_777_799_553_120}, "dt_ms.1", "out_of_range"),
    ],
)
def test_what_cannot_be_a_trace_is_refused_with_the_field(change, field, code):
    refused = answer({**DRAWN, **change})
    assert isinstance(refused, Refusal)
    assert (refused.code, refused.field) == (code, f"body.{field}")


def test_the_most_points_fit_an_entry_and_one_more_does_not():
    """A gallop in the tropics at 1 Hz: the longest numbers a horse can make."""
    count = MOST_POINTS
    full = {
        **FULL["trace"], "dt_ms": [0] + [1000] * (count - 1), "latitude_udeg": [51_500_000] + [-180] * (count - 1),
        "longitude_udeg": [-101_250_000] + [-180] * (count - 1), "accuracy_m": [100] * count,
    }  # fmt: skip
    assert isinstance(answer(full), Entry)
    assert len(json.dumps(full, separators=(",", ":"))) < MOST_BYTES - 10_000
    more = {**full, **{name: [*full[name], 1] for name in ("dt_ms", "latitude_udeg", "longitude_udeg", "accuracy_m")}}
    assert answer(more).code == "too_many"
