"""What a standing, a what-if and a plan promise of any logbook, held against random ones."""

import random
from dataclasses import replace
from datetime import date, timedelta

import pytest

from fieldtally.readiness.bar import shipped_bars
from fieldtally.readiness.fence_asks import ASK_BIT, asks_of
from fieldtally.readiness.fences_here import too_large, too_small, unmeasured
from fieldtally.readiness.plan import STOP_WHEN, plan_outing
from fieldtally.readiness.plan_reasons import AFTER
from fieldtally.readiness.plan_steps import MOST_QUESTIONS, MOST_TIMES
from fieldtally.readiness.standing import compute_standings
from fieldtally.readiness.what_if import Case, Question, what_if
from fieldtally.trade.rulebook import shipped
from readiness.made_up import TODAY, Logbook
from readiness.test_any_logbook import random_logbook

WORST_FIRST = {"on_hold": 0, "shaky": 1, "untried": 2, "gone_stale": 2, "building": 2, "shown": 3}


def standings(logbook, as_of=TODAY, records=None):
    found = records if records is not None else logbook.records
    return compute_standings(found, {logbook.book.id: logbook.book}, shipped_bars(), as_of, 1, logbook.horse)


def ranks(logbook, level):
    """How good each question at a fence stands, and its lower bound, at the level in this place of the ladder."""
    return {
        each.requirement.id: (WORST_FIRST[each.state], each.numbers["lower_bound"])
        for each in standings(logbook)[level].findings
        if each.requirement.condition
    }


def schooled(seed: int) -> Logbook:
    """A logbook of the made-up rulebook with a field of measured fences, most of them met well; the pair is at the
    lowest level."""
    pick, logbook = random.Random(seed), Logbook()
    logbook.field = logbook.add("field", name="Low Meadow")
    shapes = [("log", {"height_cm": pick.choice([55, 88, 90, 98])}), ("ditch", {"spread_without_height_cm": 120}),
              ("table", {"height_cm": 88, "spread_top_cm": pick.choice([None, 95, 150]), "spread_base_cm": 120}),
              ("brush", {"height_cm": 85, "brush_height_cm": pick.choice([None, 105])}), ("drop", {"drop_cm": 100}),
              ("step", {"height_cm": 85}), ("water", {}), ("corner", {"height_cm": 88, "spread_top_cm": 90}),
              ("log", {"height_cm": 60}), ("narrow", {"height_cm": pick.choice([None, 88])})]  # fmt: skip
    logbook.keys = [logbook.fence(f"{n} {profile}", profile, field_id=logbook.field, order=n, **sizes)
                    for n, (profile, sizes) in enumerate(shapes)]  # fmt: skip
    for days in sorted(pick.sample(range(1, 200), pick.randint(1, 7)), reverse=True):
        outing = logbook.outing(days, logbook.field)
        for key in pick.sample(logbook.keys, pick.randint(2, 8)):
            outcome = pick.choices(["clear", "refusal", "rider_fall"], [40, 4, 1])[0]
            manner = {"company": "alone", "pace": "canter", "way": pick.choice(["up", "in", "through", "out", None])}
            logbook.attempt(outing, key, outcome, pick.randint(1, 2), presentation=manner)
    return logbook


@pytest.mark.parametrize("seed", range(500, 512))
def test_the_same_records_in_any_order_give_the_same_standing(seed):
    logbook = random_logbook(seed)
    keys = list(logbook.records)
    before = [each.to_json() for each in standings(logbook)]
    random.Random(seed).shuffle(keys)
    after = [each.to_json() for each in standings(logbook, records={key: logbook.records[key] for key in keys})]
    assert after == before


@pytest.mark.parametrize("seed", range(520, 544))
def test_one_more_clear_attempt_on_a_new_outing_makes_no_question_worse(seed):
    logbook = schooled(seed)
    for level in (0, 1):
        before = ranks(logbook, level)
        outing = logbook.outing(0, logbook.field)
        logbook.attempt(outing, random.Random(seed).choice(logbook.keys), "clear", presentation={"company": "alone"})
        after = ranks(logbook, level)
        for key, (rank, bound) in before.items():
            assert after[key][0] >= rank, key
            assert bound is None or after[key][1] >= bound - 1e-9, key


