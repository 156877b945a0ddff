"""The kinds of entry: one schema per kind, the only description of a body.

The TypeScript types of the client are generated from these schemas (`python -m
fieldtally.book.typescript`) and the wire's documentation reads them. A schema refuses keys it does not
know; a newer phone that adds a key raises the kind's version, and an entry of an unknown version is held
untouched until this server is upgraded.

To add a kind: write its schema, add it to KINDS, run the generator, document it in docs/protocol.md.
"""

from dataclasses import dataclass

from marshmallow import RAISE, Schema, ValidationError, fields, validates_schema

from fieldtally.book import words
from fieldtally.book.fields import Choice, CivilDate, Number, RecordId, Text, fail


class Body(Schema):
    class Meta:
        unknown = RAISE

    error_messages = {"unknown": {"code": "unknown_field", "message": "This field is not known here.",
                                  "fix": "Remove it, or raise the kind's version."}}  # fmt: skip


def optional(field_class, *args, **kwargs):
    """A field that may be absent or null; both mean "not stated"."""
    return field_class(*args, allow_none=True, load_default=None, **kwargs)


def centimetres(most: float, least: float = 1):
    return optional(Number, least, most, "cm")


class Horse(Body):
    name = Text(80, 1, required=True)
    birth_year = optional(Number, 1990, 2199, "year", whole=True)
    rulebook_id = optional(Text, 60)
    present_level_id = optional(Text, 60)
    resting_heart_rate_bpm = optional(Number, 15, 80, "beats per minute")
    resting_respiration_bpm = optional(Number, 4, 60, "breaths per minute")
    notes = optional(Text, 4000)


class Field(Body):
    name = Text(120, 1, required=True)
    notes = optional(Text, 4000)


class Dimensions(Body):
    """What was measured of one obstacle, in cm. Null means not measured, never zero.

    The three spreads are three measurements: at the highest point, at the base, and of a fence without
    height (a ditch or water).
    """

    height_cm = centimetres(250)
    brush_height_cm = centimetres(300)
    spread_top_cm = centimetres(600)
    spread_base_cm = centimetres(800)
    spread_without_height_cm = centimetres(900)
    drop_cm = centimetres(400)
    water_depth_cm = centimetres(150)
    face_width_cm = centimetres(3000)


class Element(Dimensions):
    letter = Choice(tuple("ABCDEF"), required=True)
    profile = Choice(words.PROFILES, required=True)
    asks = fields.List(Choice(words.ASKS), load_default=list)
    distance_to_next_m = optional(Number, 0.5, 60, "m")


class Fence(Dimensions):
    """One obstacle. `field_id` null: made up on the spot, outside any kept field."""

    field_id = optional(RecordId)
    label = Text(60, 1, required=True)
    profile = Choice(words.PROFILES, required=True)
    asks = fields.List(Choice(words.ASKS), load_default=list)
    elements = fields.List(fields.Nested(Element), load_default=list)
    order = optional(Number, 0, 10_000, "place in the list")
    favourite = fields.Boolean(load_default=False, truthy={True}, falsy={False})
    latitude = optional(Number, -90, 90, "degrees")
    longitude = optional(Number, -180, 180, "degrees")
    position_accuracy_m = optional(Number, 0, 100_000, "m")
    notes = optional(Text, 4000)


class Track(Body):
    """A measured canter stretch between two flags. `distance_u_m` is its standard uncertainty in m."""

    field_id = optional(RecordId)
    name = Text(120, 1, required=True)
    distance_m = Number(10, 10_000, "m", required=True)
    measured_by = Choice(words.MEASURED_BY, required=True)
    distance_u_m = optional(Number, 0, 1000, "m")
    notes = optional(Text, 4000)


class Outing(Body):
    horse_id = RecordId(required=True)
    field_id = optional(RecordId)
    date = CivilDate(required=True)
    activity = Choice(words.ACTIVITIES, required=True)
    going = optional(Choice, words.GOING)
    rider_confidence = optional(Number, 1, 5, "of 5", whole=True)
    minutes_in_saddle = optional(Number, 1, 1440, "minutes", whole=True)
    from_memory = fields.Boolean(load_default=False, truthy={True}, falsy={False})
    closed = fields.Boolean(load_default=False, truthy={True}, falsy={False})
    notes = optional(Text, 4000)


class Presentation(Body):
    """How the fence was met; null where nobody said."""

    rein = optional(Choice, words.REINS)
    ground = optional(Choice, words.GROUNDS)
    way = optional(Choice, words.WAYS)
    landing = optional(Choice, words.LANDINGS)
    company = optional(Choice, words.COMPANIES)
    pace = optional(Choice, words.PACES)


