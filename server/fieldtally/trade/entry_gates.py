"""Gates of a level that need no results: how old the rider and the horse are, and the horse's points.

A rider's age is the one reached in the calendar year; a horse's is counted in calendar years too.
"""

from dataclasses import dataclass
from datetime import date

from fieldtally.trade.rulebook import Level, Value

HORSE_BIRTHDAY = (
    "Horses are aged by calendar year here; where the breeding year starts on 1 August, check the rulebook."
)


@dataclass(frozen=True)
class Gate:
    """One gate. `state` met, not_met or not_known; `opens_on` the day from which age alone meets it."""

    rule: str
    who: str
    state: str
    have: float | None
    need: float
    missing: str
    opens_on: date | None
    source: str
    grade: str


def age_gate(rule: str, who: str, birth_year: int | None, asked: Value, on: date) -> Gate:
    """The age reached in the year of `on` against the least the level asks."""
    if birth_year is None:
        return Gate(rule, who, "not_known", None, asked.value, f"Enter the {who}'s year of birth.", None,
                    asked.source, asked.grade)  # fmt: skip
    age = on.year - birth_year
    met = age >= asked.value
    opens = date(birth_year + int(asked.value), 1, 1)
    missing = "" if met else f"The {who} turns {asked.value:g} in {opens.year}; {age} in {on.year} is too young."
    return Gate(rule, who, "met" if met else "not_met", age, asked.value, missing, opens, asked.source, asked.grade)


def points_gate(rule: str, points: float | None, asked: Value) -> Gate:
    """The horse's points against the most, or the least, the level is open to."""
    most = rule == "horse_points_max"
    if points is None:
        missing = f"The level is open to horses with {'at most' if most else 'at least'} {asked.value:g} points; check."
        return Gate(rule, "horse", "not_known", None, asked.value, missing, None, asked.source, asked.grade)
    met = points <= asked.value if most else points >= asked.value
    missing = "" if met else f"{points:g} points; the level asks {'at most' if most else 'at least'} {asked.value:g}."
    return Gate(rule, "horse", "met" if met else "not_met", points, asked.value, missing, None,
                asked.source, asked.grade)  # fmt: skip


def gates(
    level: Level, on: date, horse_birth_year: int | None, rider_birth_year: int | None, horse_points: float | None
) -> list[Gate]:
    """Every gate the level states, in a fixed order."""
    found = []
    for rule, who, year in (("rider_age_min_years", "rider", rider_birth_year),
                            ("horse_age_min_years", "horse", horse_birth_year)):  # fmt: skip
        if asked := level.entry.get(rule):
            found.append(age_gate(rule, who, year, asked, on))
    for rule in ("horse_points_min", "horse_points_max"):
        if asked := level.entry.get(rule):
            found.append(points_gate(rule, horse_points, asked))
    return found
