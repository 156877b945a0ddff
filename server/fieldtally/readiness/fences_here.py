"""Which fences ask a requirement at a level: the one place that decides it for plans and next steps."""

import math

from fieldtally.readiness.fence_asks import ASK_BIT, asks_of, greatest_dimensions
from fieldtally.readiness.limits import fence_limit
from fieldtally.readiness.requirement import Requirement
from fieldtally.readiness.selection import ROUNDING_CM
from fieldtally.readiness.shapes import COLUMN
from fieldtally.trade.rulebook import Level


def asks_it(requirement: Requirement, fence: dict) -> bool:
    condition = requirement.condition
    if condition.elements:
        return len(fence["elements"]) >= condition.elements
    return any(asks_of(part) & ASK_BIT[condition.ask] for part in (fence, *fence["elements"]))


def fits(requirement: Requirement, fence: dict, level: Level) -> bool:
    """Asks it, at the level's size and not above its limit."""
    return asks_it(requirement, fence) and large_enough(requirement, fence, level) and not too_large(fence, level)


def large_enough(requirement: Requirement, fence: dict, level: Level) -> bool:
    condition = requirement.condition
    limit = fence_limit(level, condition.size) if condition.size else None
    if limit is None:
        return True
    size = greatest_dimensions(fence)[COLUMN[condition.size]]
    return limit * requirement.numbers["size_fraction"] - ROUNDING_CM <= size


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
