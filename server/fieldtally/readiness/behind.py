"""The attempts behind a finding, as a list that opens under it."""

from datetime import date

import numpy as np

from fieldtally.readiness.attempts import CLEAR
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
    weights = weights_of(faded, rows)
    return [listed_attempt(unfaded, row, weights[place]) for place, row in reversed([*enumerate(rows.tolist())])]


def weights_of(faded: Tally, rows: np.ndarray) -> list[float]:
    """The weight of each row in the window, 0 outside it; `rows` are the tally's own or older."""
    outside = faded.count == 0
    if outside:
        return [0.0] * len(rows)
    places = faded.rows.searchsorted(rows)
    return np.where(rows >= faded.rows[0], faded.weights[places], 0.0).tolist()


def listed_attempt(tally: Tally, row: int, weight: float) -> dict:
    attempts = tally.attempts
    record = attempts.record(row)
    return {
        "record_id": record.record_id,
        "kind": "attempt",
        "local_date": date.fromordinal(int(attempts.day[row])).isoformat(),
        "label": attempts.label(row),
        "outcome": record.body["outcome"],
        "weight": round(weight, 3),
        "fence_id": attempts.fence_id(row),
        "outing_id": record.body["outing_id"],
    }
