"""trade.score_rules: what a level states reaches the score under the same name."""

from dataclasses import fields

import pytest

from fieldtally.trade.cross_country_score import CrossCountryRules
from fieldtally.trade.dressage_score import DressageRules
from fieldtally.trade.quantities import BY_PHASE
from fieldtally.trade.rulebook import Level, Value
from fieldtally.trade.score_rules import (
    course_speeds,
    cross_country_rules,
    dressage_rules,
    from_memory,
    show_jumping_rules,
    time_rules,
    used,
)
from fieldtally.trade.show_jumping_score import ShowJumpingRules
from fieldtally.trade.time_penalties import TimeRules


def value(quantity, number, grade="secondary"):
    return quantity, Value(quantity, number, "", "an invented rulebook", grade)


LEVEL = Level("first", "First", 1, {
    "cross_country": dict([value("refusal_first_penalties", 20), value("time_penalties_per_second", 0.4, "from_memory"),
                           value("speed_min_mpm", 350), value("speed_max_mpm", 400)]),
    "show_jumping": dict([value("knockdown_penalties", 4), value("speed_mpm", 320)]),
    "dressage": dict([value("penalty_coefficient", 1.5)]),
})  # fmt: skip


def test_what_is_stated_arrives_and_the_rest_stays_not_stated():
    assert cross_country_rules(LEVEL) == CrossCountryRules(refusal_first_penalties=20)
    assert show_jumping_rules(LEVEL) == ShowJumpingRules(knockdown_penalties=4)
    assert dressage_rules(LEVEL).coefficient == 1.5
    assert time_rules(LEVEL, "cross_country") == TimeRules(time_penalties_per_second=0.4)
    assert time_rules(LEVEL, "show_jumping") == TimeRules()


def test_values_that_nobody_has_read_are_named():
    values = used(LEVEL, "cross_country", CrossCountryRules, TimeRules)
    assert [each.quantity for each in values] == ["refusal_first_penalties", "time_penalties_per_second"]
    assert [each.quantity for each in from_memory(values)] == ["time_penalties_per_second"]


def test_the_speeds_of_a_course():
    assert course_speeds(LEVEL) == (350, 400)
    assert course_speeds(LEVEL, "show_jumping") == (320, 320)
    assert course_speeds(LEVEL, "dressage") is None


@pytest.mark.parametrize("rules, phase", [
    (CrossCountryRules, "cross_country"), (ShowJumpingRules, "show_jumping"), (DressageRules, "dressage"),
    (TimeRules, "cross_country"),
])  # fmt: skip
def test_every_rule_is_a_quantity_that_a_rulebook_can_state(rules, phase):
    ours = {"rounding"}  # no rulebook was found that states it: a setting of the caller
    assert {each.name for each in fields(rules)} - ours <= BY_PHASE[phase].keys()
