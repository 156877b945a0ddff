"""trade.eligibility and its parts, on an invented rulebook."""

from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fieldtally.trade.eligibility import eligibility
from fieldtally.trade.entry_rules import COMPLETED, CROSS_COUNTRY_CLEAR, EntryRule, Need
from fieldtally.trade.qualifying import verdict
from fieldtally.trade.rulebook import Level, Rulebook, Value
from fieldtally.trade.validity import years_later

ON = date(2026, 6, 1)


def values(**numbers):
    return {name: Value(name, number, "", "an invented rulebook", "secondary") for name, number in numbers.items()}


DEFINED = values(
    dressage_penalties_max=45, cross_country_jump_penalties_max=0, cross_country_seconds_over_max=75,
    cross_country_time_penalties_max=30, show_jumping_penalties_max=16, dangerous_riding_allowed=0,
    frangible_or_flag_allowed=1,
)  # fmt: skip


def level(level_id, order, *rules, defined=DEFINED, **entry):
    return Level(level_id, level_id.title(), order, eligibility=rules, qualifying_result=defined, entry=values(**entry))


def rule(*needs, who="pair", **more):
    return EntryRule(who, "an invented rule", "an invented rulebook", "secondary", (needs,), **more)


def rulebook(*rules, defined=DEFINED, entry=None, **validity):
    low, mid = level("low", 1, defined=defined), level("mid", 2, defined=defined)
    return Rulebook("invented", "Invented", "Nobody", "1", "current",
                    (low, mid, level("high", 3, *rules, **(entry or {}))), validity=values(**validity))  # fmt: skip


def result(day="2026-04-01", level_id="low", **more):
    return {"date": day, "event": f"Event of {day}", "level_id": level_id, "status": "completed", "horse_id": "bay",
            "dressage_penalties": 35, "cross_country_jump_penalties": 0, "cross_country_seconds_over": 10,
            "cross_country_time_penalties": None, "show_jumping_jump_penalties": 4, "frangible_or_flag": 0} | more


def weigh(book, *results, on=ON, horse_birth_year=2016, rider_birth_year=2000, **more):
    return eligibility(results, book, "high", on, horse_birth_year, rider_birth_year, **more)


TWO_LOW = rule(Need(2, "low"))


# --- one result


def of(need=None, **figures):
    return verdict(result(**figures), level("low", 1), need or Need(1, "low"))


@pytest.mark.parametrize("figures, state, words", [
    ({}, "counts", ""),
    ({"dressage_penalties": 45}, "counts", ""),
    ({"dressage_penalties": 45.1}, "does_not", "dressage penalties 45.1, at most 45 may be"),
    ({"dressage_penalties": None}, "cannot_tell", "dressage penalties not entered"),
    ({"cross_country_jump_penalties": 20}, "does_not", "cross-country jumping penalties"),
    ({"cross_country_seconds_over": 76}, "does_not", "seconds over the optimum 76"),
    ({"cross_country_seconds_over": None, "cross_country_time_penalties": 30}, "counts", ""),
    ({"cross_country_seconds_over": None, "cross_country_time_penalties": 30.4}, "does_not", "time penalties"),
    ({"cross_country_seconds_over": None}, "cannot_tell", "time penalties not entered"),
    ({"show_jumping_jump_penalties": 20}, "does_not", "show-jumping penalties 20"),
    ({"dangerous_riding": True}, "does_not", "dangerous riding"),
    ({"cross_country_jump_penalties": 11, "frangible_or_flag": 1}, "counts", ""),
    ({"cross_country_jump_penalties": 15, "frangible_or_flag": 1}, "counts", ""),
    ({"cross_country_jump_penalties": 22, "frangible_or_flag": 2}, "does_not", "jumping penalties 22"),
    ({"cross_country_jump_penalties": 31, "frangible_or_flag": 1}, "does_not", "jumping penalties 31"),
    ({"status": "eliminated"}, "does_not", "eliminated, not completed"),
])  # fmt: skip
def test_one_result(figures, state, words):
    found = of(**figures)
    assert found.state == state
    assert words in " ".join(found.reasons)


def test_a_completed_event_counts_where_that_is_asked():
    completed = Need(1, "low", result=COMPLETED)
    assert of(completed, dressage_penalties=None, cross_country_jump_penalties=40).state == "counts"


def test_a_clear_round_counts_where_that_is_asked():
    clear = Need(1, "low", result=CROSS_COUNTRY_CLEAR, show_jumping_penalties_max=12)
    assert of(clear, dressage_penalties=60, cross_country_seconds_over=200).state == "counts"
    assert of(clear, show_jumping_jump_penalties=16).state == "does_not"
    assert of(clear, cross_country_jump_penalties=None).state == "cannot_tell"


def test_an_undefined_qualifying_result_cannot_be_told():
    assert verdict(result(), level("low", 1, defined={}), Need(1, "low")).state == "cannot_tell"


# --- counting


