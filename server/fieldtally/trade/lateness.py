"""How early or late a canter was against a target speed over its distance.

One convention everywhere: **late is positive**, early negative. A canter that took longer than the target
time has a positive `seconds_late`; `metres_late` is how far ahead a horse exactly on the target speed
would be at the moment this one passes the second flag. Neither assumes an even pace in between.
"""

import math
from dataclasses import dataclass

from fieldtally.trade.bad_input import above_zero
from fieldtally.trade.pace import TOLD_APART_FROM, Pace


@dataclass(frozen=True)
class Lateness:
    """`slow_mpm` is target less speed in m/min (positive: too slow). `_u` marks standard uncertainties."""

    target_speed_mpm: float
    target_s: float
    slow_mpm: float
    seconds_late: float
    seconds_late_u: float
    metres_late: float
    metres_late_u: float
    told_apart: bool

    @property
    def verdict(self) -> str:
        """slow, fast, or on_target where watch and wheel cannot tell the speed from the target."""
        if not self.told_apart:
            return "on_target"
        return "slow" if self.slow_mpm > 0 else "fast"


def lateness(pace: Pace, target_speed_mpm: float) -> Lateness:
    """Seconds and metres late (positive) or early (negative) against `target_speed_mpm` in m/min.

    Seconds: t − 60 d / v₀. Metres: v₀ t / 60 − d. The target is a rule, without uncertainty.
    """
    per_second = above_zero("target_speed_mpm", target_speed_mpm, "m/min") / 60
    target_s = pace.distance_m / per_second
    slow = target_speed_mpm - pace.speed_mpm
    return Lateness(
        target_speed_mpm,
        target_s,
        slow,
        pace.elapsed_s - target_s,
        math.hypot(pace.elapsed_u_s, pace.distance_u_m / per_second),
        per_second * pace.elapsed_s - pace.distance_m,
        math.hypot(pace.distance_u_m, per_second * pace.elapsed_u_s),
        abs(slow) > TOLD_APART_FROM * pace.speed_u_mpm,
    )
