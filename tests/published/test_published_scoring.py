"""Scores and times against what published documents print.

The rules under test are written out beside each check, so that it holds whatever the shipped rulebooks say;
tests/published/test_check_values.py compares the rulebooks' own numbers.
"""

import pytest

from fieldtally.trade.course import course_card
from fieldtally.trade.cross_country_score import CrossCountryRules, cross_country_score
from fieldtally.trade.dressage_score import DressageRules, Sheet, dressage_score
from fieldtally.trade.jump_faults import Fault
from fieldtally.trade.optimum import clock_words, recorded_s, time_at_speed_s
from fieldtally.trade.show_jumping_score import ShowJumpingRules, show_jumping_score
from fieldtally.trade.time_penalties import TimeRules, course_times, time_score

FEI_2019 = CrossCountryRules(20, 40, missed_flag_penalties=15, frangible_penalties=11)
USEF_2012 = CrossCountryRules(20, 40, stops_at_one_obstacle_that_eliminate=3, stops_on_course_that_eliminate=4)
PER_SECOND = TimeRules(time_penalties_per_second=0.4, time_limit_factor=2, recorded_time_step_s=1)


def stops(*obstacles):
    return [Fault(*obstacle.split(":")[:1], "refusal", *obstacle.split(":")[1:]) for obstacle in obstacles]


# --- optimum time


def test_be90_championship_2019():
    """Horse & Hound 2019: 3150 m at 450 m/min, optimum time 7 minutes (check-values.csv, GB-BE 2019: 420 s)."""
    for rounding in ("up", "nearest", "none"):
        assert time_at_speed_s(3150, 450, rounding) == 420
    assert clock_words(420) == "7:00"


def test_minutes_are_not_rounded_before_they_are_seconds():
    """A rider's blog prints 3:49 for 2300 m at 600 m/min by rounding 3.8333 min to 3.83 first; it is 230 s."""
    assert clock_words(time_at_speed_s(2300, 600)) == "3:50"


def test_an_optimum_that_is_no_whole_second():
    """2000 m at 520 m/min is 230.77 s (arithmetic): 3:51 rounded up or to the nearest."""
    assert time_at_speed_s(2000, 520, "none") == pytest.approx(230.77, abs=0.005)
    assert time_at_speed_s(2000, 520, "up") == time_at_speed_s(2000, 520, "nearest") == 231


# vielseitigkeit.info/regeln (values "new 2018", page of 2021 and 2024): least and most length in m, speed in
# m/min. The lengths are whole or half minutes at the speed: 4 to 6 min, 5 to 6, …, 11 to 12 at five stars.
STAR_LEVELS = [
    ("CCI1*-Intro", 2000, 3000, 500, 240, 360), ("CCI2*-S", 2600, 3120, 520, 300, 360),
    ("CCI2*-L", 3640, 4680, 520, 420, 540), ("CCI3*-S", 3025, 3575, 550, 330, 390),
    ("CCI3*-L", 4400, 5500, 550, 480, 600), ("CCI4*-S", 3420, 3990, 570, 360, 420),
    ("CCI4*-L", 5700, 6270, 570, 600, 660), ("CCI5*-L", 6270, 6840, 570, 660, 720),
]  # fmt: skip


@pytest.mark.parametrize("level, shortest, longest, mpm, least_s, most_s", STAR_LEVELS)
def test_star_levels_last_the_minutes_their_lengths_were_made_for(level, shortest, longest, mpm, least_s, most_s):
    assert (time_at_speed_s(shortest, mpm), time_at_speed_s(longest, mpm)) == (least_s, most_s)


# Alberta Horse Trials Handbook 2017 (check-values.csv, CAN-EC 2017): length and speed of one event's courses.
# The handbook's own times were not readable; the seconds are arithmetic.
@pytest.mark.parametrize("length_m, mpm, seconds", [(3400, 520, 392.31), (2500, 450, 333.33), (2250, 400, 337.5)])
def test_alberta_2017(length_m, mpm, seconds):
    assert time_at_speed_s(length_m, mpm, "none") == pytest.approx(seconds, abs=0.005)


# --- recorded time and time penalties


def test_any_part_of_a_second_is_the_next_whole_second():
    """USEF EV138.2 as quoted in a rider forum about 2012: 30.25 s is recorded as 31 s."""
    assert recorded_s(30_250) == 31


