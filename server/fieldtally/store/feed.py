"""The feed of a logbook: the only code that numbers entries, appends them and hands them out in pages.

Numbers have no gaps and become visible in order, so a reader that has seen N has seen everything up to N.
That holds because the first write of a push takes the logbook's own row, and keeps it until the commit.
"""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from uuid import uuid4

from sqlalchemy import Row, select, update
from sqlalchemy.orm import Session

from fieldtally.book.entry import Entry
from fieldtally.store.answer import Answer
from fieldtally.store.batch import Batch, incoming
from fieldtally.store.db import db, writing
from fieldtally.store.models import Account, Logbook
from fieldtally.store.models import Entry as EntryRow
from fieldtally.store.rows import COLUMNS, from_row, receipt_of, to_wire
from fieldtally.store.sender import Sender

MOST_PER_PAGE = 500
MOST_BYTES_PER_PAGE = 4 * 1024 * 1024


class UnknownLogbook(Exception):
    """There is no such logbook."""


class LogChanged(Exception):
    """The phone speaks of another run of numbers: the server was restored. `log_id` is the one that counts."""

    def __init__(self, log_id: str) -> None:
        super().__init__(log_id)
        self.log_id = log_id


@dataclass(frozen=True)
class Pushed:
    """`answers` in the order of the entries sent; `accepted` are those numbered now, in that order."""

    log_id: str
    last_number: int
    answers: list[Answer]
    accepted: list[Entry]


@dataclass(frozen=True)
class Page:
    """`entries` as they go over the wire, by number; `more`: the logbook had further ones."""

    log_id: str
    last_number: int
    entries: list[dict]
    more: bool


@dataclass(frozen=True)
class Head:
    """Where the logbook stands. `utc_offset_min` is that of its newest entry, 0 while it has none."""

    log_id: str
    last_number: int
    evidence_number: int
    utc_offset_min: int


def append(logbook_id: str, sender: Sender, raws: Iterable[object], log_id: str | None = None) -> Pushed:
    """Check the raw entries, number and store what can be, and answer each. All of it or nothing is kept.

    Sending the same again is always right: what is there is answered `already`. Raises `LogChanged` if
    `log_id` is given and not the logbook's, `UnknownLogbook`; then nothing is stored.
    """
    entries = [incoming(raw) for raw in raws]  # before the lock: checking takes longer than storing
    with writing() as session:
        book = _take(session, logbook_id)
        if log_id not in (None, book.log_id):
            raise LogChanged(book.log_id)
        batch = Batch(session, logbook_id, sender, book)
        answers = batch.answer_all(entries)
        batch.store()
    return Pushed(book.log_id, batch.last_number, answers, batch.accepted)


def _take(session: Session, logbook_id: str) -> Row:
    """Take the logbook's row, changing nothing: others wait here until this transaction ends."""
    book = session.execute(
        update(Logbook)
        .where(Logbook.id == logbook_id)
        .values(last_number=Logbook.last_number)
        .returning(Logbook.log_id, Logbook.last_number, Logbook.evidence_number, Logbook.receipt_key),
        execution_options={"synchronize_session": False},
    ).one_or_none()
    if book is None:
        raise UnknownLogbook(logbook_id)
    return book


def page(logbook_id: str, after: int, limit: int = MOST_PER_PAGE) -> Page:
    """The entries numbered above `after`, at most `limit` and at most 4 MiB of them (but at least one)."""
    book = _book(logbook_id)
    found = db.session.execute(
        COLUMNS.where(
            EntryRow.logbook_id == logbook_id, EntryRow.number > after, EntryRow.number <= book.last_number
        )
        .order_by(EntryRow.number)
        .limit(max(1, min(limit, MOST_PER_PAGE)))
    ).all()
    rows = _fitting(found)
    names = _names(rows)
    entries = [
        to_wire(from_row(row), names.get(row.author, ""), receipt_of(book.receipt_key, logbook_id, row))
        for row in rows
    ]
    return Page(book.log_id, book.last_number, entries, bool(rows) and rows[-1].number < book.last_number)


def head(logbook_id: str) -> Head:
    newest = (EntryRow.logbook_id == Logbook.id) & (EntryRow.number == Logbook.last_number)
    book = db.session.execute(
        select(Logbook.log_id, Logbook.last_number, Logbook.evidence_number, EntryRow.utc_offset_min)
        .outerjoin(EntryRow, newest)
        .where(Logbook.id == logbook_id)
    ).one_or_none()
    if book is None:
        raise UnknownLogbook(logbook_id)
    return Head(book.log_id, book.last_number, book.evidence_number, book.utc_offset_min or 0)


def every_entry(logbook_id: str, upto: int | None = None, after: int = 0) -> Iterator[Entry]:
    """All entries by number, those numbered above `upto`, and those up to `after`, left out."""
    statement = COLUMNS.where(EntryRow.logbook_id == logbook_id, EntryRow.number > after).order_by(EntryRow.number)
    if upto is not None:
        statement = statement.where(EntryRow.number <= upto)
    return (from_row(row) for row in db.session.execute(statement))


def renew_log_ids() -> int:
    """Give every logbook a new log id, as must be done once after restoring a backup: it tells the phones
    to send again what the backup did not have yet. Returns how many logbooks there are."""
    with writing() as session:
        books = session.scalars(select(Logbook)).all()
        for book in books:
            book.log_id = str(uuid4())
    return len(books)


def _book(logbook_id: str) -> Row:
    book = db.session.execute(
        select(Logbook.log_id, Logbook.last_number, Logbook.receipt_key).where(Logbook.id == logbook_id)
    ).one_or_none()
    if book is None:
        raise UnknownLogbook(logbook_id)
    return book


def _fitting(rows: list[Row]) -> list[Row]:
    spent = 0
    for place, row in enumerate(rows):
        spent += len(row.body or "")
        if spent > MOST_BYTES_PER_PAGE and place > 0:
            return rows[:place]
    return rows


def _names(rows: list[Row]) -> dict[str, str]:
    authors = {row.author for row in rows}
    found = db.session.execute(select(Account.id, Account.display_name).where(Account.id.in_(authors)))
    return dict(found.all())
