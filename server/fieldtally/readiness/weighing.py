"""Which way of weighing each requirement uses."""

from collections.abc import Callable

from fieldtally.readiness.context import Weighing
from fieldtally.readiness.finding import Finding
from fieldtally.readiness.requirement import Requirement
from fieldtally.readiness.weigh_attempts import weigh_attempts
from fieldtally.readiness.weigh_attitude import weigh_attitude
from fieldtally.readiness.weigh_breadth import weigh_breadth
from fieldtally.readiness.weigh_eligibility import weigh_eligibility
from fieldtally.readiness.weigh_pace import weigh_pace
from fieldtally.readiness.weigh_recovery import weigh_recovery
from fieldtally.readiness.weigh_results import weigh_results
from fieldtally.readiness.weigh_rider import weigh_confidence, weigh_horses, weigh_hours, weigh_rides
from fieldtally.readiness.weigh_rounds import weigh_rounds
from fieldtally.readiness.weigh_tests import weigh_tests
from fieldtally.readiness.weigh_word import weigh_word

WAYS_OF_WEIGHING: dict[str, Callable[[Requirement, Weighing], Finding]] = {
    "attempts": weigh_attempts,
    "pace": weigh_pace,
    "rounds": weigh_rounds,
    "tests": weigh_tests,
    "results": weigh_results,
    "eligibility": weigh_eligibility,
    "breadth": weigh_breadth,
    "confidence": weigh_confidence,
    "hours": weigh_hours,
    "rides": weigh_rides,
    "horses": weigh_horses,
    "attitude": weigh_attitude,
    "recovery": weigh_recovery,
    "word": weigh_word,
}


def weigh(requirement: Requirement, weighing: Weighing) -> Finding:
    return WAYS_OF_WEIGHING[requirement.weigh](requirement, weighing)
