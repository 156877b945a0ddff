"""Which horses' standings a change of the logbook can touch."""

from collections.abc import Iterable, Mapping

from fieldtally.book.entry import Entry
from fieldtally.book.kinds import KINDS

# What these say counts for every horse that meets it, and which those are is not worth finding out; an outing
# and an event result count for the rider on any horse: hours, horses ridden, entry rules.
FOR_ALL = {"fence", "track", "rulebook_value", "bar_change", "outing", "event_result"}


def touched_horses(
    changed: Iterable[Entry], history: Mapping[str, list[Entry]]
) -> set[str] | None:
    """The ids of the horses that the changed entries speak of, or spoke of before; None means all.

    `history` holds all entries of each record. An attempt moved from one horse's outing to another's
    touches both.
    """
    horses: set[str] = set()
    for record_id, kind in {(entry.record_id, entry.kind) for entry in changed if KINDS[entry.kind].evidence}:
        if kind in FOR_ALL:
            return None
        horses |= {record_id} if kind == "horse" else _spoken_of(history.get(record_id, ()), history)
    return horses


def _spoken_of(entries: Iterable[Entry], history: Mapping[str, list[Entry]]) -> set[str]:
    bodies = [entry.body for entry in entries if entry.body is not None]
    horses = {body["horse_id"] for body in bodies if body.get("horse_id")}
    for outing_id in {body["outing_id"] for body in bodies if body.get("outing_id")} - horses:
        horses |= _horses_of_outing(history.get(outing_id, ()))
    return horses


def _horses_of_outing(entries: Iterable[Entry]) -> set[str]:
    return {entry.body["horse_id"] for entry in entries if entry.kind == "outing" and entry.body is not None}
