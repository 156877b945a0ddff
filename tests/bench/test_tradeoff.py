"""Every rule at every strictness, and the outings that rules plan for themselves."""

import json
from collections import Counter
from xml.etree import ElementTree

import pytest

from bench.decision import DEFAULTS, trade
from bench.naive import RULES, WHOLE_FAMILY
from bench.pairs import OUTINGS, QUESTIONS
from bench.planned import MOST_QUESTIONS, PRESENTATIONS, Pair, by_fieldtally, by_perfect_judge, by_rule_of_thumb
from bench.tradeoff import BOUNDS, PLANNED_BOUNDS, best_within, ours
from bench.tradeoff_picture import picture


@pytest.fixture(scope="module")
def told():
    return trade(60, DEFAULTS)


def test_it_says_of_every_rule_how_careful_and_how_patient_it_is(told):
    assert json.loads(json.dumps(told)) == json.loads(json.dumps(told, allow_nan=False))
    assert set(told) == {"alike", "planned"}
    assert {ours(bound) for bound in BOUNDS} | set(WHOLE_FAMILY) == set(told["alike"]["all worlds"])
    for how, bounds in (("alike", BOUNDS), ("planned", PLANNED_BOUNDS)):
        strict = [told[how]["all worlds"][ours(bound)] for bound in bounds]
        waits = [each["outings_to_complete"] for each in strict]
        assert set(WHOLE_FAMILY) <= set(told[how]["all worlds"])
        assert waits == sorted(waits) and all(0 <= each["false_complete"] <= 1 for each in strict)


def test_the_picture_marks_every_rule_and_the_target_in_each_panel(told):
    shapes = Counter(each.tag.rpartition("}")[2] for each in ElementTree.fromstring(picture(told)).iter())
    independent = sum(name.startswith("perfect") for name in told["alike"]["independent"])
    thumb = sum(len(told[how]["all worlds"]) for how in ("alike", "planned")) - len(BOUNDS) - len(PLANNED_BOUNDS)
    assert shapes["circle"] == thumb + len(WHOLE_FAMILY) + 1
    assert shapes["rect"] == 2 * len(BOUNDS) + len(PLANNED_BOUNDS) + 2  # the last two: ground and legend
    axes, targets, triangles = 3, 3 + 1, independent + 1
    assert shapes["path"] == axes + targets + triangles


def test_the_rival_is_the_most_careful_of_those_that_are_no_slower():
    found = {
        "slow": {"false_complete": 0.0, "outings_to_complete": 9.0},
        "quick": {"false_complete": 0.5, "outings_to_complete": 3.0},
        "even": {"false_complete": 0.2, "outings_to_complete": 6.0},
    }
    assert best_within(found, 6.0, found) == ("even", 0.2)
    assert best_within(found, 2.0, found) is None


@pytest.mark.parametrize("world", ["independent", "only_what_goes_well"])
def test_a_plan_keeps_to_an_outing_and_schools_what_is_lacking_first(world):
    pair = Pair(world, 5, by_rule_of_thumb(RULES["three clear in a row"]))
    wanted = [3, 1, 4, 0, 9, 2]
    for _ in range(40):
        programme = pair.programme(wanted)
        assert sum(times for _, times in programme) <= PRESENTATIONS
        questions = [question for question, _ in programme]
        assert len(set(questions)) == len(questions) and set(questions) <= set(range(QUESTIONS))
        work = [question for question in wanted if question in questions]
        assert questions[: min(len(work), MOST_QUESTIONS)] == work[:MOST_QUESTIONS] or world != "independent"


def test_whoever_plans_ends_when_nothing_is_lacking():
    plans = (by_rule_of_thumb(RULES["raw rate over 80 %"]), by_fieldtally(DEFAULTS), by_perfect_judge(0.8))
    for plan in plans:
        pair = Pair("independent", 11, plan).season()
        lacking = [plan(pair.outcomes[:outing]) for outing in range(1, len(pair.outcomes) + 1)]
        assert all(lacking[:-1]) and len(lacking) <= OUTINGS
        assert (pair.complete is None) == bool(lacking[-1])
        assert Pair("independent", 11, plan).season().outcomes == pair.outcomes
