"""What was ridden: the outing and all that is recorded in it."""

from marshmallow import fields

from fieldtally.book import words
from fieldtally.book.bodies.body import Body, centimetres, optional, yes_no_or_unsaid, yes_or_no
from fieldtally.book.fields import Choice, CivilDate, Number, RecordId, Text


class Outing(Body):
    """`accompanied`: somebody else was there, which going cross-country should never be without; null where
    nobody said."""

    horse_id = RecordId(required=True)
    field_id = optional(RecordId)
    date = CivilDate(required=True)
    activity = Choice(words.ACTIVITIES, required=True)
    going = optional(Choice, words.GOING)
    rider_confidence = optional(Number, 1, 5, "of 5", whole=True)
    minutes_in_saddle = optional(Number, 1, 1440, "minutes", whole=True)
    from_memory = yes_or_no()
    closed = yes_or_no()
    accompanied = yes_no_or_unsaid()
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
    used), or the run was restored after the page was gone. `countdown_s`: the time runs from the zero of a
    countdown and not from a tap. `set_id`: the first canter of the set that this one repeats. `flags_m`: the
    track's flags as they stood that day.
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
    countdown_s = optional(Number, 1, 60, "s", whole=True)
    set_id = optional(RecordId)
    flags_m = fields.List(Number(0, 10_000, "m"), load_default=list)
    over_fences = yes_or_no()
    note = optional(Text, 2000)


class RecoveryCheck(Body):
    minute = Number(0, 240, "minutes", required=True)
    heart_rate_bpm = optional(Number, 15, 260, "beats per minute")
    respiration_bpm = optional(Number, 4, 200, "breaths per minute")


class WorkInterval(Body):
    """One canter and the walk after it. `speed_mpm` is the speed set out for it, not a measured one."""

    work_s = Number(5, 7200, "s", required=True)
    rest_s = Number(0, 7200, "s", required=True)
    speed_mpm = optional(Number, 50, 1000, "m/min")


class IntervalSet(Body):
    """Canters with walks between. `from_memory`: written down afterwards, not timed."""

    outing_id = RecordId(required=True)
    intervals = fields.List(fields.Nested(WorkInterval), required=True)
    recoveries = fields.List(fields.Nested(RecoveryCheck), load_default=list)
    from_memory = yes_or_no()
    note = optional(Text, 2000)
