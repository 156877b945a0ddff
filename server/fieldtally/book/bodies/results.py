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
    rider_fall = yes_or_no()
    horse_fall = yes_or_no()
    completed = fields.Boolean(load_default=True, truthy={True}, falsy={False})
    time_penalties = optional(Number, 0, 200, "penalties")
    judged = yes_or_no()
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
    dangerous_riding = yes_or_no()
    frangible_or_flag = Number(0, 5, "times", whole=True, load_default=0)
    rider_fall = yes_or_no()
    horse_fall = yes_or_no()
    place = optional(Number, 1, 500, "place", whole=True)
    starters = optional(Number, 1, 500, "starters", whole=True)
    note = optional(Text, 2000)
