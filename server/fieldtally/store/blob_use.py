"""Which photos and voice notes a logbook still speaks of. What nothing speaks of may be dropped, when somebody asks.

A file stays while any entry that stands refers to it, for 30 days after the last such entry was superseded (taken
back, so that it can be put back), while an entry this server cannot read mentions it, and for its own first 30 days.
"""

import json
import re
from collections.abc import Iterator
from datetime import UTC, datetime, timedelta

from sqlalchemy import select

from fieldtally.store.blobs import Blob, blobs
from fieldtally.store.clock import now_ms
from fieldtally.store.db import db
from fieldtally.store.models import Entry, HeldEntry, Logbook

KINDS = ("photo", "voice_note")
KEPT_FOR = timedelta(days=30)
DIGEST = re.compile(r"[0-9a-f]{64}")


def every_logbook() -> list[str]:
    return list(db.session.scalars(select(Logbook.id).order_by(Logbook.id)))


def unused(logbook_id: str, at_ms: int | None = None) -> list[Blob]:
    """The files that may be dropped."""
    now = at_ms or now_ms()
    before = datetime.fromtimestamp(now / 1000, UTC) - KEPT_FOR
    old = [blob for blob in blobs().every(logbook_id) if blob.kept_since < before]
    wanted = _wanted(logbook_id, now - int(KEPT_FOR.total_seconds() * 1000)) if old else set()
    return [blob for blob in old if blob.sha256 not in wanted]


def missing(logbook_id: str) -> int:
    """How many files the logbook speaks of that are not here: a phone still has to send them, or they are lost."""
    here = {blob.sha256 for blob in blobs().every(logbook_id)}
    return len(_standing(logbook_id) - here)


def _wanted(logbook_id: str, superseded_before_ms: int) -> set[str]:
    held = select(HeldEntry.text).where(HeldEntry.logbook_id == logbook_id)
    return _standing(logbook_id, superseded_before_ms) | {
        digest for text in db.session.scalars(held) for digest in DIGEST.findall(text)
    }


def _standing(logbook_id: str, since_ms: int | None = None) -> set[str]:
    """Digests of entries that stand, or were superseded after `since_ms`."""
    rows = list(_rows(logbook_id))
    gone_ms: dict[str, int] = {}
    for _, supersedes, _, received_at_ms in rows:
        for each in json.loads(supersedes):
            gone_ms[each] = max(received_at_ms, gone_ms.get(each, 0))
    return {
        json.loads(body)["media_sha256"]
        for entry_id, _, body, _ in rows
        if body and (entry_id not in gone_ms or (since_ms is not None and gone_ms[entry_id] >= since_ms))
    }


def _rows(logbook_id: str) -> Iterator:
    return db.session.execute(
        select(Entry.id, Entry.supersedes, Entry.body, Entry.received_at_ms).where(
            Entry.logbook_id == logbook_id, Entry.kind.in_(KINDS)
        )
    )
