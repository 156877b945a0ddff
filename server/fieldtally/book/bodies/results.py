"""The other phases and competition: tests, jumping rounds, events."""

from marshmallow import ValidationError, fields, validates_schema

from fieldtally.book import words
from fieldtally.book.bodies.body import Body, optional, yes_or_no
from fieldtally.book.fields import Choice, CivilDate, Number, RecordId, Text, fail


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
    judged = yes_or_no()
    note = optional(Text, 2000)

    @validates_schema
    def percent_or_marks(self, data, **kwargs):
        if data.get("percent") is None and not data.get("marks"):
            raise ValidationError({"percent": fail("missing", "A test needs its percentage or its marks.",
                                                   "Enter the percentage or at least one mark.").messages})


JUMP_OUTCOMES = ("clear", "knockdown", "refusal", "run_out", "rider_fall", "horse_fall")


class Jump(Body):
    """One presentation at one fence of a round; a fence met again after a stop stands there again."""

    label = Text(12, 1, required=True)
    outcome = Choice(JUMP_OUTCOMES, required=True)


class JumpingRound(Body):
    """A show-jumping course ridden as a whole, at home or in competition.

    `jumps` tell it fence by fence, in order; without any the counts stand alone. With them the counts must be
    what the jumps add up to.
    """

    horse_id = RecordId(required=True)
    outing_id = optional(RecordId)
    date = CivilDate(required=True)
    height_cm = Number(20, 200, "cm", required=True)
    efforts = Number(1, 40, "efforts", whole=True, required=True)
    knockdowns = Number(0, 40, "knockdowns", whole=True, load_default=0)
    refusals = Number(0, 10, "refusals", whole=True, load_default=0)
    combinations = optional(Number, 0, 10, "combinations", whole=True)
    rider_fall = yes_or_no()
    horse_fall = yes_or_no()
    completed = fields.Boolean(load_default=True, truthy={True}, falsy={False})
    time_penalties = optional(Number, 0, 200, "penalties")
    judged = yes_or_no()
    jumps = fields.List(fields.Nested(Jump), load_default=list)
    note = optional(Text, 2000)

    @validates_schema
    def jumps_add_up(self, data, **kwargs):
        jumps = data.get("jumps")
        for name, count in counted(jumps).items() if jumps else ():
            if data.get(name, 0) != count:
                message = f"The jumps add up to {count:d}, not to {data.get(name, 0):d}."
                raise ValidationError({name: fail("does_not_add_up", message, "Count the jumps again.").messages})


def counted(jumps: list[dict]) -> dict[str, int | bool]:
    """What the jumps of a round add up to: the counts that must agree with them."""
    outcomes = [jump["outcome"] for jump in jumps]
    return {
        "knockdowns": outcomes.count("knockdown"),
        "refusals": outcomes.count("refusal") + outcomes.count("run_out"),
        "rider_fall": "rider_fall" in outcomes,
        "horse_fall": "horse_fall" in outcomes,
    }


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
    dangerous_riding = yes_or_no()
    frangible_or_flag = Number(0, 5, "times", whole=True, load_default=0)
    rider_fall = yes_or_no()
    horse_fall = yes_or_no()
    place = optional(Number, 1, 500, "place", whole=True)
    starters = optional(Number, 1, 500, "starters", whole=True)
    note = optional(Text, 2000)
