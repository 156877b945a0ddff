"""Which attempts speak for a cross-country requirement at a level: by ask, presentation and size.

A fall speaks whatever the size of the fence, measured or not, and where nobody said how it was met: what holds must
not be lost because the fence was small or the telling short.
"""

from dataclasses import dataclass

import numpy as np

from fieldtally.readiness.attempts import FALL, Attempts
from fieldtally.readiness.limits import fence_limit
from fieldtally.readiness.requirement import Condition, Requirement
from fieldtally.readiness.shapes import BITS
from fieldtally.trade.rulebook import Level

# half a millimetre, so that 90 cm entered as 2 ft 11½ in is not a smaller fence
ROUNDING_CM = 0.05


@dataclass(frozen=True)
class Selection:
    """Rows of attempts that meet the presentation: large enough (or a fall), too small, and at fences nobody measured.

    `least_cm` is the size from which a fence counts, None where any does; `limit_cm` the level's limit, None where
    the requirement or the rulebook states none.
    """

    rows: np.ndarray
    smaller: np.ndarray
    unmeasured: np.ndarray
    limit_cm: float | None
    least_cm: float | None


def select(requirement: Requirement, attempts: Attempts, level: Level) -> Selection:
    """Rows are sorted by day. A fence larger than the level's limit counts too."""
    condition = requirement.condition
    rows = attempts.keep(condition, lambda: presented(attempts, condition))
    limit, least = limit_and_least_cm(requirement, level)
    if least is None:
        return Selection(rows, rows[:0], rows[:0], None, None)
    size = attempts.keep((condition, "size"), lambda: attempts.parts.size(condition.size)[attempts.part[rows]])
    fell = attempts.keep((condition, "fell"), lambda: attempts.result[rows] == FALL)
    unmeasured = attempts.keep((condition, "unmeasured"), lambda: rows[np.isnan(size) & ~fell])
    enough = least - ROUNDING_CM
    return Selection(rows[(size >= enough) | fell], rows[(size < enough) & ~fell], unmeasured, limit, least)


def limit_and_least_cm(requirement: Requirement, level: Level) -> tuple[float | None, float | None]:
    """The level's limit in cm, and the size from which a fence counts: a part of the limit. Where the rulebook states
    no limit the bar's own least size, where it has one, else None: any size counts."""
    size = requirement.condition.size
    limit = fence_limit(level, size) if size else None
    if limit is None:
        return None, requirement.numbers.get("least_cm")
    return limit, limit * requirement.numbers["size_fraction"]


def presented(attempts: Attempts, condition: Condition) -> np.ndarray:
    """Rows that ask what the condition asks and were met in its presentation, whatever the size."""
    rows = attempts.rows_by_ask[condition.ask]
    if condition.elements:
        rows = rows[attempts.parts.elements[attempts.part[rows]] >= condition.elements]
    for side, values in condition.presentation:
        wanted = sum(BITS[side][value] for value in values)
        rows = rows[met(attempts, rows, side, wanted)]
    return rows


def met(attempts: Attempts, rows: np.ndarray, side: str, wanted: int) -> np.ndarray:
    """What was said counts; what the fence's nature says of company counts too, and of landing where
    nobody said. A fall of which nothing was said counts for every manner."""
    said = attempts.manners.sides[side][attempts.manner[rows]]
    if side == "company":
        said = said | attempts.parts.company[attempts.part[rows]]
    elif side == "landing":
        said = np.where(said == 0, attempts.parts.landing[attempts.part[rows]], said)
    return ((said & wanted) != 0) | ((said == 0) & (attempts.result[rows] == FALL))
