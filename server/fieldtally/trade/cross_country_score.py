"""Cross-country jumping penalties, fault by fault, by whatever the rulebook states.

Two counts run side by side: stops at one obstacle (its elements together) and stops on the whole course.
The first stop at an obstacle costs 20, the second there 40 more; which one eliminates, there and on the
whole course, is the rulebook's to say and differs by body, level and edition.
"""

from collections.abc import Iterable
from dataclasses import dataclass, replace

from fieldtally.trade.jump_faults import (
    NAMES,
    STOPS,
    Fault,
    JumpScore,
    Ruling,
    counted,
    flat,
    not_stated,
    ordinal,
    out,
    reached,
    score_in_order,
    step,
)

KINDS = (*STOPS, "rider_fall", "rider_fall_on_feet", "horse_fall", "missed_flag", "frangible",
         "dangerous_riding", "missed_obstacle")  # fmt: skip

# From this stop on the course on, a rulebook that is silent about elimination leaves the score open: the
# published rule sets eliminate at the third or at the fourth.
OPEN_FROM_STOP = 3


@dataclass(frozen=True)
class CrossCountryRules:
    """What a rulebook says for one level, under the rulebook's own names; None: not stated.

    `rider_fall_on_feet_penalties`: for a fall that lands standing, below the count that eliminates; any
    other fall of the rider eliminates at once. `missed_obstacle_penalties`: for each obstacle left out,
    below the count that eliminates.
    """

    refusal_first_penalties: float | None = None
    refusal_second_penalties: float | None = None
    stops_at_one_obstacle_that_eliminate: int | None = None
    stops_on_course_that_eliminate: int | None = None
    rider_fall_on_feet_penalties: float | None = None
    rider_falls_that_eliminate: int | None = None
    horse_falls_that_eliminate: int | None = None
    missed_flag_penalties: float | None = None
    frangible_penalties: float | None = None
    dangerous_riding_penalties: float | None = None
    missed_obstacle_penalties: float | None = None
    missed_obstacles_that_eliminate: int | None = None


def stop_ruling(fault: Fault, here: int, on_course: int, rules: CrossCountryRules) -> Ruling:
    what = f"{ordinal(here)} stop at fence {fault.obstacle}"
    if reached(here, rules.stops_at_one_obstacle_that_eliminate):
        return out(what)
    if reached(on_course, rules.stops_on_course_that_eliminate):
        return out(f"{ordinal(on_course)} stop on the course")
    found = step(what, (rules.refusal_first_penalties, rules.refusal_second_penalties), here)
    if rules.stops_on_course_that_eliminate is None and on_course >= OPEN_FROM_STOP:
        silent = f"{found.reason}; whether the {ordinal(on_course)} stop on the course eliminates is not stated"
        return replace(found, reason=silent, stated=False)
    return found


def rider_fall_ruling(fault: Fault, on_course: int, rules: CrossCountryRules) -> Ruling:
    limit, milder = rules.rider_falls_that_eliminate, rules.rider_fall_on_feet_penalties
    if fault.kind == "rider_fall_on_feet" and milder is not None and not reached(on_course, limit):
        return Ruling(milder, False, NAMES[fault.kind])
    return not_stated(NAMES[fault.kind]) if limit is None else out(f"{ordinal(on_course)} {NAMES[fault.kind]}")


def ruling(fault: Fault, here: int, on_course: int, rules: CrossCountryRules) -> Ruling:
    if fault.kind in STOPS:
        return stop_ruling(fault, here, on_course, rules)
    if fault.kind == "horse_fall":
        return counted(fault.kind, on_course, None, rules.horse_falls_that_eliminate)
    if fault.kind == "missed_obstacle":
        limit = rules.missed_obstacles_that_eliminate
        return counted(fault.kind, on_course, rules.missed_obstacle_penalties, limit)
    if fault.kind in ("missed_flag", "frangible", "dangerous_riding"):
        return flat(fault.kind, getattr(rules, f"{fault.kind}_penalties"))
    return rider_fall_ruling(fault, on_course, rules)


def cross_country_score(faults: Iterable[Fault], rules: CrossCountryRules) -> JumpScore:
    """Score faults in the order they happened. Faults after elimination are listed and not counted."""
    return score_in_order(faults, KINDS, lambda fault, here, on_course, _: ruling(fault, here, on_course, rules))
