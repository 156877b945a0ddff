"""What if and plans over HTTP: computed from what is stored, and nothing is stored by asking."""

from datetime import UTC, datetime

import pytest

from support.asking import Browser, error_of
from support.cheap_passwords import cheap_passwords  # noqa: F401
from support.riders import wire

TODAY = datetime.now(UTC).date().isoformat()


@pytest.fixture
def asking(app, people):
    """Wren with a horse, a field with one log and one outing of two clear attempts; asks about Novice."""
    wren = Browser(app)
    wren.sign_in("wren")
    horse = wire("horse", {"name": "Bramble", "rulebook_id": "us-2025", "present_level_id": "beginner_novice"})
    field = wire("field", {"name": "Thornybank"})
    fence = wire("fence", {"label": "Log", "profile": "log", "asks": ["fixed"], "height_cm": 88,
                           "field_id": field["record_id"]})  # fmt: skip
    outing = wire("outing", {"horse_id": horse["record_id"], "field_id": field["record_id"], "date": TODAY,
                             "activity": "cross_country_school"})  # fmt: skip
    attempts = [
        wire("attempt", {"outing_id": outing["record_id"], "fence_id": fence["record_id"], "outcome": "clear"})
        for _ in range(2)
    ]
    entries = [horse, field, fence, outing, *attempts]
    pushed = wren.send("POST", f"/api/logbooks/{people.book}/entries",
                       {"protocol": 1, "device": people.wren, "entries": entries})  # fmt: skip
    assert {answer["result"] for answer in pushed.get_json()["answers"]} == {"accepted"}

    class Asking:
        outing_id, field_id, fence_id = outing["record_id"], field["record_id"], fence["record_id"]
        at = f"/api/logbooks/{people.book}/horses/{horse['record_id']}/levels/novice"
        browser = wren

        def what_if(self, **question):
            return wren.send("POST", f"{self.at}/what-if", question)

        def entries(self):
            return wren.get(f"/api/logbooks/{people.book}/entries").get_json()["last_number"]

    return Asking()


def fixed(standing):
    return next(finding for finding in standing["findings"] if finding["requirement_id"] == "fixed")


def test_without_its_outing_a_question_is_untried_again_and_nothing_is_stored(asking):
    before = asking.entries()
    told = asking.what_if(without_outings=[asking.outing_id]).get_json()
    assert fixed(told["before"])["numbers"]["clear"] == 2
    assert fixed(told["after"])["state"] == "untried"
    assert {"requirement_id": "fixed", "title": fixed(told["before"])["title"], "before": "building",
            "after": "untried"} in told["changes"]  # fmt: skip
    assert asking.entries() == before


def test_enough_more_clear_attempts_show_a_question(asking):
    more = [{"requirement_id": "fixed", "clear": 12, "outings": 4}]
    told = asking.what_if(more=more).get_json()
    assert fixed(told["after"])["state"] == "shown"


def test_a_change_of_the_bar_can_be_seen_before_it_is_saved(asking):
    change = {"rulebook_id": "us-2025", "level_id": "novice", "requirement_id": "fixed", "quantity": "dropped",
              "value": 1, "reason": "shown elsewhere"}  # fmt: skip
    told = asking.what_if(bar_changes=[change]).get_json()
    assert {"fixed"} == {change["requirement_id"] for change in told["changes"] if change["after"] is None}
    assert fixed(asking.what_if().get_json()["after"])["state"] == "building"


def test_a_past_day_knows_nothing_of_later_outings(asking):
    told = asking.what_if(as_of="2020-01-01").get_json()
    assert fixed(told["before"])["state"] == "building"
    assert fixed(told["after"])["state"] == "untried" and told["after"]["as_of"] == "2020-01-01"
    assert told["before"]["as_of"] == TODAY


def test_plans_name_the_fences_of_each_field(asking):
    (plan,) = asking.browser.get(f"{asking.at}/plans").get_json()["plans"]
    assert plan["field_id"] == asking.field_id
    assert asking.fence_id in {step["fence_id"] for step in plan["steps"]}
    assert plan["stop_when"] and plan["leave_alone"]


@pytest.mark.parametrize(
    ("wrong", "code", "field"),
    [
        ({"value": 51}, "out_of_range", "value"),
        ({"value": 0}, "out_of_range", "value"),
        ({"value": 2.5}, "not_whole", "value"),
        ({"quantity": "bound", "value": 79}, "out_of_range", "value"),
        ({"quantity": "no_such"}, "unknown_quantity", "quantity"),
        ({"requirement_id": "no_such"}, "unknown_requirement", "requirement_id"),
        ({"requirement_id": "bounce"}, "unknown_requirement", "requirement_id"),
        ({"level_id": "training"}, "other_level", "level_id"),
        ({"rulebook_id": "gb-2024"}, "other_level", "rulebook_id"),
        ({"reason": " "}, "empty", "reason"),
    ],
)
def test_a_change_that_means_nothing_is_refused_with_its_field_and_a_fix(asking, wrong, code, field):
    change = {"rulebook_id": "us-2025", "level_id": "novice", "requirement_id": "fixed", "quantity": "clear",
              "value": 5, "reason": "He is green."}  # fmt: skip
    assert asking.what_if(bar_changes=[change]).status_code == 200
    answer = asking.what_if(bar_changes=[change, change | wrong])
    error = answer.get_json()["error"]
    assert (answer.status_code, error["code"], error["field"]) == (400, code, f"bar_changes.1.{field}")
    assert error["fix"]


@pytest.mark.parametrize(
    ("question", "code", "field"),
    [
        ({"more": [{"requirement_id": "fixed", "clear": 0}]}, "out_of_range", "more.0.clear"),
        ({"more": [{"requirement_id": "no_such", "clear": 1}]}, "unknown_requirement", "more"),
        ({"as_of": "yesterday"}, "bad_date", "as_of"),
        ({"as_of": "2999-01-01"}, "out_of_range", "as_of"),
        ({"more": [{"requirement_id": "fixed", "clear": 51}]}, "out_of_range", "more.0.clear"),
        ({"more": [{"requirement_id": "fixed", "clear": 1, "outings": 0}]}, "out_of_range", "more.0.outings"),
        ({"without_outings": ["018f2c7e-0000-7000-8000-000000000001"]}, "unknown_outing", "without_outings.0"),
        ({"without": []}, "unknown_field", "without"),
        ({"without_outings": ["x"]}, "bad_id", "without_outings.0"),
    ],
)
def test_a_bad_question_names_the_field_and_the_fix(asking, question, code, field):
    response = asking.what_if(**question)
    assert response.status_code == 400
    assert (error_of(response)["code"], error_of(response)["field"]) == (code, field)
    assert error_of(response)["fix"]


def test_an_unknown_level_or_horse_is_not_found(asking):
    assert asking.browser.get(asking.at.replace("novice", "no_level") + "/plans").status_code == 404
    assert asking.browser.get(asking.at.replace("/horses/", "/horses/x") + "/plans").status_code == 404
