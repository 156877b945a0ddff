"""The distinct ways in which fences were met.

A season repeats itself: thousands of attempts share a few hundred shapes (fence, element, height,
presentation). Whether a shape speaks for a requirement is worked out once per shape, not per attempt.
"""

from dataclasses import dataclass, field

import numpy as np

from fieldtally.book import words
from fieldtally.readiness.fence_asks import ASK_BIT, asks_of, dimensions_of, element_of, greatest_dimensions
from fieldtally.readiness.limits import FENCE_DIMENSIONS
from fieldtally.readiness.requirement import Condition

SIDES = {
    "rein": words.REINS, "ground": words.GROUNDS, "way": words.WAYS,
    "landing": words.LANDINGS, "company": words.COMPANIES, "pace": words.PACES,
}  # fmt: skip
BITS = {side: {value: 1 << place for place, value in enumerate(values)} for side, values in SIDES.items()}
COLUMN = {name: place for place, name in enumerate(FENCE_DIMENSIONS)}


def company_bits(fence: dict, element: str | None, stated: str | None) -> int:
    """An element of a combination is inside it, with a fence before unless first and after unless last,
    whatever else was stated."""
    bits = BITS["company"][stated] if stated else 0
    letters = [each["letter"] for each in fence["elements"]]
    if element in letters and len(letters) > 1:
        bits |= BITS["company"]["inside_combination"]
        bits |= BITS["company"]["fence_before"] if element != letters[0] else 0
        bits |= BITS["company"]["fence_after"] if element != letters[-1] else 0
    return bits


def landing_bits(asks: int, stated: str | None) -> int:
    """A drop that nobody said was into water, at a fence without water, lands on the ground."""
    if stated:
        return BITS["landing"][stated]
    return 0 if asks & ASK_BIT["water"] else BITS["landing"]["ground"]


@dataclass
class Shapes:
    """Rows of bits and dimensions, one per shape. `fence_ids` names each shape's fence."""

    asks: list[int] = field(default_factory=list)
    sides: list[tuple[int, ...]] = field(default_factory=list)
    dimensions: list[list[float]] = field(default_factory=list)
    elements: list[int] = field(default_factory=list)
    fence_ids: list[str] = field(default_factory=list)
    labels: list[str] = field(default_factory=list)

    def add(self, fence_id: str, fence: dict, element: str | None, height_cm: float | None, sides: tuple) -> int:
        """A single attempt's shape; `sides` are the presentation's values in the order of SIDES."""
        part = element_of(fence, element)
        dimensions = dimensions_of(part)
        if height_cm is not None:
            dimensions[0] = height_cm
        asks = asks_of(part)
        bits = [BITS[side].get(value, 0) for side, value in zip(SIDES, sides, strict=True)]
        bits[3], bits[4] = landing_bits(asks, sides[3]), company_bits(fence, element, sides[4])
        return self.append(fence_id, fence, element, asks, tuple(bits), dimensions, 1)

    def add_combination(self, fence_id: str, fence: dict, elements: int) -> int:
        """The shape of a whole combination met in one presentation, of so many elements."""
        asks = ASK_BIT["combination"] | (ASK_BIT["bounce"] if "bounce" in fence["asks"] else 0)
        return self.append(fence_id, fence, None, asks, (0,) * len(SIDES), greatest_dimensions(fence), elements)

    def append(self, fence_id, fence, element, asks, bits, dimensions, elements) -> int:
        self.asks.append(asks)
        self.sides.append(bits)
        self.dimensions.append(dimensions)
        self.elements.append(elements)
        self.fence_ids.append(fence_id)
        self.labels.append(f"{fence['label']} {element}" if element else fence["label"])
        return len(self.asks) - 1

    def freeze(self) -> "ShapeTable":
        count = len(self.asks)
        return ShapeTable(
            np.array(self.asks, dtype=np.int64),
            np.array(self.sides, dtype=np.int64).reshape(count, len(SIDES)),
            np.array(self.dimensions, dtype=float).reshape(count, len(FENCE_DIMENSIONS)),
            np.array(self.elements, dtype=np.int64),
            tuple(self.fence_ids),
            tuple(self.labels),
        )


@dataclass(frozen=True)
class ShapeTable:
    asks: np.ndarray
    sides: np.ndarray
    dimensions: np.ndarray
    elements: np.ndarray
    fence_ids: tuple[str, ...]
    labels: tuple[str, ...]

    def meets(self, condition: Condition) -> np.ndarray:
        """Which shapes ask what the condition asks and were met in its presentation, size aside."""
        fits = (self.asks & ASK_BIT[condition.ask]) != 0
        if condition.elements:
            fits &= self.elements >= condition.elements
        for side, values in condition.presentation:
            wanted = sum(BITS[side][value] for value in values)
            fits &= (self.sides[:, list(SIDES).index(side)] & wanted) != 0
        return fits

    def size(self, dimension: str) -> np.ndarray:
        """Each shape's measured dimension in cm; NaN where nobody measured."""
        return self.dimensions[:, COLUMN[dimension]]
