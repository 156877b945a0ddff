"""Logbooks kept open in this process, so that a push need not read the whole of it again.

Nothing here is needed for a right answer: entries never change, so what was read of a run of numbers (`log_id`)
stays true, and what is missing, also what another process has taken in, is read on. Whoever works with an open
logbook waits for its turn, takes it out, and brings it back when all went well; after a mistake in between, or in a
process just started, the logbook is read from the start.
"""

from collections import OrderedDict
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from datetime import date
from threading import Lock, RLock

from fieldtally.book.fold import Record, living
from fieldtally.book.growing import Growing
from fieldtally.readiness.renew import Change
from fieldtally.readiness.standing import Standing
from fieldtally.store import feed

MOST_ENTRIES = 60_000  # about 200 MB; the logbook used longest ago is closed first
ENTRIES_OF_STANDINGS = 600  # the standings of one horse, about 2 MB, take as much memory as so many entries
MOST_RENEWALS = 20  # each keeps columns of the one before alive that are still in use: then all anew
TURNS = 64


@dataclass
class Remembered:
    """One horse's standings as last worked out, and the records changed since as they were then."""

    standings: Sequence[Standing]
    renewals: int = 0
    before: dict[str, Record | None] = field(default_factory=dict)

    def changes(self, records: Mapping[str, Record]) -> list[Change]:
        return [Change(before, records.get(record_id)) for record_id, before in self.before.items()]


@dataclass
class Opened:
    log_id: str
    book: Growing = field(default_factory=Growing)
    basis: tuple[date, str] | None = None
    horses: dict[str, Remembered] = field(default_factory=dict)

    @property
    def size(self) -> int:
        """How much memory it takes, in entries."""
        return len(self.book.entries) + ENTRIES_OF_STANDINGS * len(self.horses)

    def read_on(self, logbook_id: str, upto: int) -> None:
        before = self.book.take(feed.every_entry(logbook_id, upto, self.book.number))
        for remembered in self.horses.values():
            remembered.before = before | remembered.before

    def on(self, basis: tuple[date, str]) -> None:
        """Standings of another day or by other bars do not hold."""
        if self.basis != basis:
            self.basis, self.horses = basis, {}


class OpenLogbooks:
    def __init__(self) -> None:
        self.kept: OrderedDict[str, Opened] = OrderedDict()
        self.lock = Lock()
        self.turns = tuple(RLock() for _ in range(TURNS))

    def turn(self, logbook_id: str) -> RLock:
        """Held by the one thread that works with this logbook: those who come meanwhile mostly want the same, and
        find it done. A few logbooks share each, so that there are not ever more of them."""
        return self.turns[hash(logbook_id) % TURNS]

    def records(self, logbook_id: str, head: feed.Head) -> dict[str, Record]:
        """The living records as they stand; the caller's own, whatever is pushed meanwhile."""
        with self.turn(logbook_id):
            opened = self.take_out(logbook_id, head)
            self.bring_back(logbook_id, opened)
            return living(opened.book.records)

    def take_out(self, logbook_id: str, head: feed.Head) -> Opened:
        """The logbook read up to its head."""
        with self.lock:
            opened = self.kept.pop(logbook_id, None)
        if opened is None or opened.log_id != head.log_id or opened.book.number > head.last_number:
            opened = Opened(head.log_id)
        opened.read_on(logbook_id, head.last_number)
        return opened

    def bring_back(self, logbook_id: str, opened: Opened) -> None:
        with self.lock:
            self.kept[logbook_id] = opened
            self.kept.move_to_end(logbook_id)
            while sum(each.size for each in self.kept.values()) > MOST_ENTRIES:
                self.kept.popitem(last=False)
