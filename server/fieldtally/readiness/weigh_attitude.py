"""Weighs the attitude the horse shows at the level's fences: how much of it is bold or willing, and where it is going.

A horse that still says yes often enough, but less and less, is on its way to saying no.
"""

from dataclasses import dataclass

import numpy as np

from fieldtally.readiness.attempts import ATTITUDE
from fieldtally.readiness.context import Weighing
from fieldtally.readiness.fence_asks import ASK_BIT
from fieldtally.readiness.finding import Finding, Reason
from fieldtally.readiness.limits import fence_limit
from fieldtally.readiness.listed_records import records_behind
from fieldtally.readiness.plain import many, many_in_words, percent, sentence, span
from fieldtally.readiness.requirement import Requirement

WILLING = (ATTITUDE["bold"], ATTITUDE["willing"])
LARGE_ENOUGH = 0.85  # of the level's height; fences without height (ditch, water, bank) count at any size


@dataclass(frozen=True)
class Felt:
    """Of `of` attempts, `willing` were met boldly or willingly."""

    willing: int
    of: int

    @property
    def share(self) -> float:
        return self.willing / self.of if self.of else 0.0


def weigh_attitude(requirement: Requirement, weighing: Weighing) -> Finding:
    """The share of recent attempts near this level's size that the horse met boldly or willingly, over all of them
    and lately against before."""
    numbers = requirement.numbers
    rows = rows_with_attitude(weighing, numbers)
    willing = np.isin(weighing.book.attempts.attitude[rows], WILLING)
    felt, earlier, lately = whole_and_parts(willing, int(numbers["lately"]))
    falling = is_falling(earlier, lately, numbers)
    needs = tuple(missing(felt, falling, numbers))
    return Finding(
        requirement,
        judged(felt, needs),
        tuple(reasons(felt, earlier, lately, falling)),
        needs,
        {"attempts": felt.of, "willing": felt.willing, "willing_fraction": felt.share,
         "lately": lately.of, "lately_willing": lately.willing},
        lambda: (explained(felt, numbers), trend(earlier, lately, numbers)),
        lambda: attitudes_behind(weighing, rows),
    )  # fmt: skip


def whole_and_parts(willing: np.ndarray, lately: int) -> tuple[Felt, Felt, Felt]:
    """All of them, those before the last `lately`, and those; the oldest come first."""
    before = max(0, len(willing) - lately)
    return tuple(Felt(int(each.sum()), len(each)) for each in (willing, willing[:before], willing[before:]))


def is_falling(earlier: Felt, lately: Felt, numbers: dict[str, float]) -> bool:
    """Lately below the bar and clearly below what it was. With fewer attempts before than lately nothing is said."""
    if earlier.of < numbers["lately"]:
        return False
    return lately.share < numbers["willing_fraction"] and lately.share <= earlier.share - numbers["falling_fraction"]


def judged(felt: Felt, needs: tuple[Reason, ...]) -> str:
    if not felt.of:
        return "untried"
    if not needs:
        return "shown"
    return "building" if needs[0].code == "more_attempts" else "shaky"


def reasons(felt: Felt, earlier: Felt, lately: Felt, falling: bool):
    if not felt.of:
        text = "No attempt near this size with the horse's attitude noted."
    else:
        text = f"Bold or willing at {felt.willing} of the last {many(felt.of, 'attempt')} near this size."
    yield Reason("counted", {"willing": felt.willing, "attempts": felt.of}, text)
    if falling:
        now, before = f"{lately.willing} of the last {lately.of}", f"{earlier.willing} of {earlier.of} before"
        values = {"willing": lately.willing, "lately": lately.of}
        values |= {"willing_before": earlier.willing, "before": earlier.of}
        yield Reason("falling", values, f"It is going down: {now}, after {before}.")


def missing(felt: Felt, falling: bool, numbers: dict[str, float]):
    more = int(numbers["attempts"]) - felt.of
    if more > 0:
        text = f"{many_in_words(more, 'more attempt')} near this size with the attitude noted"
        yield Reason("more_attempts", {"attempts": more}, sentence(text))
    if felt.of and (falling or felt.share < numbers["willing_fraction"]):
        yield Reason("attitude", {}, "More fences met bold or willing: go back to where the horse enjoys it.")


def explained(felt: Felt, numbers: dict[str, float]) -> Reason:
    values = {
        "willing": felt.willing, "attempts": felt.of, "share": round(100 * felt.share),
        "last": int(numbers["last_attempts"]), "days": numbers["window_days"],
        "asked": round(100 * numbers["willing_fraction"]), "least": int(numbers["attempts"]),
    }  # fmt: skip
    met = f"{felt.willing} of {felt.of} were met bold or willing, {percent(felt.share)}"
    yours = met if felt.of else "there is none"
    text = (
        f"Counted are the last {values['last']} attempts of the last {span(numbers['window_days'])} at fences near "
        f"this level's size where you noted the horse's attitude: {yours}. The bar asks for "
        f"{percent(numbers['willing_fraction'])} of at least {values['least']}."
    )
    return Reason("worked_attitude" if felt.of else "worked_attitude_none", values, text)


def trend(earlier: Felt, lately: Felt, numbers: dict[str, float]) -> Reason:
    from_on = int(2 * numbers["lately"])
    if earlier.of < numbers["lately"]:
        text = f"From {from_on} attempts on it also says whether the attitude is going down."
        return Reason("worked_no_trend", {"attempts": from_on}, text)
    values = {
        "willing": lately.willing, "lately": lately.of, "willing_before": earlier.willing, "before": earlier.of,
        "falling": round(100 * numbers["falling_fraction"]),
    }  # fmt: skip
    text = (
        f"Of the last {lately.of} it was {lately.willing}, of the {earlier.of} before them {earlier.willing}. It "
        f"counts as going down when the last {lately.of} are below the bar, and below those before by "
        f"{percent(numbers['falling_fraction'])} or more."
    )
    return Reason("worked_trend", values, text)


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


def attitudes_behind(weighing: Weighing, rows: np.ndarray) -> list[dict]:
    attempts = weighing.book.attempts
    records = [attempts.record(row) for row in rows.tolist()]
    labels = {record.record_id: attempts.label(row) for record, row in zip(records, rows.tolist(), strict=True)}
    return records_behind(
        weighing.book, records, lambda each: labels[each.record_id], lambda each: each.body["attitude"]
    )
