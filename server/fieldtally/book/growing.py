"""A logbook folded once and then entry by entry: a push folds the records it speaks of, not all of them."""

from collections.abc import Iterable
from dataclasses import dataclass, field

from fieldtally.book.entry import Entry
from fieldtally.book.fold import Record, fold_record


@dataclass
class Growing:
    """Entries by record, and the records they fold to: what `fold` makes of all the entries taken so far.

    The entries must come by number, as the feed gives them. `number` is that of the last.
    """

    history: dict[str, list[Entry]] = field(default_factory=dict)
    records: dict[str, Record] = field(default_factory=dict)
    entries: list[Entry] = field(default_factory=list)

    @property
    def number(self) -> int:
        return self.entries[-1].number if self.entries else 0

    def take(self, entries: Iterable[Entry]) -> dict[str, Record | None]:
        """Adds the entries. Returns each record that they speak of as it was before, by its id; None where
        there was none."""
        before: dict[str, Record | None] = {}
        for entry in entries:
            self.history.setdefault(entry.record_id, []).append(entry)
            self.entries.append(entry)
            before.setdefault(entry.record_id, self.records.get(entry.record_id))
        for record_id in before:
            self.records[record_id] = fold_record(self.history[record_id])
        return before

    def since(self, number: int) -> list[Entry]:
        """The entries numbered above `number`."""
        place = len(self.entries)
        while place and self.entries[place - 1].number > number:
            place -= 1
        return self.entries[place:]
