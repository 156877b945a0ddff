"""The plan for the next outing at a field."""

import pytest

from fieldtally.readiness.plan import STOP_WHEN, plan_outing
from readiness.made_up import Logbook


@pytest.fixture
def logbook():
    made = Logbook()
    made.field = made.add("field", name="Low Meadow")
    made.low = made.fence("1 Small log", height_cm=60, field_id=made.field, order=1)
    made.log = made.fence("2 Log", height_cm=88, field_id=made.field, order=2)
    made.ditch = made.fence("3 Ditch", "ditch", spread_without_height_cm=110, field_id=made.field, order=3)
    made.huge = made.fence("9 Huge table", "table", height_cm=120, spread_top_cm=200, field_id=made.field, order=9)
    return made


def test_warm_up_work_and_a_good_end(logbook):
    for days in (40, 30, 20, 10):
        logbook.attempt(logbook.outing(days, logbook.field), logbook.ditch, presentation={"company": "alone"})
    plan = plan_outing(logbook.standing(), logbook.field).to_json()
    parts = [step["part"] for step in plan["steps"]]
    assert parts[0] == "warm_up" and parts[-1] == "end_on" and "work" in parts
    assert plan["steps"][0]["fence_id"] == logbook.low and plan["steps"][-1]["fence_id"] == logbook.ditch
    assert plan["stop_when"] == list(STOP_WHEN)


def test_no_fence_over_the_levels_limit_is_planned(logbook):
    plan = plan_outing(logbook.standing(), logbook.field)
    assert logbook.huge not in {step.fence_id for step in plan.steps}


def test_what_is_left_alone_says_why(logbook):
    left = {each["requirement_id"]: each["text"] for each in plan_outing(logbook.standing(), logbook.field).leave_alone}
    assert left["ditch_fence_before"] == "First ditch, alone."
    assert left["brush"] == "No fence here asks it."
    assert left["wide_table"] == "It is over this level's limit here: 9 Huge table."


def test_after_a_fall_the_question_is_left_to_the_coach(logbook):
    logbook.attempt(logbook.outing(3, logbook.field), logbook.ditch, "rider_fall", presentation={"company": "alone"})
    plan = plan_outing(logbook.standing(), logbook.field)
    assert "coach" in {each["requirement_id"]: each["text"] for each in plan.leave_alone}["ditch_alone"]
    assert "ditch_alone" not in {step.requirement_id for step in plan.steps if step.part == "work"}


def test_no_plan_while_the_coach_holds_the_level(logbook):
    logbook.add(
        "word", horse_id=logbook.horse, rulebook_id=logbook.book.id, level_id="second", decision="hold", reason="Sore"
    )
    plan = plan_outing(logbook.standing(), logbook.field)
    assert plan.steps == () and plan.text.endswith("Sore")


def test_an_empty_field_says_so(logbook):
    assert plan_outing(logbook.standing(), None).text == "No fence is listed at this field yet."
