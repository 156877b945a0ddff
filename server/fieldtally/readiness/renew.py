"""A push works out what it touches: the standings of one horse from those before it and what has changed.

A finding is kept where nothing that it reads has changed (reads.py). Of the questions at fences only those are
counted again that a changed attempt asks; the others of a level are judged again, without counting, where what
the level's questions add up to has moved, because each is judged in the light of the others. When an outing or a
fence comes, goes or is edited, the records that refer to it count as changed. The result is the one that working
out everything gives: a property test holds the two against each other.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from fieldtally.book.fold import Record
from fieldtally.readiness.attempts import Attempts
from fieldtally.readiness.bar import Bars
from fieldtally.readiness.book_of_horse import Sorted, book_with, sort_records
from fieldtally.readiness.context import Book, Weighing
from fieldtally.readiness.count import weighing_of
from fieldtally.readiness.fence_asks import ASK_BIT, asks_of, element_of
from fieldtally.readiness.finding import Finding
from fieldtally.readiness.forecast import forecast
from fieldtally.readiness.index_attempts import index_attempts, index_more
from fieldtally.readiness.reads import FOR_ALL, FORECAST, READ_BY, READS
from fieldtally.readiness.standing import PRESENT_LEVEL, Standing, beside_present_level
from fieldtally.readiness.weighing import weigh


@dataclass(frozen=True)
class Change:
    """One record before and after; None where it was not there yet, or is there no more."""

    before: Record | None
    after: Record | None

    @property
    def kind(self) -> str:
        return (self.after or self.before).kind

    @property
    def record_id(self) -> str:
        return (self.after or self.before).record_id

    @property
    def bodies(self) -> list[dict]:
        return [each.body for each in (self.before, self.after) if each is not None and each.body is not None]


def can_renew(standings: Sequence[Standing], changes: Sequence[Change]) -> bool:
    return bool(standings) and not any(
        change.kind in FOR_ALL or change.record_id == standings[0].weighing.book.horse_id for change in changes
    )


def renew(
    standings: Sequence[Standing], records: Mapping, changes: Sequence[Change], bars: Bars, logbook_number: int
) -> list[Standing]:
    """`standings` are all of one horse's, `records` the logbook's living records now, `changes` how they differ
    from those the standings came from: see `can_renew`. Day, rulebook and bars are the standings' own."""
    kept, before = sort_records(records), standings[0].weighing.book
    changes = [*changes, *referring(changes, kept)]
    book = book_after(before, kept, changes)
    asked = asks_changed(changes, before.fences) | asks_changed(changes, book.fences)
    kinds = frozenset(change.kind for change in changes)
    return beside_present_level(renewed(each, book, kinds, asked, bars, logbook_number) for each in standings)


def referring(changes: Sequence[Change], kept: Sorted) -> list[Change]:
    """The records that are read by an outing or a fence among the changes, as changed, though their bodies are as
    they were. A record may have come before the outing that it refers to."""
    read_by = {change.record_id for change in changes if others_read_it(change)}
    if not read_by:
        return []
    known = {change.record_id for change in changes}
    return [
        Change(record, record)
        for records in kept.by_kind.values()
        for record in records
        if (record.body.get("outing_id") in read_by or record.body.get("fence_id") in read_by)
        and record.record_id not in known
    ]


def others_read_it(change: Change) -> bool:
    """Whether records that refer to it are read otherwise now."""
    if change.kind not in READ_BY or len(change.bodies) < 2:
        return change.kind in READ_BY
    before, after = change.bodies
    return any(before[name] != after[name] for name in READ_BY[change.kind] or after)


def book_after(book: Book, kept: Sorted, changes: Sequence[Change]) -> Book:
    return book_with(attempts_after(book, kept, changes), kept, book.horse_id, book.as_of)


def attempts_after(book: Book, kept: Sorted, changes: Sequence[Change]) -> Attempts:
    """Read on where attempts were only added, read anew where one was changed or taken back."""
    changed = [change for change in changes if change.kind == "attempt"]
    place = kept.of("outing"), kept.of("fence"), book.horse_id, book.as_of
    if not changed:
        return book.attempts
    if all(change.before is None and change.after.body is not None for change in changed):
        return index_more(book.attempts.met, [change.after for change in changed], *place)
    return index_attempts(kept.all("attempt"), *place)


def asks_changed(changes: Sequence[Change], fences: Mapping[str, Record]) -> int:
    """Bits of everything that the changed attempts ask, alone or as part of a combination."""
    bits = 0
    for change in changes:
        for body in change.bodies if change.kind == "attempt" else ():
            fence = fences.get(body["fence_id"])
            if fence is not None:
                bits |= asks_of(element_of(fence.body, body["element"]))
                bits |= OF_WHOLE if fence.body["elements"] else 0
    return bits


OF_WHOLE = ASK_BIT["combination"] | ASK_BIT["bounce"]


def renewed(
    standing: Standing, book: Book, kinds: frozenset[str], asked: int, bars: Bars, logbook_number: int
) -> Standing:
    before = standing.weighing
    requirements = [each.requirement for each in standing.findings]
    still = {
        each.id: before.counted[each.id]
        for each in requirements
        if each.condition and not ASK_BIT[each.condition.ask] & asked
    }
    weighing = weighing_of(book, before.rulebook, before.level, requirements, still)
    findings = tuple(
        each if holds(each, before, weighing, kinds) else weigh(each.requirement, weighing)
        for each in standing.findings
    )
    chances = forecast(findings, weighing, bars) if kinds & FORECAST else alone(standing.forecast)
    return Standing(logbook_number, weighing, standing.level_order, findings, chances)


def holds(finding: Finding, before: Weighing, now: Weighing, kinds: frozenset[str]) -> bool:
    """Whether nothing that the finding was made from has changed."""
    requirement = finding.requirement
    if not READS[requirement.weigh] & kinds:
        return True
    same_count = requirement.condition and now.counted[requirement.id] is before.counted[requirement.id]
    return bool(same_count) and now.pool == before.pool


def alone(forecast: dict) -> dict:
    """Without what was put beside it from another level."""
    return {key: value for key, value in forecast.items() if key != PRESENT_LEVEL}
