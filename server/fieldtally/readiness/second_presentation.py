"""Chance of clear when a fence is presented again after a stop, from what happened in the logbook."""

from collections.abc import Mapping

import numpy as np

from fieldtally.readiness.attempts import CLEAR, STOP, Attempts


def second_clear(clear: int, stopped: int, numbers: Mapping[str, float]) -> float:
    """Mean of a Beta posterior over all fences, whatever their size."""
    weight = numbers["second_weight"]
    return (numbers["second_clear"] * weight + clear) / (weight + clear + stopped)


def again(attempts: Attempts) -> tuple[int, int]:
    """(clear, stopped) second and later presentations after a stop. Of the attempts at a fence in one outing
    with f stops, f - 1 were presented again and stopped again, and one was clear at last if any was."""
    single = attempts.parts.elements[attempts.part] == 0
    group, result = attempts.group[single], attempts.result[single]
    if not len(group):
        return 0, 0
    starts = np.flatnonzero(np.concatenate(([True], group[1:] != group[:-1])))
    stops = np.add.reduceat((result == STOP).astype(np.int64), starts)
    clear = np.add.reduceat((result == CLEAR).astype(np.int64), starts)
    stopped_at = stops > 0
    return int(np.count_nonzero(clear[stopped_at])), int((stops[stopped_at] - 1).sum())
