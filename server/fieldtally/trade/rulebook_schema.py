"""The shape of a rulebook's file. Anything it does not describe is refused, with the key and the reason.

docs/rulebooks.md shows it by example. Each quantity is a table: value, source, and if wanted note, stated.
"""

import math
import re

from marshmallow import RAISE, Schema, ValidationError, fields, validates_schema

from fieldtally.trade import entry_rules, quantities
from fieldtally.trade.asks import ASKS, PRESENTATION
from fieldtally.trade.quantities import Quantity
from fieldtally.trade.stated import GRADES

ABOUT = ("conflict", "design", "distance", "example", "safety", "questions", "local")
MEMORY = "from_memory"  # the one source every file may name without listing it


def fault(reason: str, fix: str) -> ValidationError:
    return ValidationError([{"reason": reason, "fix": fix}])


class Table(Schema):
    class Meta:
        unknown = RAISE

    error_messages = {
        "unknown": {"reason": "this key is not known here.", "fix": "Check its spelling against docs/rulebooks.md."},
        "type": {"reason": "this must be a table.", "fix": "See the example in docs/rulebooks.md."},
    }


REQUIRED = {"required": {"reason": "it is missing.", "fix": "Add it."}}


class Words(fields.Field):
    """Text that is not empty."""

    default_error_messages = REQUIRED

    def _deserialize(self, value, attr, data, **kwargs):
        if not isinstance(value, str) or not value.strip():
            raise fault("this must be text.", "Write it between quotation marks.")
        return value


class Source(Words):
    """The key of one of the file's sources."""

    default_error_messages = {"required": {"reason": "it has no source.", "fix": (
        'Name one of the file\'s [sources], or source = "from_memory" where there is none.')}}  # fmt: skip


class Name(fields.Field):
    """An id: lower-case letters, digits, - and _."""

    default_error_messages = REQUIRED

    def _deserialize(self, value, attr, data, **kwargs):
        if not isinstance(value, str) or not re.fullmatch(r"[a-z0-9][a-z0-9_-]{0,59}", value):
            raise fault(f"{value!r} is not an id.", "Use up to 60 lower-case letters, digits, - and _.")
        return value


class OneOf(fields.Field):
    default_error_messages = REQUIRED

    def __init__(self, words, **kwargs) -> None:
        self.words = tuple(words)
        super().__init__(**kwargs)

    def _deserialize(self, value, attr, data, **kwargs):
        if value not in self.words:
            raise fault(f"{value!r} is not known here.", f"Use one of: {', '.join(self.words)}.")
        return value


class Figure(fields.Field):
    """A finite number from `least` to `most`."""

    default_error_messages = REQUIRED

    def __init__(self, least: float = -math.inf, most: float = math.inf, whole: bool = False, **kwargs) -> None:
        self.least, self.most, self.whole = least, most, whole
        super().__init__(**kwargs)

    def _deserialize(self, value, attr, data, **kwargs):
        if isinstance(value, bool) or not isinstance(value, (int, float)) or not math.isfinite(value):
            raise fault(f"{value!r} is not a number.", "Write a number without quotation marks or unit.")
        if self.whole and value != int(value):
            raise fault(f"{value!r} is not a whole number.", "Write a whole number.")
        if not self.least <= value <= self.most:
            raise fault(f"{value!r} is outside {self.least:g} to {self.most:g}.", "Check the number.")
        return value


class ValueTable(Table):
    value = Figure(required=True)
    source = Source(required=True)
    note = Words()
    stated = fields.List(Words())


class Stated(fields.Nested):
    """One quantity: the number must be one that its unit allows."""

    def __init__(self, quantity: Quantity) -> None:
        self.quantity = quantity
        super().__init__(ValueTable)

    def _deserialize(self, value, attr, data, **kwargs):
        found = super()._deserialize(value, attr, data, **kwargs)
        check_number(self.quantity, found["value"])
        return found


def check_number(quantity: Quantity, value: float) -> None:
    """Raises where `value` cannot be meant in the quantity's unit."""
    if not quantity.least <= value <= quantity.most:
        raise ValidationError({"value": fault(
            f"{value:g} {quantity.unit} cannot be meant; it is outside {quantity.least:g} to {quantity.most:g}.",
            unit_hint(quantity, value)).messages})  # fmt: skip
    if quantity.whole and value != int(value):
        raise ValidationError({"value": fault(f"{value:g} is not a whole number.", "Write a whole number.").messages})


