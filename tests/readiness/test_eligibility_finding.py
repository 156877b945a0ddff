"""Entry rules of shipped rulebooks, from a logbook's results."""

from fieldtally.trade.rulebook import shipped
from readiness.made_up import TODAY, Logbook


def logbook(rulebook_id="us-2025", **horse):
    made = Logbook(book=shipped()[rulebook_id])
    return made


def eligibility(made, level_id):
    return made.finding("eligibility", level_id)


def test_a_level_without_entry_rules_says_so_and_sends_to_the_rulebook():
    found = eligibility(logbook("de-2018"), "ve")
    assert found["reasons"][-1]["code"] == "check_rulebook"


def test_results_that_are_not_there_hold_the_level():
    found = eligibility(logbook(), "preliminary")
    assert found["state"] == "on_hold" and found["needs"]


def test_what_the_rider_knows_herself_is_to_check_and_does_not_hold():
    made = logbook()
    found = eligibility(made, "preliminary")
    assert any(reason["text"].startswith("Check this yourself: the rider turns 14") for reason in found["reasons"])


def test_enough_qualifying_results_meet_the_rule():
    made = logbook()
    made.records[made.horse].body["birth_year"] = 2015
    for day in range(1, 9):
        made.add(
            "event_result",
            horse_id=made.horse,
            date=f"2026-04-{day:02d}",
            event=f"Event {day}",
            rulebook_id="us-2025",
            level_id="training" if day < 7 else "modified",
            status="completed",
            dressage_penalties=30,
            show_jumping_jump_penalties=0,
            show_jumping_time_penalties=0,
            cross_country_jump_penalties=0,
            cross_country_time_penalties=0,
            cross_country_seconds_over=0,
        )
    assert TODAY.year == 2026
    assert eligibility(made, "preliminary")["state"] == "shown"