@pytest.mark.parametrize("seconds_over, penalties", [(75, 30), (90, 36)])
def test_qualifying_limits_in_seconds_and_penalties(seconds_over, penalties):
    """USEF press release 2023-02-01: 75 s or 30 penalties; USEA rule refresher on the years before: 90 s or
    36 penalties. Both pairs printed, so 0.4 a second."""
    times = course_times(3150, 450, PER_SECOND)
    assert time_score(times, (420 + seconds_over) * 1000, PER_SECOND).penalties == penalties


def test_time_limit_is_twice_the_optimum():
    """USEF EV138.2 as quoted in a rider forum about 2012."""
    assert course_times(3150, 450, PER_SECOND).limit_s == 840


US_NOVICE = TimeRules(0.4, 2, 1, too_fast_penalties_per_second=1, too_fast_speed_mpm=450)


@pytest.mark.parametrize("recorded, penalties", [(311, 4.4), (300, 0), (240, 0), (236, 4)])
def test_us_novice_course_of_1800_m_at_360(recorded, penalties):
    """Speed-fault speed 450 m/min (rider blog on USEF 2014), 1 a second under it (US event scoring page), 0.4
    a second over the optimum (the same): optimum 300 s, speed-fault time 240 s, limit 600 s."""
    times = course_times(1800, 360, US_NOVICE)
    assert (times.optimum_s, times.fastest_s, times.limit_s) == (300, 240, 600)
    assert time_score(times, recorded * 1000, US_NOVICE).penalties == penalties


@pytest.mark.parametrize("mpm, fault_mpm", [(350, 420), (400, 450), (470, 520)])
def test_us_speed_fault_times_leave_room_under_the_optimum(mpm, fault_mpm):
    """Speeds and speed-fault speeds of Beginner Novice, Novice and Training (rider blog on USEF 2014)."""
    rules = TimeRules(0.4, 2, 1, 1, fault_mpm)
    times = course_times(2000, mpm, rules)
    assert times.fastest_s < times.optimum_s
    assert time_score(times, times.fastest_s * 1000, rules).penalties == 0
    assert time_score(times, times.fastest_s * 1000 - 1000, rules).penalties == 1


@pytest.mark.parametrize("under, penalties", [(20, 0), (21, 0.4), (30, 4.0)])
def test_australian_window_about_2008(under, penalties):
    """Rider forum, 2008: up to Pre-Novice 20 s under the optimum are free, then 0.4 a second."""
    rules = TimeRules(too_fast_penalties_per_second=0.4, too_fast_window_s=20)
    times = course_times(1800, 360, rules)
    assert time_score(times, (300 - under) * 1000, rules).penalties == penalties


# --- cross-country jumping


@pytest.mark.parametrize("faults, penalties", [
    (stops("5"), 20), (stops("5", "5"), 60), (stops("5", "9"), 40),
    ([Fault("5", "missed_flag")], 15), ([Fault("5", "frangible")], 11),
])  # fmt: skip
def test_fei_2019(faults, penalties):
    """FEI Eventing Rules, 25th edition 2019, pp. 62-69, as an open encyclopedia cites them: first refusal 20,
    second at the same obstacle 40, flag 15, frangible 11. An Irish hunter-trial page works 20 + 40 = 60."""
    assert cross_country_score(faults, FEI_2019).penalties == penalties


def test_usef_2012_combination_is_one_obstacle():
    """USEA correction to its March 2012 cheat sheet, citing USEF EV142.3c: stops at A and B add up, the third
    at one obstacle eliminates."""
    assert cross_country_score(stops("9:A", "9:B"), USEF_2012).penalties == 60
    assert cross_country_score(stops("9:A", "9:B", "9:A"), USEF_2012).eliminated


def test_usef_2012_fourth_on_the_course_eliminates():
    """The same correction: the fourth on the whole course eliminates, the third does not."""
    assert not cross_country_score(stops("1", "2", "3"), USEF_2012).eliminated
    assert cross_country_score(stops("1", "2", "3", "4"), USEF_2012).eliminated


def test_usef_fall_on_the_feet_before_2024():
    """Eventing Nation 2014 quoting EV141; USEA 2023-05-05 on EV123: at Beginner Novice and Novice 65 for a
    first fall landing on the feet, then elimination."""
    rules = CrossCountryRules(rider_fall_on_feet_penalties=65, rider_falls_that_eliminate=2)
    assert cross_country_score([Fault("7", "rider_fall_on_feet")], rules).penalties == 65
    assert cross_country_score([Fault("7", "rider_fall_on_feet"), Fault("9", "rider_fall_on_feet")], rules).eliminated


