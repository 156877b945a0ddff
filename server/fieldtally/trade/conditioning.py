"""Interval sets towards a level: canters with walks between, the canters growing, the walk not.

What is published is thin and told as such: the structure is from riders restating the USCTA Book of Eventing
(1987, reprinted by USEA in 2015) and from a forum; the minutes and speeds are from memory. A coach's plan
goes before this one.
"""

import math
from dataclasses import dataclass

from fieldtally.trade.bad_input import above_zero
from fieldtally.trade.rulebook import Level
from fieldtally.trade.score_rules import course_speeds


@dataclass(frozen=True)
class Source:
    """Where a figure is from and how sure: governing_body, secondary or from_memory."""

    text: str
    grade: str


STRUCTURE = Source("riders' forum: usually three canters, the canter grows and the walk between does not", "secondary")
WARM_UP = Source("a site adapting the USCTA Book of Eventing (1987): 15 minutes of walk first", "secondary")
MINUTES = Source("3 x 3 min growing to 3 x 5-6 min, 3 then 2 min of walk, every third or fourth day", "from_memory")
SPEEDS = Source("350 to 400 m/min", "from_memory")
LEAD_UP = Source("riders' forum: the last four to six weeks before the first event at 90 cm", "secondary")
SOURCES = (STRUCTURE, WARM_UP, MINUTES, SPEEDS, LEAD_UP)

CANTERS = 3
WARM_UP_WALK_MIN = 15
FIRST_CANTER_MIN, LONGEST_CANTER_MIN = 3, 6
FIRST_WALK_MIN, LATER_WALK_MIN = 3, 2
LATER_FROM_MIN = 5  # canters this long come with the shorter walk
SLOWEST_MPM, FASTEST_MPM = 350.0, 400.0
DAYS_BETWEEN = (3, 4)

CAUTIONS = (
    "A first outline only: your coach's plan and your vet's advice go before it.",
    "Not on hard or deep ground, nor in heat and humidity; older horses and horses back from injury need less.",
    "Go on to the next step only when the last one was easy and the recovery was as it should be.",
    "Tight, drawn or dull, off the feed, a warm leg or an uneven stride: stop, and ask the vet.",
)


@dataclass(frozen=True)
class IntervalStep:
    """One step: `canters` canters of `work_min` minutes at `speed_mpm` (slowest, fastest), `walk_min` between."""

    canters: int
    work_min: int
    walk_min: int
    speed_mpm: tuple[float, float]


def course_minutes(level: Level) -> float | None:
    """Minutes the level's longest course takes at its fastest speed; None where length or speed is not stated."""
    length_m, speeds = level.value("cross_country", "length_max_m"), course_speeds(level)
    return None if length_m is None or speeds is None else length_m / speeds[1]


def work_speed(course_speed_mpm: float) -> tuple[float, float]:
    """Interval speed in m/min, never above the speed of the course prepared for."""
    above_zero("course_speed_mpm", course_speed_mpm, "m/min")
    return min(SLOWEST_MPM, course_speed_mpm), min(FASTEST_MPM, course_speed_mpm)


def interval_steps(course_min: float, course_speed_mpm: float) -> tuple[IntervalStep, ...]:
    """The steps towards a course of `course_min` minutes at `course_speed_mpm` m/min, shortest first.

    The last step's canters are as long as the course, at least 3 and at most 6 minutes.
    """
    longest = min(LONGEST_CANTER_MIN, max(FIRST_CANTER_MIN, math.ceil(above_zero("course_min", course_min, "min"))))
    speeds = work_speed(course_speed_mpm)
    return tuple(
        IntervalStep(CANTERS, work, LATER_WALK_MIN if work >= LATER_FROM_MIN else FIRST_WALK_MIN, speeds)
        for work in range(FIRST_CANTER_MIN, longest + 1)
    )


def steps_for(level: Level) -> tuple[IntervalStep, ...]:
    """The steps towards a level; none where the rulebook does not state its course's length and speed."""
    minutes, speeds = course_minutes(level), course_speeds(level)
    return () if minutes is None or speeds is None else interval_steps(minutes, speeds[1])


def step_words(step: IntervalStep) -> str:
    """“3 x 4 min at 350 to 400 m/min, 3 min walk between”."""
    low, high = step.speed_mpm
    speed = f"{low:g} m/min" if low == high else f"{low:g} to {high:g} m/min"
    return f"{step.canters} x {step.work_min} min at {speed}, {step.walk_min} min walk between"
