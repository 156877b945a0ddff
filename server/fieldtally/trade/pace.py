"""Speed over a measured stretch, and how well a watch and a wheel can know it.

v = 60 d / t, in metres per minute (m/min), the trade's unit. Its standard uncertainty follows the GUM
(JCGM 100:2008) from the distance's and the time's. Every "±" of this project is one standard
uncertainty (coverage factor 1); two values count as different from two standard uncertainties on.
"""

import math
from dataclasses import dataclass

from fieldtally.trade.bad_input import BadInput, above_zero, not_below_zero
from fieldtally.trade.propagation import quotient_u, rectangular_u

# Standard deviation in s of a hand-timed interval, start and stop together, when both are foreseen:
# M. Faux and C. Godolphin, "Manual timing in physics experiments: error and uncertainty",
# Am. J. Phys. 87(2):110-115 (2019), abstract: mean error about 0, SD 0.10 s.
HAND_TIMING_SD_S = 0.10

# Relative standard uncertainty of a stretch's distance, by how it was measured. No published figure for
# grass was found for any of them: these are ASSUMPTIONS, and a rider who has calibrated her wheel
# states her own `distance_u_m` instead.
WHEEL_RELATIVE_U = 0.01  # slip, bounce and a weaving line on grass; one per cent is the trade's guess
KNOWN_RELATIVE_U = 0.005  # told by someone who may have used a wheel: half a wheel's
TAPE_RELATIVE_U = 0.002  # laid end to end over uneven ground; the tape itself is some ten times better
PACES_RELATIVE_U = 0.03  # a stride changes with slope, going and tiredness
PHONE_RELATIVE_U = 0.02  # some metres at either end of a few hundred
RELATIVE_U = {"wheel": WHEEL_RELATIVE_U, "known": KNOWN_RELATIVE_U, "tape": TAPE_RELATIVE_U,
              "paces": PACES_RELATIVE_U, "phone": PHONE_RELATIVE_U}  # fmt: skip

# How many standard uncertainties apart two values must be before they are called different:
# about 95 % for a normal distribution (JCGM 100:2008, 6.3.3).
TOLD_APART_FROM = 2.0


@dataclass(frozen=True)
class Pace:
    """A measured speed. `_u` marks the standard uncertainty of the value before it."""

    distance_m: float
    distance_u_m: float
    elapsed_s: float
    elapsed_u_s: float
    speed_mpm: float
    speed_u_mpm: float

    @property
    def distance_relative_u(self) -> float:
        return self.distance_u_m / self.distance_m

    @property
    def elapsed_relative_u(self) -> float:
        return self.elapsed_u_s / self.elapsed_s


def default_distance_u(distance_m: float, measured_by: str) -> float:
    """Standard uncertainty in m of a stretch of `distance_m` metres by how it was measured."""
    if measured_by not in RELATIVE_U:
        raise BadInput("measured_by", f"“{measured_by}” is not known here.", f"Use one of: {', '.join(RELATIVE_U)}.")
    return above_zero("distance_m", distance_m, "m") * RELATIVE_U[measured_by]


def elapsed_u(resolution_ms: float = 0.0, timing_sd_s: float = HAND_TIMING_SD_S) -> float:
    """Standard uncertainty in s of a time started and stopped by hand and read to `resolution_ms`."""
    not_below_zero("timing_sd_s", timing_sd_s, "s")
    return math.hypot(timing_sd_s, rectangular_u(not_below_zero("resolution_ms", resolution_ms, "ms") / 1000))


def speed(
    distance_m: float,
    elapsed_ms: float,
    distance_u_m: float | None = None,
    measured_by: str = "wheel",
    resolution_ms: float = 0.0,
    timing_sd_s: float = HAND_TIMING_SD_S,
) -> Pace:
    """The speed in m/min over `distance_m` metres in `elapsed_ms` milliseconds, with its uncertainty.

    `distance_u_m` is the distance's own standard uncertainty where known; else the default for
    `measured_by`. `resolution_ms` is the step in which the time was written down: 1000 for whole seconds.
    Raises BadInput for a distance or time of zero or less, or not finite.
    """
    above_zero("distance_m", distance_m, "m")
    time_s = above_zero("elapsed_ms", elapsed_ms, "ms") / 1000
    if distance_u_m is None:
        distance_u_m = default_distance_u(distance_m, measured_by)
    not_below_zero("distance_u_m", distance_u_m, "m")
    time_u_s = elapsed_u(resolution_ms, timing_sd_s)
    mpm = 60 * distance_m / time_s
    u = quotient_u(mpm, distance_u_m / distance_m, time_u_s / time_s)
    return Pace(distance_m, distance_u_m, time_s, time_u_s, mpm, u)


def difference_u(one: Pace, other: Pace, same_track: bool) -> float:
    """Standard uncertainty in m/min of the difference of two speeds.

    On the same track both share one distance and therefore one distance error, which nearly cancels
    (JCGM 100:2008, 5.2): only its effect on the difference itself stays.
    """
    timing = math.hypot(one.speed_mpm * one.elapsed_relative_u, other.speed_mpm * other.elapsed_relative_u)
    if same_track:
        return math.hypot(timing, (one.speed_mpm - other.speed_mpm) * one.distance_relative_u)
    return math.hypot(one.speed_u_mpm, other.speed_u_mpm)


def differ(one: Pace, other: Pace, same_track: bool = False) -> bool:
    """Whether watch and wheel can tell two canters apart: more than two standard uncertainties."""
    return abs(one.speed_mpm - other.speed_mpm) > TOLD_APART_FROM * difference_u(one, other, same_track)
