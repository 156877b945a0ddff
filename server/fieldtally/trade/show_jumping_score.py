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
    counted,
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
    """What a rulebook says for one level, under the rulebook's own names; None: not stated.

    `jump_penalties_that_retire`: the round is over once the jumping penalties reach this.
    """

    knockdown_penalties: float | None = None
    refusal_first_penalties: float | None = None
    refusal_second_penalties: float | None = None
    stops_that_eliminate: int | None = None
    rider_falls_that_eliminate: int | None = None
    horse_falls_that_eliminate: int | None = None
    jump_penalties_that_retire: float | None = None


def ruling(fault: Fault, in_round: int, rules: ShowJumpingRules) -> Ruling:
    if fault.kind == "knockdown":
        return flat(fault.kind, rules.knockdown_penalties)
    if fault.kind not in STOPS:
        return counted(fault.kind, in_round, None, getattr(rules, f"{fault.kind}s_that_eliminate"))
    what = f"{ordinal(in_round)} disobedience in the round"
    if reached(in_round, rules.stops_that_eliminate):
        return out(what)
    return step(what, (rules.refusal_first_penalties, rules.refusal_second_penalties), in_round)


def or_retired(found: Ruling, total: float, limit: float | None) -> Ruling:
    """The ruling, or compulsory retirement where it brings the jumping penalties to the limit."""
    if found.eliminates or not reached(total, limit):
        return found
    return replace(found, eliminates=True, reason=f"{found.reason}; {limit:g} penalties reached: compulsory retirement")


def show_jumping_score(faults: Iterable[Fault], rules: ShowJumpingRules) -> JumpScore:
    """Score faults in the order they happened. Faults after the round was over are not counted."""

    def rule(fault: Fault, here: int, in_round: int, so_far: float) -> Ruling:
        found = ruling(fault, in_round, rules)
        return or_retired(found, so_far + (found.penalties or 0), rules.jump_penalties_that_retire)

    return score_in_order(faults, KINDS, rule)
