"""Entry rules as published, worked through the shipped rulebooks: who may enter, what is missing, until when."""

from datetime import date

import pytest

from fieldtally.trade.eligibility import eligibility
from fieldtally.trade.rulebook import shipped

BOOKS = shipped()


def ridden(day, level_id, **more):
    return {"date": day, "event": "an event", "level_id": level_id, "status": "completed", "horse_id": "bay",
            "dressage_penalties": 35, "cross_country_jump_penalties": 0, "cross_country_seconds_over": 20,
            "show_jumping_jump_penalties": 4} | more  # fmt: skip


def weigh(book, level_id, results, on, *, horse=2010, rider=1990, **more):
    return eligibility(results, BOOKS[book], level_id, date.fromisoformat(on), horse, rider, horse_id="bay", **more)


def have(found):
    return {rule.who: (rule.have, rule.need) for rule in found.rules}


def at_training(count, first=1, **more):
    return [ridden(f"2024-{month:02d}-01", "training", **more) for month in range(first, first + count)]


@pytest.mark.parametrize("figures, counts", [
    ({"dressage_penalties": 45}, True), ({"dressage_penalties": 45.1}, False),
    ({"cross_country_seconds_over": 75}, True), ({"cross_country_seconds_over": 76}, False),
    ({"show_jumping_jump_penalties": 16}, True), ({"show_jumping_jump_penalties": 20}, False),
    ({"cross_country_jump_penalties": 20}, False), ({"dangerous_riding": True}, False),
    ({"cross_country_jump_penalties": 11, "frangible_or_flag": 1}, False), ({"status": "eliminated"}, False),
])  # fmt: skip
def test_usef_2023_qualifying_result(figures, counts):
    """USEF press release 2023-02-01: dressage 45 or less, no cross-country jumping penalties, 75 s or less over,
    show jumping 16 or less, dangerous riding voids it."""
    found = weigh("us-2023", "preliminary", at_training(1, **figures), "2024-06-01")
    assert have(found)["rider"] == (1 if counts else 0, 6)


@pytest.mark.parametrize("penalties, times, counts", [(11, 1, True), (15, 1, True), (22, 2, False), (26, 2, False)])
def test_usef_from_december_2024_one_device_or_flag_no_longer_voids(penalties, times, counts):
    """USEA news 2024-07-18, effective 2024-12-01: the first frangible 11 or one missed flag 15."""
    one = at_training(1, cross_country_jump_penalties=penalties, frangible_or_flag=times)
    assert have(weigh("us-2025", "preliminary", one, "2025-06-01"))["rider"] == (1 if counts else 0, 6)


def test_usef_2023_preliminary():
    """USEF press release 2023-02-01: the rider six at Training or higher, the horse four, one as a pair."""
    six = [*at_training(4), *at_training(2, first=5, horse_id="grey")]
    found = weigh("us-2023", "preliminary", six, "2024-07-01")
    assert (found.state, have(found)) == ("met", {"rider": (6, 6), "horse": (4, 4), "pair": (1, 1)})
    short = weigh("us-2023", "preliminary", six[1:], "2024-07-01")
    assert short.state == "not_met"
    assert [rule.missing for rule in short.rules if rule.missing] == [
        "1 more qualifying result at Training or higher by the rider.",
        "1 more qualifying result at Training or higher by the horse."]  # fmt: skip


def test_usef_2023_pair_rule_is_waived_over_ten_at_preliminary():
    """The same release: not needed by a rider with over ten qualifying results at Preliminary or higher."""
    for count, state in ((10, "not_met"), (11, "waived")):
        others = [ridden(f"2023-{month:02d}-01", "preliminary", horse_id="grey") for month in range(1, count + 1)]
        found = weigh("us-2023", "preliminary", others, "2024-06-01")
        assert {rule.who: rule.state for rule in found.rules}["pair"] == state


@pytest.mark.parametrize("level_id, rider, horse, state", [
    ("preliminary", 2010, 2019, "met"), ("preliminary", 2011, 2019, "not_met"), ("preliminary", 2010, 2020, "not_met"),
    ("intermediate", 2008, 2018, "met"), ("intermediate", 2009, 2018, "not_met"),
    ("intermediate", 2008, 2019, "not_met"),
])  # fmt: skip
def test_usef_2023_ages(level_id, rider, horse, state):
    """The same release: Preliminary from the year the rider turns 14 and the horse is 5; Intermediate 16 and 6."""
    found = weigh("us-2023", level_id, [], "2024-06-01", horse=horse, rider=rider)
    assert ("not_met" in {gate.state for gate in found.gates}) == (state == "not_met")


def test_usef_2023_results_count_four_years():
    """The same release: within four years."""
    found = weigh("us-2023", "preliminary", [ridden("2020-06-01", "training")], "2024-06-01")
    assert have(found)["rider"][0] == 1 and found.rules[0].counted[0].counts_until == date(2024, 6, 1)
    assert have(weigh("us-2023", "preliminary", [ridden("2020-05-31", "training")], "2024-06-01"))["rider"][0] == 0


