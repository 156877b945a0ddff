"""A standing as a whole: its shape, its sentence, holds, and what to school next."""

import json

from fieldtally.readiness.bar import shipped_bars
from fieldtally.readiness.finding import STATES
from fieldtally.readiness.standing import compute_standings
from readiness.made_up import TODAY, Logbook, rulebook

KEYS = {
    "logbook_number", "horse_id", "rulebook_id", "level_id", "level_name", "level_order", "is_present_level", "as_of",
    "summary", "findings", "held", "next", "forecast", "cautions",
}  # fmt: skip


def test_an_empty_logbook_has_a_standing_for_every_level():
    logbook = Logbook()
    found = compute_standings(logbook.records, {logbook.book.id: logbook.book}, shipped_bars(), TODAY, 7)
    assert [each.to_json()["level_id"] for each in found] == ["lowest", "second", "third", "fourth"]
    first = found[0].to_json()
    assert set(first) == KEYS and json.loads(json.dumps(first)) == first
    assert first["logbook_number"] == 7 and not first["summary"]["complete"]
    assert {each["state"] for each in first["findings"]} <= set(STATES)


def test_a_horse_without_a_rulebook_has_none():
    logbook = Logbook()
    logbook.add("horse", name="No Book")
    found = compute_standings(logbook.records, {logbook.book.id: logbook.book}, shipped_bars(), TODAY, 1)
    assert {each.weighing.book.horse_id for each in found} == {logbook.horse}
    assert compute_standings(logbook.records, {}, shipped_bars(), TODAY, 1) == []


def test_the_sentence_counts_and_leaves_the_decision_to_people():
    said = Logbook().standing().to_json()["summary"]["sentence"]
    assert said.endswith("the decision is yours, your coach's and the officials'.")
    assert "ready" not in said.lower() and "safe" not in said.lower()


def test_a_higher_level_asks_more_questions():
    logbook = Logbook()
    asked = [
        {each.requirement.id for each in logbook.standing(name).findings}
        for name in ("lowest", "second", "third", "fourth")
    ]
    assert asked[0] < asked[1] < asked[2] < asked[3]
    assert "corner" not in asked[0] and "bounce" in asked[3]


def test_a_coachs_hold_stands_above_everything():
    logbook = Logbook()
    logbook.add(
        "word",
        author="coach",
        horse_id=logbook.horse,
        rulebook_id=logbook.book.id,
        level_id="second",
        decision="hold",
        reason="Sore back",
    )
    standing = logbook.standing().to_json()
    word = next(each for each in standing["findings"] if each["requirement_id"] == "word")
    assert word["state"] == "on_hold" and not standing["summary"]["complete"]
    assert standing["cautions"][0] == "Your coach has put this level on hold: Sore back"


def test_a_go_lapses():
    logbook = Logbook()
    logbook.add(
        "word",
        horse_id=logbook.horse,
        rulebook_id=logbook.book.id,
        level_id="second",
        decision="go",
        reason="Lovely",
        expires_on="2026-06-10",
    )
    assert logbook.finding("word")["state"] == "shown"
    assert logbook.finding("word", as_of=TODAY.replace(day=11))["state"] == "gone_stale"


def test_another_horses_attempts_do_not_count():
    logbook = Logbook()
    other = logbook.add("horse", name="Other", rulebook_id=logbook.book.id)
    fence = logbook.fence(height_cm=90)
    outing = logbook.add("outing", horse_id=other, date=TODAY.isoformat(), activity="cross_country_school")
    logbook.attempt(outing, fence)
    assert logbook.finding("fixed")["numbers"]["attempts"] == 0


def test_next_steps_name_fences_that_are_there_and_large_enough():
    logbook = Logbook()
    small = logbook.fence("1 Small ditch", "ditch", spread_without_height_cm=40)
    right = logbook.fence("2 Ditch", "ditch", spread_without_height_cm=120)
    for days_ago in (8, 9, 10, 11):
        logbook.attempt(logbook.outing(days_ago), right, presentation={"ground": "downhill"})
    step = next(each for each in logbook.standing().to_json()["next"] if each["requirement_id"] == "ditch_alone")
    assert step["fence_ids"] == [right] and small not in step["fence_ids"]


def test_a_rulebook_that_states_nothing_still_gives_a_standing():
    everything = tuple(rulebook().levels[0].phases["cross_country"]) + ("height_cm",)
    logbook = Logbook(book=rulebook(without=everything))
    standing = logbook.standing().to_json()
    pace = next(each for each in standing["findings"] if each["requirement_id"] == "pace_flat")
    assert pace["reasons"][0]["code"] == "no_speed"
