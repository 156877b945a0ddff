"""Writes fixtures/contract/score.json, the scoring vectors that Python and TypeScript both run.

Every expected value below was worked out by hand from the rule named beside it, with pencil arithmetic only;
nothing here calls fieldtally. Run: python tests/trade/make_score_vectors.py
"""

import json
from pathlib import Path

TARGET = Path(__file__).parents[2] / "fixtures" / "contract" / "score.json"

USEF = {"refusal_first_penalties": 20, "refusal_second_penalties": 40, "stops_at_one_obstacle_that_eliminate": 3,
        "stops_on_course_that_eliminate": 4, "rider_falls_that_eliminate": 1, "horse_falls_that_eliminate": 1,
        "missed_flag_penalties": 15, "frangible_penalties": 11, "dangerous_riding_penalties": 25,
        "missed_obstacles_that_eliminate": 1}  # fmt: skip
ON_FEET = USEF | {"rider_fall_on_feet_penalties": 65, "rider_falls_that_eliminate": 2}
EVA80 = USEF | {"missed_obstacle_penalties": 100, "missed_obstacles_that_eliminate": 3}
THIRD_ON_COURSE = USEF | {"stops_on_course_that_eliminate": 3}
NOVICE_TIME = {"time_penalties_per_second": 0.4, "time_limit_factor": 2, "recorded_time_step_s": 1,
               "too_fast_penalties_per_second": 1, "too_fast_speed_mpm": 450}  # fmt: skip
FEI_TIME = {"time_penalties_per_second": 0.4, "time_limit_factor": 2, "recorded_time_step_s": 1}
WINDOW = {"time_penalties_per_second": 0.4, "too_fast_penalties_per_second": 0.4, "too_fast_window_s": 20}
ROUND = {"knockdown_penalties": 4, "refusal_first_penalties": 4, "refusal_second_penalties": 8,
         "stops_that_eliminate": 3, "rider_falls_that_eliminate": 1, "horse_falls_that_eliminate": 1}  # fmt: skip


def fault(text):
    """`refusal 9 B` as a fault; no fence where the fault needs none."""
    kind, *where = text.split()
    element = {"element": where[1]} if len(where) > 1 else {}
    return {"obstacle": where[0] if where else "", "kind": kind, **element}


def jumping(what, why, rules, faults, penalties, eliminated=False, complete=True):
    score = {"penalties": penalties, "eliminated": eliminated, "complete": complete}
    return {"why": why, "input": {"what": what, "rules": rules, "faults": [fault(each) for each in faults]},
            "expected": score}  # fmt: skip


def cross_country(*row, **more):
    return jumping("cross_country", *row, **more)


def show_jumping(*row, **more):
    return jumping("show_jumping", *row, **more)


def timed(why, rules, length_m, speed_mpm, elapsed_ms, recorded_s, seconds_over, penalties, eliminated=False):
    ride = {"what": "time", "rules": rules, "length_m": length_m, "speed_mpm": speed_mpm, "elapsed_ms": elapsed_ms}
    score = {"recorded_s": recorded_s, "seconds_over": seconds_over, "penalties": penalties, "eliminated": eliminated}
    return {"why": why, "input": ride, "expected": score}


def dressage(why, rules, sheets, errors, percent, penalties, eliminated=False):
    sheets = [{"marks": marks, "maximum": maximum} for marks, maximum in sheets]
    return {"why": why, "input": {"what": "dressage", "rules": rules, "sheets": sheets, "errors": errors},
            "expected": {"percent": percent, "penalties": penalties, "eliminated": eliminated}}  # fmt: skip


def refused(why, what, field, **ride):
    return {"why": why, "input": {"what": what, **ride}, "expected": {"refused": field}}


