"""A level's typical cross-country course: how many efforts, and how many of them ask which question."""

import math
from collections.abc import Mapping, Sequence

from fieldtally.trade.rulebook import Level


def stated_middle(level: Level, *pairs: tuple[str, str]) -> float | None:
    """The middle of the first stated range (least, greatest); one end alone stands for itself."""
    for least, greatest in pairs:
        ends = [level.value("cross_country", quantity) for quantity in (least, greatest)]
        ends = [end for end in ends if end is not None]
        if ends:
            return sum(ends) / len(ends)
    return None


def efforts_of(level: Level, numbers: Mapping[str, float]) -> int:
    stated = stated_middle(level, ("efforts_min", "efforts_max"), ("obstacles_min", "obstacles_max"))
    return round(stated if stated is not None else numbers["default_efforts"])


def length_m_of(level: Level, numbers: Mapping[str, float]) -> float:
    stated = stated_middle(level, ("length_min_m", "length_max_m"))
    return stated if stated is not None else numbers["default_length_m"]


def mix(questions: Sequence[str], efforts: int, shares: Mapping[str, float]) -> dict[str, int]:
    """Shares out the efforts over the questions in whole numbers, by largest remainder."""
    wanted = {each: shares.get(each, 1.0) for each in questions}
    scale = efforts / sum(wanted.values())
    given = {each: math.floor(share * scale) for each, share in wanted.items()}
    by_remainder = sorted(questions, key=lambda each: given[each] - wanted[each] * scale)
    for each in by_remainder[: efforts - sum(given.values())]:
        given[each] += 1
    return given
