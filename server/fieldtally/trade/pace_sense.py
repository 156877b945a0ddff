"""Pace sense: does this pair find the target speed, and find it again.

From recent canters, each against its own target: the bias (mean difference) and the spread (standard
deviation), beside what the measuring alone would scatter.
"""

import math
import statistics
from collections.abc import Sequence
from dataclasses import dataclass

from fieldtally.trade.lateness import lateness
from fieldtally.trade.pace import TOLD_APART_FROM, Pace


@dataclass(frozen=True)
class PaceSense:
    """All in m/min; positive bias is faster than the target.

    `bias_u_mpm` and `spread_mpm` are None for a single canter. `timing_mpm` is the scatter that hand
    timing alone gives; `rider_spread_mpm` is what remains of the spread without it, never below zero.
    """

    canters: int
    bias_mpm: float
    bias_u_mpm: float | None
    spread_mpm: float | None
    timing_mpm: float
    rider_spread_mpm: float | None
    told_apart: bool


def root_mean_square(values: Sequence[float]) -> float:
    return math.sqrt(statistics.fmean(value**2 for value in values))


def bias_u(spread: float, paces: Sequence[Pace]) -> float:
    """Standard uncertainty of the mean: scatter / √n (GUM type A), and the distances' errors, which do
    not average out where the same stretch is ridden again and are therefore taken in full (type B)."""
    shared = root_mean_square([pace.speed_mpm * pace.distance_relative_u for pace in paces])
    return math.hypot(spread / math.sqrt(len(paces)), shared)


def pace_sense(canters: Sequence[tuple[Pace, float]]) -> PaceSense | None:
    """Bias and spread of (pace, target speed in m/min) pairs; None where there is no canter."""
    if not canters:
        return None
    fast = [-lateness(pace, target).slow_mpm for pace, target in canters]
    timing = root_mean_square([pace.speed_mpm * pace.elapsed_relative_u for pace, _ in canters])
    bias = statistics.fmean(fast)
    if len(fast) < 2:
        return PaceSense(1, bias, None, None, timing, None, False)
    spread = statistics.stdev(fast)
    u = bias_u(spread, [pace for pace, _ in canters])
    own = math.sqrt(max(0.0, spread**2 - timing**2))
    return PaceSense(len(fast), bias, u, spread, timing, own, abs(bias) > TOLD_APART_FROM * u)
