"""The attempts behind a finding, as a list that opens under it."""

from datetime import date

import numpy as np

from fieldtally.readiness.attempts import CLEAR, Attempts
from fieldtally.readiness.tally import Tally

MOST_LISTED = 20


def attempts_behind(faded: Tally, unfaded: Tally) -> list[dict]:
    """Newest first, at most MOST_LISTED: every stop and fall before any clear attempt is left out. An
    attempt outside the window is listed with weight 0."""
    rows = unfaded.rows
    if len(rows) > MOST_LISTED:
        faults = rows[unfaded.results != CLEAR][-MOST_LISTED:]
        clear = unfaded.clear_rows[unfaded.clear - MOST_LISTED + len(faults) :]
        rows = np.sort(np.concatenate((faults, clear)))
    rows = rows[::-1]
    attempts = unfaded.attempts
    columns = (attempts.source[rows], attempts.part[rows], attempts.day[rows], weights_of(faded, rows))
    return [listed_attempt(attempts, *row) for row in zip(*(column.tolist() for column in columns), strict=True)]


def weights_of(faded: Tally, rows: np.ndarray) -> np.ndarray:
    """The weight of each row in the window, 0 outside it; `rows` are the tally's own or older."""
    if not faded.count:
        return np.zeros(len(rows))
    return np.where(rows >= faded.rows[0], faded.weights[faded.rows.searchsorted(rows)], 0.0)


def listed_attempt(attempts: Attempts, source: int, part: int, day: int, weight: float) -> dict:
    record, parts = attempts.records[source], attempts.parts
    return {
        "record_id": record.record_id,
        "kind": "attempt",
        "local_date": date.fromordinal(day).isoformat(),
        "label": parts.labels[part],
        "outcome": record.body["outcome"],
        "weight": round(weight, 3),
        "fence_id": parts.fence_ids[part],
        "outing_id": record.body["outing_id"],
    }