EA_2025 = CrossCountryRules(20, 40, rider_falls_that_eliminate=1, horse_falls_that_eliminate=1,
                            missed_flag_penalties=15, frangible_penalties=11, dangerous_riding_penalties=25,
                            missed_obstacle_penalties=100, missed_obstacles_that_eliminate=3)  # fmt: skip


@pytest.mark.parametrize("kinds, penalties", [
    (["dangerous_riding"], 25), (["frangible", "missed_flag"], 26), (["missed_obstacle"] * 2, 200),
    (["missed_obstacle"] * 3, None), (["rider_fall"], None), (["horse_fall"], None),
])  # fmt: skip
def test_australia_2025(kinds, penalties):
    """Notice of Equestrian Australia's changes from 2025-01-01 by a regional club, EvA80 and below: frangible
    11, flag 15, dangerous riding 25, missed obstacle 100, 100, then elimination; a fall eliminates."""
    score = cross_country_score([Fault(str(n), kind) for n, kind in enumerate(kinds, 1)], EA_2025)
    assert (None if score.eliminated else score.penalties) == penalties


# --- show jumping


@pytest.mark.parametrize("limit, clear_of_elimination", [(2, 1), (3, 2)])
def test_usef_2012_disobediences(limit, clear_of_elimination):
    """USEA correction citing USEF EV153.4 and EV154.2 (2012): the second in the round eliminates at
    Preliminary and above, the third at Training and below."""
    rules = ShowJumpingRules(4, 4, 8, stops_that_eliminate=limit)
    fences = [str(n) for n in range(1, limit + 1)]
    assert show_jumping_score(stops(*fences), rules).eliminated
    assert not show_jumping_score(stops(*fences[:clear_of_elimination]), rules).eliminated


def test_british_round_about_2003():
    """Horse & Hound news c. 2003 and a British coach's page: knockdown 4, first disobedience 4, second 8,
    compulsory retirement at 24."""
    rules = ShowJumpingRules(4, 4, 8, jump_penalties_that_retire=24)
    faults = [Fault("1", "knockdown"), Fault("2", "refusal"), Fault("3", "refusal")]
    assert show_jumping_score(faults, rules).penalties == 16
    assert show_jumping_score([Fault(str(n), "knockdown") for n in range(6)], rules).eliminated
    assert not show_jumping_score([Fault(str(n), "knockdown") for n in range(5)], rules).eliminated


def test_us_compulsory_retirement_at_20():
    """Chronicle of the Horse on USEA's proposals for 2025: at Training and above 20 or more retire."""
    rules = ShowJumpingRules(4, 4, 8, jump_penalties_that_retire=20)
    assert show_jumping_score([Fault(str(n), "knockdown") for n in range(5)], rules).eliminated


# --- dressage


def test_british_example_130_of_200():
    """A British coach's page (check-values.csv, GB-BE): 130 of 200 marks is 65 %, 35 penalties."""
    score = dressage_score([Sheet(130, 200)], DressageRules())
    assert (score.percent, score.penalties) == (65, 35)


@pytest.mark.parametrize("percent, coefficient, penalties", [(77, 1.5, 34.5), (77, 1, 23.0), (80, 1.5, 30)])
def test_the_two_eras_of_the_coefficient(percent, coefficient, penalties):
    """A US event's scoring page: 77 % was 34.5 with the coefficient 1.5 used before 2018; without it 23.0.
    Australian and old pages still print 80 % = 30."""
    assert dressage_score([Sheet(percent, 100)], DressageRules(penalty_coefficient=coefficient)).penalties == penalties


def test_us_errors_of_course():
    """USEF EV136 as restated by trade pages: 2, then 4, then elimination."""
    rules = DressageRules(2, 4, 3)
    assert [dressage_score([Sheet(130, 200)], rules, errors).percent for errors in (0, 1, 2)] == [65, 64, 62]
    assert dressage_score([Sheet(130, 200)], rules, 3).eliminated


def test_fei_rounds_to_one_decimal():
    """FEI Eventing Rules 2019, pp. 62-69, as an open encyclopedia cites them: 100 less per cent, one decimal."""
    assert dressage_score([Sheet(149.5, 220)], DressageRules(penalties_decimals=1)).penalties == 32.0  # 32.045…


# --- course card


def test_minute_markers_of_the_be90_championship():
    """Minute markers stand at multiples of the speed (common practice, no source)."""
    card = course_card(3150, 450, PER_SECOND)
    assert [mark.distance_m for mark in card.minute_markers] == [450, 900, 1350, 1800, 2250, 2700]
