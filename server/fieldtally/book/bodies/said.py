"""What was said and decided: notes, remarks, the coach's word, changes of bar and rulebook."""

from fieldtally.book import words
from fieldtally.book.bodies.body import Body, optional
from fieldtally.book.fields import Choice, CivilDate, Number, RecordId, Text


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
