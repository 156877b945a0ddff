"""The course card: the times of a cross-country course, and where the clock should be along it."""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from fieldtally.trade.bad_input import BadInput, not_below_zero
from fieldtally.trade.optimum import clock_words, exact_s
from fieldtally.trade.time_penalties import CourseTimes, TimeRules, course_times

MOST_MINUTES = 60  # a course longer than this at its speed is a typing mistake
CAUTION = (
    "Times from the length and the speed alone. The organiser's optimum time and the rulebook in force "
    "count; ride to the ground, the weather and your horse before the watch."
)


@dataclass(frozen=True)
class Mark:
    """A place on the course, in m from the start, and the clock there in s at the course's speed."""

    label: str
    distance_m: float
    clock_s: float


@dataclass(frozen=True)
class CourseCard:
    times: CourseTimes
    minute_markers: tuple[Mark, ...]
    fences: tuple[Mark, ...]


def clock_at_s(distance_m: float, speed_mpm: float) -> float:
    """Seconds from the start to `distance_m` metres at an even `speed_mpm` m/min."""
    return float(exact_s(distance_m, speed_mpm)) if distance_m else 0.0


def minute_markers(length_m: float, speed_mpm: float) -> tuple[Mark, ...]:
    """Where each full minute ends at an even speed; the finish itself is no marker."""
    minutes = exact_s(length_m, speed_mpm) / 60
    if minutes > MOST_MINUTES:
        raise BadInput("length_m", f"{length_m:g} m at {speed_mpm:g} m/min takes over an hour.",
                       "Check the length (m) and the speed (m/min).")  # fmt: skip
    each_m = Fraction(str(speed_mpm))
    return tuple(Mark(f"{k} min", float(k * each_m), 60.0 * k) for k in range(1, math.ceil(minutes)))


def fence_marks(fences: Sequence[tuple[str, float]], length_m: float, speed_mpm: float) -> tuple[Mark, ...]:
    """The clock at each (label, distance in m) fence, which must come in the order they are jumped."""
    before = 0.0
    for index, (label, distance_m) in enumerate(fences):
        field = f"fences[{index}].distance_m"
        if not_below_zero(field, distance_m, "m") > length_m:
            raise BadInput(field, f"Fence {label} at {distance_m:g} m lies beyond the finish at {length_m:g} m.",
                           "Check the distance, measured from the start.")  # fmt: skip
        if distance_m < before:
            raise BadInput(field, f"Fence {label} at {distance_m:g} m comes before the one listed above it.",
                           "List the fences in the order they are jumped.")  # fmt: skip
        before = distance_m
    return tuple(Mark(label, distance_m, clock_at_s(distance_m, speed_mpm)) for label, distance_m in fences)


def course_card(
    length_m: float, speed_mpm: float, rules: TimeRules, fences: Sequence[tuple[str, float]] = ()
) -> CourseCard:
    """The card of a course of `length_m` metres ridden at `speed_mpm` m/min under `rules`."""
    times = course_times(length_m, speed_mpm, rules)
    return CourseCard(times, minute_markers(length_m, speed_mpm), fence_marks(fences, length_m, speed_mpm))


def time_lines(times: CourseTimes) -> list[str]:
    lines = [f"Optimum time  {clock_words(times.optimum_s)}"]
    if times.fastest_s is not None:
        lines.append(f"Too fast under {clock_words(times.fastest_s)}")
    limit = "not stated" if times.limit_s is None else clock_words(times.limit_s)
    return [*lines, f"Time limit    {limit}"]


def mark_lines(title: str, marks: Sequence[Mark]) -> list[str]:
    if not marks:
        return []
    width = max(len(mark.label) for mark in marks)
    return ["", title, *(f"{mark.label:<{width}}  {mark.distance_m:6.0f} m  {clock_words(mark.clock_s):>5}"
                         for mark in marks)]  # fmt: skip


def card_text(card: CourseCard, title: str = "Course card") -> str:
    """The card as printable text, one thing to a line."""
    times = card.times
    head = [title, f"{times.length_m:g} m at {times.speed_mpm:g} m/min", "", *time_lines(times)]
    body = mark_lines("Minute markers", card.minute_markers) + mark_lines("Fences", card.fences)
    return "\n".join([*head, *body, "", CAUTION])
