"""Whatever a logbook holds, the standing computes, is plain JSON, and keeps its promises."""

import json
import random
from dataclasses import replace
from datetime import date, timedelta

import pytest

from fieldtally.book import words
from fieldtally.readiness.bar import shipped_bars
from fieldtally.readiness.finding import STATES
from fieldtally.readiness.plan import plan_outing
from fieldtally.readiness.standing import compute_standings
from fieldtally.trade.rulebook import shipped
from readiness.made_up import TODAY, Logbook


def maybe(pick, value):
    return value if pick.random() < 0.7 else None


def random_logbook(seed: int) -> Logbook:
    pick = random.Random(seed)
    logbook = Logbook(book=shipped()[pick.choice(sorted(shipped()))])
    other = logbook.add("horse", name="Other", rulebook_id=pick.choice([None, "no-such", "gb-2024"]))
    fields = [None, *(logbook.add("field", name=f"Field {n}") for n in range(2))]
    fences = [random_fence(logbook, pick, fields) for _ in range(8)]
    for _ in range(pick.randint(0, 12)):
        horse = pick.choice([logbook.horse, logbook.horse, other])
        day = (TODAY - timedelta(days=pick.randint(-20, 900))).isoformat()
        outing = logbook.add("outing", horse_id=horse, date=day, activity=pick.choice(words.ACTIVITIES),
                             field_id=pick.choice(fields), rider_confidence=maybe(pick, pick.randint(1, 5)),
                             minutes_in_saddle=maybe(pick, 60))  # fmt: skip
        random_day(logbook, pick, outing, fences, horse, day)
    for key in pick.sample(sorted(logbook.records), len(logbook.records) // 10):
        if key != logbook.horse:
            logbook.records[key] = replace(logbook.records[key], body=None)
    return logbook


def random_fence(logbook, pick, fields):
    sizes = {"height_cm": maybe(pick, 95), "drop_cm": maybe(pick, 90), "brush_height_cm": maybe(pick, 110),
             "spread_without_height_cm": maybe(pick, 120), "spread_top_cm": maybe(pick, 100)}  # fmt: skip
    letters = pick.choice(["", "", "A", "AB", "ABC"])
    elements = [sizes | {"letter": letter, "profile": pick.choice(words.PROFILES)} for letter in letters]
    asks = pick.sample(words.ASKS, pick.randint(0, 3))
    return logbook.fence(
        profile=pick.choice(words.PROFILES), asks=asks, elements=elements, field_id=pick.choice(fields), **sizes
    )


def random_day(logbook, pick, outing, fences, horse, day):
    for _ in range(pick.randint(0, 15)):
        presentation = {side: maybe(pick, pick.choice(values)) for side, values in SIDES.items()}
        logbook.attempt(
            outing,
            pick.choice(fences),
            pick.choice(words.OUTCOMES),
            element=pick.choice([None, "A", "B", "F"]),
            attitude=pick.choice([None, *words.ATTITUDES]),
            presentation=presentation,
            height_cm=pick.choice([None, 60, 105]),
        )
    canter = {"distance_m": 400, "measured_by": "wheel", "elapsed_ms": pick.randint(500, 200_000)}
    logbook.add(
        "timed_canter", outing_id=outing, target_speed_mpm=maybe(pick, 450), over_fences=pick.random() < 0.5, **canter
    )
    logbook.add("jumping_round", horse_id=horse, date=day, height_cm=100, efforts=8, knockdowns=pick.randint(0, 12),
                completed=pick.random() < 0.8)  # fmt: skip
    level_id = pick.choice([level.id for level in logbook.book.levels])
    logbook.add(
        "flatwork_test", horse_id=horse, date=day, test="T", level_id=level_id, percent=pick.choice([0, 60, 100])
    )
    logbook.add("event_result", horse_id=horse, date=day, event="E", level_id=level_id, outing_id=outing,
                status=pick.choice(words.EVENT_STATUSES), cross_country_jump_penalties=maybe(pick, 20))  # fmt: skip
    word = {"decision": pick.choice(words.DECISIONS), "reason": "Because", "expires_on": maybe(pick, "2026-05-01")}
    logbook.add("word", horse_id=horse, rulebook_id=logbook.book.id, level_id=level_id, **word)


SIDES = {"rein": words.REINS, "ground": words.GROUNDS, "way": words.WAYS, "landing": words.LANDINGS,
         "company": words.COMPANIES, "pace": words.PACES}  # fmt: skip


@pytest.mark.parametrize("seed", range(24))
def test_a_standing_of_any_logbook_is_plain_json_and_adds_up(seed):
    logbook = random_logbook(seed)
    for standing in compute_standings(logbook.records, shipped(), shipped_bars(), TODAY, 5):
        shape = standing.to_json()
        assert json.loads(json.dumps(shape, allow_nan=False)) == shape
        counts = shape["summary"]["counts"]
        assert sum(counts.values()) == shape["summary"]["required"] and set(counts) == set(STATES)
        assert shape["summary"]["complete"] == (counts["shown"] == shape["summary"]["required"])
        for finding in shape["findings"]:
            assert finding["reasons"] and all(each["text"].strip() for each in finding["reasons"] + finding["needs"])
            assert finding["state"] != "shown" or finding["needs"] == [], finding["requirement_id"]
            assert all(each["local_date"] <= TODAY.isoformat() for each in finding["evidence"])
        for field_id in (None, *(key for key, each in logbook.records.items() if each.kind == "field")):
            json.dumps(plan_outing(standing, field_id).to_json(), allow_nan=False)


def test_before_anything_happened_nothing_is_shown_but_what_asks_nothing():
    found = compute_standings(random_logbook(3).records, shipped(), shipped_bars(), date(1995, 1, 1), 1)
    for standing in found:
        assert {each.requirement.id for each in standing.findings if each.shown} <= {"results", "eligibility"}


@pytest.mark.parametrize("seed", range(40, 50))
def test_one_more_fall_never_helps(seed):
    logbook = random_logbook(seed)
    states = {each.requirement.id: each.state for each in standings(logbook)[-1].findings}
    outing = logbook.outing(0)
    for key, record in list(logbook.records.items()):
        if record.kind == "fence" and record.body:
            logbook.attempt(outing, key, "horse_fall")
    after = {each.requirement.id: each.state for each in standings(logbook)[-1].findings}
    newly_shown = {key for key in after if after[key] == "shown" and states.get(key) != "shown"}
    assert newly_shown <= {"breadth", "horses"}  # an outing is an outing


def standings(logbook):
    return compute_standings(logbook.records, {logbook.book.id: logbook.book}, shipped_bars(), TODAY, 1, logbook.horse)
