"""A pace as people read it: “412 ± 4 m/min, 8 slow”."""

import math

from fieldtally.trade.lateness import Lateness
from fieldtally.trade.pace import Pace

WITHIN_ERROR = "too close to the target for this watch and distance to tell"


def rounded(value: float) -> int:
    """To the nearest whole number, halves up, as JavaScript rounds too."""
    return math.floor(value + 0.5)


def speed_words(pace: Pace) -> str:
    """“412 ± 4 m/min”. The ± is one standard uncertainty and never shown as nothing."""
    return f"{rounded(pace.speed_mpm)} ± {max(1, rounded(pace.speed_u_mpm))} m/min"


def target_words(pace: Pace, late: Lateness) -> str:
    """“8 slow”, “8 fast” or “on target”: the difference of the two speeds as shown, in m/min."""
    slow = rounded(late.target_speed_mpm) - rounded(pace.speed_mpm)
    if slow == 0:
        return "on target"
    return f"{abs(slow)} {'slow' if slow > 0 else 'fast'}"


def headline(pace: Pace, late: Lateness | None = None) -> str:
    """“412 ± 4 m/min, 8 slow”, or without a target “412 ± 4 m/min”."""
    return speed_words(pace) if late is None else f"{speed_words(pace)}, {target_words(pace, late)}"


def early_or_late(value: float, unit: str) -> str:
    """“1.8 s late”, “12.4 m early”; to one decimal, halves away from zero."""
    tenths = rounded(abs(value) * 10) / 10
    if tenths == 0:
        return f"0.0 {unit}"
    return f"{tenths:.1f} {unit} {'late' if value > 0 else 'early'}"


def detail(late: Lateness) -> str:
    """The second line: “1.2 s late, 8.4 m late at the second flag”, and when the error hides it, so."""
    line = f"{early_or_late(late.seconds_late, 's')}, {early_or_late(late.metres_late, 'm')} at the second flag"
    return line if late.told_apart else f"{line}; {WITHIN_ERROR}"