@pytest.mark.parametrize("seed", range(550, 574))
def test_one_more_stop_makes_no_question_better(seed):
    logbook = schooled(seed)
    for level in (0, 1):
        before = ranks(logbook, level)
        outing = logbook.outing(0, logbook.field)
        logbook.attempt(outing, random.Random(seed).choice(logbook.keys), "refusal", presentation={"company": "alone"})
        after = ranks(logbook, level)
        for key, (rank, bound) in before.items():
            assert after[key][0] <= rank, key
            assert bound is None or after[key][1] is None or after[key][1] <= bound + 1e-9, key


@pytest.mark.parametrize("seed", range(580, 588))
def test_what_if_with_nothing_supposed_is_the_standing(seed):
    logbook = random_logbook(seed)
    for each in standings(logbook)[:3]:
        level_id = each.weighing.level.id
        case = Case(logbook.records, logbook.book, shipped_bars(), TODAY, 1, logbook.horse, level_id)
        found = what_if(case, Question())
        assert found.before.to_json() == found.after.to_json() == case.standing(case.records).to_json()
        assert found.changes == []


@pytest.mark.parametrize("seed", range(590, 602))
def test_a_past_day_is_the_standing_of_what_was_written_down_up_to_it(seed):
    logbook = random_logbook(seed)
    day = TODAY - timedelta(days=random.Random(seed).randint(1, 500))
    up_to_then = {key: record for key, record in logbook.records.items() if not later(record, day, logbook.records)}
    past = [each.to_json() for each in standings(logbook, day)]
    assert past == [each.to_json() for each in standings(logbook, day, up_to_then)]
    level_id = past[0]["level_id"]
    case = Case(logbook.records, logbook.book, shipped_bars(), TODAY, 1, logbook.horse, level_id)
    found = what_if(case, Question(as_of=day))
    assert found.after.to_json()["findings"] == past[0]["findings"]
    assert found.before.to_json()["as_of"] == TODAY.isoformat()


def later(record, day: date, records) -> bool:
    """Whether it speaks of a later day; what a place is, and whose, has none."""
    if record.body is None or record.kind in ("horse", "field", "fence"):
        return False
    outing = records.get(record.body.get("outing_id"))
    of_outing = outing.body["date"] if outing and outing.body else None
    return (record.body.get("date") or of_outing or record.local_date) > day.isoformat()


@pytest.mark.parametrize("seed", range(610, 650))
def test_a_plan_keeps_its_promises(seed):
    logbook = schooled(seed)
    for standing in standings(logbook)[:2]:
        plan = plan_outing(standing, logbook.field).to_json()
        findings = {each.requirement.id: each for each in standing.findings}
        on_hold = [each.requirement for each in standing.findings if each.requirement.condition
                   and each.state == "on_hold"]  # fmt: skip
        used = [step for step in plan["steps"] if step["fence_id"]]
        for step in used:
            fence = logbook.records[step["fence_id"]].body
            assert not too_large(fence, standing.weighing.level) and not unmeasured(fence, standing.weighing.level)
            for held in on_hold:
                small = too_small(held, fence, standing.weighing.level)
                assert small or not asks_of(fence) & ASK_BIT[held.condition.ask]
        work = [step for step in plan["steps"] if step["part"] == "work"]
        assert len(work) <= MOST_QUESTIONS and all(1 <= step["times"] <= MOST_TIMES for step in work)
        for step in work:
            assert findings[step["requirement_id"]].state not in ("shown", "on_hold")
            first = AFTER.get(step["requirement_id"])
            assert first not in findings or findings[first].shown
        order = [step["part"] for step in plan["steps"]]
        assert order == sorted(order, key=["warm_up", "work", "end_on"].index)
        assert bool(work) == bool(order) and (not work or (order[0], order[-1]) == ("warm_up", "end_on"))
        open_ = {each.requirement.id for each in standing.findings if each.requirement.condition and not each.shown}
        spoken_of = {step["requirement_id"] for step in work} | {each["requirement_id"] for each in plan["leave_alone"]}
        assert spoken_of == open_ and all(each["text"].endswith(".") for each in plan["leave_alone"])
        assert plan["stop_when"] == list(STOP_WHEN)


