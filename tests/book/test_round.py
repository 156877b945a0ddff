"""A round told fence by fence, and the counts that must agree with it."""

import json
from pathlib import Path

import pytest

from fieldtally.book.bodies.results import counted
from fieldtally.book.kinds import KINDS

VECTORS = json.loads((Path(__file__).parents[2] / "fixtures" / "contract" / "round.json").read_text(encoding="utf-8"))
HORSE = "aaaaaaaa-0000-4000-8000-000000000001"


def jumps_of(lines):
    return [{"label": label, "outcome": outcome} for label, outcome in (line.split() for line in lines)]


def body_of(vector, **other):
    counts = vector["counts"] | other
    return {"horse_id": HORSE, "date": "2026-05-03", "height_cm": 95, "jumps": jumps_of(vector["jumps"])} | counts


@pytest.mark.parametrize("vector", VECTORS["rounds"], ids=lambda vector: vector["name"])
def test_counts_that_agree_are_taken(vector):
    assert counted(jumps_of(vector["jumps"])).items() <= vector["counts"].items()
    assert KINDS["jumping_round"].schema().validate(body_of(vector)) == {}


@pytest.mark.parametrize("name", ["knockdowns", "refusals", "rider_fall", "horse_fall"])
@pytest.mark.parametrize("vector", VECTORS["rounds"], ids=lambda vector: vector["name"])
def test_counts_that_differ_are_refused_by_name(vector, name):
    wrong = not vector["counts"][name] if name.endswith("fall") else vector["counts"][name] + 1
    errors = KINDS["jumping_round"].schema().validate(body_of(vector, **{name: wrong}))
    assert [problem["code"] for problem in errors[name]] == ["does_not_add_up"]


def test_a_round_without_jumps_keeps_its_counts():
    body = {"horse_id": HORSE, "date": "2026-05-03", "height_cm": 95, "efforts": 10, "knockdowns": 3}
    assert KINDS["jumping_round"].schema().validate(body) == {}
    assert KINDS["jumping_round"].schema().load(body)["jumps"] == []
