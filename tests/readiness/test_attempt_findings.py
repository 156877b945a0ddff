"""The six states of a cross-country finding, each from attempts a rider could have made."""

from dataclasses import replace
from datetime import timedelta

import pytest

from readiness.made_up import TODAY, Logbook


@pytest.fixture
def logbook():
    return Logbook()


def ditch(logbook, **body):
    return logbook.fence("4 Ditch", "ditch", spread_without_height_cm=120, **body)


ALONE = {"company": "alone"}
DOWNHILL = {"ground": "downhill"}


def school(logbook, fence, days, outcome="clear", presentation=ALONE, times=1):
    for days_ago in days:
        logbook.attempt(logbook.outing(days_ago), fence, outcome, times, presentation=presentation)


def test_untried_when_nothing_was_met(logbook):
    found = logbook.finding("ditch_alone")
    assert found["state"] == "untried"
    assert [need["text"] for need in found["needs"]] == ["Four clear, in two outings."]
    assert found["numbers"]["attempts"] == 0 and found["evidence"] == []


def test_building_says_how_many_more_and_where(logbook):
    school(logbook, ditch(logbook), [9], times=3)
    found = logbook.finding("ditch_alone")
    assert found["state"] == "building"
    assert found["needs"][0]["values"]["outings"] == 1
    assert found["needs"][0]["text"].endswith("more clear, in another outing.")


def test_shown_after_clear_attempts_on_several_days(logbook):
    school(logbook, ditch(logbook), [60, 40, 20, 10])
    found = logbook.finding("ditch_alone")
    assert (found["state"], found["needs"]) == ("shown", [])
    assert found["numbers"]["lower_bound"] >= found["bar"]["numbers"]["bound"]


def test_another_presentation_is_another_requirement(logbook):
    school(logbook, ditch(logbook), [60, 40, 20, 10])
    assert logbook.finding("ditch_downhill")["state"] == "untried"
    school(logbook, ditch(logbook), [9, 8, 7, 6], presentation=DOWNHILL)
    assert logbook.finding("ditch_downhill")["state"] == "shown"


def test_a_single_stop_is_shaky_until_put_right_even_on_the_same_day(logbook):
    fence = ditch(logbook)
    school(logbook, fence, range(20, 180, 8))
    outing = logbook.outing(10)
    logbook.attempt(outing, fence, "refusal", presentation=ALONE)
    found = logbook.finding("ditch_alone")
    assert found["state"] == "shaky" and found["reasons"][0]["code"] == "stop"
    assert found["needs"][0]["text"] == "One more clear, to rebuild it."
    logbook.attempt(outing, fence, "clear", presentation=ALONE)
    assert logbook.finding("ditch_alone")["state"] == "shown"


def test_a_day_that_ends_on_a_stop_is_shaky_whatever_was_clear_before_it(logbook):
    fence = ditch(logbook)
    school(logbook, fence, range(20, 180, 8))
    outing = logbook.outing(10)
    logbook.attempt(outing, fence, "clear", 2, presentation=ALONE)
    logbook.attempt(outing, fence, "refusal", presentation=ALONE)
    found = logbook.finding("ditch_alone")
    assert (found["state"], found["reasons"][0]["values"]["clear_since"]) == ("shaky", 0)
    assert found["reasons"][0]["text"].endswith("none clear since, of the one asked for.")
    logbook.attempt(outing, logbook.fence("9 Ditch", "ditch", spread_without_height_cm=120), presentation=ALONE)
    assert logbook.finding("ditch_alone")["state"] == "shown"


def test_a_later_outing_asked_for_after_a_stop_is_a_later_one(logbook):
    fence = ditch(logbook)
    school(logbook, fence, range(20, 180, 8))
    outing = logbook.outing(10)
    logbook.attempt(outing, fence, "refusal", presentation=ALONE)
    logbook.attempt(outing, fence, "clear", presentation=ALONE)
    logbook.add(
        "bar_change", author="coach", rulebook_id=logbook.book.id, level_id="second", requirement_id="ditch_alone",
        quantity="rebuild_outings", value=1, reason="Another day shows more.",
    )  # fmt: skip
    found = logbook.finding("ditch_alone")
    assert (found["state"], found["reasons"][0]["values"]["clear_since"]) == ("shaky", 1)
    school(logbook, fence, [5])
    assert logbook.finding("ditch_alone")["state"] == "shown"


def test_what_is_edited_later_stays_where_it_was_in_its_day(logbook):
    """A note added to the stop in the evening does not move it behind the clear attempt that put it right."""
    fence = ditch(logbook)
    school(logbook, fence, range(20, 180, 8))
    outing = logbook.outing(10)
    (stop,) = logbook.attempt(outing, fence, "refusal", presentation=ALONE)
    logbook.attempt(outing, fence, "clear", presentation=ALONE)
    noted = {**logbook.records[stop].body, "note": "looked at it from far off"}
    logbook.records[stop] = replace(logbook.records[stop], body=noted, number=len(logbook.records) + 1)
    assert logbook.finding("ditch_alone")["state"] == "shown"


def test_after_a_bad_day_only_later_days_rebuild(logbook):
    fence = ditch(logbook)
    school(logbook, fence, range(20, 100, 8))
    outing = logbook.outing(10)
    logbook.attempt(outing, fence, "refusal", 2, presentation=ALONE)
    logbook.attempt(outing, fence, "clear", 3, presentation=ALONE)
    found = logbook.finding("ditch_alone")
    assert found["state"] == "shaky" and found["reasons"][0]["code"] == "bad_day"
    assert found["needs"][0]["text"] == "Two more clear, in another outing, to rebuild it."
    school(logbook, fence, range(1, 8))
    assert logbook.finding("ditch_alone")["state"] == "shown"