VECTORS = [
    cross_country("no fault", USEF, [], 0),
    cross_country("first stop 20", USEF, ["refusal 4"], 20),
    cross_country("20 and 40 at one fence are 60", USEF, ["refusal 4", "run_out 4"], 60),
    cross_country("two at different fences, 20 each", USEF, ["refusal 4", "circle 9"], 40),
    cross_country("elements of one combination add up: 20 + 40", USEF, ["refusal 9 A", "refusal 9 B"], 60),
    cross_country("third at one obstacle eliminates (EV142.3c, 2012)", USEF,
                  ["refusal 9 A", "refusal 9 B", "refusal 9 B"], 60, eliminated=True),
    cross_country("three on the course: 20 each, not yet out (EV142.3c, 2012)", USEF,
                  ["refusal 1", "refusal 2", "refusal 3"], 60),
    cross_country("fourth on the course eliminates (EV142.3c, 2012)", USEF,
                  ["refusal 1", "refusal 2", "refusal 3", "refusal 4"], 60, eliminated=True),
    cross_country("third on the course eliminates where the rulebook says so", THIRD_ON_COURSE,
                  ["refusal 1", "refusal 2", "refusal 3"], 40, eliminated=True),
    cross_country("flag 15, frangible 11, dangerous riding 25: 51", USEF,
                  ["missed_flag 3", "frangible 5", "dangerous_riding"], 51),
    cross_country("two frangibles 22", USEF, ["frangible 5", "frangible 8"], 22),
    cross_country("a rider fall eliminates", USEF, ["refusal 3", "rider_fall 3"], 20, eliminated=True),
    cross_country("a horse fall eliminates", USEF, ["horse_fall"], 0, eliminated=True),
    cross_country("65 for a fall on the feet (EV141, 2014)", ON_FEET, ["rider_fall_on_feet 6"], 65),
    cross_country("the second fall eliminates (EV141, 2014)", ON_FEET,
                  ["rider_fall_on_feet 6", "rider_fall_on_feet 9"], 65, eliminated=True),
    cross_country("any other fall eliminates at once", ON_FEET, ["rider_fall 6"], 0, eliminated=True),
    cross_country("EvA80 and below: 100, 100 (EA, 2025)", EVA80, ["missed_obstacle 4", "missed_obstacle 7"], 200),
    cross_country("EvA80 and below: the third eliminates (EA, 2025)", EVA80,
                  ["missed_obstacle 4", "missed_obstacle 7", "missed_obstacle 9"], 200, eliminated=True),
    cross_country("after elimination nothing counts", USEF, ["rider_fall 3", "refusal 4"], 0, eliminated=True),
    cross_country("a fault the rulebook does not state is not counted", {"refusal_first_penalties": 20},
                  ["refusal 1", "frangible 2"], 20, complete=False),
    cross_country("silence about the third on the course leaves the score open",
                  {"refusal_first_penalties": 20, "refusal_second_penalties": 40},
                  ["refusal 1", "refusal 2", "refusal 3"], 60, complete=False),
    show_jumping("knockdowns 4 each", ROUND, ["knockdown 2", "knockdown 7"], 8),
    show_jumping("4 then 8, over the round", ROUND, ["refusal 3", "run_out 8"], 12),
    show_jumping("third disobedience at Training and below (EV153.4, 2012)", ROUND,
                 ["refusal 3", "run_out 8", "circle 9"], 12, eliminated=True),
    show_jumping("second disobedience at Preliminary and above (EV153.4, 2012)", ROUND | {"stops_that_eliminate": 2},
                 ["refusal 3", "run_out 8"], 4, eliminated=True),
    show_jumping("five knockdowns are 20: compulsory retirement", ROUND | {"jump_penalties_that_retire": 20},
                 [f"knockdown {n}" for n in range(1, 6)], 20, eliminated=True),
    show_jumping("a fall eliminates", ROUND, ["knockdown 1", "rider_fall"], 4, eliminated=True),
    timed("1800 m at 360: 300 s; 11 s over x 0.4", NOVICE_TIME, 1800, 360, 311_000, 311, 11, 4.4),
    timed("speed-fault time at 450 is 240 s; 4 s under it", NOVICE_TIME, 1800, 360, 236_000, 236, -64, 4),
    timed("between the two: nothing", NOVICE_TIME, 1800, 360, 240_000, 240, -60, 0),
    timed("a part of a second is the next whole one", NOVICE_TIME, 1800, 360, 300_250, 301, 1, 0.4),
    timed("30.25 s is recorded as 31 s (EV138.2)", {}, 100, 200, 30_250, 31, 1, None),
    timed("at the limit of 600 s: 300 x 0.4", NOVICE_TIME, 1800, 360, 600_000, 600, 300, 120),
    timed("over the limit", NOVICE_TIME, 1800, 360, 600_100, 601, 301, None, eliminated=True),
    timed("2300 m at 600 is 230 s, not 229", FEI_TIME, 2300, 600, 230_000, 230, 0, 0),
    timed("2000 m at 520 is 230.77 s, brought to 231", FEI_TIME, 2000, 520, 231_000, 231, 0, 0),
    timed("75 s over is 30 penalties", FEI_TIME, 3150, 450, 495_000, 495, 75, 30),
    timed("90 s over was 36 penalties", FEI_TIME, 3150, 450, 510_000, 510, 90, 36),
    timed("window of 20 s: 280 s is free", WINDOW, 1800, 360, 280_000, 280, -20, 0),
    timed("5 s quicker than the window x 0.4", WINDOW, 1800, 360, 275_000, 275, -25, 2),
    dressage("130 of 200 is 65 %, 35 penalties", {}, [(130, 200)], 0, 65, 35),
    dressage("77 % was 34.5", {"penalty_coefficient": 1.5}, [(77, 100)], 0, 77, 34.5),
    dressage("77 % is 23.0", {"penalty_coefficient": 1}, [(77, 100)], 0, 77, 23),
    dressage("80 % was 30", {"penalty_coefficient": 1.5}, [(160, 200)], 0, 80, 30),
    dressage("two errors 2 + 4 off 130: 124 of 200", {"error_first_marks": 2, "error_second_marks": 4,
             "errors_that_eliminate": 3}, [(130, 200)], 2, 62, 38),
    dressage("the third error eliminates", {"error_first_marks": 2, "error_second_marks": 4,
             "errors_that_eliminate": 3}, [(130, 200)], 3, None, None, eliminated=True),
    dressage("66.75 % to one decimal is 66.8", {"percent_decimals": 1}, [(133.5, 200)], 0, 66.8, 33.2),
    dressage("149.5 of 220 is 67.9545… %, to two decimals 67.95", {"percent_decimals": 2}, [(149.5, 220)], 0,
             67.95, 32.05),
    dressage("65 % and 70 % are 67.5 %", {}, [(130, 200), (140, 200)], 0, 67.5, 32.5),
    {"why": "30 shared by two, the next is third; the eliminated is unplaced",
     "input": {"what": "places", "results": [
         {"pair": "a", "parts": {"dressage": 32.1, "cross_country_time": 4.4}, "status": "completed"},
         {"pair": "b", "parts": {"dressage": 30}, "status": "completed"},
         {"pair": "c", "parts": {"dressage": 26, "show_jumping_jumping": 4}, "status": "completed"},
         {"pair": "d", "parts": {"dressage": 25}, "status": "eliminated"}]},
     "expected": [{"pair": "b", "total": 30, "place": 1}, {"pair": "c", "total": 30, "place": 1},
                  {"pair": "a", "total": 36.5, "place": 3}, {"pair": "d", "total": None, "place": None}]},
    refused("a knockdown is no cross-country fault", "cross_country", "faults[0].kind", rules=USEF,
            faults=[fault("knockdown 4")]),
    refused("a refusal needs its fence", "cross_country", "faults[1].obstacle", rules=USEF,
            faults=[fault("refusal 4"), fault("refusal")]),
    refused("no time", "time", "elapsed_ms", rules=FEI_TIME, length_m=1800, speed_mpm=360, elapsed_ms=0),
    refused("no length", "time", "length_m", rules=FEI_TIME, length_m=-1, speed_mpm=360, elapsed_ms=1000),
    refused("no speed", "time", "speed_mpm", rules=FEI_TIME, length_m=1800, speed_mpm=0, elapsed_ms=1000),
    refused("more marks than there are", "dressage", "marks", rules={}, sheets=[{"marks": 201, "maximum": 200}],
            errors=0),
    refused("a penalty below zero", "places", "dressage",
            results=[{"pair": "a", "parts": {"dressage": -1}, "status": "completed"}]),
]  # fmt: skip


def text():
    rows = ",\n".join("  " + json.dumps(vector, ensure_ascii=False) for vector in VECTORS)
    return f"[\n{rows}\n]\n"


if __name__ == "__main__":
    TARGET.write_text(text(), encoding="utf-8")
