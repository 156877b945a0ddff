"""The few things that would move a standing most: what to school next, and over which fences."""

from collections.abc import Sequence

from fieldtally.readiness.context import Weighing
from fieldtally.readiness.fence_asks import ASK_BIT, asks_of, greatest_dimensions
from fieldtally.readiness.finding import Finding
from fieldtally.readiness.limits import fence_limit
from fieldtally.readiness.requirement import Requirement
from fieldtally.readiness.shapes import COLUMN

MOST_STEPS = 5
FIRST = ("on_hold", "shaky", "gone_stale", "building", "untried")


def next_steps(findings: Sequence[Finding], weighing: Weighing) -> list[dict]:
    """What is nearest to being put right comes first: rebuild, refresh, finish, then begin."""
    open_ = [each for each in findings if each.requirement.required and each.needs and not each.shown]
    open_.sort(key=lambda each: FIRST.index(each.state))
    return [step(each, weighing) for each in open_[:MOST_STEPS]]


def step(finding: Finding, weighing: Weighing) -> dict:
    requirement = finding.requirement
    condition = requirement.condition
    presentation = {side: values[0] for side, values in condition.presentation} if condition else {}
    return {
        "text": f"{requirement.title}: {finding.needs[0].text[0].lower()}{finding.needs[0].text[1:]}",
        "requirement_id": requirement.id,
        "fence_ids": fences_for(requirement, weighing) if condition else [],
        "presentation": presentation,
        "times": finding.needs[0].values.get("clear"),
    }


def fences_for(requirement: Requirement, weighing: Weighing) -> list[str]:
    """Known fences that ask this at the level's size and not above its limit; five at most."""
    fences = weighing.book.fences
    fits = [key for key, record in fences.items() if fence_fits(requirement, record.body, weighing)]
    return sorted(fits, key=lambda key: (not fences[key].body["favourite"], fences[key].body["order"] or 0, key))[:5]


def fence_fits(requirement: Requirement, fence: dict, weighing: Weighing) -> bool:
    condition = requirement.condition
    if condition.elements:
        asked = len(fence["elements"]) >= condition.elements
    else:
        asked = any(asks_of(part) & ASK_BIT[condition.ask] for part in (fence, *fence["elements"]))
    limit = fence_limit(weighing.level, condition.size) if condition.size else None
    if not asked or limit is None:
        return asked
    size = greatest_dimensions(fence)[COLUMN[condition.size]]
    return limit * requirement.numbers["size_fraction"] - 0.05 <= size <= limit + 0.05
