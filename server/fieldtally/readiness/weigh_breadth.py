"""Weighs breadth: cross-country on different days and fields, not one place on one good day."""

from fieldtally.readiness.context import Weighing
from fieldtally.readiness.finding import Finding, Reason
from fieldtally.readiness.listed_records import records_behind
from fieldtally.readiness.plain import many, many_in_words, sentence, span
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
        else "No cross-country outing lately."
    )
    counts = {"outings": len(days), "fields": fields}
    return Finding(
        requirement, "untried" if not days else "building" if needs else "shown",
        (Reason("counted", counts, text),), needs, counts,
        lambda: (explained(len(days), fields, numbers),),
        lambda: records_behind(book, days, lambda _: "Outing", lambda each: each.body["activity"]),
    )  # fmt: skip


def explained(outings: int, fields: int, numbers: dict[str, float]) -> Reason:
    values = {
        "have_outings": outings, "have_fields": fields, "days": numbers["window_days"],
        "outings": int(numbers["outings"]), "fields": int(numbers["fields"]),
    }  # fmt: skip
    text = (
        f"Cross-country schooling and events of the last {span(numbers['window_days'])} count: you have "
        f"{many(outings, 'outing')} at {many(fields, 'field')}. The bar asks for {many(values['outings'], 'outing')} "
        f"at {many(values['fields'], 'field')}, because a question met well at one place on one day may be that place "
        f"and that day."
    )
    return Reason("worked_breadth", values, text)


def missing(outings: int, fields: int, numbers: dict[str, float]):
    more, further = int(numbers["outings"]) - outings, int(numbers["fields"]) - fields
    if more > 0:
        thing = "more cross-country outing" if outings else "cross-country outing"
        yield Reason("more_outings", {"outings": more}, sentence(many_in_words(more, thing)))
    if further > 0:
        where = many_in_words(further, "other field" if fields else "field")
        text = f"outings at {where}" if further > 1 else f"an outing at {where}"
        yield Reason("more_fields", {"fields": further}, sentence(text))
