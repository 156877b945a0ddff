"""trade.course: the course card."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fieldtally.trade.bad_input import BadInput
from fieldtally.trade.course import CAUTION, card_text, course_card
from fieldtally.trade.time_penalties import TimeRules

RULES = TimeRules(0.4, 2, too_fast_penalties_per_second=1, too_fast_speed_mpm=450)


def test_the_card_of_a_course():
    card = course_card(1800, 360, RULES, [("1", 120), ("2", 300), ("9AB", 1080)])
    assert (card.times.optimum_s, card.times.fastest_s, card.times.limit_s) == (300, 240, 600)
    assert [mark.distance_m for mark in card.minute_markers] == [360, 720, 1080, 1440]
    assert [mark.clock_s for mark in card.fences] == [20, 50, 180]


def test_the_printed_card():
    text = card_text(course_card(1800, 360, RULES, [("1", 120), ("9AB", 1080)]), "Novice")
    assert text.splitlines() == [
        "Novice", "1800 m at 360 m/min", "", "Optimum time  5:00", "Too fast under 4:00", "Time limit    10:00", "",
        "Minute markers", "1 min     360 m   1:00", "2 min     720 m   2:00", "3 min    1080 m   3:00",
        "4 min    1440 m   4:00", "", "Fences", "1       120 m   0:20", "9AB    1080 m   3:00", "", CAUTION,
    ]  # fmt: skip


def test_a_card_without_rules_says_what_is_not_stated():
    text = card_text(course_card(1800, 360, TimeRules()))
    assert "Time limit    not stated" in text
    assert "Too fast" not in text and "Fences" not in text


def test_a_fence_at_the_start_and_one_at_the_finish():
    assert [mark.clock_s for mark in course_card(1800, 360, RULES, [("s", 0), ("f", 1800)]).fences] == [0, 300]


@pytest.mark.parametrize("arguments, field", [
    ((0, 360, RULES), "length_m"), ((math.nan, 360, RULES), "length_m"), ((1800, -1, RULES), "speed_mpm"),
    ((1_800_000, 360, RULES), "length_m"),
    ((1800, 360, RULES, [("1", -5)]), "fences[0].distance_m"),
    ((1800, 360, RULES, [("1", 5), ("2", math.nan)]), "fences[1].distance_m"),
    ((1800, 360, RULES, [("1", 1801)]), "fences[0].distance_m"),
    ((1800, 360, RULES, [("1", 500), ("2", 400)]), "fences[1].distance_m"),
])  # fmt: skip
def test_cards_that_cannot_be(arguments, field):
    with pytest.raises(BadInput) as refusal:
        course_card(*arguments)
    assert refusal.value.field == field


@given(st.integers(200, 7000), st.integers(250, 600))
def test_markers_are_the_minutes_before_the_finish(length_m, speed_mpm):
    marks = course_card(length_m, speed_mpm, RULES).minute_markers
    assert all(mark.distance_m < length_m for mark in marks)
    assert len(marks) == -(-length_m // speed_mpm) - 1
