"""What went with falls of horses in a published study, said about the fence in hand.

The study compared 173 fences with a fall and 503 without; it shows what goes together, not what causes a fall, and
a fence without any of these is no promise.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from fieldtally.trade.asks import asks_of

STUDY = "Equine Veterinary Journal 38(2):158-163, 2006"
WIDE_FROM_CM = 200
SPREADS = ("spread_top_cm", "spread_base_cm")
ANGLED = ("angled_line", "corner")


@dataclass(frozen=True)
class Caution:
    code: str
    text: str
    source: str = STUDY


WIDE = Caution("wide_spread", "Straight fences with a spread of 2 m or more went with more falls of horses.")
DROP = Caution("drop_landing", "Drop landings went with more falls of horses.")
WATER = Caution("water", "Fences into or out of water went with more falls of horses.")
ANGLE = Caution("angled", "Angled fences went with more falls of horses.")


def of_part(part: Mapping) -> Iterator[Caution]:
    asks = asks_of(part)
    if any((part.get(spread) or 0) >= WIDE_FROM_CM for spread in SPREADS) and not set(ANGLED) & set(asks):
        yield WIDE
    if part.get("drop_cm") or "drop" in asks:
        yield DROP
    if "water" in asks:
        yield WATER
    if "angled_line" in asks:
        yield ANGLE


def fence_cautions(fence: Mapping) -> tuple[Caution, ...]:
    """Cautions for a fence and its elements, each once."""
    parts = [fence, *(fence.get("elements") or [])]
    return tuple(dict.fromkeys(caution for part in parts for caution in of_part(part)))
