"""Weighs how the horse recovers after work."""

from fieldtally.readiness.context import Weighing
from fieldtally.readiness.finding import Finding, Reason
from fieldtally.readiness.listed_records import records_behind
from fieldtally.readiness.plain import many
from fieldtally.readiness.requirement import Requirement


def weigh_recovery(requirement: Requirement, weighing: Weighing) -> Finding:
    """Heart rate some minutes after work, against the horse's own resting rate."""
    numbers, book = requirement.numbers, weighing.book
    resting = book.horse["resting_heart_rate_bpm"]
    if resting is None:
        reason = Reason(
            "no_resting_rate", {}, "Enter the horse's own resting heart rate: recovery is measured against it."
        )
        return Finding(requirement, "untried", (reason,))
    most = resting + numbers["above_resting_bpm"]
    sets = [
        each for each in book.since("interval_set", numbers["window_days"]) if rate_after(each, numbers) is not None
    ]
    good = [each for each in sets if rate_after(each, numbers) <= most]
    return Finding(
        requirement, recovery_state(sets, good, numbers), (recovery_counted(sets, good, most, numbers),), (),
        {"sets": len(sets), "good": len(good), "most_bpm": most},
        f"Heart rate {numbers['minute']:g} minutes or more after work, against a resting rate of {resting:g}: "
        f"{most:g} or below is asked, in the last {numbers['sets']:g} sets.",
        lambda: records_behind(
            book, sets, lambda _: "Interval work", lambda each: f"{rate_after(each, numbers):g} beats per minute"
        ),
    )  # fmt: skip


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
