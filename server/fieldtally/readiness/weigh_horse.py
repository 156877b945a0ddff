"""Weighs the horse's side: the attitude it shows at the level's fences, and how it recovers after work."""

import numpy as np

from fieldtally.readiness.attempts import ATTITUDE
from fieldtally.readiness.context import Weighing
from fieldtally.readiness.fence_asks import ASK_BIT
from fieldtally.readiness.finding import Finding, Reason
from fieldtally.readiness.limits import fence_limit
from fieldtally.readiness.listed_records import records_behind
from fieldtally.readiness.plain import many, many_in_words, percent, sentence
from fieldtally.readiness.requirement import Requirement

WILLING = (ATTITUDE["bold"], ATTITUDE["willing"])
LARGE_ENOUGH = 0.85  # of the level's height; fences without height (ditch, water, bank) count at any size


def weigh_attitude(requirement: Requirement, weighing: Weighing) -> Finding:
    """The share of recent attempts near this level's size that the horse met boldly or willingly."""
    numbers, attempts = requirement.numbers, weighing.book.attempts
    rows = rows_with_attitude(weighing, numbers)
    felt = attempts.attitude[rows]
    willing = int(np.isin(felt, WILLING).sum())
    share = willing / len(rows) if len(rows) else 0.0
    needs = tuple(more_attitude(len(rows), share, numbers))
    state = (
        "untried"
        if not len(rows)
        else "shown"
        if not needs
        else "building"
        if needs[0].code == "more_attempts"
        else "shaky"
    )
    text = (
        f"Bold or willing at {willing} of the last {many(len(rows), 'attempt')} near this size."
        if len(rows)
        else "No attempt near this size with the horse's attitude noted."
    )
    return Finding(
        requirement, state, (Reason("counted", {"willing": willing, "attempts": len(rows)}, text),), needs,
        {"attempts": len(rows), "willing": willing, "willing_fraction": share},
        f"Of the last {numbers['last_attempts']:g} attempts within {numbers['window_days']:g} days at fences "
        f"near this level's size, {willing} of "
        f"{len(rows)} were met bold or willing: {percent(share)}. The bar asks for "
        f"{percent(numbers['willing_fraction'])} of at least {numbers['attempts']:g}.",
        lambda: attitudes_behind(weighing, rows),
    )  # fmt: skip


def rows_with_attitude(weighing: Weighing, numbers: dict[str, float]) -> np.ndarray:
    attempts, limit = weighing.book.attempts, fence_limit(weighing.level, "height_cm")
    height = attempts.parts.size("height_cm")
    near = ~(height < limit * LARGE_ENOUGH) if limit is not None else np.ones(len(height), dtype=bool)
    near &= (attempts.parts.asks & ASK_BIT["show_jump"]) == 0
    rows = attempts.keep("rows_with_attitude", lambda: np.flatnonzero(attempts.attitude > 0))
    first = attempts.day.searchsorted(weighing.book.today - numbers["window_days"])
    rows = rows[rows.searchsorted(first) :]
    rows = rows[near[attempts.part[rows]]]
    return rows[-int(numbers["last_attempts"]):]  # fmt: skip


def more_attitude(count: int, share: float, numbers: dict[str, float]):
    more = int(numbers["attempts"]) - count
    if more > 0:
        yield Reason(
            "more_attempts",
            {"attempts": more},
            sentence(f"{many_in_words(more, 'more attempt')} near this size with the attitude noted"),
        )
    if count and share < numbers["willing_fraction"]:
        yield Reason("attitude", {}, "More fences met bold or willing: go back to where the horse enjoys it.")


def attitudes_behind(weighing: Weighing, rows: np.ndarray) -> list[dict]:
    attempts = weighing.book.attempts
    records = [attempts.record(row) for row in rows.tolist()]
    labels = {record.record_id: attempts.label(row) for record, row in zip(records, rows.tolist(), strict=True)}
    return records_behind(
        weighing.book, records, lambda each: labels[each.record_id], lambda each: each.body["attitude"]
    )


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