def test_enough_results():
    found = weigh(rulebook(TWO_LOW), result("2026-04-01"), result("2026-05-01"))
    assert (found.state, found.rules[0].have, found.rules[0].missing) == ("met", 2, "")
    assert [each.date for each in found.rules[0].counted] == ["2026-05-01", "2026-04-01"]


def test_what_is_missing_is_said_in_words():
    found = weigh(rulebook(TWO_LOW), result("2026-04-01"))
    assert (found.state, found.rules[0].have, found.rules[0].need) == ("not_met", 1, 2)
    assert found.rules[0].missing == "1 more qualifying result at Low by this rider on this horse."


def test_a_result_that_might_count_leaves_it_open():
    found = weigh(rulebook(TWO_LOW), result("2026-04-01"), result("2026-05-01", dressage_penalties=None))
    assert found.state == "not_known"
    missing = found.rules[0].missing
    assert "This might count: Event of 2026-05-01 on 2026-05-01: dressage penalties not entered." in missing


def test_completed_events_settle_only_the_no_where_qualifying_is_not_defined():
    book = rulebook(TWO_LOW, defined={})
    assert weigh(book, result("2026-04-01")).state == "not_met"
    assert weigh(book, result("2026-04-01"), result("2026-05-01")).state == "not_known"


def test_horse_pair_and_rider_count_different_results():
    mine, other = result("2026-04-01"), result("2026-05-01", horse_id="grey")
    for who, have in (("pair", 1), ("horse", 1), ("not_stated", 1), ("rider", 2)):
        found = weigh(rulebook(rule(Need(2, "low"), who=who)), mine, other, horse_id="bay")
        assert found.rules[0].have == have, who


def test_higher_levels_count_only_where_the_rule_says_so():
    two = result("2026-04-01", "mid"), result("2026-05-01", "mid")
    assert weigh(rulebook(TWO_LOW), *two).state == "not_met"
    assert weigh(rulebook(rule(Need(2, "low", or_higher=True))), *two).state == "met"
    assert weigh(rulebook(rule(Need(2, "mid", or_higher=True))), result("2026-04-01")).rules[0].have == 0


def test_no_result_counts_twice_in_one_rule():
    both = rule(Need(2, "low", or_higher=True), Need(1, "mid", or_higher=True))
    assert weigh(rulebook(both), result("2026-04-01"), result("2026-05-01", "mid")).rules[0].have == 2
    three = weigh(rulebook(both), result("2026-03-01"), result("2026-04-01"), result("2026-05-01", "mid"))
    assert (three.state, three.rules[0].have) == ("met", 3)


def test_results_of_two_kinds_may_be_the_same_ones():
    some_of_them = rule(Need(3, "low", result=COMPLETED), Need(2, "low"))
    poor = result("2026-02-01", dressage_penalties=60)
    assert weigh(rulebook(some_of_them), poor, result("2026-04-01"), result("2026-05-01")).state == "met"
    assert weigh(rulebook(some_of_them), poor, poor | {"date": "2026-03-01"}, result("2026-05-01")).state == "not_met"


def test_one_of_two_ways_is_enough():
    either = EntryRule("pair", "three low, or one mid", "s", "secondary", ((Need(3, "low"),), (Need(1, "mid"),)))
    assert weigh(rulebook(either), result(level_id="mid")).state == "met"
    assert weigh(rulebook(either), result("2026-04-01"), result("2026-05-01")).rules[0].missing.startswith("1 more")


def test_a_waived_rule_is_no_hindrance():
    waivable = rule(Need(9, "low"), waived_by=Need(2, "mid"))
    grey = result("2026-04-01", "mid", horse_id="grey"), result("2026-05-01", "mid", horse_id="grey")
    found = weigh(rulebook(waivable), *grey, horse_id="bay")
    assert (found.state, found.rules[0].state, found.rules[0].missing) == ("met", "waived", "")


def test_rules_of_other_days_and_other_riders_do_not_apply():
    book = rulebook(rule(Need(9, "low"), in_force_to="2026-05-31"), rule(Need(1, "low"), in_force_from="2026-06-01"),
                    rule(Need(8, "low"), category="category A"))  # fmt: skip
    assert [each.need for each in weigh(book).rules] == [1]
    assert [each.need for each in weigh(book, category="category A").rules] == [1, 8]
    assert [each.need for each in weigh(book, on=date(2026, 5, 31)).rules] == [9]


def test_riders_without_a_category_are_uncategorised():
    assert len(weigh(rulebook(rule(Need(1, "low"), category="uncategorised"))).rules) == 1


def test_results_of_another_body_do_not_count_and_of_another_edition_only_when_named():
    book, theirs = rulebook(rule(Need(1, "low"))), result(rulebook_id="invented-0")
    assert weigh(book, theirs).state == "not_met"
    assert weigh(book, theirs, editions=("invented-0",)).state == "met"
    assert weigh(book, result(rulebook_id="invented")).state == "met"


# --- time