def test_a_fall_at_a_fence_too_small_or_unmeasured_still_holds():
    for sizes in ({"height_cm": 60}, {}):
        logbook = Logbook()
        log = logbook.fence("1 Log", "log", height_cm=88)
        for days in (90, 80, 70, 60, 50, 40):
            logbook.attempt(logbook.outing(days, field_id=logbook.add("field", name=f"F{days}")), log)
        assert logbook.finding("fixed")["state"] == "shown"
        logbook.attempt(logbook.outing(5), logbook.fence("2 Small log", "log", **sizes), "rider_fall")
        found = logbook.finding("fixed")
        assert found["state"] == "on_hold" and found["reasons"][0]["code"] == "fall"


def test_a_fall_of_which_nobody_said_how_holds_every_manner():
    logbook = Logbook()
    ditch = logbook.fence("4 Ditch", "ditch", spread_without_height_cm=120)
    logbook.attempt(logbook.outing(3), ditch, "horse_fall")
    states = {each["state"] for each in logbook.standing().to_json()["findings"] if "ditch" in each["requirement_id"]}
    assert states == {"on_hold"}
    said = Logbook()
    ditch = said.fence("4 Ditch", "ditch", spread_without_height_cm=120)
    said.attempt(said.outing(3), ditch, "horse_fall", presentation={"company": "alone", "ground": "level"})
    assert said.finding("ditch_alone")["state"] == "on_hold"
    assert said.finding("ditch_downhill")["state"] == "untried"


@pytest.mark.parametrize(("held", "asked", "stops"), [("second", "second", True), ("second", "third", True),
                                                     ("third", "second", False)])  # fmt: skip
def test_a_hold_is_said_first_and_stops_what_is_at_its_level_and_above(held, asked, stops):
    logbook = schooled(7)
    logbook.add("word", horse_id=logbook.horse, rulebook_id=logbook.book.id, level_id=held, decision="hold",
                reason="Sore back")  # fmt: skip
    standing = logbook.standing(asked)
    shape, plan = standing.to_json(), plan_outing(standing, logbook.field)
    assert "on hold:" in shape["cautions"][0] and shape["cautions"][0].endswith("Sore back")
    assert shape["held"] is stops and bool(shape["next"]) is not stops
    assert (plan.steps == () and plan.text.endswith("Sore back")) if stops else plan.cautions[0].endswith("Sore back")


def test_an_entry_rule_that_is_not_met_is_said_before_all_but_a_hold():
    logbook = Logbook(book=shipped()["us-2025"])
    horse = logbook.records[logbook.horse]
    logbook.records[logbook.horse] = replace(horse, body=horse.body | {"birth_year": 2025})
    cautions = logbook.standing("novice").to_json()["cautions"]
    assert cautions[0].startswith("An entry rule of this level is not met: ")


def test_a_fall_lately_is_cautioned_of_where_the_level_does_not_ask_it_and_its_like_is_not_planned():
    logbook = schooled(11)
    for key in [key for key, each in logbook.records.items() if each.kind == "attempt"]:
        del logbook.records[key]
    water = logbook.keys[6]
    logbook.attempt(logbook.outing(5, logbook.field), water, "rider_fall", presentation={"way": "in"})
    for level in ("lowest", "second"):
        standing = logbook.standing(level)
        assert any("There is a fall" in each for each in standing.to_json()["cautions"])
        assert water not in {step.fence_id for step in plan_outing(standing, logbook.field).steps}


def test_a_shaky_question_lets_what_it_waits_for_come_first():
    logbook = Logbook()
    field = logbook.add("field", name="Mere")
    water = logbook.fence("8 Water", "water", field_id=field)
    logbook.attempt(logbook.outing(3, field), water, "refusal", presentation={"way": "in"})
    work = [step for step in plan_outing(logbook.standing(), field).steps if step.part == "work"]
    assert work[0].requirement_id == "water_through"


def test_a_plan_says_what_to_measure_and_what_to_do_where_no_fence_will_do():
    logbook = Logbook()
    field = logbook.add("field", name="Bare Field")
    logbook.fence("4 Table", "table", field_id=field)
    plan = plan_outing(logbook.standing(), field)
    assert plan.steps == () and plan.text == "Nothing open can be worked on here."
    left = {each["requirement_id"]: each["text"] for each in plan.leave_alone}
    assert left["fixed"] == left["wide_table"] == "Measure it first: 4 Table."
    logbook.fence("5 Ditch", "ditch", spread_without_height_cm=120, field_id=field)
    warm_up, *_, end = plan_outing(logbook.standing(), field).steps
    assert (warm_up.fence_id, end.fence_id) == (None, None) and "warm up over something small" in warm_up.text
