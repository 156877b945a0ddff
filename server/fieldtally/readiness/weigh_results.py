"""Weighs competition at the present level: clean completed runs, at more than one venue."""

from fieldtally.readiness.context import Weighing
from fieldtally.readiness.finding import Finding, Reason
from fieldtally.readiness.listed_records import records_behind
from fieldtally.readiness.plain import in_words, many, many_in_words, sentence, span, were
from fieldtally.readiness.requirement import Requirement


def clean(record, numbers: dict[str, float]) -> bool:
    """Completed, no cross-country jumping penalty, no fall, nothing dangerous, the rest within the bar.
    What nobody entered is not held against the result, except the cross-country jumping."""
    body = record.body
    if body["status"] != "completed" or body["cross_country_jump_penalties"] != 0:
        return False
    if body["rider_fall"] or body["horse_fall"] or body["dangerous_riding"]:
        return False
    return all((body[name] or 0) <= numbers[limit] for name, limit in WITHIN.items())


WITHIN = {
    "show_jumping_jump_penalties": "show_jumping_penalties",
    "dressage_penalties": "dressage_penalties",
    "cross_country_seconds_over": "seconds_over",
}


def results_near(weighing: Weighing, window_days: float) -> list:
    """Results at the level below this one, or at a higher level of the same rulebook."""
    order = {level.id: place for place, level in enumerate(weighing.rulebook.levels)}
    least = max(0, order[weighing.level.id] - 1)
    return [
        each
        for each in weighing.book.since("event_result", window_days)
        if each.body["rulebook_id"] in (None, weighing.rulebook.id) and order.get(each.body["level_id"], -1) >= least
    ]


def weigh_results(requirement: Requirement, weighing: Weighing) -> Finding:
    numbers, book = requirement.numbers, weighing.book
    if weighing.below is None:
        reason = Reason("first_level", {}, "This is the first level here: there are no results below it to ask for.")
        return Finding(requirement, "shown", (reason,), worked_out=lambda: (reason,))
    chosen = results_near(weighing, numbers["window_days"])
    good = [each for each in chosen if clean(each, numbers)]
    venues = len({venue(each, book) for each in good})
    more = max(0, int(numbers["results"]) - len(good), int(numbers["venues"]) - venues)
    further = max(0, int(numbers["venues"]) - venues)
    if chosen and chosen[-1] not in good:
        more = max(1, more)
    return Finding(
        requirement, judged(chosen, good, more), (counted(chosen, good, venues, weighing),),
        needed(more, further, len(good)),
        {"results": len(chosen), "clean": len(good), "venues": venues},
        lambda: (explained(numbers, chosen, good, venues, weighing),),
        lambda: records_behind(book, chosen, lambda each: each.body["event"], lambda each: outcome(each, numbers)),
    )  # fmt: skip


def venue(record, book) -> object:
    """The field of the outing where one is kept, else the event's name."""
    outing = book.outings.get(record.body["outing_id"])
    return (outing and outing.body["field_id"]) or record.body["event"].strip().lower()


def judged(chosen: list, good: list, more: int) -> str:
    if not chosen:
        return "untried"
    if chosen[-1].body["rider_fall"] or chosen[-1].body["horse_fall"]:
        return "on_hold"
    if chosen[-1] not in good:
        return "shaky"
    return "building" if more else "shown"


def needed(more: int, further: int, good: int) -> tuple[Reason, ...]:
    if not more:
        return ()
    text = many_in_words(more, "more clean result" if good else "clean result")
    if good:
        text += ", at another venue" if further == 1 else f", at {in_words(further)} other venues" if further else ""
    else:
        text += f", at {in_words(further)} venues" if further > 1 else ""
    return (Reason("more_results", {"results": more, "venues": further}, sentence(text)),)


def counted(chosen: list, good: list, venues: int, weighing: Weighing) -> Reason:
    if not chosen:
        return Reason("untried", {}, f"No result at {weighing.below.name} or higher entered yet.")
    of_all = f"{len(good)} clean of {many(len(chosen), 'result')}"
    text = f"{of_all} at {weighing.below.name} or higher, at {many(venues, 'venue')}."
    return Reason("counted", {"results": len(chosen), "clean": len(good), "venues": venues}, text)


def outcome(record, numbers: dict[str, float]) -> str:
    status = record.body["status"]
    return status if status != "completed" else ("clean" if clean(record, numbers) else "not clean")


def explained(numbers: dict[str, float], chosen: list, good: list, venues: int, weighing: Weighing) -> Reason:
    limits = {name: numbers[name] for name in (*WITHIN.values(), "results")}
    asked = {"asked": int(limits.pop("results")), "asked_venues": int(numbers["venues"])}
    values = {
        "results": len(chosen), "clean": len(good), "venues": venues, "days": numbers["window_days"],
        "level": weighing.below.name, **limits, **asked,
    }  # fmt: skip
    yours = f"Of your {len(chosen)}, {were(len(good))}, at {many(venues, 'venue')}" if chosen else "You have none"
    text = (
        f"Results of the last {span(numbers['window_days'])} at {weighing.below.name} or higher count. One is clean "
        f"when it was completed without cross-country jumping penalties, fall or dangerous riding, with at most "
        f"{numbers['show_jumping_penalties']:g} show-jumping penalties, {numbers['dressage_penalties']:g} dressage "
        f"penalties and {numbers['seconds_over']:g} s over the optimum time. {yours}. The bar asks for "
        f"{asked['asked']} clean at {many(asked['asked_venues'], 'venue')}, the last one among them."
    )
    return Reason("worked_results" if chosen else "worked_results_none", values, text)
