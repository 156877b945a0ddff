"""Which fences ask a requirement at a level: the one place that decides it for plans and next steps."""

import math
from collections.abc import Mapping, Sequence

from fieldtally.readiness.fence_asks import ASK_BIT, asks_of, greatest_dimensions
from fieldtally.readiness.limits import fence_limit
from fieldtally.readiness.requirement import Requirement
from fieldtally.readiness.selection import ROUNDING_CM, limit_and_least_cm
from fieldtally.readiness.shapes import BITS, COLUMN, company_by_nature
from fieldtally.trade.fit import parts_of
from fieldtally.trade.rulebook import Level


def asks_it(requirement: Requirement, fence: dict) -> bool:
    """Whether it can be met here as asked: a ditch inside a combination is no ditch on its own."""
    condition = requirement.condition
    if condition.elements:
        return len(fence["elements"]) >= condition.elements
    return any(
        asks_of(part) & ASK_BIT[condition.ask] and all(can_be(fence, part, *side) for side in condition.presentation)
        for part in (fence, *fence["elements"])
    )


def asks_at_all(requirement: Requirement, fence: dict, level: Level) -> bool:
    """Whether it asks this in any manner and is not known to be smaller than counts: what a question that is on
    hold keeps clear of."""
    condition = requirement.condition
    if condition.elements:
        asks = len(fence["elements"]) >= condition.elements
    else:
        asks = all_asks_of(fence) & ASK_BIT[condition.ask]
    return bool(asks) and not too_small(requirement, fence, level)


def all_asks_of(fence: dict) -> int:
    """Bits of what a fence and its elements ask."""
    bits = 0
    for part in (fence, *fence["elements"]):
        bits |= asks_of(part)
    return bits


def can_be(fence: dict, part: dict, side: str, wanted: tuple[str, ...]) -> bool:
    """Whether a part can be met so, by its nature. Of ground, rein and pace a fence says nothing."""
    if side == "company":
        bits = company_by_nature(fence, part.get("letter"))
        return bool(bits & sum(BITS[side][value] for value in wanted)) if bits else wanted != ("inside_combination",)
    if side == "landing":
        return ("water" in wanted) == any(asks_of(each) & ASK_BIT["water"] for each in (fence, *fence["elements"]))
    return True


def fits(requirement: Requirement, fence: dict, level: Level) -> bool:
    """Asks it, at the level's size and not above its limit, and measured so that both are known."""
    return (
        asks_it(requirement, fence)
        and not unmeasured(fence, level)
        and large_enough(requirement, fence, level)
        and not too_large(fence, level)
    )


def unmeasured(fence: dict, level: Level) -> bool:
    """Whether its kind needs a measurement that nobody made: one that the level limits, or any at all."""
    return any(part_unmeasured(part, needed, level) for _, part, needed in parts_of(fence))


def part_unmeasured(part: Mapping, needed: Sequence[str], level: Level) -> bool:
    missing = [name for name in needed if part.get(name) is None]
    return bool(missing) and (
        len(missing) == len(needed) or any(fence_limit(level, name) is not None for name in missing)
    )


def large_enough(requirement: Requirement, fence: dict, level: Level) -> bool:
    least = least_cm(requirement, level)
    return least is None or size_cm(requirement, fence) >= least


def too_small(requirement: Requirement, fence: dict, level: Level) -> bool:
    """Known to be smaller than counts; of an unmeasured fence nobody knows."""
    least = least_cm(requirement, level)
    return least is not None and size_cm(requirement, fence) < least


def least_cm(requirement: Requirement, level: Level) -> float | None:
    _, least = limit_and_least_cm(requirement, level)
    return None if least is None else least - ROUNDING_CM


def size_cm(requirement: Requirement, fence: dict) -> float:
    return greatest_dimensions(fence)[COLUMN[requirement.condition.size]]


def too_large(fence: dict, level: Level) -> bool:
    """Any measured dimension over a stated limit of the level."""
    sizes = greatest_dimensions(fence)
    limits = ((fence_limit(level, name), sizes[place]) for name, place in COLUMN.items() if name != "face_width_cm")
    return any(limit is not None and size > limit + ROUNDING_CM for limit, size in limits)


def height_cm(fence: dict) -> float | None:
    height = greatest_dimensions(fence)[COLUMN["height_cm"]]
    return None if math.isnan(height) else height


def in_order(fences: dict, keys: list[str]) -> list[str]:
    """Favourites first, then as listed in the field."""
    return sorted(keys, key=lambda key: (not fences[key].body["favourite"], fences[key].body["order"] or 0, key))
