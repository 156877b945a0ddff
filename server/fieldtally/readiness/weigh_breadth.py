"""Weighs breadth: cross-country on different days and fields, not one place on one good day."""

from fieldtally.readiness.context import Weighing
from fieldtally.readiness.finding import Finding, Reason
from fieldtally.readiness.listed_records import records_behind
from fieldtally.readiness.plain import many, many_in_words, sentence
from fieldtally.readiness.requirement import Requirement

CROSS_COUNTRY = ("cross_country_school", "event")


def weigh_breadth(requirement: Requirement, weighing: Weighing) -> Finding:
    numbers, book = requirement.numbers, weighing.book
    days = [each for each in book.since("outing", numbers["window_days"]) if each.body["activity"] in CROSS_COUNTRY]
    fields = len({each.body["field_id"] for each in days if each.body["field_id"]})
    needs = tuple(missing(len(days), fields, numbers))
    text = (
        f"{many(len(days), 'cross-country outing')} at {many(fields, 'field')}."
        if days
        else "No cross-country outing in the window."
    )
    counts = {"outings": len(days), "fields": fields}
    return Finding(
        requirement, "untried" if not days else "building" if needs else "shown",
        (Reason("counted", counts, text),), needs, counts,
        f"In the last {numbers['window_days']:g} days: {text} The bar asks for "
        f"{many(int(numbers['outings']), 'outing')} at {many(int(numbers['fields']), 'field')}.",
        lambda: records_behind(book, days, lambda _: "Outing", lambda each: each.body["activity"]),
    )  # fmt: skip


def missing(outings: int, fields: int, numbers: dict[str, float]):
    more, further = int(numbers["outings"]) - outings, int(numbers["fields"]) - fields
    if more > 0:
        yield Reason("more_outings", {"outings": more}, sentence(many_in_words(more, "more cross-country outing")))
    if further > 0:
        yield Reason(
            "more_fields", {"fields": further}, sentence(f"an outing at {many_in_words(further, 'other field')}")
        )
