"""What a fence or one of its elements asks, and its measured dimensions."""

import math

from fieldtally.book.words import ASKS
from fieldtally.readiness.limits import FENCE_DIMENSIONS
from fieldtally.trade.asks import PROFILES

ASK_BIT = {ask: 1 << place for place, ask in enumerate(ASKS)}

# What a profile asks by its nature, used where nobody ticked what the fence asks.
BY_PROFILE = {profile: asks for profile, (asks, _) in PROFILES.items()}


def asks_of(part: dict) -> int:
    """Bits of everything a fence or element asks. The combination as such is asked by the whole fence
    only, where all its elements are met together."""
    asks = part["asks"] or BY_PROFILE[part["profile"]]
    bits = 0
    for ask in asks:
        bits |= ASK_BIT[ask]
    return bits & ~ASK_BIT["combination"]


def dimensions_of(part: dict) -> list[float]:
    """The measured dimensions in the order of FENCE_DIMENSIONS, in cm; NaN where nobody measured."""
    return [math.nan if part[name] is None else float(part[name]) for name in FENCE_DIMENSIONS]


def greatest_dimensions(fence: dict) -> list[float]:
    """Of a combination: the greatest of each dimension over the fence itself and its elements."""
    columns = zip(*map(dimensions_of, (fence, *fence["elements"])), strict=True)
    return [max((value for value in column if not math.isnan(value)), default=math.nan) for column in columns]


def element_of(fence: dict, letter: str | None) -> dict:
    """The element with this letter, or the fence itself where it has no such element."""
    for element in fence["elements"]:
        if element["letter"] == letter:
            return element
    return fence
