"""The few things that would move a standing most: what to school next, and over which fences."""

from collections.abc import Sequence

from fieldtally.readiness.context import Weighing
from fieldtally.readiness.fences_here import fits, in_order
from fieldtally.readiness.finding import Finding
from fieldtally.readiness.requirement import Requirement
from fieldtally.readiness.weigh_word import hold_over

MOST_STEPS = 5
MOST_FENCES = 5
FIRST = ("shaky", "gone_stale", "building", "untried", "on_hold")


def next_steps(findings: Sequence[Finding], weighing: Weighing) -> list[dict]:
    """What is nearest to being put right comes first: rebuild, refresh, finish, then begin. None while the coach
    holds this level or a lower one."""
    if hold_over(weighing):
        return []
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
    fit = [key for key, record in fences.items() if fits(requirement, record.body, weighing.level)]
    return in_order(fences, fit)[:MOST_FENCES]
