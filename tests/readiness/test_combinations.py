"""Combinations: element by element, and as a whole."""

import pytest

from readiness.made_up import Logbook


@pytest.fixture
def logbook():
    return Logbook()


@pytest.fixture
def double(logbook):
    elements = [
        {"letter": "A", "profile": "rail", "height_cm": 88},
        {"letter": "B", "profile": "ditch", "spread_without_height_cm": 120},
        {"letter": "C", "profile": "rail", "height_cm": 88},
    ]
    return logbook.fence("7 Coffin", "coffin", asks=["combination"], elements=elements)


def meet(logbook, fence, outcomes, days_ago=1):
    outing = logbook.outing(days_ago)
    sequence = f"00000000-0000-0000-0000-{len(logbook.records):012d}"
    for letter, outcome in zip("ABC", outcomes, strict=False):
        logbook.attempt(outing, fence, outcome, element=letter, sequence_id=sequence)


def test_all_elements_clear_is_one_clear_of_the_whole(logbook, double):
    meet(logbook, double, ["clear", "clear", "clear"])
    assert logbook.finding("combination_two", "third")["numbers"]["attempts"] == 0  # 88 cm is small at 100
    assert logbook.finding("combination_two")["numbers"]["clear"] == 1
    assert logbook.finding("fixed")["numbers"]["clear"] == 2


def test_a_stop_at_one_element_is_a_stop_of_the_whole(logbook, double):
    meet(logbook, double, ["clear", "refusal"])
    found = logbook.finding("combination_two")["numbers"]
    assert (found["attempts"], found["clear"], found["stops"]) == (1, 0, 1)


def test_one_element_alone_is_no_combination(logbook, double):
    meet(logbook, double, ["clear"])
    assert logbook.finding("combination_two")["numbers"]["attempts"] == 0


def test_an_element_knows_its_company(logbook, double):
    meet(logbook, double, ["clear", "clear", "clear"])
    assert logbook.finding("ditch_fence_before")["numbers"]["clear"] == 1
    assert logbook.finding("ditch_fence_after")["numbers"]["clear"] == 1
    assert logbook.finding("ditch_alone")["numbers"]["attempts"] == 0


def test_an_attempt_without_element_stands_for_the_whole_fence(logbook, double):
    logbook.attempt(logbook.outing(), double)
    assert logbook.finding("combination_two")["numbers"]["clear"] == 1
