"""The standings as last computed, so that a phone need not wait for them to be computed again.

A horse's row holds until the day changes, the bars or rulebooks do, or evidence comes that touches the
horse. It is never trusted beyond that: whoever reads finds out from the rows alone whether they still hold.
"""

import json
from collections.abc import Mapping
from dataclasses import dataclass

from sqlalchemy import delete, select, update
from sqlalchemy.dialects import postgresql, sqlite
from sqlalchemy.orm import Session

from fieldtally.book.entry import compact
from fieldtally.store.db import db, writing
from fieldtally.store.models import Standing


@dataclass(frozen=True)
class Basis:
    """What standings are computed from: the day, the logbook up to a number, the bars and rulebooks."""

    as_of: str
    number: int
    bar_digest: str


def kept(logbook_id: str, basis: Basis) -> dict[str, list[dict]] | None:
    """Each horse's standings as JSON, if all that is kept holds for this basis; else None.

    `basis.number` is the number of the logbook's newest evidence.
    """
    rows = _rows(logbook_id)
    up_to = _up_to(rows, basis)
    if up_to is None or up_to < basis.number:
        return None
    return {row.horse_id: _numbered(json.loads(row.body), row.checked_number) for row in rows}


def holding_up_to(logbook_id: str, basis: Basis) -> int | None:
    """The entry's number up to which every kept row holds on that day with these bars; None if one does not,
    or if nothing is kept. What came later may touch any horse, also one that has no row yet."""
    return _up_to(_rows(logbook_id), basis)


def keep(
    logbook_id: str, basis: Basis, horses: Mapping[str, list[dict] | None], since: int | None = None
) -> None:
    """Keep the standings of `horses`; None forgets a horse that was taken back.

    With `since`, these are the horses touched after that number, and the others go on holding. Without it
    they are all there are.
    """
    found = {horse_id: standings for horse_id, standings in horses.items() if standings is not None}
    with writing() as session:
        _forget(session, logbook_id, basis, horses.keys() - found.keys() if since is not None else None, found)
        for horse_id, standings in found.items():
            _put(session, logbook_id, horse_id, basis, standings)
        if since is not None:
            _carry_over(session, logbook_id, basis, since, found)


def _rows(logbook_id: str) -> list[Standing]:
    """As they are in the database now, whatever this session has read of them before."""
    rows = select(Standing).where(Standing.logbook_id == logbook_id).execution_options(populate_existing=True)
    return list(db.session.scalars(rows))


def _up_to(rows: list[Standing], basis: Basis) -> int | None:
    if not rows or any((row.as_of, row.bar_digest) != (basis.as_of, basis.bar_digest) for row in rows):
        return None
    return min(row.checked_number for row in rows)


def _numbered(standings: list[dict], number: int) -> list[dict]:
    return [standing | {"logbook_number": number} for standing in standings]


def _put(session: Session, logbook_id: str, horse_id: str, basis: Basis, standings: list[dict]) -> None:
    row = {
        "as_of": basis.as_of,
        "checked_number": basis.number,
        "bar_digest": basis.bar_digest,
        "body": compact(standings),
    }
    dialect = postgresql if session.get_bind().dialect.name == "postgresql" else sqlite
    session.execute(
        dialect.insert(Standing)
        .values(logbook_id=logbook_id, horse_id=horse_id, **row)
        .on_conflict_do_update(
            index_elements=["logbook_id", "horse_id"],
            set_=row,
            where=Standing.checked_number <= basis.number,  # a slower computation of older entries loses
        )
    )


def _forget(session: Session, logbook_id: str, basis: Basis, gone: set[str] | None, but: Mapping) -> None:
    which = Standing.horse_id.not_in(but) if gone is None else Standing.horse_id.in_(gone)
    older = Standing.checked_number <= basis.number
    session.execute(
        delete(Standing).where(Standing.logbook_id == logbook_id, which, older),
        execution_options={"synchronize_session": False},
    )


def _carry_over(session: Session, logbook_id: str, basis: Basis, since: int, but: Mapping) -> None:
    """What holds up to `since` or later holds up to the basis' number: nothing touched it in between."""
    session.execute(
        update(Standing)
        .where(
            Standing.logbook_id == logbook_id,
            Standing.horse_id.not_in(but),
            Standing.checked_number.between(since, basis.number),
        )
        .values(checked_number=basis.number),
        execution_options={"synchronize_session": False},
    )
