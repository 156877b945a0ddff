"""Corrections of single values: hand-worked vectors, which the client runs too (tests/client/correction.test.ts)."""

import json
from pathlib import Path

import pytest

from fieldtally.trade.correction import corrected, trouble_with, values_of
from fieldtally.trade.rulebook import load_file

CONTRACT = Path(__file__).parents[2] / "fixtures" / "contract"
CASES = json.loads((CONTRACT / "correction.json").read_text(encoding="utf-8"))
LADDER = load_file(CONTRACT / "fit_ladder.toml")
SAID = {
    "other_rulebook": "is for the rulebook",
    "no_level": "has no level",
    "no_quantity": "is not a quantity of",
    "out_of_range": "cannot be meant",
    "not_whole": "is not a whole number",
}


@pytest.mark.parametrize("case", CASES, ids=lambda case: case["name"])
def test_vector(case):
    for body, code in zip(case["corrections"], case["troubles"], strict=True):
        said = trouble_with(LADDER, body)
        assert said is None if code is None else SAID[code] in said
    book = corrected(LADDER, case["corrections"])
    for each in case["states"]:
        value = values_of(book.level(each["level_id"]), each["phase"]).get(each["quantity"])
        stated = value and {name: getattr(value, name) for name in ("value", "unit", "source", "grade")}
        assert stated == each["stated"]


def test_every_trouble_is_met():
    assert {code for case in CASES for code in case["troubles"]} == {None, *SAID}
