"""Weighs the rider's side: confidence, hours in the saddle, outings, and how many horses she rides."""

import statistics

from fieldtally.readiness.context import Weighing
from fieldtally.readiness.finding import Finding, Reason
from fieldtally.readiness.listed_records import records_behind
from fieldtally.readiness.plain import many, many_in_words, sentence
from fieldtally.readiness.requirement import Requirement

JUMPING = ("cross_country_school", "jumping_school", "event")


def weigh_confidence(requirement: Requirement, weighing: Weighing) -> Finding:
    """The last jumping outings on which she said how she felt, 1 to 5."""
    numbers, book = requirement.numbers, weighing.book
    said = [
        each
        for each in book.since("outing", numbers["window_days"])
        if each.body["rider_confidence"] is not None and each.body["activity"] in JUMPING
    ][-int(numbers["outings"]):]  # fmt: skip
    felt = [each.body["rider_confidence"] for each in said]
    needs = tuple(more_confidence(felt, numbers))
    return Finding(
        requirement, confidence_state(felt, needs), (confidence_counted(felt),), needs,
        {"outings": len(felt), "mean": statistics.fmean(felt) if felt else None, "last": felt[-1] if felt else None},
        f"The last {numbers['outings']:g} jumping outings of the last {numbers['window_days']:g} days on which "
        f"you said how confident you felt: {', '.join(map(str, felt)) or 'none'} of 5. The bar asks for an average "
        f"of {numbers['mean']:g} and none below {numbers['worst']:g}.",
        lambda: records_behind(
            book, said, lambda _: "Confidence", lambda each: f"{each.body['rider_confidence']} of 5"
        ),
    )  # fmt: skip


def confidence_counted(felt: list[int]) -> Reason:
    if not felt:
        return Reason("untried", {}, "No jumping outing yet with your confidence noted.")
    text = f"On average {statistics.fmean(felt):.1f} of 5 over {many(len(felt), 'outing')}, the last {felt[-1]}."
    return Reason("counted", {"outings": len(felt), "mean": statistics.fmean(felt)}, text)


def more_confidence(felt: list[int], numbers: dict[str, float]):
    more = int(numbers["outings"]) - len(felt)
    if more > 0:
        yield Reason(
            "more_outings",
            {"outings": more},
            sentence(f"{many_in_words(more, 'more jumping outing')} with your confidence noted"),
        )
    if felt and (statistics.fmean(felt) < numbers["mean"] or min(felt) < numbers["worst"]):
        yield Reason("confidence", {}, "Days that feel good again: stay where it feels easy for a while.")


def confidence_state(felt: list[int], needs: tuple[Reason, ...]) -> str:
    if not felt:
        return "untried"
    if not needs:
        return "shown"
    return "shaky" if needs[-1].code == "confidence" else "building"


def weigh_hours(requirement: Requirement, weighing: Weighing) -> Finding:
    """Minutes in the saddle, on any horse of this logbook."""
    numbers, book = requirement.numbers, weighing.book
    rides = [each for each in book.rider_since("outing", numbers["window_days"]) if each.body["minutes_in_saddle"]]
    hours = sum(each.body["minutes_in_saddle"] for each in rides) / 60
    lacking = numbers["hours"] - hours
    needs = (
        () if lacking <= 0 else (Reason("more_hours", {"hours": lacking}, f"{lacking:.1f} more hours in the saddle."),)
    )
    state = "untried" if not rides else "building" if needs else "shown"
    text = f"{hours:.1f} hours in the last {numbers['window_days']:.0f} days."
    return Finding(
        requirement, state, (Reason("counted", {"hours": hours}, text),), needs, {"hours": hours},
        f"Minutes in the saddle of {many(len(rides), 'outing')}, on any horse, make {hours:.1f} hours; the bar "
        f"asks for {numbers['hours']:g}.",
        lambda: records_behind(book, rides, lambda _: "Ride", lambda each: f"{each.body['minutes_in_saddle']} min"),
    )  # fmt: skip


def weigh_rides(requirement: Requirement, weighing: Weighing) -> Finding:
    """Outings of any activity, on any horse of this logbook: how regularly she rides."""
    numbers, book = requirement.numbers, weighing.book
    rides = book.rider_since("outing", numbers["window_days"])
    asked, days = int(numbers["outings"]), f"{numbers['window_days']:.0f} days"
    more = asked - len(rides)
    needs = (Reason("more_rides", {"rides": more}, sentence(many_in_words(more, "more outing"))),) if more > 0 else ()
    state = "untried" if not rides else "building" if needs else "shown"
    text = f"{many(len(rides), 'outing')} in the last {days}."
    return Finding(
        requirement, state, (Reason("counted", {"rides": len(rides)}, text),), needs, {"rides": len(rides)},
        f"Every outing of the last {days} counts, whatever was done and on any horse: {len(rides)}. The bar asks for "
        f"{asked}.",
        lambda: records_behind(book, rides, lambda _: "Outing", lambda each: each.body["activity"]),
    )  # fmt: skip


def weigh_horses(requirement: Requirement, weighing: Weighing) -> Finding:
    numbers, book = requirement.numbers, weighing.book
    count = len({each.body["horse_id"] for each in book.rider_since("outing", numbers["window_days"])})
    more = int(numbers["horses"]) - count
    needs = (
        (Reason("more_horses", {"horses": more}, sentence(f"rides on {many_in_words(more, 'more horse')}")),)
        if more > 0
        else ()
    )
    state = "untried" if not count else "building" if needs else "shown"
    text = f"{many(count, 'horse')} ridden in the last {numbers['window_days']:.0f} days."
    return Finding(
        requirement,
        state,
        (Reason("counted", {"horses": count}, text),),
        needs,
        {"horses": count},
        f"{text} The bar asks for {numbers['horses']:g}.",
    )