def test_lead_time_and_the_future():
    book = rulebook(rule(Need(1, "low")), lead_days=10)
    assert weigh(book, result("2026-05-22")).state == "met"
    assert weigh(book, result("2026-05-23")).state == "not_met"
    assert weigh(rulebook(rule(Need(1, "low"))), result("2026-06-02")).state == "not_met"


def test_a_long_format_takes_longer():
    book = rulebook(rule(Need(1, "mid_l")), lead_days=10, lead_days_long_format=24)
    long = Rulebook(**{**vars(book), "levels": (*book.levels, level("mid_l", 2))})
    assert weigh(long, result("2026-05-08", "mid_l")).state == "met"
    assert weigh(long, result("2026-05-09", "mid_l")).state == "not_met"


def test_results_lapse_and_the_day_is_named():
    book = rulebook(TWO_LOW, validity_years=4)
    found = weigh(book, result("2022-06-01"), result("2024-02-29"), result("2026-05-01"))
    assert [each.counts_until for each in found.rules[0].counted] == [
        date(2030, 5, 1), date(2028, 2, 29), date(2026, 6, 1)]  # fmt: skip
    assert found.until == found.rules[0].met_until == date(2028, 2, 29)
    assert weigh(book, result("2022-05-31"), result("2026-05-01")).state == "not_met"


def test_a_rule_with_its_own_window():
    own = rule(Need(1, "low", within_days=90))
    assert weigh(rulebook(own, validity_years=4), result("2026-03-03")).rules[0].met_until == ON
    assert weigh(rulebook(own, validity_years=4), result("2026-03-02")).state == "not_met"


def test_years_later_keeps_leap_days():
    assert years_later(date(2024, 2, 29), 4) == date(2028, 2, 29)
    assert years_later(date(2024, 2, 29), 1) == date(2025, 2, 28)


def test_moving_up_needs_something_recent():
    book = rulebook(rule(Need(1, "low")), one_within_weeks=12)
    assert weigh(book, result("2026-03-09")).recency.until == ON
    stale = weigh(book, result("2026-03-08"))
    assert (stale.state, stale.rules[0].state, stale.recency.state) == ("not_met", "met", "not_met")
    open_still = weigh(book, result("2026-03-08"), result("2026-05-01", dressage_penalties=None))
    assert open_still.recency.state == "not_known"
    assert weigh(book, result("2026-01-01"), result("2025-09-01", "high")).recency is None


# --- gates


def test_ages_are_counted_by_calendar_year():
    book = rulebook(entry={"rider_age_min_years": 14, "horse_age_min_years": 5})
    young = weigh(book, horse_birth_year=2022, rider_birth_year=2013)
    assert [(gate.rule, gate.state) for gate in young.gates] == [
        ("rider_age_min_years", "not_met"), ("horse_age_min_years", "not_met")]  # fmt: skip
    assert young.gates[0].opens_on == date(2027, 1, 1)
    assert "turns 14 in 2027" in young.gates[0].missing
    assert weigh(book, horse_birth_year=2021, rider_birth_year=2012).state == "met"
    assert weigh(book, horse_birth_year=2021, rider_birth_year=None).state == "not_known"


@pytest.mark.parametrize("gate, points, state", [
    ("horse_points_max", 20, "met"), ("horse_points_max", 21, "not_met"), ("horse_points_max", None, "not_known"),
    ("horse_points_min", 11, "met"), ("horse_points_min", 10, "not_met"),
])  # fmt: skip
def test_points(gate, points, state):
    book = rulebook(entry={gate: 20 if gate == "horse_points_max" else 11})
    assert weigh(book, horse_points=points).state == state


def test_as_json_days_are_text():
    data = weigh(rulebook(TWO_LOW, validity_years=4), result("2026-04-01"), result("2026-05-01")).to_json()
    assert (data["on"], data["until"]) == ("2026-06-01", "2030-04-01")
    assert data["rules"][0]["counted"][0]["counts_until"] == "2030-05-01"


def test_no_rule_stated_is_not_permission():
    found = weigh(rulebook())
    assert (found.state, found.until) == ("not_stated", None)
    assert "decide" in found.cautions[0]


def test_cautions_fit_the_rules():
    book = rulebook(rule(Need(1, "low"), who="horse"), entry={"horse_age_min_years": 5})
    assert len(weigh(book).cautions) == 3


RESULTS = st.lists(st.builds(
    lambda day, low, penalties: result(day.isoformat(), low, dressage_penalties=penalties),
    st.dates(date(2020, 1, 1), date(2026, 6, 1)), st.sampled_from(["low", "mid"]), st.sampled_from([35, 60, None]),
), max_size=8)  # fmt: skip
RANK = ["not_met", "not_known", "met"]


@given(RESULTS, RESULTS)
def test_more_results_never_make_a_count_worse(some, more):
    book = rulebook(rule(Need(2, "low", or_higher=True)), validity_years=4, lead_days=10)
    one, other = weigh(book, *some).rules[0], weigh(book, *some, *more).rules[0]
    assert other.have >= one.have
    assert RANK.index(other.state) >= RANK.index(one.state)
