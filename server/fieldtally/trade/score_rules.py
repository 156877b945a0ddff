"""The scoring a level states, taken out of its rulebook: the rules' fields carry the rulebook's names."""

from dataclasses import fields
from typing import TypeVar

from fieldtally.trade.cross_country_score import CrossCountryRules
from fieldtally.trade.dressage_score import DressageRules
from fieldtally.trade.rulebook import Level
from fieldtally.trade.show_jumping_score import ShowJumpingRules
from fieldtally.trade.stated import FROM_MEMORY, Value
from fieldtally.trade.time_penalties import TimeRules

Rules = TypeVar("Rules")


def taken(rules: type[Rules], level: Level, phase: str) -> Rules:
    """The dataclass `rules` with every field the level states in `phase`; the others stay not stated."""
    stated = {each.name: level.value(phase, each.name) for each in fields(rules)}
    return rules(**{name: value for name, value in stated.items() if value is not None})


def cross_country_rules(level: Level) -> CrossCountryRules:
    return taken(CrossCountryRules, level, "cross_country")


def show_jumping_rules(level: Level) -> ShowJumpingRules:
    return taken(ShowJumpingRules, level, "show_jumping")


def dressage_rules(level: Level) -> DressageRules:
    return taken(DressageRules, level, "dressage")


def time_rules(level: Level, phase: str) -> TimeRules:
    """Time rules of `phase`, cross_country or show_jumping."""
    return taken(TimeRules, level, phase)


def used(level: Level, phase: str, *rules: type) -> list[Value]:
    """The rulebook's own values, with source and grade, that a score by these rules can turn on."""
    names = [each.name for kind in rules for each in fields(kind)]
    return [found for name in names if (found := level.stated(phase, name))]


def from_memory(values: list[Value]) -> list[Value]:
    """Those of the values that nobody has yet read in a rulebook."""
    return [value for value in values if value.grade == FROM_MEMORY]


def course_speeds(level: Level, phase: str = "cross_country") -> tuple[float, float] | None:
    """(slowest, fastest) speed in m/min that the level states for a course; None where it states none."""
    stated = [level.value(phase, name) for name in ("speed_min_mpm", "speed_mpm", "speed_max_mpm")]
    known = [speed for speed in stated if speed is not None]
    return (min(known), max(known)) if known else None
