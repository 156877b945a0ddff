"""What was met, and how: the distinct parts of fences and the distinct manners of meeting them.

A season repeats itself: thousands of attempts share a few hundred parts (fence, element, height) and
manners (presentation, outcome, attitude). Whether they speak for a requirement is worked out once for each
and looked up for the attempts.
"""

from dataclasses import dataclass, field

import numpy as np

from fieldtally.book import words
from fieldtally.readiness.fence_asks import ASK_BIT, asks_of, dimensions_of, element_of, greatest_dimensions
from fieldtally.readiness.limits import FENCE_DIMENSIONS

SIDES = {
    "rein": words.REINS, "ground": words.GROUNDS, "way": words.WAYS,
    "landing": words.LANDINGS, "company": words.COMPANIES, "pace": words.PACES,
}  # fmt: skip
BITS = {side: {value: 1 << place for place, value in enumerate(values)} for side, values in SIDES.items()}
COLUMN = {name: place for place, name in enumerate(FENCE_DIMENSIONS)}


def company_by_nature(fence: dict, element: str | None) -> int:
    """An element of a combination is inside it, with a fence before unless first and after unless last,
    whatever else was stated."""
    letters = [each["letter"] for each in fence["elements"]]
    if element not in letters or len(letters) < 2:
        return 0
    bits = BITS["company"]["inside_combination"]
    bits |= BITS["company"]["fence_before"] if element != letters[0] else 0
    return bits | (BITS["company"]["fence_after"] if element != letters[-1] else 0)


def landing_by_nature(asks: int) -> int:
    """A drop that nobody said was into water, at a fence without water, lands on the ground."""
    return 0 if asks & ASK_BIT["water"] else BITS["landing"]["ground"]


@dataclass
class PartList:
    """Collects parts, one row each: what it asks, its dimensions, what its nature says of company and
    landing, of how many elements it is (0 for a single fence or element)."""

    rows: list[tuple[int, int, int, int, int]] = field(default_factory=list)
    dimensions: list[list[float]] = field(default_factory=list)
    fence_ids: list[str] = field(default_factory=list)
    labels: list[str] = field(default_factory=list)
    spots: dict[tuple, int] = field(default_factory=dict)

    def add(self, fence_id: str, fence: dict, element: str | None, height_cm: float | None) -> int:
        part = element_of(fence, element)
        dimensions = dimensions_of(part)
        if height_cm is not None:
            dimensions[COLUMN["height_cm"]] = height_cm
        asks = asks_of(part)
        label = f"{fence['label']} {element}" if element else fence["label"]
        nature = company_by_nature(fence, element), landing_by_nature(asks)
        return self.append(fence_id, label, element, (asks, *nature, 0), dimensions)

    def add_combination(self, fence_id: str, fence: dict, elements: int) -> int:
        """A whole combination met in one presentation, of so many elements."""
        asks = ASK_BIT["combination"] | (ASK_BIT["bounce"] if "bounce" in fence["asks"] else 0)
        return self.append(fence_id, fence["label"], "whole", (asks, 0, 0, elements), greatest_dimensions(fence))

    def append(self, fence_id: str, label: str, element: str | None, row: tuple, dimensions: list[float]) -> int:
        """`spot` numbers the fence and element whatever the height: the place that repeats in an outing."""
        spot = self.spots.setdefault((fence_id, element), len(self.spots))
        self.rows.append((*row, spot))
        self.dimensions.append(dimensions)
        self.fence_ids.append(fence_id)
        self.labels.append(label)
        return len(self.rows) - 1

    def freeze(self) -> "Parts":
        columns = np.array(self.rows, dtype=np.int64).reshape(len(self.rows), 5).T.copy()
        dimensions = np.array(self.dimensions, dtype=float).reshape(len(self.rows), len(FENCE_DIMENSIONS)).T.copy()
        return Parts(*columns, dimensions, tuple(self.fence_ids), tuple(self.labels))


@dataclass(frozen=True)
class Parts:
    asks: np.ndarray
    company: np.ndarray
    landing: np.ndarray
    elements: np.ndarray
    spot: np.ndarray
    dimensions: np.ndarray
    fence_ids: tuple[str, ...]
    labels: tuple[str, ...]

    def size(self, dimension: str) -> np.ndarray:
        """Each part's measured dimension in cm; NaN where nobody measured."""
        return self.dimensions[COLUMN[dimension]]


@dataclass(frozen=True)
class Manners:
    """One row per manner: bits of each side of the presentation (0 where nobody said), result, attitude."""

    sides: dict[str, np.ndarray]
    result: np.ndarray
    attitude: np.ndarray


def freeze_manners(rows: list[tuple]) -> Manners:
    """`rows` hold result, attitude and the presentation's values in the order of SIDES."""
    sides = {
        side: np.array([BITS[side].get(row[2 + place], 0) for row in rows], dtype=np.int64)
        for place, side in enumerate(SIDES)
    }
    return Manners(
        sides,
        np.array([row[0] for row in rows], dtype=np.int64),
        np.array([row[1] for row in rows], dtype=np.int64),
    )