def test_usef_2023_one_result_within_twelve_weeks_when_moving_up():
    """The same release."""
    six = at_training(6)
    assert weigh("us-2023", "preliminary", six, "2024-08-24").recency.state == "met"  # 12 weeks after 2024-06-01
    assert weigh("us-2023", "preliminary", six, "2024-08-25").state == "not_met"
    established = [*six, ridden("2024-06-20", "preliminary")]
    assert weigh("us-2023", "preliminary", established, "2024-12-01").recency is None


def test_usef_lead_time():
    """USEA rule refresher 2020: ten days before the cross-country day."""
    assert have(weigh("us-2023", "preliminary", [ridden("2024-05-22", "training")], "2024-06-01"))["rider"][0] == 1
    assert have(weigh("us-2023", "preliminary", [ridden("2024-05-23", "training")], "2024-06-01"))["rider"][0] == 0


def test_usef_preliminary_from_december_2025():
    """USEA news 2024-07-18 and Chronicle of the Horse: four at Training and one at Modified from 2025-12-01; the
    articles do not say whose."""
    four = [ridden(f"2025-{month:02d}-01", "training") for month in (6, 7, 8, 9)]
    modified = ridden("2025-10-01", "modified")
    assert weigh("us-2025", "preliminary", [*four, modified], "2025-12-10").state == "met"
    lacking = weigh("us-2025", "preliminary", four, "2025-12-10")
    assert lacking.rules[0].missing.startswith("1 more qualifying result at Modified")
    assert "does not say whose" in lacking.rules[0].missing
    before = weigh("us-2025", "preliminary", four, "2025-11-20")
    assert {rule.who for rule in before.rules} == {"rider", "horse", "pair"}


@pytest.mark.parametrize("penalties, state", [(12, "met"), (16, "not_met"), (None, "not_known")])
def test_be100_two_clear_rounds_as_a_pair(penalties, state):
    """BE Life, BE90 to BE100: two cross-country clears as a combination with no more than 12 show-jumping
    penalties."""
    two = [ridden(day, "be90", show_jumping_jump_penalties=penalties) for day in ("2024-04-01", "2024-05-01")]
    assert weigh("gb-2024", "be100", two, "2024-06-01").state == state


def test_gb_novice_is_closed_above_twenty_points():
    """A saddlery's blog on British grading (check-values.csv): horses with at most 20 points."""
    assert weigh("gb-2024", "novice", [], "2024-06-01", horse_points=20).state == "met"
    assert weigh("gb-2024", "novice", [], "2024-06-01", horse_points=21).state == "not_met"


def test_canada_open_training_2009():
    """Rider petition of 2009 quoting the rule: three Pre-Training events completed, two of them qualifying; rider
    12, horse 4. What qualifies is not stated, so three completed leave it open and two do not."""
    three = [ridden(f"2009-0{month}-01", "pre_training") for month in (4, 5, 6)]
    ages = {"rider": 1997, "horse": 2005}
    assert weigh("ca-2017", "training", three, "2009-07-01", **ages).state == "not_known"
    assert weigh("ca-2017", "training", three[1:], "2009-07-01", **ages).state == "not_met"
    assert weigh("ca-2017", "training", three, "2009-07-01", rider=1998, horse=2005).state == "not_met"


def test_australia_two_star_long_about_2019():
    """Equestrian Australia, clarification of 520.3: uncategorised, three at CCI/CCN2*-S, or two and one CCN1*-L.
    What qualifies is not stated there."""
    short = [ridden("2019-04-01", "ccn2_s"), ridden("2019-05-01", "ccn2_s")]
    assert weigh("au-2025", "cci2_l", short, "2019-07-01").state == "not_met"
    assert weigh("au-2025", "cci2_l", [*short, ridden("2019-06-01", "ccn1_l")], "2019-07-01").state == "not_known"
    assert weigh("au-2025", "cci2_l", short, "2019-07-01", category="C").state == "met"


def test_ireland_one_star():
    """Eventing Ireland on its change of qualifying results: non-categorised, two at EI100 and one at EI105, or one
    at EI110. What qualifies is not stated there, so enough completed events leave it open."""
    two = [ridden("2024-04-01", "ei100"), ridden("2024-05-01", "ei100")]
    assert weigh("ie-2019", "cci1_intro", two, "2024-07-01").state == "not_met"
    for third in ("ei105", "ei110"):
        assert weigh("ie-2019", "cci1_intro", [*two, ridden("2024-06-01", third)], "2024-07-01").state == "not_known"


@pytest.mark.parametrize("level_id, horse, state", [
    ("cci1_intro", 2019, "met"), ("cci1_intro", 2020, "not_met"), ("cci2_s", 2018, "met"), ("cci4_s", 2018, "not_met"),
])  # fmt: skip
def test_star_levels_ask_the_horses_age(level_id, horse, state):
    """vielseitigkeit.info/regeln, table (values new 2018): five years at one star, six at two and three, seven
    from four on."""
    assert weigh("fei-2018", level_id, [], "2024-06-01", horse=horse).state == state
