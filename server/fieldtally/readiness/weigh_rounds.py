"""Weighs show jumping: whole rounds at the level's height, few rails, no stop, no fall."""

from fieldtally.readiness.context import Weighing
from fieldtally.readiness.finding import Finding, Reason
from fieldtally.readiness.limits import show_jumping_height_cm
from fieldtally.readiness.listed_records import records_behind
from fieldtally.readiness.plain import in_words, many, many_in_words, sentence, span, were
from fieldtally.readiness.requirement import Requirement

NO_HEIGHT = Reason(
    "no_height", {}, "The rulebook here states no show-jumping height for this level. Enter it under “What each level "
    "asks”, and rounds are weighed against it.",
)  # fmt: skip


def good(round_, numbers: dict[str, float]) -> bool:
    body = round_.body
    return (
        body["completed"] and not fell(round_) and not body["refusals"] and body["knockdowns"] <= numbers["knockdowns"]
    )


def fell(round_) -> bool:
    return round_.body["rider_fall"] or round_.body["horse_fall"]


def weigh_rounds(requirement: Requirement, weighing: Weighing) -> Finding:
    numbers, book = requirement.numbers, weighing.book
    height = show_jumping_height_cm(weighing.level)
    if height is None:
        return Finding(requirement, "untried", (NO_HEIGHT,), worked_out=lambda: (NO_HEIGHT,))
    least = height * numbers["height_fraction"] + numbers["height_above_cm"]
    chosen = rounds_at(book, least, numbers)
    clean = [each for each in chosen if good(each, numbers)]
    days = len({book.date_of(each) for each in clean})
    state, needs = judged(chosen, clean, days, numbers, least)
    return Finding(
        requirement, state, (counted(chosen, clean, days, least, numbers),), needs,
        {"rounds": len(chosen), "good": len(clean), "outings": days, "least_cm": least},
        lambda: (explained(requirement, chosen, clean, days, least),),
        lambda: records_behind(book, chosen, lambda each: f"Round at {each.body['height_cm']:g} cm", round_words),
    )  # fmt: skip


def rounds_at(book, least_cm: float, numbers: dict[str, float]) -> list:
    return [
        each
        for each in book.since("jumping_round", numbers["window_days"])
        if each.body["height_cm"] >= least_cm - 0.05 and (each.body["combinations"] or 0) >= numbers["combinations"]
    ]


def judged(chosen: list, clean: list, days: int, numbers: dict[str, float], least: float):
    """A fall in the last round holds; a last round that was not good is shaky."""
    more = max(0, int(numbers["rounds"]) - len(clean), int(numbers["outings"]) - days)
    further = max(0, int(numbers["outings"]) - days)
    if chosen and chosen[-1] not in clean:
        return ("on_hold" if fell(chosen[-1]) else "shaky"), (need(max(1, more), max(1, further), least, True),)
    if not more:
        return "shown", ()
    return ("building" if chosen else "untried"), (need(more, further, least, bool(chosen)),)


def need(more: int, further: int, least: float, begun: bool) -> Reason:
    text = f"{many_in_words(more, 'more good round' if begun else 'good round')} at {least:.0f} cm or higher"
    if further > 1:
        text += f", on {in_words(further)} {'other days' if begun else 'days'}"
    elif further and begun:
        text += ", on another day"
    return Reason("more_rounds", {"rounds": more, "outings": further}, sentence(text))


def counted(chosen: list, clean: list, days: int, least: float, numbers: dict[str, float]) -> Reason:
    values = {"rounds": len(chosen), "good": len(clean), "outings": days}
    if not chosen:
        return Reason("untried", values, f"No round at {least:.0f} cm or higher yet.")
    rails = many(int(numbers["knockdowns"]), "rail")
    text = f"{len(clean)} of {many(len(chosen), 'round')} at {least:.0f} cm or higher with at most {rails} and no stop."
    return Reason("counted", values, text)


def round_words(record) -> str:
    body = record.body
    if fell(record):
        return "fall"
    parts = [many(body["knockdowns"], "rail"), many(body["refusals"], "stop")]
    return ", ".join(parts) if body["completed"] else "not completed"


def explained(requirement: Requirement, chosen: list, clean: list, days: int, least: float) -> Reason:
    numbers = requirement.numbers
    values = {
        "rounds": len(chosen), "good": len(clean), "outings": days, "least_cm": round(least, 1),
        "days": numbers["window_days"], "rails": int(numbers["knockdowns"]), "asked": int(numbers["rounds"]),
        "asked_days": int(numbers["outings"]),
    }  # fmt: skip
    yours = f"Of your {len(chosen)}, {were(len(clean))}, on {many(days, 'day')}" if chosen else "You have none"
    text = (
        f"Rounds of the last {span(numbers['window_days'])} at {least:.0f} cm or higher count. A round is good when it "
        f"was completed with at most {many(values['rails'], 'rail')}, no stop and no fall. {yours}. The bar asks for "
        f"{many(values['asked'], 'good round')} on {many(values['asked_days'], 'day')}, the last one among them."
    )
    return Reason("worked_rounds" if chosen else "worked_rounds_none", values, text)
