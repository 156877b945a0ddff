"""Which attempts speak for a cross-country requirement at a level: by ask, presentation and size."""

from dataclasses import dataclass

import numpy as np

from fieldtally.readiness.context import Weighing
from fieldtally.readiness.limits import fence_limit
from fieldtally.readiness.requirement import Requirement


@dataclass(frozen=True)
class Selection:
    """Rows of attempts that meet the presentation: large enough, too small, and at fences nobody measured.

    `least_cm` is the size from which a fence counts, `limit_cm` the level's limit; None where any size
    counts because the requirement or the rulebook states none.
    """

    rows: np.ndarray
    smaller: np.ndarray
    unmeasured: np.ndarray
    limit_cm: float | None
    least_cm: float | None


def select(requirement: Requirement, weighing: Weighing) -> Selection:
    """Rows are sorted by day. A fence larger than the level's limit counts too."""
    condition, attempts = requirement.condition, weighing.book.attempts
    rows = attempts.rows_by_ask[condition.ask]
    shape = attempts.shape[rows]
    meets = attempts.shapes.meets(condition)
    limit = fence_limit(weighing.level, condition.size) if condition.size else None
    if limit is None:
        return Selection(rows[meets[shape]], rows[:0], rows[:0], None, None)
    least = limit * requirement.numbers["size_fraction"]
    size = attempts.shapes.size(condition.size)
    # half a millimetre, so that 79 cm measured as 78.99 in feet and inches is not a smaller fence
    large, unmeasured = meets & (size >= least - 0.05), meets & np.isnan(size)
    small = meets & ~large & ~unmeasured
    return Selection(rows[large[shape]], rows[small[shape]], rows[unmeasured[shape]], limit, least)
