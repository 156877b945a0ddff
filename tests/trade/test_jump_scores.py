"""trade.cross_country_score and trade.show_jumping_score: counting, elimination, silence, refusals."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fieldtally.trade import cross_country_score as xc
from fieldtally.trade import show_jumping_score as sj
from fieldtally.trade.bad_input import BadInput
from fieldtally.trade.cross_country_score import CrossCountryRules, cross_country_score
from fieldtally.trade.jump_faults import Fault
from fieldtally.trade.show_jumping_score import ShowJumpingRules, show_jumping_score

RULES = CrossCountryRules(
    refusal_first_penalties=20, refusal_second_penalties=40, stops_at_one_obstacle_that_eliminate=3,
    stops_on_course_that_eliminate=4, rider_falls_that_eliminate=1, horse_falls_that_eliminate=1,
    missed_flag_penalties=15, frangible_penalties=11, dangerous_riding_penalties=25, missed_obstacles_that_eliminate=1,
)  # fmt: skip
ROUND = ShowJumpingRules(4, 4, 8, 3, 1, 1)


def stops(*obstacles):
    return [Fault(obstacle, "refusal") for obstacle in obstacles]


def test_a_clear_round():
    score = cross_country_score([], RULES)
    assert (score.penalties, score.eliminated, score.complete, score.reason) == (0, False, True, "clear")


def test_every_line_says_the_how_manieth_it_was_and_why():
    score = cross_country_score([Fault("4", "refusal"), Fault("9", "run_out", "B"), Fault("9", "circle", "A")], RULES)
    assert [(line.ordinal_at_obstacle, line.ordinal_on_course, line.penalties) for line in score.lines] == [
        (1, 1, 20), (1, 2, 20), (2, 3, 40)]  # fmt: skip
    assert score.lines[2].reason == "second stop at fence 9"
    assert (score.penalties, score.reason) == (80, "80 penalties")


def test_other_faults_do_not_count_as_stops():
    score = cross_country_score([Fault("4", "missed_flag"), Fault("4", "frangible"), Fault("4", "refusal")], RULES)
    assert [line.penalties for line in score.lines] == [15, 11, 20]


def test_after_elimination_nothing_counts():
    score = cross_country_score([Fault("", "horse_fall"), *stops("9")], RULES)
    assert (score.eliminated, score.penalties, score.reason) == (True, 0, "first horse fall: eliminated")
    assert score.lines[1].reason == "after elimination: not counted"
    assert score.lines[1].stated


def test_a_fall_on_the_feet_once_only():
    rules = CrossCountryRules(rider_falls_that_eliminate=2, rider_fall_on_feet_penalties=65)
    assert cross_country_score([Fault("5", "rider_fall_on_feet")], rules).penalties == 65
    assert cross_country_score([Fault("5", "rider_fall_on_feet")] * 2, rules).eliminated
    assert cross_country_score([Fault("5", "rider_fall")], rules).eliminated
    assert cross_country_score([Fault("5", "rider_fall_on_feet")], RULES).eliminated


def test_what_the_rulebook_does_not_state_is_not_invented():
    score = cross_country_score([Fault("3", "frangible"), Fault("4", "refusal"), Fault("", "rider_fall")],
                                CrossCountryRules(20, 40))  # fmt: skip
    assert (score.penalties, score.complete, score.eliminated) == (20, False, False)
    assert "not stated" in score.lines[0].reason and not score.lines[0].stated


def test_silence_about_the_third_stop_on_course_leaves_the_score_open():
    silent = CrossCountryRules(20, 40, stops_at_one_obstacle_that_eliminate=3)
    assert cross_country_score(stops("1", "2"), silent).complete
    third = cross_country_score(stops("1", "2", "3"), silent)
    assert (third.penalties, third.complete) == (60, False)
    assert "third stop on the course" in third.lines[2].reason


def test_silence_alone_is_not_clear():
    assert cross_country_score([Fault("3", "frangible")], CrossCountryRules()).reason == "0 penalties"


def test_show_jumping_counts_stops_over_the_round():
    score = show_jumping_score([Fault("2", "knockdown"), *stops("3", "8")], ROUND)
    assert [line.penalties for line in score.lines] == [4, 4, 8]
    assert show_jumping_score(stops("1", "2", "3"), ROUND).reason == "third disobedience in the round: eliminated"


def test_compulsory_retirement_ends_the_round():
    rules = ShowJumpingRules(4, 4, 8, 3, 1, 1, jump_penalties_that_retire=20)
    score = show_jumping_score([Fault(str(n), "knockdown") for n in range(1, 7)], rules)
    assert (score.eliminated, score.penalties) == (True, 20)
    assert score.lines[4].eliminates and "compulsory retirement" in score.reason
    assert score.lines[5].penalties is None


@pytest.mark.parametrize("score, rules, fault, field", [
    (cross_country_score, RULES, Fault("4", "knockdown"), "faults[0].kind"),
    (cross_country_score, RULES, Fault("4", "stop"), "faults[0].kind"),
    (cross_country_score, RULES, Fault("", "refusal"), "faults[0].obstacle"),
    (show_jumping_score, ROUND, Fault("4", "frangible"), "faults[0].kind"),
    (show_jumping_score, ROUND, Fault("", "knockdown"), "faults[0].obstacle"),
])  # fmt: skip
def test_a_fault_that_cannot_be(score, rules, fault, field):
    with pytest.raises(BadInput) as refusal:
        score([fault], rules)
    assert refusal.value.field == field and refusal.value.fix


def worth(score):
    return math.inf if score.eliminated else score.penalties


def rounds(kinds):
    return st.lists(st.builds(Fault, st.sampled_from("123"), st.sampled_from(kinds)), max_size=6)


PENALTIES, LIMITS = st.none() | st.integers(0, 65), st.none() | st.integers(1, 4)
XC_RULES = st.builds(
    CrossCountryRules, refusal_first_penalties=PENALTIES, refusal_second_penalties=PENALTIES,
    stops_at_one_obstacle_that_eliminate=LIMITS, stops_on_course_that_eliminate=LIMITS,
    rider_falls_that_eliminate=LIMITS, rider_fall_on_feet_penalties=PENALTIES, horse_falls_that_eliminate=LIMITS,
    missed_flag_penalties=PENALTIES, frangible_penalties=PENALTIES, dangerous_riding_penalties=PENALTIES,
    missed_obstacle_penalties=PENALTIES, missed_obstacles_that_eliminate=LIMITS,
)  # fmt: skip


@given(rounds(xc.KINDS), st.sampled_from(xc.KINDS), st.sampled_from("123"), st.integers(0, 6), XC_RULES)
def test_cross_country_never_falls_when_a_fault_is_added(faults, kind, obstacle, place, rules):
    more = faults[:place] + [Fault(obstacle, kind)] + faults[place:]
    assert worth(cross_country_score(more, rules)) >= worth(cross_country_score(faults, rules))


SJ_RULES = st.builds(
    ShowJumpingRules, PENALTIES, PENALTIES, PENALTIES, LIMITS, LIMITS, LIMITS, st.sampled_from([None, 20, 24]),
)  # fmt: skip


@given(rounds(sj.KINDS), st.sampled_from(sj.KINDS), st.integers(0, 6), SJ_RULES)
def test_show_jumping_never_falls_when_a_fault_is_added(faults, kind, place, rules):
    more = faults[:place] + [Fault("2", kind)] + faults[place:]
    assert worth(show_jumping_score(more, rules)) >= worth(show_jumping_score(faults, rules))
