"""Dressage: marks with coefficients and errors to a percentage, and the percentage to penalties.

Penalties are (100 − per cent) × the penalty coefficient of the era: 1.5 before 2018, 1 since. The same
77 % was 34.5 then and is 23.0 now, so scores of the two eras are never compared: compare percentages.
Arithmetic is decimal, so that halves round as on paper.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import ROUND_HALF_UP, Decimal

from fieldtally.trade.bad_input import BadInput, above_zero, not_below_zero, whole

HIGHEST_MARK = 10


@dataclass(frozen=True)
class DressageRules:
    """What a rulebook says for one level, under its own names; None: not stated. Decimals not stated: not
    rounded. A coefficient not stated is 1, as it has been everywhere since 2018."""

    error_first_marks: float | None = None
    error_second_marks: float | None = None
    errors_that_eliminate: int | None = None
    percent_decimals: int | None = None
    penalties_decimals: int | None = None
    penalty_coefficient: float | None = None

    @property
    def coefficient(self) -> float:
        return 1.0 if self.penalty_coefficient is None else self.penalty_coefficient


@dataclass(frozen=True)
class Sheet:
    """One judge's marks: their sum with coefficients, before errors, and the most it could have been."""

    marks: float
    maximum: float


@dataclass(frozen=True)
class DressageScore:
    """`percent` and `penalties` are None where eliminated. The sheets are kept: only they outlast an era."""

    sheets: tuple[Sheet, ...]
    errors: int
    percent: float | None
    penalties: float | None
    penalty_coefficient: float
    eliminated: bool
    reason: str


def exact(value: float) -> Decimal:
    return Decimal(str(value))


def sheet(marks: Sequence[tuple[float, float]]) -> Sheet:
    """A judge's sheet from (mark 0 to 10, coefficient) pairs."""
    if not marks:
        raise BadInput("marks", "There are no marks.", "Give at least one mark.")
    for index, (mark, coefficient) in enumerate(marks):
        above_zero(f"marks[{index}].coefficient", coefficient, "times")
        if not_below_zero(f"marks[{index}].mark", mark, "marks") > HIGHEST_MARK:
            raise BadInput(f"marks[{index}].mark", f"{mark:g} is above {HIGHEST_MARK}.", "Give a mark from 0 to 10.")
    total = sum(exact(mark) * exact(coefficient) for mark, coefficient in marks)
    return Sheet(float(total), float(HIGHEST_MARK * sum(exact(coefficient) for _, coefficient in marks)))


def checked(each: Sheet) -> Sheet:
    above_zero("maximum", each.maximum, "marks")
    if not_below_zero("marks", each.marks, "marks") > each.maximum:
        raise BadInput("marks", f"{each.marks:g} is more than the maximum of {each.maximum:g}.",
                       "Check both numbers against the sheet.")  # fmt: skip
    return each


def rounded(value: Decimal, decimals: float | None) -> Decimal:
    return value if decimals is None else value.quantize(Decimal(1).scaleb(-int(decimals)), ROUND_HALF_UP)


def deduction(errors: int, rules: DressageRules) -> Decimal | None:
    """Marks taken off each sheet; None where the errors eliminate."""
    if rules.errors_that_eliminate is not None and errors >= rules.errors_that_eliminate:
        return None
    costs = (rules.error_first_marks, rules.error_second_marks)[:errors]
    if errors > len(costs) or None in costs:
        raise BadInput("errors", f"This rulebook does not state what {errors} errors cost.",
                       "Correct the rulebook's value from the rulebook in your hand.")  # fmt: skip
    return sum((exact(each) for each in costs), Decimal(0))


def percent_of(sheets: Sequence[Sheet], off: Decimal) -> Decimal:
    """Mean of the judges' percentages, each sheet less the deduction and never below zero."""
    shares = [max(Decimal(0), exact(each.marks) - off) / exact(each.maximum) for each in sheets]
    return 100 * sum(shares, Decimal(0)) / len(shares)


def dressage_score(sheets: Sequence[Sheet], rules: DressageRules, errors: int = 0) -> DressageScore:
    """Percentage and penalties of one ridden test from its judges' sheets and the rider's errors."""
    kept = tuple(checked(each) for each in sheets)
    if not kept:
        raise BadInput("sheets", "There is no judge's sheet.", "Give the marks of at least one judge.")
    off = deduction(whole("errors", errors, "errors"), rules)
    if off is None:
        return DressageScore(kept, errors, None, None, rules.coefficient, True,
                             f"{errors} errors of course: eliminated")  # fmt: skip
    percent = rounded(percent_of(kept, off), rules.percent_decimals)
    penalties = rounded((100 - percent) * exact(rules.coefficient), rules.penalties_decimals)
    return DressageScore(kept, errors, float(percent), float(penalties), rules.coefficient, False,
                         f"{float(percent):g} % is {float(penalties):g} penalties")  # fmt: skip


def better(one: DressageScore, other: DressageScore) -> bool:
    """Whether `one` has fewer penalties; BadInput across the coefficient's eras."""
    if one.penalty_coefficient != other.penalty_coefficient:
        raise BadInput("penalty_coefficient", "These two scores are from eras with different coefficients.",
                       "Compare the percentages instead.")  # fmt: skip
    return (one.eliminated, one.penalties or 0) < (other.eliminated, other.penalties or 0)
