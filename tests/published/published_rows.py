"""The published values of fixtures/published/check_values.csv, and where our own data says the same.

Columns: rule_set, edition, level, phase, quantity, value, unit, source and confidence are the published statement
(confidence high: governing body or peer-reviewed; medium: secondary; memory: nobody could name a source). `check`
says how it is checked, `target` against what, `expected` what it comes to there where that is not the value
itself (an elimination is the count that eliminates), `within` how far rounding may put it off in the target's unit
(0.5: a centimetre; 1.77: half an inch and half a centimetre, where the source prints feet and inches).

A target is book/levels/phase/quantity. Levels: one id, several with |, * for all, training+ for it and higher,
training- for it and lower. Two quantities with & take the two ends of a range.
"""

import csv
from collections.abc import Iterator
from pathlib import Path

from fieldtally.trade.rulebook import Level, Rulebook, Value, shipped

ROOT = Path(__file__).parents[2]
BOOKS = shipped()
BOOK_WIDE = ("validity", "safety")
CENTIMETRES_IN = {("m", "cm"): 100}


def read_rows() -> list[dict]:
    with (ROOT / "fixtures" / "published" / "check_values.csv").open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def name_of(row: dict) -> str:
    """The test's name: what is published, and by whom."""
    what = " ".join(row[column] for column in ("rule_set", "edition", "level", "phase", "quantity", "value", "unit"))
    return f"{what} [{row['source']}]"


def levels_of(book: Rulebook, spec: str) -> list[Level]:
    if spec == "*":
        return list(book.levels)
    if spec[-1] in "+-":
        edge = book.level(spec[:-1]).order
        return [level for level in book.levels if (level.order - edge) * (1 if spec[-1] == "+" else -1) >= 0]
    return [book.level(level_id) for level_id in spec.split("|")]


def store(level: Level, phase: str) -> dict[str, Value]:
    return level.phases[phase] if phase in level.phases else getattr(level, phase)


def found(target: str) -> dict[str, Value | None]:
    """What our data states at a target with one quantity: level id (or "" for the whole book) -> value."""
    book_id, spec, phase, quantity = target.split("/")
    book = BOOKS[book_id]
    if phase in BOOK_WIDE:
        return {"": getattr(book, phase).get(quantity)}
    return {level.id: store(level, phase).get(quantity) for level in levels_of(book, spec)}


def sides(row: dict) -> list[tuple[str, float | None]]:
    """(target with one quantity, expected there or None for the row's own value) for every quantity of the row."""
    path, _, names = row["target"].rpartition("/")
    quantities = names.split("&")
    if len(quantities) == 1:
        return [(row["target"], float(row["expected"]) if row["expected"] else None)]
    ends = (row["expected"] or row["value"]).split("-")
    return [(f"{path}/{name}", float(end)) for name, end in zip(quantities, ends, strict=True)]


def in_unit(row: dict, unit: str) -> float:
    """The published number in the unit of our value."""
    return float(row["value"]) * CENTIMETRES_IN.get((row["unit"], unit), 1)


def statements(row: dict) -> Iterator[tuple[tuple[str, ...], Value | None, float]]:
    """((rule set, level, phase, quantity), what we state, what is published) for everything a row says."""
    for target, expected in sides(row):
        phase, quantity = target.split("/")[2:]
        for level_id, value in found(target).items():
            published = in_unit(row, value.unit if value else "") if expected is None else expected
            yield (row["rule_set"], level_id, phase, quantity), value, published
