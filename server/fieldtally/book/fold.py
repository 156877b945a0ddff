"""What a logbook's entries add up to: one value per record, and the forks somebody has to settle.

The value of a record is what its heads say, the entries nothing supersedes. One head: that. Several: edits
of different fields since their common ancestor merge; edits of the same field, or of fields that state one
fact together, are a fork, as is an edit against a taking back. Statistics then use the edit with the higher
number. The order in which entries arrived plays no part. The client's fold.ts does the same, and both run
fixtures/contract/fold.json.
"""

from collections import defaultdict
from collections.abc import Iterable
from dataclasses import dataclass

from fieldtally.book.ancestry import heads_of, nearest_common, roots_of
from fieldtally.book.entry import Entry
from fieldtally.book.merge import merge
from fieldtally.book.upcast import current, readable

WHOLE = "*"
"""Stands for the whole record in `Fork.fields`: one side took it back, another edited it."""


@dataclass(frozen=True)
class Side:
    """One way to settle a fork: the body the record gets if this side is chosen; None takes it back."""

    entry_id: str
    number: int | None
    author: str | None
    body: dict | None


@dataclass(frozen=True)
class Fork:
    """Edits that exclude each other: the fields they differ in, and the sides, highest number last."""

    fields: tuple[str, ...]
    sides: tuple[Side, ...]


@dataclass(frozen=True, slots=True)
class Record:
    """One record as it stands. `body` is complete and of today's version; None: taken back, or unreadable.

    `local_date` is the day the record was first written down, `number` and `author` are those of its
    newest head, `heads` the ids that the next edit supersedes, in the order of their numbers.
    `unreadable`: a head is of a kind or version that this release does not know. `first` is when the record was
    first written down, ms since 1970 UTC and the entry's id: by it records sort in the order they were made,
    whatever was edited since. Only readiness asks, so the client's record has none.
    """

    record_id: str
    kind: str
    body: dict | None
    local_date: str
    number: int | None
    author: str | None
    heads: tuple[str, ...]
    fork: Fork | None = None
    unreadable: bool = False
    first: tuple[float, str] = (0, "")


def fold(entries: Iterable[Entry]) -> dict[str, Record]:
    """Every record of the entries by its id, those taken back included. See `living` for the rest."""
    groups: dict[str, list[Entry]] = defaultdict(list)
    for entry in entries:
        groups[entry.record_id].append(entry)
    return {record_id: fold_record(group) for record_id, group in groups.items()}


def living(records: dict[str, Record]) -> dict[str, Record]:
    """The records that say something: neither taken back nor unreadable here."""
    return {record_id: record for record_id, record in records.items() if record.body is not None}


def fold_record(entries: list[Entry]) -> Record:
    """One record from all its entries, of which there is at least one, in any order."""
    if len(entries) == 1:
        return _record(entries, entries)
    ordered = sorted(entries, key=order)
    ordered = [entry for entry in ordered if entry.kind == ordered[0].kind]
    return _record(ordered, heads_of(ordered))


def order(entry: Entry) -> tuple[bool, int, str]:
    """Numbered entries by number, then those the server has not numbered yet by id."""
    return (entry.number is None, entry.number or 0, entry.id)


def _record(ordered: list[Entry], heads: list[Entry]) -> Record:
    unreadable = not all(_readable(head) for head in heads)
    body, fork = (None, None) if unreadable else _value(ordered, heads)
    newest, first = heads[-1], roots_of(ordered)[0]
    return Record(
        newest.record_id,
        newest.kind,
        body,
        first.local_date,
        newest.number,
        newest.author,
        tuple(head.id for head in heads),
        fork,
        unreadable,
        (first.recorded_at_ms, first.id),
    )


def _value(ordered: list[Entry], heads: list[Entry]) -> tuple[dict | None, Fork | None]:
    if len(heads) == 1:
        return _body(heads[0]), None
    living_heads = [head for head in heads if head.body is not None]
    if not living_heads:
        return None, None
    body, fields, sides = _merged(ordered, living_heads)
    if len(living_heads) < len(heads):
        gone = [head for head in heads if head.body is None][-1]
        fields = (WHOLE, *fields)
        sides = sides or (_side(living_heads[-1], body),)
        sides = tuple(sorted((*sides, _side(gone, None)), key=lambda side: _place(heads, side)))
    return (body if heads[-1].body is not None else None), (Fork(fields, sides) if sides else None)


def _merged(ordered: list[Entry], heads: list[Entry]) -> tuple[dict, tuple[str, ...], tuple[Side, ...]]:
    """The merged body, the fields in dispute, and one side per disputed wording."""
    bases = nearest_common(ordered, heads)
    known = all(base.body is not None and _readable(base) for base in bases)
    merged = merge(heads[0].kind, [_body(base) for base in bases] if known else [], [_body(h) for h in heads])
    sides: list[Side] = []
    for place in merged.contenders:
        side = _side(heads[place], merged.side(place))
        sides = [other for other in sides if other.body != side.body] + [side]
    return merged.body, merged.disputed, tuple(sides)


def _side(head: Entry, body: dict | None) -> Side:
    return Side(head.id, head.number, head.author, body)


def _place(heads: list[Entry], side: Side) -> int:
    return next(place for place, head in enumerate(heads) if head.id == side.entry_id)


def _readable(entry: Entry) -> bool:
    return entry.body is None or readable(entry.kind, entry.kind_version)


def _body(entry: Entry) -> dict | None:
    return None if entry.body is None else current(entry.kind, entry.kind_version, entry.body)
