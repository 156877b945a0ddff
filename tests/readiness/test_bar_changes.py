"""A coach's changes to the bar: applied in order, remembered with who and why."""

import json

import pytest

from readiness.made_up import Logbook


def change(logbook, quantity, value, requirement_id="ditch_alone", level_id="second", author="coach"):
    logbook.add(
        "bar_change",
        author=author,
        rulebook_id=logbook.book.id,
        level_id=level_id,
        requirement_id=requirement_id,
        quantity=quantity,
        value=value,
        reason="He is green.",
    )


def test_a_change_counts_and_says_who_and_why():
    logbook = Logbook()
    change(logbook, "clear", 7)
    bar = logbook.finding("ditch_alone")["bar"]
    assert bar["numbers"]["clear"] == 7
    assert bar["changes"][0] | {"record_id": None} == {
        "quantity": "clear", "default": 3, "value": 7, "author": "coach", "reason": "He is green.", "record_id": None,
    }  # fmt: skip


def test_no_value_puts_the_default_back():
    logbook = Logbook()
    change(logbook, "clear", 7)
    change(logbook, "clear", None)
    assert logbook.finding("ditch_alone")["bar"]["numbers"]["clear"] == 3


def test_a_requirement_can_be_dropped_and_put_back():
    logbook = Logbook()
    change(logbook, "dropped", 1)
    assert "ditch_alone" not in {each.requirement.id for each in logbook.standing().findings}
    change(logbook, "dropped", None)
    assert "ditch_alone" in {each.requirement.id for each in logbook.standing().findings}


def test_other_levels_and_unknown_names_are_left_as_they_are():
    logbook = Logbook()
    change(logbook, "clear", 7, level_id="third")
    change(logbook, "no_such", 7)
    change(logbook, "clear", 7, requirement_id="no_such")
    assert logbook.finding("ditch_alone")["bar"]["numbers"]["clear"] == 3


@pytest.mark.parametrize("value", [-1_000_000, 0, 0.5, 1_000_000])
def test_a_number_turned_beyond_sense_is_held_where_it_still_means_something(value):
    logbook = Logbook()
    ditch = logbook.fence("4 Ditch", "ditch", spread_without_height_cm=120)
    for days_ago in (30, 20, 10):
        outing = logbook.outing(days_ago, rider_confidence=4, minutes_in_saddle=60)
        logbook.attempt(outing, ditch, presentation={"company": "alone"}, attitude="bold")
        logbook.attempt(outing, ditch, "refusal", presentation={"company": "alone"})
        logbook.add(
            "timed_canter",
            outing_id=outing,
            distance_m=400,
            measured_by="tape",
            elapsed_ms=60_000,
            target_speed_mpm=400,
        )
        for kind, body in (("flatwork_test", {"test": "B", "level_id": "second", "percent": 60}),
                           ("jumping_round", {"height_cm": 95, "efforts": 10})):  # fmt: skip
            logbook.add(kind, horse_id=logbook.horse, date="2026-05-20", **body)
    for finding in logbook.standing().findings:
        for quantity in finding.requirement.numbers:
            change(logbook, quantity, value, finding.requirement.id)
    json.dumps(logbook.standing().to_json(), allow_nan=False)
