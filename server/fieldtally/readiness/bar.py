"""The bar: what a pair must show for a level, read from bars/*.toml and changed per logbook by a coach.

Layers, later ones win: numbers of the way of weighing, numbers of the requirement, numbers of the ladder,
numbers of the ladder's level, the coach's changes.
"""

import tomllib
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from functools import cache
from pathlib import Path

from fieldtally.readiness.bar_change import changed
from fieldtally.readiness.introduced import introduction
from fieldtally.readiness.limits import height_class_cm
from fieldtally.readiness.requirement import Condition, Requirement
from fieldtally.trade.rulebook import Ask, Level, Rulebook

FOLDER = Path(__file__).parent / "bars"


@dataclass(frozen=True)
class Ladder:
    """What one body's ladder says differently from the common bar."""

    prefixes: tuple[str, ...]
    source: str
    heights: dict[str, float]
    introduced: dict[str, float]
    numbers: dict[str, dict[str, float]]
    levels: dict[str, dict[str, dict[str, float]]]


@dataclass(frozen=True)
class First:
    """The order of the level that introduces a question, and who says so."""

    order: int
    source: str

    @classmethod
    def of(cls, level: Level, ask: Ask) -> "First":
        return cls(level.order, f"asked from {level.name} on ({ask.source})")


@dataclass(frozen=True)
class Bar:
    """All requirements of one level, in the order they are shown."""

    rulebook_id: str
    level_id: str
    requirements: tuple[Requirement, ...]

    def to_json(self) -> dict:
        return {
            "rulebook_id": self.rulebook_id, "level_id": self.level_id,
            "requirements": [requirement.to_json() for requirement in self.requirements],
        }  # fmt: skip


@dataclass(frozen=True)
class Bars:
    """The shipped bars: the common requirements and each ladder's differences."""

    common: tuple[Requirement, ...]
    ladders: tuple[Ladder, ...]
    forecast_numbers: dict[str, float]
    course: dict[str, float]

    def ladder(self, rulebook_id: str) -> Ladder:
        for ladder in self.ladders:
            if rulebook_id.split("-")[0] in ladder.prefixes:
                return ladder
        return Ladder((), "", {}, {}, {}, {})

    def bar(self, rulebook: Rulebook, level: Level, changes: Iterable = ()) -> Bar:
        """The bar of one level, with a logbook's `bar_change` records applied in their order."""
        return self.bar_of(rulebook, level, self.ladder(rulebook.id), self.first_levels(rulebook), list(changes))

    def every_level(self, rulebook: Rulebook, changes: Iterable = ()) -> Iterator[tuple[Level, Bar]]:
        """The bars of all levels, lowest first; what holds for the whole rulebook is worked out once."""
        ladder, first_levels, changes = self.ladder(rulebook.id), self.first_levels(rulebook), list(changes)
        for level in rulebook.levels:
            yield level, self.bar_of(rulebook, level, ladder, first_levels, changes)

    def first_levels(self, rulebook: Rulebook) -> dict[str, First]:
        """The level that introduces each requirement, where the rulebook says so. It introduces a question, not
        the larger size of it."""
        smallest = (each for each in self.common if each.larger_than is None)
        found = ((each.id, introduction(each.condition, rulebook)) for each in smallest)
        return {key: First.of(*level_and_ask) for key, level_and_ask in found if level_and_ask}

    def bar_of(self, rulebook: Rulebook, level: Level, ladder: Ladder, first_levels: dict, changes: list) -> Bar:
        height = ladder.heights.get(level.id) or height_class_cm(rulebook, level)
        asked = [
            on_ladder(each, ladder, level.id, first_levels.get(each.id))
            for each in self.common
            if is_asked(each, ladder, first_levels.get(each.id), level.order, height)
        ]
        return Bar(rulebook.id, level.id, changed(asked, rulebook.id, level.id, changes))


def on_ladder(requirement: Requirement, ladder: Ladder, level_id: str, first: First | None) -> Requirement:
    """With the ladder's own numbers, and saying who says from which level on it is asked."""
    numbers = ladder.numbers.get(requirement.id, {}) | ladder.levels.get(level_id, {}).get(requirement.id, {})
    said = first.source if first else said_by(requirement, ladder)
    found = requirement.with_numbers(numbers) if numbers else requirement
    return replace(found, source=f"{requirement.source}; {said}") if said else found


def said_by(requirement: Requirement, ladder: Ladder) -> str | None:
    height = ladder.introduced.get(requirement.id)
    return height and f"asked from {height:g} cm on ({ladder.source})"


def is_asked(requirement: Requirement, ladder: Ladder, first: First | None, order: int, height_cm: float) -> bool:
    """From the level at which the rulebook says that it introduces the question; where it does not say, from
    the height in the ladder's file, else in the common bar."""
    if first is not None:
        return order >= first.order
    return ladder.introduced.get(requirement.id, requirement.from_height_cm) <= height_cm


def read_requirement(table: dict, numbers: dict, sources: dict) -> Requirement:
    weigh = table["weigh"]
    own = table.get("numbers", {})
    options = {key: float(value) for key, value in table.get("options", {}).items()}
    return Requirement(
        id=table["id"],
        phase=table["phase"],
        weigh=weigh,
        title=table["title"],
        numbers=numbers[weigh] | own | options,
        source=table["source"],
        required=table.get("required", True),
        condition=read_condition(table) if "ask" in table else None,
        from_height_cm=table.get("from_height_cm", 0),
        larger_than=table.get("larger_than"),
        number_sources=sources[weigh] | dict.fromkeys(own, table["source"]),
    )


def read_condition(table: dict) -> Condition:
    presentation = tuple((side, tuple(values)) for side, values in table.get("presentation", {}).items())
    return Condition(table["ask"], presentation, table.get("size"), table.get("elements", 0))


def read_ladder(path: Path) -> Ladder:
    table = tomllib.loads(path.read_text(encoding="utf-8"))
    return Ladder(
        tuple(table["prefixes"]),
        table["source"],
        *(table.get(key, {}) for key in ("heights", "introduced", "numbers", "levels")),
    )


@cache
def shipped_bars() -> Bars:
    table = tomllib.loads((FOLDER / "common.toml").read_text(encoding="utf-8"))
    common = tuple(read_requirement(each, table["numbers"], table["sources"]) for each in table["requirement"])
    others = sorted(path for path in FOLDER.glob("*.toml") if path.stem != "common")
    ladders = tuple(read_ladder(path) for path in others)
    return Bars(common, ladders, table["numbers"]["forecast"], table["course"])
