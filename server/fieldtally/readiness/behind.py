"""The attempts behind a finding, as a list that opens under it."""

from datetime import date

import numpy as np

from fieldtally.readiness.attempts import CLEAR
from fieldtally.readiness.tally import Tally

MOST_LISTED = 40


def attempts_behind(faded: Tally, unfaded: Tally) -> list[dict]:
    """Newest first, at most MOST_LISTED: every stop and fall before any clear attempt is left out. An
    attempt outside the window is listed with weight 0."""
    weight = dict(zip(faded.rows.tolist(), faded.weights.tolist(), strict=True))
    rows = unfaded.rows
    if len(rows) > MOST_LISTED:
        faults = rows[unfaded.results != CLEAR][-MOST_LISTED:]
        rows = np.sort(
            np.concatenate((faults, unfaded.clear_rows[len(unfaded.clear_rows) - MOST_LISTED + len(faults) :]))
        )
    return [listed_attempt(unfaded, row, weight.get(row, 0.0)) for row in rows[::-1].tolist()]


def listed_attempt(tally: Tally, row: int, weight: float) -> dict:
    attempts = tally.attempts
    record, shape = attempts.records[row], attempts.shape[row]
    return {
        "record_id": record.record_id,
        "kind": "attempt",
        "local_date": date.fromordinal(int(attempts.day[row])).isoformat(),
        "label": attempts.shapes.labels[shape],
        "outcome": record.body["outcome"],
        "weight": round(weight, 3),
        "fence_id": attempts.shapes.fence_ids[shape],
        "outing_id": record.body["outing_id"],
    }