def unit_hint(quantity: Quantity, value: float) -> str:
    for unit, factor in {"cm": {"m": 100, "mm": 0.1}, "m/min": {"m/s": 60, "km/h": 1000 / 60}, "m": {"km": 1000}}.get(
        quantity.unit, {}
    ).items():
        if quantity.least <= value * factor <= quantity.most:
            return f"If it is in {unit}, write {value * factor:g}."
    return f"Write it in {quantity.unit}."


def quantity_table(known: dict[str, Quantity]) -> fields.Nested:
    described = {name: Stated(quantity) for name, quantity in known.items()}
    return fields.Nested(Table.from_dict(described), load_default=dict)


class SourceTable(Table):
    title = Words(required=True)
    grade = OneOf(GRADES, required=True)


class AskTable(Table):
    ask = OneOf(ASKS, required=True)
    text = Words(required=True)
    source = Source(required=True)
    presentation = fields.Nested(
        Table.from_dict({side: OneOf(words) for side, words in PRESENTATION.items()}), load_default=dict
    )


class MovementTable(Table):
    text = Words(required=True)
    source = Source(required=True)
    figure_m = Figure(5, 60)


class NoteTable(Table):
    about = OneOf(ABOUT, required=True)
    text = Words(required=True)
    source = Source(required=True)
    value = Figure()
    unit = Words()


class NeedTable(Table):
    count = Figure(1, 50, whole=True, required=True)
    at = Name(required=True)
    or_higher = fields.Boolean()
    result = OneOf(entry_rules.RESULTS)
    within_days = Figure(1, 3660, whole=True)
    show_jumping_penalties_max = Figure(0, 200)


class Day(fields.Field):
    def _deserialize(self, value, attr, data, **kwargs):
        if not hasattr(value, "isoformat"):
            raise fault(f"{value!r} is not a day.", "Write it as 2025-12-01, without quotation marks.")
        return value.isoformat()


class EntryRuleTable(Table):
    who = OneOf(entry_rules.WHO, required=True)
    text = Words(required=True)
    source = Source(required=True)
    needs = fields.List(fields.Nested(NeedTable))
    options = fields.List(fields.List(fields.Nested(NeedTable)))
    waived_by = fields.Nested(NeedTable)
    in_force_from = Day()
    in_force_to = Day()
    category = Words()

    @validates_schema
    def needs_or_options(self, data, **kwargs):
        if bool(data.get("needs")) == bool(data.get("options")):
            raise fault("it needs either needs or options.", 'Write needs = [{ count = 1, at = "…" }].')


class LevelTable(Table):
    id = Name(required=True)
    name = Words(required=True)
    dressage = quantity_table(quantities.DRESSAGE)
    show_jumping = quantity_table(quantities.SHOW_JUMPING)
    cross_country = quantity_table(quantities.CROSS_COUNTRY)
    entry = quantity_table(quantities.ENTRY)
    qualifying_result = quantity_table(quantities.QUALIFYING_RESULT)
    asks = fields.List(fields.Nested(AskTable), load_default=list)
    movements = fields.List(fields.Nested(MovementTable), load_default=list)
    eligibility = fields.List(fields.Nested(EntryRuleTable), load_default=list)
    notes = fields.List(fields.Nested(NoteTable), load_default=list)


class ScoringTable(Table):
    dressage = quantity_table(quantities.DRESSAGE)
    show_jumping = quantity_table(quantities.SHOW_JUMPING)
    cross_country = quantity_table(quantities.CROSS_COUNTRY)


class RulebookTable(Table):
    id = Name(required=True)
    title = Words(required=True)
    body = Words(required=True)
    edition = Words(required=True)
    status = OneOf(("current", "older"), required=True)
    sources = fields.Dict(keys=Name(), values=fields.Nested(SourceTable), load_default=dict)
    scoring = fields.Nested(ScoringTable, load_default=lambda: {phase: {} for phase in quantities.BY_PHASE})
    qualifying_result = quantity_table(quantities.QUALIFYING_RESULT)
    validity = quantity_table(quantities.VALIDITY)
    safety = quantity_table(quantities.SAFETY)
    notes = fields.List(fields.Nested(NoteTable), load_default=list)
    levels = fields.List(fields.Nested(LevelTable), required=True, error_messages=REQUIRED)

    @validates_schema
    def at_least_one_level(self, data, **kwargs):
        if "levels" in data and not data["levels"]:
            raise ValidationError({"levels": fault("there is none.", "Add at least one [[levels]].").messages})
