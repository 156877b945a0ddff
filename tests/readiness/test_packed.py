"""Standings sent packed hold all that they do in full, but for what is left out far above the present level."""

import copy
import json
from pathlib import Path

import pytest

from fieldtally.readiness.bar import shipped_bars
from fieldtally.readiness.packed import FAR_STEPS, packed
from fieldtally.readiness.plan import with_plans
from fieldtally.readiness.standing import compute_standings
from readiness.made_up import TODAY
from readiness.test_any_logbook import random_logbook

VECTOR = json.loads((Path(__file__).parents[2] / "fixtures" / "contract" / "packed_standings.json").read_text("utf-8"))


def put_back(told: dict) -> list[dict]:
    """What the phone does with it, in Python."""
    return [
        standing | {"findings": [whole(each, standing["horse_id"], told) for each in standing["findings"]]}
        for standing in told["standings"]
    ]


def whole(finding: dict, horse_id: str, told: dict) -> dict:
    lines, places = told["evidence"][horse_id], finding["evidence"]
    pairs = places and zip(places[::2], places[1::2], strict=True)
    listed = places and [lines[place] | {"weight": weight} for place, weight in pairs]
    return finding | {"evidence": listed, "bar": told["bars"][horse_id][finding["bar"]]}


def test_the_vector_that_the_phone_runs_too():
    assert packed(VECTOR["horses"]) == VECTOR["packed"]


@pytest.mark.parametrize("seed", range(6))
def test_nothing_is_lost_up_to_two_levels_above_and_only_the_lines_beyond(seed):
    logbook = random_logbook(seed)
    books = {logbook.book.id: logbook.book}
    standings = with_plans(compute_standings(logbook.records, books, shipped_bars(), TODAY, 1, logbook.horse))
    for present in (None, *range(0, len(standings), 2)):
        given = [each | {"is_present_level": place == present} for place, each in enumerate(standings)]
        before = copy.deepcopy(given)
        back = put_back(packed({logbook.horse: given}))
        assert given == before
        for place, (full, again) in enumerate(zip(given, back, strict=True)):
            if present is None or place <= present + FAR_STEPS:
                assert again == full
            else:
                assert again == full | {"findings": [without_lines(each) for each in full["findings"]]}


def without_lines(finding: dict) -> dict:
    kept = {key: value for key, value in finding.items() if key not in ("explanation", "worked_out")}
    return kept | {"evidence": None}


def test_what_repeats_is_sent_once():
    told = VECTOR["packed"]
    assert [len(told[table]["one"]) for table in ("evidence", "bars")] == [2, 2]
