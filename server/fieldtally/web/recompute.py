"""Standings of a logbook: taken from what is kept where that still holds, computed anew where it does not.

Also used outside of requests (the command line), inside an app's context.
"""

from dataclasses import dataclass
from datetime import UTC, date, datetime, timedelta
from functools import cache
from hashlib import sha256
from pathlib import Path

from flask import current_app

from fieldtally.book.fold import Record
from fieldtally.book.touched import touched_horses
from fieldtally.readiness.bar import shipped_bars
from fieldtally.readiness.plan import with_plans
from fieldtally.readiness.renew import can_renew, renew
from fieldtally.readiness.standing import compute_standings
from fieldtally.store import feed, standings
from fieldtally.store.db import db
from fieldtally.store.standings import Basis
from fieldtally.trade.rulebook import Rulebook, with_corrections
from fieldtally.web.known_rulebooks import added, known_rulebooks
from fieldtally.web.opened import MOST_RENEWALS, Opened, OpenLogbooks, Remembered
from fieldtally.web.version import VERSION

OPEN = "fieldtally_open_logbooks"
PACKAGE = Path(__file__).parents[1]


@dataclass(frozen=True)
class Standings:
    """Standings as JSON, by horse. They hold for the logbook up to `logbook_number`, its newest entry."""

    log_id: str
    logbook_number: int
    as_of: str
    horses: dict[str, list[dict]]


def standings_today(logbook_id: str) -> Standings:
    """The standings of all horses on the rider's own today, worked out by whoever asks first on a new day."""
    found = kept_today(logbook_id)
    if found is None:
        with logbooks().turn(logbook_id):
            db.session.commit()  # reads afresh: another thread may have kept them while this one waited
            found = kept_today(logbook_id) or renewed_today(logbook_id)
    return found


def where_today(logbook_id: str) -> tuple[str, int, str]:
    """Log id, number and day that the standings of today are of."""
    book = feed.head(logbook_id)
    return book.log_id, book.last_number, today_in(book).isoformat()


def kept_today(logbook_id: str) -> Standings | None:
    book = feed.head(logbook_id)
    basis = Basis(today_in(book).isoformat(), book.evidence_number, bar_digest())
    horses = standings.kept(logbook_id, basis)
    return None if horses is None else Standings(book.log_id, book.last_number, basis.as_of, horses)


def renewed_today(logbook_id: str) -> Standings:
    book = feed.head(logbook_id)
    horses = refresh(logbook_id, everything=True)
    return Standings(book.log_id, book.last_number, today_in(book).isoformat(), horses)


def standings_on(logbook_id: str, horse_id: str, as_of: date) -> Standings | None:
    """One horse's standings on any day, from what is dated up to it; None if there is no such horse."""
    book = feed.head(logbook_id)
    records = records_now(logbook_id, book)
    if horse_id not in horses_in(records):
        return None
    horses = {horse_id: compute(records, as_of, book.last_number, horse_id)}
    return Standings(book.log_id, book.last_number, as_of.isoformat(), horses)


def records_now(logbook_id: str, head: feed.Head) -> dict[str, Record]:
    """The living records of a logbook up to its head."""
    return logbooks().records(logbook_id, head)


def refresh(logbook_id: str, everything: bool = False) -> dict[str, list[dict]]:
    """Compute what no longer holds, or `everything`, and keep it; returns what was computed, by horse."""
    with logbooks().turn(logbook_id):
        db.session.commit()  # reads afresh after waiting
        head = feed.head(logbook_id)
        basis = Basis(today_in(head).isoformat(), head.last_number, bar_digest())
        since = None if everything else standings.holding_up_to(logbook_id, basis)
        opened = logbooks().take_out(logbook_id, head)
        horses, since = computed_since(opened, basis, since)
        standings.keep(logbook_id, basis, horses, since)
        logbooks().bring_back(logbook_id, opened)
    return {horse_id: found for horse_id, found in horses.items() if found is not None}


def logbooks() -> OpenLogbooks:
    return current_app.extensions.setdefault(OPEN, OpenLogbooks())


def computed_since(opened: Opened, basis: Basis, since: int | None) -> tuple[dict[str, list[dict] | None], int | None]:
    """The standings of the horses touched after the number `since`, and that number; of all, and None, where that is
    None or what touches all has come."""
    today = date.fromisoformat(basis.as_of)
    opened.on((today, basis.bar_digest))
    touched = None if since is None else touched_horses(opened.book.since(since), opened.book.history)
    if touched is None:
        touched, since = horses_in(opened.book.records), None
    return {horse_id: computed(opened, horse_id, today) for horse_id in sorted(touched)}, since


def horses_in(records: dict[str, Record]) -> set[str]:
    return {each.record_id for each in records.values() if each.kind == "horse" and each.body is not None}


def computed(opened: Opened, horse_id: str, today: date) -> list[dict] | None:
    """One horse's standings as JSON, worked out where they were touched; None for one that was taken back."""
    records, number = opened.book.records, opened.book.number
    horse = records.get(horse_id)
    if horse is None or horse.body is None:
        opened.horses.pop(horse_id, None)
        return None
    found = worked_out(opened.horses.get(horse_id), records, today, number, horse_id)
    opened.horses[horse_id] = found
    return with_plans(found.standings)


def worked_out(
    before: Remembered | None, records: dict[str, Record], today: date, number: int, horse_id: str
) -> Remembered:
    if before is not None and before.renewals < MOST_RENEWALS:
        changes = before.changes(records)
        if can_renew(before.standings, changes):
            standings = renew(before.standings, records, changes, shipped_bars(), number)
            return Remembered(standings, before.renewals + 1)
    return Remembered(compute_standings(records, rulebooks_for(records), shipped_bars(), today, number, horse_id))


def refresh_after_push(logbook_id: str) -> None:
    """Compute what a push has touched. The push is stored already, so a mistake in here must not fail it:
    it goes to the log, and whoever reads the standings finds that they no longer hold."""
    try:
        refresh(logbook_id)
    except Exception:
        current_app.logger.exception("the standings of logbook %s could not be computed", logbook_id)


def compute(records: dict[str, Record], as_of: date, number: int, horse_id: str) -> list[dict]:
    return with_plans(compute_standings(records, rulebooks_for(records), shipped_bars(), as_of, number, horse_id))


def rulebooks_for(records: dict[str, Record]) -> dict[str, Rulebook]:
    """The rulebooks of this server with the logbook's corrections, the newest correction last."""
    corrections = sorted(
        (each for each in records.values() if each.kind == "rulebook_value" and each.body is not None),
        key=lambda record: (record.number or 0, record.record_id),
    )
    bodies = [record.body for record in corrections]
    return {book_id: with_corrections(book, bodies) for book_id, book in known_rulebooks().items()}


def today_in(book: feed.Head) -> date:
    """Today where the rider was last: the day of the newest entry's offset from UTC."""
    return (datetime.now(UTC) + timedelta(minutes=book.utc_offset_min)).date()


def bar_digest() -> str:
    """Changes with anything that a standing is made of: rulebooks, bars, and the code that weighs."""
    return sha256(f"{shipped_digest()} {added()}".encode()).hexdigest()


@cache
def shipped_digest() -> str:
    made_of = [path for folder in ("trade", "readiness", "book") for path in (PACKAGE / folder).rglob("*")]
    digest = sha256(VERSION.encode())
    for path in sorted(path for path in made_of if path.suffix in (".py", ".toml")):
        digest.update(path.read_bytes())
    return digest.hexdigest()
