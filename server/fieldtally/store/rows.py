"""Between the table of entries and the entries the book knows."""

import json

from sqlalchemy import Row, select

from fieldtally.book.entry import Entry, compact
from fieldtally.book.instant import show_instant
from fieldtally.store import models
from fieldtally.store.receipt import Origin, sign

# Columns rather than objects: a logbook is read by the thousand.
COLUMNS = select(
    models.Entry.id,
    models.Entry.record_id,
    models.Entry.supersedes,
    models.Entry.kind,
    models.Entry.kind_version,
    models.Entry.body,
    models.Entry.recorded_at_ms,
    models.Entry.utc_offset_min,
    models.Entry.local_date,
    models.Entry.clock,
    models.Entry.number,
    models.Entry.author,
    models.Entry.device,
    models.Entry.skew_ms,
    models.Entry.received_at_ms,
    models.Entry.content_digest,
)


def to_row(logbook_id: str, number: int, entry: Entry, content_digest: str, origin: Origin) -> dict:
    return {
        "logbook_id": logbook_id,
        "number": number,
        "id": entry.id,
        "record_id": entry.record_id,
        "supersedes": compact(entry.supersedes),
        "kind": entry.kind,
        "kind_version": entry.kind_version,
        "body": None if entry.body is None else compact(entry.body),
        "recorded_at_ms": entry.recorded_at_ms,
        "utc_offset_min": entry.utc_offset_min,
        "local_date": entry.local_date,
        "clock": None if entry.clock is None else compact(entry.clock),
        "author": origin.author,
        "device": origin.device,
        "skew_ms": origin.skew_ms,
        "received_at_ms": origin.received_at_ms,
        "content_digest": content_digest,
    }


def from_row(row: Row) -> Entry:
    return Entry(
        row[0],
        row[1],
        tuple(json.loads(row[2])) if row[2] != "[]" else (),
        row[3],
        row[4],
        json.loads(row[5]) if row[5] is not None else None,
        row[6],
        row[7],
        row[8],
        json.loads(row[9]) if row[9] is not None else None,
        *row[10:15],
    )


def to_wire(entry: Entry, author_name: str, receipt: str) -> dict:
    """A numbered entry as it is pulled."""
    return entry.content() | {
        "number": entry.number,
        "author": entry.author,
        "author_name": author_name,
        "device": entry.device,
        "skew_ms": entry.skew_ms,
        "received_at": show_instant(entry.received_at_ms),
        "receipt": receipt,
    }


def receipt_of(key: str, logbook_id: str, row: Row) -> str:
    origin = Origin(row.author, row.device, row.skew_ms, row.received_at_ms)
    return sign(key, logbook_id, row.content_digest, origin)
