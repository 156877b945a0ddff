"""Optimum time and its kin: from a course's length and a speed to seconds, in seconds throughout.

Minutes are for people and come last: 2300 m at 600 m/min is 230 s, 3:50, and not the 3:49 that rounding
3.8333 minutes to 3.83 first would give. The arithmetic is exact (fractions), so that no stray digit
pushes a whole second over.
"""

import math
from fractions import Fraction

from fieldtally.trade.bad_input import BadInput, above_zero

# How an optimum time that is no whole second is brought to one. No rule text was found that says it: the
# recorded time goes up by rule, and "up" for the optimum is from memory (and in the rider's favour).
ROUNDINGS = {"up": math.ceil, "nearest": lambda exact: math.floor(exact + Fraction(1, 2)), "none": float}
DEFAULT_ROUNDING = "up"

WHOLE_SECOND = 1.0


def exact_s(length_m: float, speed_mpm: float) -> Fraction:
    """Length over speed in seconds, exactly."""
    above_zero("length_m", length_m, "m")
    return 60 * Fraction(str(length_m)) / Fraction(str(above_zero("speed_mpm", speed_mpm, "m/min")))


def time_at_speed_s(length_m: float, speed_mpm: float, rounding: str = DEFAULT_ROUNDING) -> float:
    """Seconds for `length_m` metres at `speed_mpm` m/min: optimum time, speed-fault time, time allowed.

    `rounding`: up, nearest (halves up) or none.
    """
    if rounding not in ROUNDINGS:
        raise BadInput("rounding", f"“{rounding}” is not known here.", f"Use one of: {', '.join(ROUNDINGS)}.")
    return ROUNDINGS[rounding](exact_s(length_m, speed_mpm))


def recorded_s(elapsed_ms: float, step_s: float = WHOLE_SECOND) -> float:
    """The time as recorded: any part of a step counts as the next whole one, so 30.25 s is 31 s.

    Source for whole seconds: USEF EV138.2 as quoted by a rider about 2012.
    """
    step = Fraction(str(above_zero("recorded_time_step_s", step_s, "s")))
    steps = math.ceil(Fraction(str(above_zero("elapsed_ms", elapsed_ms, "ms"))) / 1000 / step)
    return float(steps * step)


def seconds_begun(seconds: float) -> int:
    """Whole seconds begun in a span of `seconds`; none when it is zero or less."""
    return max(0, math.ceil(Fraction(str(seconds))))


def clock_words(seconds: float) -> str:
    """“3:50”: minutes and seconds to the nearest whole one, halves up."""
    whole = math.floor(Fraction(str(seconds)) + Fraction(1, 2))
    return f"{whole // 60}:{whole % 60:02d}"
