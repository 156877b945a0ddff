"""Sorts a logbook's records into one horse's book."""

from collections import defaultdict
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from datetime import date

from fieldtally.readiness.attempts import Attempts
from fieldtally.readiness.context import Book, Dated
from fieldtally.readiness.index_attempts import index_attempts

OF_OUTING = ("timed_canter", "interval_set")
OF_RIDER = ("outing", "event_result")
OF_HORSE = ("flatwork_test", "jumping_round", "event_result", "word", "outing")


@dataclass(frozen=True)
class Sorted:
    """A logbook's living records by kind."""

    by_kind: dict[str, list]
    by_id: dict[str, dict] = field(default_factory=dict)

    def all(self, kind: str) -> list:
        return self.by_kind.get(kind, [])

    def of(self, kind: str) -> dict:
        """The same by record id; attempts, which are many, are never asked for so."""
        if kind not in self.by_id:
            self.by_id[kind] = {record.record_id: record for record in self.all(kind)}
        return self.by_id[kind]


def sort_records(records: Mapping) -> Sorted:
    """Leaves out what was taken back."""
    by_kind: dict[str, list] = defaultdict(list)
    for record in records.values():
        if record.body is not None:
            by_kind[record.kind].append(record)
    return Sorted(by_kind)


def book_of_horse(kept: Sorted, horse_id: str, as_of: date) -> Book:
    """Everything dated up to and with `as_of` that concerns the horse, each kind oldest first."""
    attempts = index_attempts(kept.all("attempt"), kept.of("outing"), kept.of("fence"), horse_id, as_of)
    return book_with(attempts, kept, horse_id, as_of)


def book_with(attempts: Attempts, kept: Sorted, horse_id: str, as_of: date) -> Book:
    outings, fences = kept.of("outing"), kept.of("fence")
    book = Book(horse_id, kept.of("horse")[horse_id].body, as_of, attempts, outings, fences, {}, {})
    for kind in OF_OUTING:
        book.by_kind[kind] = dated(book, (r for r in kept.all(kind) if is_mine(r, outings, horse_id)))
    for kind in OF_HORSE:
        book.by_kind[kind] = dated(book, (r for r in kept.all(kind) if r.body["horse_id"] == horse_id))
    for kind in OF_RIDER:
        book.of_rider[kind] = dated(book, kept.all(kind))
    return book


def is_mine(record, outings: dict, horse_id: str) -> bool:
    outing = outings.get(record.body["outing_id"])
    return outing is not None and outing.body["horse_id"] == horse_id


def dated(book: Book, records: Iterable) -> Dated:
    last = book.as_of.isoformat()
    found = [(book.date_of(each), each.number or 0, each.record_id, each) for each in records]
    found = sorted(each for each in found if each[0] <= last)
    return Dated([each[0] for each in found], [each[3] for each in found])
