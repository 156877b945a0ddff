"""Penalties for time, over the optimum and, where a rulebook has them, too far under it."""

from dataclasses import dataclass

from fieldtally.trade.bad_input import not_below_zero
from fieldtally.trade.optimum import (
    DEFAULT_ROUNDING,
    WHOLE_SECOND,
    clock_words,
    recorded_s,
    seconds_begun,
    time_at_speed_s,
)


@dataclass(frozen=True)
class TimeRules:
    """What a rulebook says of time for one level, under its own names. None: not stated, or no such thing
    at this level.

    Too fast is told in one of two ways: the fastest speed that goes unpunished, or a window of seconds under
    the optimum time. `time_limit_factor` times the optimum is the time limit.
    """

    time_penalties_per_second: float | None = None
    time_limit_factor: float | None = None
    recorded_time_step_s: float | None = None
    too_fast_penalties_per_second: float | None = None
    too_fast_speed_mpm: float | None = None
    too_fast_window_s: float | None = None
    rounding: str = DEFAULT_ROUNDING


@dataclass(frozen=True)
class CourseTimes:
    """The times of one course, in s. `fastest_s`: quicker than this is too fast; None where nothing is."""

    length_m: float
    speed_mpm: float
    optimum_s: float
    limit_s: float | None
    fastest_s: float | None


@dataclass(frozen=True)
class TimeScore:
    """`seconds_over` is positive over the optimum, negative under. `penalties` None: rule not stated."""

    recorded_s: float
    seconds_over: float
    penalties: float | None
    eliminated: bool
    reason: str


def fastest_s(length_m: float, optimum_s: float, rules: TimeRules) -> float | None:
    if rules.too_fast_speed_mpm is not None:
        return time_at_speed_s(length_m, rules.too_fast_speed_mpm, rules.rounding)
    if rules.too_fast_window_s is not None:
        return optimum_s - not_below_zero("too_fast_window_s", rules.too_fast_window_s, "s")
    return None


def course_times(length_m: float, speed_mpm: float, rules: TimeRules) -> CourseTimes:
    """Optimum time, time limit and fastest unpunished time of a course, in seconds."""
    optimum = time_at_speed_s(length_m, speed_mpm, rules.rounding)
    limit = None if rules.time_limit_factor is None else rules.time_limit_factor * optimum
    return CourseTimes(length_m, speed_mpm, optimum, limit, fastest_s(length_m, optimum, rules))


def per_second(seconds: int, rate: float | None, what: str) -> tuple[float | None, str]:
    """Penalties for whole seconds at a rate, and the sentence that says so."""
    if rate is None:
        return None, f"{seconds} s {what}; the penalty is not stated in this rulebook"
    return round(seconds * rate, 2), f"{seconds} s {what} at {rate:g} each"


def time_score(
    times: CourseTimes, elapsed_ms: float, rules: TimeRules, allowed: str = "optimum time"
) -> TimeScore:
    """Time penalties for a round of `elapsed_ms` milliseconds. Each second begun counts whole.

    `allowed`: what the phase calls its time, in the reasons: show jumping has a “time allowed”.
    """
    recorded = recorded_s(elapsed_ms, rules.recorded_time_step_s or WHOLE_SECOND)
    over = recorded - times.optimum_s
    if times.limit_s is not None and recorded > times.limit_s:
        reason = f"over the time limit of {clock_words(times.limit_s)}: eliminated"
        return TimeScore(recorded, over, None, True, reason)
    if over > 0:
        penalties, reason = per_second(seconds_begun(over), rules.time_penalties_per_second, f"over the {allowed}")
    elif times.fastest_s is not None and recorded < times.fastest_s:
        under = seconds_begun(times.fastest_s - recorded)
        penalties, reason = per_second(under, rules.too_fast_penalties_per_second, "too fast")
    else:
        penalties, reason = 0.0, "within the time"
    return TimeScore(recorded, over, penalties, False, reason)
