"""What a person reads when a number will not do: thousands apart, times as a watch shows them, no exponent."""

import pytest
from marshmallow import ValidationError

from fieldtally.book.fields import Number
from fieldtally.book.kinds import KINDS
from fieldtally.book.shown import between, shown
from support.bodies import FULL

READ = [
    (10_000, "m", "10,000 m"),
    (0.5, "m", "0.5 m"),
    (412.5, "m", "412.5 m"),
    (1990, "year", "1990 year"),
    (-1_000_000, "in the quantity's unit", "-1,000,000 in the quantity's unit"),
    (1e300, "m", "1e+300 m"),
    (1, "ms", "0.001 s"),
    (500, "ms", "0.5 s"),
    (0, "ms", "0 s"),
    (59_999, "ms", "59.999 s"),
    (61_200, "ms", "0:01:01.2"),
    (7_200_000, "ms", "2:00:00"),
    (86_400_000, "ms", "24:00:00"),
    (-604_800_000, "ms", "-168:00:00"),
    (8.64e15, "ms", "8.64e+15 ms"),
    (1_800_000_000, "ms", "1,800,000,000 ms"),
]


@pytest.mark.parametrize("value, unit, text", READ)
def test_a_number_as_a_person_reads_it(value, unit, text):
    assert shown(value, unit) == text


def test_a_range_names_its_unit_once():
    assert between(1, 250, "cm") == "1 to 250 cm"
    assert between(10, 10_000, "m") == "10 to 10,000 m"
    assert between(500, 7_200_000, "ms") == "0.5 s to 2:00:00"


def test_a_time_out_of_range_says_so_in_hours_and_seconds():
    with pytest.raises(ValidationError) as error:
        KINDS["timed_canter"].schema().load(FULL["timed_canter"] | {"elapsed_ms": 86_400_000})
    (told,) = error.value.messages["elapsed_ms"]
    assert told["message"] == "24:00:00 is outside 0.5 s to 2:00:00."
    assert told["fix"] == "Enter a value from 0.5 s to 2:00:00."


def numbers(schema):
    for field in schema().fields.values():
        field = getattr(field, "inner", field)
        if isinstance(field, Number):
            yield field
        elif hasattr(field, "schema"):
            yield from numbers(type(field.schema))


def test_no_limit_of_any_kind_reads_as_an_exponent():
    limits = [between(n.least, n.most, n.unit) for kind in KINDS.values() for n in numbers(kind.schema)]
    assert len(limits) > 50
    assert not [text for text in limits if "e+" in text]
