"""After an upgrade: numbers the entries that could not be read before. Run once at start."""

import json
from dataclasses import dataclass

from sqlalchemy import select

from fieldtally.store.answer import Answer
from fieldtally.store.db import db, writing
from fieldtally.store.feed import append
from fieldtally.store.models import HeldEntry
from fieldtally.store.sender import Sender


@dataclass(frozen=True)
class Replayed:
    """How many held entries of how many logbooks were numbered, and how many stay held or were refused."""

    numbered: int
    still_held: int
    refused: int


def replay_held() -> Replayed:
    """Try every held entry again, in the order it came. A refused one stays, with the reason beside it."""
    waiting = db.session.scalars(
        select(HeldEntry).order_by(HeldEntry.logbook_id, HeldEntry.received_at_ms, HeldEntry.id)
    ).all()
    results = [_replay(entry).result for entry in waiting]
    return Replayed(
        results.count("accepted") + results.count("already"), results.count("held"), results.count("refused")
    )


def _replay(entry: HeldEntry) -> Answer:
    sender = Sender(entry.author, entry.role, entry.device, entry.skew_ms, entry.received_at_ms)
    answer = append(entry.logbook_id, sender, [json.loads(entry.text)]).answers[0]
    if answer.result == "refused":
        with writing() as session:
            session.merge(entry).refusal = json.dumps(answer.to_json())
    return answer
