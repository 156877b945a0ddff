"""Chance of clear when a fence is presented again after a stop, from what happened in the logbook."""

from collections.abc import Iterable, Mapping

import numpy as np

from fieldtally.readiness.attempts import STOP
from fieldtally.readiness.tally import Tally


def second_clear(tallies: Iterable[Tally], numbers: Mapping[str, float]) -> float:
    """Mean of a Beta posterior. Of the attempts at a fence in one outing with f stops, f - 1 were presented
    again and stopped again, and one was clear at last if any was."""
    clear, stopped = again([each.rows for each in tallies], tallies_attempts(tallies))
    weight = numbers["second_weight"]
    return (numbers["second_clear"] * weight + clear) / (weight + clear + stopped)


def tallies_attempts(tallies: Iterable[Tally]):
    return next((each.attempts for each in tallies), None)


def again(row_lists: list[np.ndarray], attempts) -> tuple[int, int]:
    """(clear, stopped) second and later presentations, each row counted once."""
    rows = np.unique(np.concatenate(row_lists)) if row_lists else np.array([], dtype=np.int64)
    if not len(rows):
        return 0, 0
    groups, place = np.unique(attempts.group[rows], return_inverse=True)
    stops = np.bincount(place, attempts.result[rows] == STOP, len(groups))
    clear = np.bincount(place, attempts.result[rows] == 0, len(groups))
    stopped_at = stops > 0
    return int((clear[stopped_at] > 0).sum()), int((stops[stopped_at] - 1).sum())
