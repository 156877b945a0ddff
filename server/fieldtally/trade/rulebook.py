"""Rulebooks: what every level asks, as data with a source beside every value.

    book = shipped()["us-2025"]
    book.level("novice").value("cross_country", "fixed_height_cm")   # 90.0, or None where not stated
    book.level("novice").stated("cross_country", "fixed_height_cm")  # the Value, with source and grade

Quantities and their units are listed in trade/quantities.py; the shape of a file in docs/rulebooks.md.
A level's values already hold what the rulebook states for all levels (its scoring), so ask the level only.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field

from fieldtally.trade.entry_rules import EntryRule, Need
from fieldtally.trade.stated import Ask, Movement, Note, RulebookError, Value

__all__ = ["Ask", "EntryRule", "Level", "Movement", "Need", "Note", "Rulebook", "RulebookError", "Value"]

PHASES = ("dressage", "show_jumping", "cross_country")


@dataclass(frozen=True)
class Level:
    """One rung. `phases` maps phase -> quantity -> Value; `entry` holds ages and points of horse and rider;
    `qualifying_result` what makes a result at this level a qualifying one."""

    id: str
    name: str
    order: int
    phases: Mapping[str, Mapping[str, Value]] = field(default_factory=dict)
    asks: tuple[Ask, ...] = ()
    movements: tuple[Movement, ...] = ()
    entry: Mapping[str, Value] = field(default_factory=dict)
    eligibility: tuple[EntryRule, ...] = ()
    qualifying_result: Mapping[str, Value] = field(default_factory=dict)
    notes: tuple[Note, ...] = ()

    def stated(self, phase: str, quantity: str) -> Value | None:
        """The value with its source and grade; None where the rulebook does not state it."""
        return self.phases.get(phase, {}).get(quantity)

    def value(self, phase: str, quantity: str) -> float | None:
        """The number alone, in the quantity's unit; None where the rulebook does not state it."""
        found = self.stated(phase, quantity)
        return None if found is None else found.value


@dataclass(frozen=True)
class Rulebook:
    """One body's levels in one edition, lowest level first.

    `status`: "current" or "older" (kept so that editions can be compared). `scoring` maps phase -> quantity
    -> Value for what holds at every level. `validity` holds how long qualifying results count and how an
    entry is qualified again.
    """

    id: str
    title: str
    body: str
    edition: str
    status: str
    levels: tuple[Level, ...]
    scoring: Mapping[str, Mapping[str, Value]] = field(default_factory=dict)
    validity: Mapping[str, Value] = field(default_factory=dict)
    safety: Mapping[str, Value] = field(default_factory=dict)
    notes: tuple[Note, ...] = ()

    def level(self, level_id: str) -> Level:
        """The level, or KeyError naming the levels there are."""
        for level in self.levels:
            if level.id == level_id:
                return level
        raise KeyError(f"{self.id} has no level {level_id!r}; it has: {', '.join(each.id for each in self.levels)}")

    def asks_by(self, level_id: str) -> frozenset[str]:
        """Every ask introduced at this level or below."""
        order = self.level(level_id).order
        return frozenset(ask.word for level in self.levels if level.order <= order for ask in level.asks)

    def to_json(self) -> dict:
        from fieldtally.trade.rulebook_json import as_json

        return as_json(self)


def shipped() -> dict[str, Rulebook]:
    """Every rulebook that comes with Fieldtally, by id."""
    from fieldtally.trade.rulebook_file import shipped_rulebooks

    return shipped_rulebooks()


def load_file(path) -> Rulebook:
    """The rulebook of one TOML file, or RulebookError naming file, key, reason and fix."""
    from fieldtally.trade.rulebook_file import load

    return load(path)


def with_corrections(rulebook: Rulebook, corrections: Iterable[Mapping]) -> Rulebook:
    """The rulebook with the bodies of `rulebook_value` entries applied, in order. Those of other rulebooks
    are passed over. A corrected Value has grade "corrected" and edition and article as its source."""
    from fieldtally.trade.correction import corrected

    return corrected(rulebook, corrections)


def available(data_dir, on_error=None) -> dict[str, Rulebook]:
    """The shipped rulebooks and those a user added to `data_dir`, which take the place of one with their id.

    A file that cannot be used raises RulebookError, or is handed to `on_error` and passed over.
    """
    from fieldtally.trade.rulebook_file import available_rulebooks

    return available_rulebooks(data_dir, on_error)
