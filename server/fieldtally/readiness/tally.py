"""Counting the attempts that speak for a requirement."""

from dataclasses import dataclass
from functools import cached_property

import numpy as np

from fieldtally.readiness.attempts import CLEAR, FALL, STOP, Attempts
from fieldtally.readiness.weight import recency, shared


@dataclass(frozen=True)
class Tally:
    """Rows of attempts (sorted by day and outing) with their weights, and what they add up to."""

    attempts: Attempts
    rows: np.ndarray
    weights: np.ndarray

    @cached_property
    def results(self) -> np.ndarray:
        return self.attempts.result[self.rows]

    @cached_property
    def clear_rows(self) -> np.ndarray:
        return self.rows[self.results == CLEAR]

    @property
    def count(self) -> int:
        return len(self.rows)

    @property
    def clear(self) -> int:
        return len(self.clear_rows)

    @cached_property
    def weight(self) -> float:
        return float(self.weights.sum())

    @cached_property
    def clear_weight(self) -> float:
        return float(self.weights[self.results == CLEAR].sum())

    @cached_property
    def outings(self) -> int:
        return runs(self.attempts.outing[self.clear_rows])

    @cached_property
    def fields(self) -> int:
        return len(set(self.attempts.place[self.clear_rows].tolist()))

    @property
    def last_day(self) -> int | None:
        return int(self.attempts.day[self.rows[-1]]) if self.count else None

    def count_of(self, result: int) -> int:
        return int((self.results == result).sum())

    def last_day_of(self, *results: int) -> int | None:
        """The last day on which any of these results happened."""
        days = self.attempts.day[self.rows[np.isin(self.results, results)]]
        return int(days[-1]) if len(days) else None

    def clear_after(self, day: int) -> tuple[int, int]:
        """Clear attempts on later days than `day`, and in how many outings."""
        later = self.clear_rows[self.attempts.day[self.clear_rows] > day]
        return len(later), runs(self.attempts.outing[later])

    @cached_property
    def stops(self) -> int:
        return self.count_of(STOP)

    @cached_property
    def falls(self) -> int:
        return self.count_of(FALL)


def runs(values: np.ndarray) -> int:
    """How many different values a sorted column holds."""
    return 0 if len(values) == 0 else 1 + int((values[1:] != values[:-1]).sum())


def repeats(groups: np.ndarray) -> np.ndarray:
    """For each row, how many rows of its group there are; rows of a group stand together."""
    if len(groups) == 0:
        return groups
    starts = np.flatnonzero(np.concatenate(([True], groups[1:] != groups[:-1])))
    lengths = np.diff(np.append(starts, len(groups)))
    return np.repeat(lengths, lengths)


def tally(attempts: Attempts, rows: np.ndarray, today: int, numbers: dict[str, float], fading: bool = True) -> Tally:
    """Weighs `rows` as of the ordinal `today`. Not fading: all ages count alike and no window ends."""
    if fading:
        rows = rows[today - attempts.day[rows] <= numbers["window_days"]]
    weights = shared(repeats(attempts.group[rows]), numbers["repeat_discount"])
    if fading:
        weights = weights * recency(today - attempts.day[rows], numbers["half_life_days"])
    return Tally(attempts, rows, weights)
