"""Show-jumping penalties: knockdowns, disobediences counted over the whole round, falls.

A fence knocked down in a refusal is a refusal only (USEF EV150, in the USEA rule refresher): enter the
refusal alone. In this phase stops add up over the round, whatever the fence.
"""

from collections.abc import Iterable
from dataclasses import dataclass, replace

from fieldtally.trade.jump_faults import (
    STOPS,
    Fault,
    JumpScore,
    Ruling,
    fall,
    flat,
    ordinal,
    out,
    reached,
    score_in_order,
    step,
)

KINDS = ("knockdown", *STOPS, "rider_fall", "horse_fall")


@dataclass(frozen=True)
class ShowJumpingRules:
    """What a rulebook says for one level; None or empty: not stated.

    `compulsory_retirement_at`: the round is over once the jumping penalties reach this.
    """

    knockdown_penalties: float | None = None
    stop_penalties: tuple[float, ...] = ()
    stops_in_round_eliminate: int | None = None
    rider_fall_eliminates: bool | None = None
    horse_fall_eliminates: bool | None = None
    compulsory_retirement_at: float | None = None


def ruling(fault: Fault, in_round: int, rules: ShowJumpingRules) -> Ruling:
    if fault.kind == "knockdown":
        return flat(fault.kind, rules.knockdown_penalties)
    if fault.kind not in STOPS:
        return fall(fault.kind, getattr(rules, f"{fault.kind}_eliminates"))
    what = f"{ordinal(in_round)} disobedience in the round"
    if reached(in_round, rules.stops_in_round_eliminate):
        return out(what)
    return step(what, rules.stop_penalties, in_round)


def or_retired(found: Ruling, total: float, limit: float | None) -> Ruling:
    """The ruling, or compulsory retirement where it brings the jumping penalties to the limit."""
    if found.eliminates or not reached(total, limit):
        return found
    return replace(found, eliminates=True, reason=f"{found.reason}; {limit:g} penalties reached: compulsory retirement")


def show_jumping_score(faults: Iterable[Fault], rules: ShowJumpingRules) -> JumpScore:
    """Score faults in the order they happened. Faults after the round was over are not counted."""

    def rule(fault: Fault, here: int, in_round: int, so_far: float) -> Ruling:
        found = ruling(fault, in_round, rules)
        return or_retired(found, so_far + (found.penalties or 0), rules.compulsory_retirement_at)

    return score_in_order(faults, KINDS, rule)