class Attempt(Body):
    """One presentation of the pair at one fence or element.

    `sequence_id` is shared by the elements of a combination met in one presentation. `height_cm` states
    the height jumped where it differs from the fence's own (show jumps go up and down).
    """

    outing_id = RecordId(required=True)
    fence_id = RecordId(required=True)
    element = optional(Choice, tuple("ABCDEF"))
    sequence_id = optional(RecordId)
    outcome = Choice(words.OUTCOMES, required=True)
    presentation = fields.Nested(Presentation, load_default=lambda: Presentation().load({}))
    attitude = optional(Choice, words.ATTITUDES)
    height_cm = centimetres(250)
    canter_id = optional(RecordId)
    canter_offset_ms = optional(Number, 0, 7_200_000, "ms", whole=True)
    note = optional(Text, 2000)


class TimedCanter(Body):
    """Stopwatch over a measured distance. The distance is copied from the track as it was that day.

    `elapsed_ms` is the result; `monotonic_ms` and `wall_ms` are the two raw readings and `clock` says how
    they compared: they agree, the phone slept (wall time used), the wall clock was changed (monotonic
    used), or the run was restored after the page was gone.
    """

    outing_id = RecordId(required=True)
    track_id = optional(RecordId)
    distance_m = Number(10, 10_000, "m", required=True)
    distance_u_m = optional(Number, 0, 1000, "m")
    measured_by = Choice(words.MEASURED_BY, required=True)
    elapsed_ms = Number(500, 7_200_000, "ms", whole=True, required=True)
    monotonic_ms = optional(Number, 0, 604_800_000, "ms", whole=True)
    wall_ms = optional(Number, -604_800_000, 604_800_000, "ms", whole=True)
    clock = Choice(words.CLOCKS, load_default="agree")
    splits_ms = fields.List(Number(0, 7_200_000, "ms", whole=True), load_default=list)
    target_speed_mpm = optional(Number, 50, 1000, "m/min")
    level_id = optional(Text, 60)
    start = Choice(words.STARTS, load_default="flying")
    over_fences = fields.Boolean(load_default=False, truthy={True}, falsy={False})
    note = optional(Text, 2000)


class RecoveryCheck(Body):
    minute = Number(0, 240, "minutes", required=True)
    heart_rate_bpm = optional(Number, 15, 260, "beats per minute")
    respiration_bpm = optional(Number, 4, 200, "breaths per minute")


class WorkInterval(Body):
    work_s = Number(5, 7200, "s", required=True)
    rest_s = Number(0, 7200, "s", required=True)
    speed_mpm = optional(Number, 50, 1000, "m/min")


class IntervalSet(Body):
    outing_id = RecordId(required=True)
    intervals = fields.List(fields.Nested(WorkInterval), required=True)
    recoveries = fields.List(fields.Nested(RecoveryCheck), load_default=list)
    note = optional(Text, 2000)


class Mark(Body):
    movement = Text(120, 1, required=True)
    mark = Number(0, 10, "marks", required=True)
    coefficient = Number(1, 5, "times", load_default=1)


class FlatworkTest(Body):
    """A ridden test: marks with coefficients, or the percentage alone when only that is known."""

    horse_id = RecordId(required=True)
    outing_id = optional(RecordId)
    date = CivilDate(required=True)
    test = Text(160, 1, required=True)
    rulebook_id = optional(Text, 60)
    level_id = optional(Text, 60)
    percent = optional(Number, 0, 100, "%")
    marks = fields.List(fields.Nested(Mark), load_default=list)
    errors = Number(0, 3, "errors", whole=True, load_default=0)
    judged = fields.Boolean(load_default=False, truthy={True}, falsy={False})
    note = optional(Text, 2000)

    @validates_schema
    def percent_or_marks(self, data, **kwargs):
        if data.get("percent") is None and not data.get("marks"):
            raise ValidationError({"percent": fail("missing", "A test needs its percentage or its marks.",
                                                   "Enter the percentage or at least one mark.").messages})


