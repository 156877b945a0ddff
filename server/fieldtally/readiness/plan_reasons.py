"""Why a question is left alone at a field, in a rider's words."""

from collections.abc import Iterable, Mapping

from fieldtally.readiness.fences_here import asks_it, fits, too_large, too_small, unmeasured
from fieldtally.readiness.finding import Finding
from fieldtally.readiness.standing import Standing

MOST_NAMED = 3

# a question that wants another one first
AFTER = {
    "ditch_fence_before": "ditch_alone", "ditch_fence_after": "ditch_alone", "ditch_inside": "ditch_fence_before",
    "drop_water": "drop_ground", "combination_three": "combination_two", "bounce": "combination_two",
    "corner": "narrow", "bank_down": "bank_up", "bank_up_large": "bank_up",
    "bank_down_large": "bank_down", "water_in": "water_through",
}  # fmt: skip


def why_not(finding: Finding, standing: Standing, fences: Mapping, held: Iterable[str]) -> str | None:
    """None where it can be worked on. `held`: the fences that ask something which is on hold."""
    if finding.state == "on_hold":
        return "On hold after a fall: rebuild it with your coach there."
    first = waits_for(finding, standing)
    if first:
        title = next(each.requirement.title for each in standing.findings if each.requirement.id == first)
        return f"First {title[0].lower()}{title[1:]}."
    there = {key: record for key, record in fences.items() if asks_it(finding.requirement, record.body)}
    if not there:
        return "No fence here asks it."
    level = standing.weighing.level
    suitable = {key for key, record in there.items() if fits(finding.requirement, record.body, level)}
    if suitable:
        return None if suitable - set(held) else "What asks it here also asks what you fell at."
    return wrong_size(finding, there, level)


def waits_for(finding: Finding, standing: Standing) -> str | None:
    """The question of this level that comes first, while it is not shown; none for what is on hold."""
    wanted = AFTER.get(finding.requirement.id) if finding.state != "on_hold" else None
    open_ = (each.requirement.id for each in standing.findings if not each.shown)
    return next((each for each in open_ if each == wanted), None)


def wrong_size(finding: Finding, there: Mapping, level) -> str:
    large = [key for key, record in there.items() if too_large(record.body, level)]
    unknown = [key for key, record in there.items() if key not in large and unmeasured(record.body, level)]
    if unknown:
        return f"Measure it first: {names(there, unknown)}."
    small = [key for key, record in there.items() if too_small(finding.requirement, record.body, level)]
    if len(large) == len(there):
        return f"It is over this level's limit here: {names(there, large)}."
    if len(small) == len(there):
        return f"It is too small here for this level: {names(there, small)}."
    return f"It is too large or too small here: {names(there, list(there))}."


def names(fences: Mapping, keys: list[str]) -> str:
    """“4 Table, 6 Hedge, 7 Log, 9 Table …”: the same in every language."""
    labels = sorted(fences[key].body["label"] for key in keys)
    return ", ".join(labels[:MOST_NAMED]) + (" …" if len(labels) > MOST_NAMED else "")
