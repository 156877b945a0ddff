"""All attempts of one horse in columns, sorted by day, outing and fence: indexed once, read per requirement."""

from collections.abc import Callable, Hashable
from dataclasses import dataclass, field

import numpy as np

from fieldtally.book import words
from fieldtally.readiness.shapes import Manners, Parts
from fieldtally.readiness.weight import recency

CLEAR, STOP, FALL, OTHER = range(4)
RESULT = dict.fromkeys(words.OUTCOMES, OTHER) | dict.fromkeys(words.STOPS, STOP) | dict.fromkeys(words.FALLS, FALL)
RESULT["clear"] = CLEAR
ATTITUDE = {None: 0} | {attitude: place for place, attitude in enumerate(words.ATTITUDES, start=1)}


@dataclass(frozen=True)
class Attempts:
    """One row per attempt, and one per combination met as a whole.

    `records` are in the order they came in and `source` is the place there of the record behind each row (the
    first of a combination's); `day` is the outing's date as an ordinal; `group` numbers one fence element in
    one outing; `place` numbers the field. `kept` holds what was worked out once for all levels.
    """

    records: list
    source: np.ndarray
    outing: np.ndarray
    day: np.ndarray
    place: np.ndarray
    group: np.ndarray
    part: np.ndarray
    manner: np.ndarray
    result: np.ndarray
    attitude: np.ndarray
    parts: Parts
    manners: Manners
    rows_by_ask: dict[str, np.ndarray]
    met: object  # what index_attempts read, to which more can be added
    kept: dict[Hashable, object] = field(default_factory=dict)

    def keep(self, key: Hashable, work: Callable):
        """What `work` gives, worked out the first time it is asked for under `key`."""
        found = self.kept.get(key)
        if found is None:
            found = self.kept[key] = work()
        return found

    def fades(self, today: int, half_life_days: float) -> np.ndarray:
        """What is left of each row's weight on the ordinal `today`."""
        return self.keep(("fades", today, half_life_days), lambda: recency(today - self.day, half_life_days))

    def record(self, row: int):
        return self.records[self.source[row]]

    def written(self, rows: np.ndarray) -> list[tuple[float, str]]:
        """When each row was first written down: see `Record.first`."""
        return [self.record(row).first for row in rows]

    def label(self, row: int) -> str:
        return self.parts.labels[self.part[row]]
