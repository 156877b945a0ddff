"""The kinds of entry: one schema per kind, the only description of a body.

The TypeScript types of the client are generated from these schemas (`python -m
fieldtally.book.typescript`) and the wire's documentation reads them. A schema refuses keys it does not
know; a newer phone that adds a key raises the kind's version, and an entry of an unknown version is held
untouched until this server is upgraded.

To add a kind: write its schema in book/bodies/, add it to KINDS, run the generator, document it in docs/protocol.md.
"""

from dataclasses import dataclass

from fieldtally.book.bodies.body import Body
from fieldtally.book.bodies.measuring import Calibration
from fieldtally.book.bodies.media import Photo, VoiceNote
from fieldtally.book.bodies.places import Fence, Field, Horse, Track
from fieldtally.book.bodies.results import EventResult, FlatworkTest, JumpingRound
from fieldtally.book.bodies.ridden import Attempt, IntervalSet, Outing, TimedCanter
from fieldtally.book.bodies.said import BarChange, Note, Remark, RulebookValue, Word
from fieldtally.book.bodies.trace import Trace


@dataclass(frozen=True)
class Kind:
    """What the book knows of one kind: its current version, its schema, whether a standing depends on it,
    and which roles may write it."""

    name: str
    schema: type[Body]
    evidence: bool
    writers: tuple[str, ...]
    version: int = 1


RIDER, COACH, ALL_HANDS = ("rider",), ("coach",), ("rider", "scribe", "coach")

KINDS: dict[str, Kind] = {
    kind.name: kind
    for kind in (
        Kind("horse", Horse, True, RIDER),
        Kind("field", Field, False, ALL_HANDS),
        Kind("fence", Fence, True, ALL_HANDS, version=2),
        Kind("track", Track, True, ALL_HANDS, version=2),
        Kind("calibration", Calibration, False, ALL_HANDS),
        Kind("outing", Outing, True, ALL_HANDS, version=2),
        Kind("attempt", Attempt, True, ALL_HANDS),
        Kind("timed_canter", TimedCanter, True, ALL_HANDS, version=2),
        Kind("interval_set", IntervalSet, True, ALL_HANDS, version=2),
        Kind("flatwork_test", FlatworkTest, True, ALL_HANDS),
        Kind("jumping_round", JumpingRound, True, ALL_HANDS, version=2),
        Kind("event_result", EventResult, True, ALL_HANDS),
        Kind("note", Note, False, ALL_HANDS),
        Kind("remark", Remark, False, COACH),
        Kind("word", Word, True, COACH),
        Kind("rulebook_value", RulebookValue, True, ("rider", "coach")),
        Kind("bar_change", BarChange, True, COACH),
        Kind("trace", Trace, False, ALL_HANDS),
        Kind("photo", Photo, False, ALL_HANDS),
        Kind("voice_note", VoiceNote, False, ALL_HANDS),
    )
}
