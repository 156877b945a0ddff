"""Weighs the rider's side: confidence, hours in the saddle, outings, and how many horses she rides."""

import statistics

from fieldtally.readiness.context import Weighing
from fieldtally.readiness.finding import Finding, Reason
from fieldtally.readiness.listed_records import records_behind
from fieldtally.readiness.plain import listed, many, many_in_words, sentence, span
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
        lambda: (confidence_explained(felt, numbers),),
        lambda: records_behind(
            book, said, lambda _: "Confidence", lambda each: f"{each.body['rider_confidence']} of 5"
        ),
    )  # fmt: skip


def confidence_explained(felt: list[int], numbers: dict[str, float]) -> Reason:
    wanted = {"asked": int(numbers["outings"]), "mean": numbers["mean"], "worst": numbers["worst"]}
    values = {"felt": [str(each) for each in felt], "days": numbers["window_days"]} | wanted
    yours = f"You said {listed(values['felt'])} of 5" if felt else "You have not said it yet"
    text = (
        f"Counted are the last {wanted['asked']} jumping outings of the last {span(numbers['window_days'])} on which "
        f"you said how confident you felt, from 1 to 5. {yours}. The bar asks for {wanted['asked']} of them, on "
        f"average {numbers['mean']:g} or more and none below {numbers['worst']:g}."
    )
    return Reason("worked_confidence" if felt else "worked_confidence_none", values, text)


def confidence_counted(felt: list[int]) -> Reason:
    if not felt:
        return Reason("untried", {}, "No jumping outing yet with your confidence noted.")
    text = f"On average {statistics.fmean(felt) + 1e-9:.1f} of 5 over {many(len(felt), 'outing')}, the last {felt[-1]}."
    return Reason("counted", {"outings": len(felt), "mean": statistics.fmean(felt)}, text)


def more_confidence(felt: list[int], numbers: dict[str, float]):
    more = int(numbers["outings"]) - len(felt)
    if more > 0:
        begun = "more " if felt else ""
        yield Reason(
            "more_outings",
            {"outings": more},
            sentence(f"{many_in_words(more, f'{begun}jumping outing')} with your confidence noted"),
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
    text = f"{hours:.1f} hours in the last {span(numbers['window_days'])}."
    return Finding(
        requirement, state, (Reason("counted", {"hours": hours}, text),), needs, {"hours": hours},
        lambda: (hours_explained(len(rides), hours, numbers),),
        lambda: records_behind(book, rides, lambda _: "Ride", lambda each: f"{each.body['minutes_in_saddle']} min"),
    )  # fmt: skip


def hours_explained(rides: int, hours: float, numbers: dict[str, float]) -> Reason:
    values = {"rides": rides, "hours": round(hours, 1), "asked": numbers["hours"], "days": numbers["window_days"]}
    text = (
        f"The minutes in the saddle that you wrote down for {many(rides, 'outing')} of the last "
        f"{span(numbers['window_days'])}, on any horse, make {hours:.1f} hours. The bar asks for {numbers['hours']:g}."
    )
    return Reason("worked_hours", values, text)


def weigh_rides(requirement: Requirement, weighing: Weighing) -> Finding:
    """Outings of any activity, on any horse of this logbook: how regularly she rides."""
    numbers, book = requirement.numbers, weighing.book
    rides = book.rider_since("outing", numbers["window_days"])
    asked, days = int(numbers["outings"]), span(numbers["window_days"])
    more = asked - len(rides)
    needs = (Reason("more_rides", {"rides": more}, sentence(many_in_words(more, "more outing"))),) if more > 0 else ()
    state = "untried" if not rides else "building" if needs else "shown"
    text = f"{many(len(rides), 'outing')} in the last {days}."
    return Finding(
        requirement, state, (Reason("counted", {"rides": len(rides)}, text),), needs, {"rides": len(rides)},
        lambda: (rides_explained(len(rides), numbers),),
        lambda: records_behind(book, rides, lambda _: "Outing", lambda each: each.body["activity"]),
    )  # fmt: skip


def rides_explained(rides: int, numbers: dict[str, float]) -> Reason:
    values = {"rides": rides, "asked": int(numbers["outings"]), "days": numbers["window_days"]}
    text = (
        f"Every outing of the last {span(numbers['window_days'])} counts, whatever was done and on any horse: you have "
        f"{rides}. The bar asks for {values['asked']}."
    )
    return Reason("worked_rides", values, text)


def weigh_horses(requirement: Requirement, weighing: Weighing) -> Finding:
    numbers, book = requirement.numbers, weighing.book
    last = {each.body["horse_id"]: each for each in book.rider_since("outing", numbers["window_days"])}
    count = len(last)
    more = int(numbers["horses"]) - count
    text = sentence(f"rides on {many_in_words(more, 'more horse' if count else 'horse')}")
    needs = (Reason("more_horses", {"horses": more}, text),) if more > 0 else ()
    state = "untried" if not count else "building" if needs else "shown"
    text = f"{many(count, 'horse')} ridden in the last {span(numbers['window_days'])}."
    return Finding(
        requirement,
        state,
        (Reason("counted", {"horses": count}, text),),
        needs,
        {"horses": count},
        lambda: (horses_explained(count, numbers),),
        lambda: records_behind(book, list(last.values()), lambda _: "Outing", lambda each: each.body["activity"]),
    )


def horses_explained(count: int, numbers: dict[str, float]) -> Reason:
    values = {"horses": count, "asked": int(numbers["horses"]), "days": numbers["window_days"]}
    text = (
        f"The horses of this logbook with an outing in the last {span(numbers['window_days'])} count: you have "
        f"{count}. The bar asks for {values['asked']}."
    )
    return Reason("worked_horses", values, text)
