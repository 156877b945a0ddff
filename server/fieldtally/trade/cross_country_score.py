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
    fall,
    flat,
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
    """What a rulebook says for one level; None or empty: not stated.

    `stop_penalties`: for the first, second … stop at one obstacle. `fall_on_feet_penalties`: for the first
    fall of a rider who lands on her feet, where that does not eliminate; the next one then does.
    `missed_obstacle_penalties`: for the first, second … obstacle left out, where that does not eliminate.
    """

    stop_penalties: tuple[float, ...] = ()
    stops_at_obstacle_eliminate: int | None = None
    stops_on_course_eliminate: int | None = None
    rider_fall_eliminates: bool | None = None
    fall_on_feet_penalties: float | None = None
    horse_fall_eliminates: bool | None = None
    missed_flag_penalties: float | None = None
    frangible_penalties: float | None = None
    dangerous_riding_penalties: float | None = None
    missed_obstacle_penalties: tuple[float, ...] = ()
    missed_obstacles_eliminate: int | None = None


def stop_ruling(fault: Fault, here: int, on_course: int, rules: CrossCountryRules) -> Ruling:
    what = f"{ordinal(here)} stop at fence {fault.obstacle}"
    if reached(here, rules.stops_at_obstacle_eliminate):
        return out(what)
    if reached(on_course, rules.stops_on_course_eliminate):
        return out(f"{ordinal(on_course)} stop on the course")
    found = step(what, rules.stop_penalties, here)
    if rules.stops_on_course_eliminate is None and on_course >= OPEN_FROM_STOP:
        silent = f"{found.reason}; whether the {ordinal(on_course)} stop on the course eliminates is not stated"
        return replace(found, reason=silent, stated=False)
    return found


def rider_fall_ruling(fault: Fault, on_course: int, rules: CrossCountryRules) -> Ruling:
    if fault.kind == "rider_fall" or rules.fall_on_feet_penalties is None:
        return fall(fault.kind, rules.rider_fall_eliminates)
    if on_course == 1:
        return Ruling(rules.fall_on_feet_penalties, False, NAMES[fault.kind])
    return out(f"{ordinal(on_course)} fall")


def missed_obstacle_ruling(on_course: int, rules: CrossCountryRules) -> Ruling:
    what = f"{ordinal(on_course)} missed obstacle"
    if reached(on_course, rules.missed_obstacles_eliminate):
        return out(what)
    return step(what, rules.missed_obstacle_penalties, on_course)


def ruling(fault: Fault, here: int, on_course: int, rules: CrossCountryRules) -> Ruling:
    if fault.kind in STOPS:
        return stop_ruling(fault, here, on_course, rules)
    if fault.kind == "horse_fall":
        return fall(fault.kind, rules.horse_fall_eliminates)
    if fault.kind == "missed_obstacle":
        return missed_obstacle_ruling(on_course, rules)
    if fault.kind in ("missed_flag", "frangible", "dangerous_riding"):
        return flat(fault.kind, getattr(rules, f"{fault.kind}_penalties"))
    return rider_fall_ruling(fault, on_course, rules)


def cross_country_score(faults: Iterable[Fault], rules: CrossCountryRules) -> JumpScore:
    """Score faults in the order they happened. Faults after elimination are listed and not counted."""
    return score_in_order(faults, KINDS, lambda fault, here, on_course, _: ruling(fault, here, on_course, rules))
