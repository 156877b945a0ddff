"""What the trade's functions say when they are given something that cannot be."""

import math


class BadInput(ValueError):
    """A value that cannot be: which field, what is wrong, how to mend it."""

    def __init__(self, field: str, message: str, fix: str) -> None:
        super().__init__(f"{field}: {message} {fix}")
        self.field, self.message, self.fix = field, message, fix


def number(field: str, value: object, unit: str) -> float:
    """`value` as a finite number in `unit`, or BadInput naming `field`."""
    if isinstance(value, bool) or not isinstance(value, (int, float)) or not math.isfinite(value):
        raise BadInput(field, f"{value!r} is not a number.", f"Give a number in {unit}.")
    return value


def above_zero(field: str, value: object, unit: str) -> float:
    """`value` as a finite number above zero in `unit`, or BadInput."""
    if number(field, value, unit) <= 0:
        raise BadInput(field, f"{value:g} {unit} cannot be.", f"Give a number of {unit} above zero.")
    return value


def not_below_zero(field: str, value: object, unit: str) -> float:
    """`value` as a finite number of at least zero in `unit`, or BadInput."""
    if number(field, value, unit) < 0:
        raise BadInput(field, f"{value:g} {unit} cannot be.", f"Give zero or more {unit}.")
    return value


def whole(field: str, value: object, unit: str) -> int:
    """`value` as a whole number of at least zero, or BadInput."""
    if not_below_zero(field, value, unit) != int(value):
        raise BadInput(field, f"{value:g} is not a whole number.", f"Give a whole number of {unit}.")
    return int(value)
