"""What if: another day, without an outing, with more clear attempts, with another bar."""

import pytest

from fieldtally.readiness.bar import shipped_bars
from fieldtally.readiness.what_if import Case, More, Question, bar_change_preview, what_if
from readiness.made_up import TODAY, Logbook


def case(logbook, level_id="second"):
    return Case(logbook.records, logbook.book, shipped_bars(), TODAY, 1, logbook.horse, level_id)


@pytest.mark.parametrize("level_id", ["lowest", "second", "third", "fourth"])
def test_enough_clear_attempts_of_any_question_would_show_it(level_id):
    logbook = Logbook()
    asked = [each.requirement.id for each in logbook.standing(level_id).findings if each.requirement.condition]
    question = Question(more=tuple(More(each, 8, 4) for each in asked))
    states = {each["requirement_id"]: each["after"] for each in what_if(case(logbook, level_id), question).changes}
    assert {each: states.get(each) for each in asked if each != "fixed"} == {
        each: "shown" for each in asked if each != "fixed"
    }


def test_without_an_outing_its_attempts_are_gone():
    logbook = Logbook()
    fence = logbook.fence("4 Ditch", "ditch", spread_without_height_cm=120)
    outings = [logbook.outing(days) for days in (40, 30, 20, 10)]
    for outing in outings:
        logbook.attempt(outing, fence, presentation={"company": "alone"})
    found = what_if(case(logbook), Question(without_outings=frozenset(outings[:3])))
    assert {
        "requirement_id": "ditch_alone",
        "title": "Ditch, alone",
        "before": "shown",
        "after": "building",
    } in found.changes


def test_nothing_supposed_changes_nothing_and_stores_nothing():
    logbook = Logbook()
    before = dict(logbook.records)
    assert what_if(case(logbook), Question()).changes == []
    assert logbook.records == before


def test_a_bar_change_is_previewed_with_what_it_would_do():
    logbook = Logbook()
    fence = logbook.fence("4 Ditch", "ditch", spread_without_height_cm=120)
    for days in (50, 40, 30, 20):
        logbook.attempt(logbook.outing(days), fence, presentation={"company": "alone"})
    body = {
        "rulebook_id": logbook.book.id,
        "level_id": "second",
        "requirement_id": "ditch_alone",
        "quantity": "clear",
        "value": 6,
        "reason": "He is green.",
    }
    found = bar_change_preview(case(logbook), [body])
    assert [(each["before"], each["after"]) for each in found.changes] == [("shown", "building")]


@pytest.mark.parametrize("requirement_id", ["no_such", "word", "bounce"])
def test_more_attempts_at_what_is_no_question_of_this_level_is_an_error(requirement_id):
    with pytest.raises(KeyError):
        what_if(case(Logbook()), Question(more=(More(requirement_id, 1),)))