def test_what_is_still_missing_after_rebuilding_is_said_second(logbook):
    fence = ditch(logbook)
    school(logbook, fence, [20, 12])
    school(logbook, fence, [10], "refusal", times=3)
    rebuild, then = logbook.finding("ditch_alone")["needs"]
    assert rebuild["text"] == "Two more clear, in another outing, to rebuild it."
    assert then["text"].startswith("Then ") and then["text"].endswith("before it counts as shown.")


def test_a_fall_holds_whatever_else_was_clear(logbook):
    fence = ditch(logbook)
    school(logbook, fence, range(20, 60, 2))
    school(logbook, fence, [10], "rider_fall")
    standing = logbook.standing().to_json()
    found = next(each for each in standing["findings"] if each["requirement_id"] == "ditch_alone")
    assert found["state"] == "on_hold" and found["reasons"][0]["code"] == "fall"
    assert any("doctor" in caution for caution in standing["cautions"])
    assert found["needs"][0]["values"] == {"clear": 4, "outings": 2, "fields": 0}
    school(logbook, fence, [8, 7, 6, 5])
    assert logbook.finding("ditch_alone")["state"] == "shown"


def test_evidence_fades_and_what_was_shown_goes_stale(logbook):
    school(logbook, ditch(logbook), [30, 20, 10, 5])
    assert logbook.finding("ditch_alone")["state"] == "shown"
    later = logbook.finding("ditch_alone", as_of=TODAY + timedelta(days=600))
    assert later["state"] == "gone_stale" and later["reasons"][0]["code"] == "faded"


def test_a_smaller_fence_does_not_count_and_is_mentioned(logbook):
    log = logbook.fence("2 Small log", "log", height_cm=75)
    school(logbook, log, [9, 8, 7])
    found = logbook.finding("fixed")
    assert found["state"] == "untried" and found["numbers"]["smaller_attempts"] == 3
    assert any(reason["code"] == "smaller" for reason in found["reasons"])


def test_a_fence_nobody_measured_is_not_guessed(logbook):
    school(logbook, logbook.fence("3 Long log", "log"), [9, 8])
    found = logbook.finding("fixed")
    assert found["state"] == "untried"
    assert found["needs"][-1]["text"] == "Measure 3 Long log: 2 attempts wait for it."


def test_the_height_stated_with_an_attempt_overrides_the_fence(logbook):
    fence = logbook.fence("2 Log", "log", height_cm=75)
    logbook.attempt(logbook.outing(), fence, height_cm=90)
    assert logbook.finding("fixed")["numbers"]["clear"] == 1


def test_where_the_rulebook_states_no_limit_any_size_counts():
    from readiness.made_up import rulebook

    logbook = Logbook(book=rulebook(without=("spread_without_height_cm",)))
    school(logbook, logbook.fence("4 Ditch", "ditch"), [9])
    found = logbook.finding("ditch_alone")
    assert found["numbers"]["clear"] == 1
    assert any(reason["code"] == "any_size" for reason in found["reasons"])


def test_repeats_in_one_outing_weigh_less_than_the_same_on_other_days(logbook):
    fence = ditch(logbook)
    school(logbook, fence, [5], times=8)
    one_day = logbook.finding("ditch_alone")["numbers"]
    assert one_day["clear"] == 8 and one_day["weight"] < 2
    other = Logbook()
    school(other, ditch(other), range(1, 9))
    assert other.finding("ditch_alone")["numbers"]["weight"] > 7


def test_taken_back_records_and_their_attempts_are_left_out(logbook):
    from dataclasses import replace

    fence = ditch(logbook)
    school(logbook, fence, [9, 8, 7])
    outing = next(key for key, each in logbook.records.items() if each.kind == "outing")
    logbook.records[outing] = replace(logbook.records[outing], body=None)
    assert logbook.finding("ditch_alone")["numbers"]["attempts"] == 2


def test_each_finding_opens_to_its_attempts(logbook):
    school(logbook, ditch(logbook), [9, 8])
    evidence = logbook.finding("ditch_alone")["evidence"]
    assert [each["outcome"] for each in evidence] == ["clear", "clear"]
    assert [each["label"] for each in evidence] == ["4 Ditch", "4 Ditch"]
    assert evidence[0]["local_date"] > evidence[1]["local_date"]


def test_the_same_records_give_the_same_standing_in_any_order(logbook):
    school(logbook, ditch(logbook), [60, 40, 20, 10])
    before = logbook.standing().to_json()
    logbook.records = dict(reversed(logbook.records.items()))
    assert logbook.standing().to_json() == before


def test_how_it_is_worked_out_says_her_own_numbers_in_whole_sentences(logbook):
    untried = logbook.finding("ditch_alone")["explanation"]
    assert untried.startswith("Ditch, alone: no attempt in the last two years counts here.")
    assert "a guess shows nothing. The bar asks for 3 clear, in 2 outings at 1 field" in untried
    school(logbook, ditch(logbook), [0])
    once = logbook.finding("ditch_alone")
    assert "1 of 1 attempt was clear in the last two years." in once["explanation"]
    share = round(100 * once["numbers"]["estimate"])
    assert f"a chance of {share} % of a clear first time." in once["explanation"]
    assert once["explanation"].count("(80 % sure)") == 2


def test_a_bad_day_says_what_it_takes(logbook):
    fence = ditch(logbook)
    school(logbook, fence, [20], "refusal", times=2)
    found = logbook.finding("ditch_alone")
    assert found["reasons"][0]["text"].endswith(": none clear on a later day yet; it takes two, in one later outing.")
    school(logbook, fence, [10])
    assert ": one clear on later days; it takes two" in logbook.finding("ditch_alone")["reasons"][0]["text"]
