"""Weighs how the horse recovers after work."""

from fieldtally.readiness.context import Weighing
from fieldtally.readiness.finding import Finding, Reason
from fieldtally.readiness.listed_records import records_behind
from fieldtally.readiness.plain import listed, many, many_in_words, sentence, span
from fieldtally.readiness.requirement import Requirement


def weigh_recovery(requirement: Requirement, weighing: Weighing) -> Finding:
    """Heart rate some minutes after work, against the horse's own resting rate."""
    numbers, book = requirement.numbers, weighing.book
    resting = book.horse["resting_heart_rate_bpm"]
    if resting is None:
        reason = Reason(
            "no_resting_rate", {}, "Enter the horse's own resting heart rate: recovery is measured against it."
        )
        return Finding(requirement, "untried", (reason,), worked_out=lambda: (reason,))
    most = resting + numbers["above_resting_bpm"]
    sets = [
        each for each in book.since("interval_set", numbers["window_days"]) if rate_after(each, numbers) is not None
    ]
    good = [each for each in sets if rate_after(each, numbers) <= most]
    return Finding(
        requirement, recovery_state(sets, good, numbers), (recovery_counted(sets, good, most, numbers),),
        needed(sets, good, numbers),
        {"sets": len(sets), "good": len(good), "most_bpm": most},
        lambda: (explained(sets, good, resting, most, numbers),),
        lambda: records_behind(
            book, sets, lambda _: "Interval work", lambda each: f"{rate_after(each, numbers):g} beats per minute"
        ),
    )  # fmt: skip


def needed(sets: list, good: list, numbers: dict[str, float]) -> tuple[Reason, ...]:
    """Where the last one was not good, at least one more."""
    more = max(int(numbers["sets"]) - len(good), int(bool(sets) and sets[-1] not in good))
    if more <= 0:
        return ()
    begun = "more " if sets else ""
    work = many_in_words(more, f"{begun}set of interval work", f"{begun}sets of interval work")
    text = f"{work}, recovered well after {numbers['minute']:g} minutes"
    return (Reason("more_sets", {"sets": more, "minute": numbers["minute"]}, sentence(text)),)


def explained(sets: list, good: list, resting: float, most: float, numbers: dict[str, float]) -> Reason:
    rates = [f"{rate_after(each, numbers):g}" for each in sets[-5:]]
    values = {
        "minute": numbers["minute"], "resting": resting, "most": most, "rates": rates, "sets": len(sets),
        "good": len(good), "asked": int(numbers["sets"]), "days": numbers["window_days"],
    }  # fmt: skip
    yours = f"You measured {listed(rates)}" if sets else "None is written down yet"
    text = (
        f"Counted is the first heart rate taken {numbers['minute']:g} minutes or more after interval work, in the last "
        f"{span(numbers['window_days'])}. This horse rests at {resting:g} beats per minute, so {most:g} or fewer is "
        f"good. {yours}. The bar asks for {many(values['asked'], 'good set')}, the last one among them."
    )
    return Reason("worked_recovery" if sets else "worked_recovery_none", values, text)


def rate_after(record, numbers: dict[str, float]) -> float | None:
    """The first heart rate taken at the asked minute or later."""
    for check in sorted(record.body["recoveries"], key=lambda each: each["minute"]):
        if check["minute"] >= numbers["minute"] and check["heart_rate_bpm"] is not None:
            return check["heart_rate_bpm"]
    return None


def recovery_state(sets: list, good: list, numbers: dict[str, float]) -> str:
    if not sets:
        return "untried"
    if sets[-1] not in good:
        return "shaky"
    return "shown" if len(good) >= numbers["sets"] else "building"


def recovery_counted(sets: list, good: list, most: float, numbers: dict[str, float]) -> Reason:
    if not sets:
        return Reason("untried", {}, f"No heart rate taken {numbers['minute']:g} minutes after work yet.")
    return Reason(
        "counted",
        {"sets": len(sets), "good": len(good)},
        f"{most:g} beats per minute or fewer after {len(good)} of {many(len(sets), 'set')}.",
    )
