"""Single values put right from the rulebook in somebody's hand; they travel with the logbook."""

from collections.abc import Iterable, Mapping
from dataclasses import replace

from marshmallow import ValidationError

from fieldtally.trade.quantities import BY_PART, BY_PHASE
from fieldtally.trade.rulebook import Level, Rulebook
from fieldtally.trade.rulebook_schema import check_number
from fieldtally.trade.stated import CORRECTED, Value


def trouble_with(rulebook: Rulebook, body: Mapping) -> str | None:
    """Why this correction changes nothing in this rulebook; None where it does."""
    if body["rulebook_id"] != rulebook.id:
        return f"It is for the rulebook {body['rulebook_id']}."
    if body["level_id"] not in {level.id for level in rulebook.levels}:
        return f"{rulebook.id} has no level {body['level_id']}."
    quantity = BY_PART.get(body["phase"], {}).get(body["quantity"])
    if quantity is None:
        return f"{body['quantity']} is not a quantity of {body['phase']}."
    try:
        if body["value"] is not None:
            check_number(quantity, body["value"])
    except ValidationError as error:
        return error.messages["value"][0]["reason"]
    return None


def values_of(level: Level, part: str) -> Mapping[str, Value]:
    return level.phases.get(part, {}) if part in BY_PHASE else getattr(level, part)


def level_with(level: Level, body: Mapping) -> Level:
    """The level with one value replaced; value None: this edition does not state it."""
    part, name = body["phase"], body["quantity"]
    values = dict(values_of(level, part))
    if body["value"] is None:
        values.pop(name, None)
    else:
        source = f"{body['edition']}, {body['article']}"
        values[name] = Value(name, body["value"], BY_PART[part][name].unit, source, CORRECTED)
    if part in BY_PHASE:
        return replace(level, phases={**level.phases, part: values})
    return replace(level, **{part: values})


def corrected(rulebook: Rulebook, corrections: Iterable[Mapping]) -> Rulebook:
    """The rulebook with each correction applied in order; those with `trouble_with` them are passed over, so
    that a logbook's old correction never stops the weighing of its evidence."""
    levels = {level.id: level for level in rulebook.levels}
    for body in corrections:
        if trouble_with(rulebook, body) is None:
            levels[body["level_id"]] = level_with(levels[body["level_id"]], body)
    return replace(rulebook, levels=tuple(levels.values()))
