"""Entries this server cannot read yet: kept as they came, and tried again after an upgrade."""

import json
from dataclasses import dataclass

from sqlalchemy import delete, insert, select
from sqlalchemy.orm import Session

from fieldtally.book.entry import Entry, Held, check, digest
from fieldtally.store.models import HeldEntry
from fieldtally.store.sender import Sender


@dataclass(frozen=True)
class Kept:
    digest: str
    text: str


def digest_of(text: str) -> str:
    return digest(json.loads(text))


def to_row(logbook_id: str, sender: Sender, entry: Held, content_digest: str) -> dict:
    return {
        "logbook_id": logbook_id,
        "id": entry.id,
        "reason": entry.reason,
        "text": entry.text,
        "author": sender.account_id,
        "role": sender.role,
        "device": sender.device,
        "skew_ms": sender.skew_ms,
        "received_at_ms": sender.received_at_ms,
        "content_digest": content_digest,
    }


def kept(session: Session, logbook_id: str, ids: list[str]) -> dict[str, Kept]:
    """Those of the ids that are held, by id."""
    rows = session.execute(
        select(HeldEntry.id, HeldEntry.content_digest, HeldEntry.text).where(
            HeldEntry.logbook_id == logbook_id, HeldEntry.id.in_(ids)
        )
    )
    return {row.id: Kept(row.content_digest, row.text) for row in rows}


def was(kept: Kept, content_digest: str) -> bool:
    """Whether what was held is, now that it can be read, the entry with this content."""
    outcome = check(json.loads(kept.text))
    return isinstance(outcome, Entry) and digest(outcome.content()) == content_digest


def hold(session: Session, rows: list[dict]) -> None:
    if rows:
        session.execute(insert(HeldEntry), rows)


def release(session: Session, logbook_id: str, ids: list[str]) -> None:
    if ids:
        session.execute(delete(HeldEntry).where(HeldEntry.logbook_id == logbook_id, HeldEntry.id.in_(ids)))
