"""A coach's changes to the bar of one logbook: each names one number of one requirement, who and why."""

from collections.abc import Iterable
from dataclasses import replace

from fieldtally.readiness.bar_range import within
from fieldtally.readiness.requirement import Change, Requirement


def changed(
    requirements: list[Requirement], rulebook_id: str, level_id: str, records: Iterable
) -> tuple[Requirement, ...]:
    """The requirements with every `bar_change` record of this level applied, oldest first.

    A requirement with "dropped" set to 1 is left out. A change that names a requirement or a number this
    bar does not have is passed over: the level may no longer ask it.
    """
    by_id = {each.id: each for each in requirements}
    for record in sorted(records, key=lambda each: (each.number is None, each.number or 0)):
        body = record.body
        if (body["rulebook_id"], body["level_id"]) == (rulebook_id, level_id):
            apply(by_id, record)
    return tuple(each for each in by_id.values() if each.numbers.get("dropped") != 1)


def apply(by_id: dict[str, Requirement], record) -> None:
    body = record.body
    requirement, quantity = by_id.get(body["requirement_id"]), body["quantity"]
    if requirement is None or (quantity != "dropped" and quantity not in requirement.numbers):
        return
    default = original(requirement, quantity)
    value = None if body["value"] is None else within(quantity, body["value"])
    change = Change(quantity, default, value, record.author, body["reason"], record.record_id)
    numbers = dict(requirement.numbers)
    if value is None and default is None:
        numbers.pop(quantity, None)
    else:
        numbers[quantity] = default if value is None else value
    by_id[requirement.id] = replace(requirement, numbers=numbers, changes=(*requirement.changes, change))


def original(requirement: Requirement, quantity: str) -> float | None:
    """What the number was before any coach changed it."""
    for change in requirement.changes:
        if change.quantity == quantity:
            return change.default
    return requirement.numbers.get(quantity)
