"""Counting the attempts that speak for a requirement."""

from dataclasses import dataclass, replace

import numpy as np

from fieldtally.readiness.attempts import CLEAR, FALL, STOP, Attempts
from fieldtally.readiness.once import once
from fieldtally.readiness.weight import share

# all that a tally reads of a requirement's numbers
NUMBERS_USED = ("window_days", "half_life_days", "repeat_discount")


@dataclass(frozen=True)
class Tally:
    """Rows of attempts (sorted by day and outing), and what they add up to as of the ordinal `today`.

    Fading: weights fade with age. Not fading: all ages count alike.
    """

    attempts: Attempts
    rows: np.ndarray
    today: int
    numbers: dict[str, float]
    fading: bool

    @once
    def days(self) -> np.ndarray:
        return self.attempts.day[self.rows]

    @once
    def weights(self) -> np.ndarray:
        is_fault = self.results != CLEAR
        attempts, faults = repeats(self.attempts.group[self.rows], is_fault)
        weights = share(faults, attempts, is_fault, self.numbers["repeat_discount"])
        return (
            weights * self.attempts.fades(self.today, self.numbers["half_life_days"])[self.rows]
            if self.fading
            else weights
        )

    @once
    def results(self) -> np.ndarray:
        return self.attempts.result[self.rows]

    @once
    def is_clear(self) -> np.ndarray:
        return self.results == CLEAR

    @once
    def clear_rows(self) -> np.ndarray:
        return self.rows[self.is_clear]

    @once
    def count(self) -> int:
        return len(self.rows)

    @once
    def clear(self) -> int:
        return len(self.clear_rows)

    @once
    def weight(self) -> float:
        return float(self.weights.sum()) if self.count else 0.0

    @once
    def clear_weight(self) -> float:
        return float(self.weights[self.is_clear].sum()) if self.count else 0.0

    @once
    def outings(self) -> int:
        return runs(self.attempts.outing[self.clear_rows])

    @once
    def fields(self) -> int:
        return len(set(self.attempts.place[self.clear_rows].tolist()))

    def with_discount(self, discount: float) -> "Tally":
        """The same rows, with repeats in one outing sharing their weight by another discount. Made once."""
        other = self.__dict__.get("discounted")
        if other is None or other.numbers["repeat_discount"] != discount:
            other = replace(self, numbers={**self.numbers, "repeat_discount": discount})
            self.__dict__["discounted"] = other
        return other

    @property
    def last_day(self) -> int | None:
        return int(self.days[-1]) if self.count else None

    def last_day_where(self, happened: np.ndarray) -> int | None:
        days = self.days[happened]
        return int(days[-1]) if len(days) else None

    def clear_on_later_days(self, day: int) -> tuple[int, int]:
        """Clear attempts on days later than the ordinal `day`, and in how many outings."""
        since = self.clear_rows[self.days[self.is_clear] > day]
        return len(since), runs(self.attempts.outing[since])

    def clear_since_last(self, happened: np.ndarray) -> tuple[int, int]:
        """Clear attempts since the last row where something happened, that day's too where they were written down
        after it; and in how many outings of later days."""
        day = self.last_day_where(happened)
        last = max(self.attempts.written(self.rows[happened & (self.days == day)]))
        that_day = self.attempts.written(self.rows[self.is_clear & (self.days == day)])
        later, outings = self.clear_on_later_days(day)
        return later + sum(each > last for each in that_day), outings

    @once
    def stops(self) -> int:
        return int(np.count_nonzero(self.results == STOP))

    @once
    def falls(self) -> int:
        return int(np.count_nonzero(self.results == FALL))


def runs(values: np.ndarray) -> int:
    """How many different values a sorted column holds."""
    return 0 if len(values) == 0 else 1 + int(np.count_nonzero(values[1:] != values[:-1]))


def repeats(groups: np.ndarray, is_fault: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
    """For each row, how many rows its group has, and how many of them are faults; rows of a group stand
    together."""
    if len(groups) == 0:
        return groups, groups
    begins = np.ones(len(groups) + 1, dtype=bool)
    np.not_equal(groups[1:], groups[:-1], out=begins[1:-1])
    ends = begins.nonzero()[0]
    lengths = ends[1:] - ends[:-1]
    number = begins[:-1].cumsum() - 1
    faults = np.bincount(number[is_fault], minlength=len(lengths))
    return lengths[number], faults[number]


def tally(attempts: Attempts, rows: np.ndarray, today: int, numbers: dict[str, float], fading: bool = True) -> Tally:
    """Fading counts the window only; not fading counts everything ever."""
    if fading:
        rows = rows[rows.searchsorted(attempts.day.searchsorted(today - numbers["window_days"])) :]
    return Tally(attempts, rows, today, numbers, fading)
