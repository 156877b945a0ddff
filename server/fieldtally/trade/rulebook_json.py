"""A rulebook as JSON for the API, the client's offline copy and the command line. Keys are our own names."""

from dataclasses import asdict

from fieldtally.trade.quantities import BY_PART, Quantity
from fieldtally.trade.rulebook import Level, Rulebook
from fieldtally.trade.stated import Value


def value_json(value: Value) -> dict:
    """Without the quantity's name, which is the key it stands under."""
    return {name: each for name, each in asdict(value).items() if name != "quantity"}


def values_json(values: dict[str, Value]) -> dict:
    return {name: value_json(value) for name, value in values.items()}


def phases_json(phases: dict[str, dict[str, Value]]) -> dict:
    return {phase: values_json(values) for phase, values in phases.items()}


def level_json(level: Level) -> dict:
    return {
        "id": level.id,
        "name": level.name,
        "order": level.order,
        "phases": phases_json(level.phases),
        "asks": [asdict(ask) for ask in level.asks],
        "movements": [asdict(movement) for movement in level.movements],
        "entry": values_json(level.entry),
        "eligibility": [asdict(rule) for rule in level.eligibility],
        "qualifying_result": values_json(level.qualifying_result),
        "notes": [asdict(note) for note in level.notes],
    }


def quantity_json(quantity: Quantity) -> dict:
    return {"unit": quantity.unit, "least": quantity.least, "most": quantity.most, "whole": quantity.whole}


def quantities_json() -> dict:
    """What a level may state, by part, so that a phone can check a correction as the server does."""
    return {part: {name: quantity_json(each) for name, each in known.items()} for part, known in BY_PART.items()}


def as_json(book: Rulebook) -> dict:
    return {
        "id": book.id,
        "title": book.title,
        "body": book.body,
        "edition": book.edition,
        "status": book.status,
        "levels": [level_json(level) for level in book.levels],
        "scoring": phases_json(book.scoring),
        "validity": values_json(book.validity),
        "safety": values_json(book.safety),
        "notes": [asdict(note) for note in book.notes],
        "quantities": quantities_json(),
    }