class JumpingRound(Body):
    """A show-jumping course ridden as a whole, at home or in competition."""

    horse_id = RecordId(required=True)
    outing_id = optional(RecordId)
    date = CivilDate(required=True)
    height_cm = Number(20, 200, "cm", required=True)
    efforts = Number(1, 40, "efforts", whole=True, required=True)
    knockdowns = Number(0, 40, "knockdowns", whole=True, load_default=0)
    refusals = Number(0, 10, "refusals", whole=True, load_default=0)
    combinations = optional(Number, 0, 10, "combinations", whole=True)
    rider_fall = fields.Boolean(load_default=False, truthy={True}, falsy={False})
    horse_fall = fields.Boolean(load_default=False, truthy={True}, falsy={False})
    completed = fields.Boolean(load_default=True, truthy={True}, falsy={False})
    time_penalties = optional(Number, 0, 200, "penalties")
    judged = fields.Boolean(load_default=False, truthy={True}, falsy={False})
    note = optional(Text, 2000)


class EventResult(Body):
    horse_id = RecordId(required=True)
    outing_id = optional(RecordId)
    date = CivilDate(required=True)
    event = Text(160, 1, required=True)
    rulebook_id = optional(Text, 60)
    level_id = Text(60, 1, required=True)
    status = Choice(words.EVENT_STATUSES, required=True)
    dressage_penalties = optional(Number, 0, 100, "penalties")
    show_jumping_jump_penalties = optional(Number, 0, 200, "penalties")
    show_jumping_time_penalties = optional(Number, 0, 200, "penalties")
    cross_country_jump_penalties = optional(Number, 0, 400, "penalties")
    cross_country_time_penalties = optional(Number, 0, 400, "penalties")
    cross_country_seconds_over = optional(Number, -600, 1200, "s", whole=True)
    dangerous_riding = fields.Boolean(load_default=False, truthy={True}, falsy={False})
    frangible_or_flag = Number(0, 5, "times", whole=True, load_default=0)
    rider_fall = fields.Boolean(load_default=False, truthy={True}, falsy={False})
    horse_fall = fields.Boolean(load_default=False, truthy={True}, falsy={False})
    place = optional(Number, 1, 500, "place", whole=True)
    starters = optional(Number, 1, 500, "starters", whole=True)
    note = optional(Text, 2000)


class Note(Body):
    """The rider's or scribe's own words about any record."""

    about_id = RecordId(required=True)
    text = Text(4000, 1, required=True)


class Remark(Body):
    """A coach's comment on any record."""

    about_id = RecordId(required=True)
    text = Text(4000, 1, required=True)


class Word(Body):
    """A coach's decision on a level for one horse, with the reason and the day it lapses."""

    horse_id = RecordId(required=True)
    rulebook_id = Text(60, 1, required=True)
    level_id = Text(60, 1, required=True)
    decision = Choice(words.DECISIONS, required=True)
    reason = Text(2000, 1, required=True)
    expires_on = optional(CivilDate)


class RulebookValue(Body):
    """One value of a rulebook corrected from the rulebook in somebody's hand. `value` null: not stated.

    `phase`: the phase it belongs to, or who may enter, or what makes a result a qualifying one.
    """

    rulebook_id = Text(60, 1, required=True)
    level_id = Text(60, 1, required=True)
    phase = Choice(words.RULEBOOK_PARTS, required=True)
    quantity = Text(80, 1, required=True)
    value = optional(Number, -1_000_000, 1_000_000, "in the quantity's unit")
    edition = Text(120, 1, required=True)
    article = Text(120, 1, required=True)


class BarChange(Body):
    """One number of the bar changed for this logbook: which requirement, which number, and why.

    `value` null puts the default back; `quantity` "dropped" with value 1 leaves the requirement out.
    """

    rulebook_id = Text(60, 1, required=True)
    level_id = Text(60, 1, required=True)
    requirement_id = Text(120, 1, required=True)
    quantity = Text(80, 1, required=True)
    value = optional(Number, -1_000_000, 1_000_000, "in the quantity's unit")
    reason = Text(2000, 1, required=True)


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
        Kind("fence", Fence, True, ALL_HANDS),
        Kind("track", Track, True, ALL_HANDS),
        Kind("outing", Outing, True, ALL_HANDS),
        Kind("attempt", Attempt, True, ALL_HANDS),
        Kind("timed_canter", TimedCanter, True, ALL_HANDS),
        Kind("interval_set", IntervalSet, True, ALL_HANDS),
        Kind("flatwork_test", FlatworkTest, True, ALL_HANDS),
        Kind("jumping_round", JumpingRound, True, ALL_HANDS),
        Kind("event_result", EventResult, True, ALL_HANDS),
        Kind("note", Note, False, ALL_HANDS),
        Kind("remark", Remark, False, COACH),
        Kind("word", Word, True, COACH),
        Kind("rulebook_value", RulebookValue, True, ("rider", "coach")),
        Kind("bar_change", BarChange, True, COACH),
    )
}
