"""The total of an event and the places it gives.

Penalties of the phases add up; the lowest total wins. How bodies break ties was not found in a published
text, so a tie stays a tie: the pairs share the place, and the next place is left empty.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from decimal import Decimal

from fieldtally.trade.bad_input import BadInput, not_below_zero

PARTS = (
    "dressage", "cross_country_jumping", "cross_country_time", "show_jumping_jumping", "show_jumping_time",
)  # fmt: skip
UNPLACED = ("eliminated", "retired", "withdrawn", "disqualified", "hors_concours")
TIE_NOTE = "place shared: no published rule for breaking this tie is built in"


@dataclass(frozen=True)
class Result:
    """One pair's event. `parts` are penalties by name out of PARTS; a status out of UNPLACED takes the
    pair out of the places, and of them only hors_concours keeps a total."""

    pair: str
    parts: Mapping[str, float]
    status: str = "completed"


@dataclass(frozen=True)
class Placing:
    pair: str
    total: float | None
    place: int | None
    note: str


def total(parts: Mapping[str, float]) -> float:
    """The sum of the phases' penalties, in decimal arithmetic. Phases not ridden may be absent."""
    for name, penalties in parts.items():
        if name not in PARTS:
            raise BadInput(name, "This is no part of a total.", f"Use: {', '.join(PARTS)}.")
        not_below_zero(name, penalties, "penalties")
    return float(sum((Decimal(str(penalties)) for penalties in parts.values()), Decimal(0)))


def result_total(result: Result) -> float | None:
    """A pair's total; None where its status leaves none."""
    if result.status != "completed" and result.status not in UNPLACED:
        raise BadInput("status", f"“{result.status}” is not known here.",
                       f"Use completed or one of: {', '.join(UNPLACED)}.")  # fmt: skip
    return total(result.parts) if result.status in ("completed", "hors_concours") else None


def placing(result: Result, totals: Sequence[float]) -> Placing:
    own = result_total(result)
    if result.status != "completed":
        return Placing(result.pair, own, None, result.status)
    shared = totals.count(own) > 1
    return Placing(result.pair, own, 1 + sum(other < own for other in totals), TIE_NOTE if shared else "")


def places(results: Sequence[Result]) -> list[Placing]:
    """All pairs with total and place: placed ones by place, then the unplaced in the order given."""
    totals = [result_total(result) for result in results if result.status == "completed"]
    placings = [placing(result, totals) for result in results]
    return sorted(placings, key=lambda each: each.place if each.place is not None else len(results) + 1)
