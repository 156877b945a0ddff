"""Writes fixtures/contract/conditioning.json, the interval steps that Python and TypeScript both run.

Independent of fieldtally: the four steps stand here as one reads them in docs/pace.md ("3 x 3 min growing to
3 x 5-6 min, 3 then 2 min of walk", 350 to 400 m/min, from memory), written out by hand; how far a course lets
the canters grow is found with fractions, by counting whole minutes upwards, not with a float and `ceil`.

Run: python tests/trade/make_conditioning_vectors.py
"""

import json
from fractions import Fraction
from pathlib import Path

TARGET = Path(__file__).parents[2] / "fixtures" / "contract" / "conditioning.json"

# minutes of canter, minutes of walk between: all that the guidance has
LADDER = [(3, 3), (4, 3), (5, 2), (6, 2)]

# course_min, course_speed_mpm
COURSES = [
    (2, 300), (0.5, 300), (3, 400), (3.01, 400), (4, 350), (4.5, 420), (5, 350), (5.2, 450), (5.99, 520), (6, 570),
    (6.1, 570), (12, 570), (4, 349.5), (4, 375), (4, 400), (4, 400.5),
]  # fmt: skip
REFUSED = [(0, 400, "course_min"), (-1, 400, "course_min"), (5, 0, "course_speed_mpm"), (5, -350, "course_speed_mpm"),
           ("5", 400, "course_min"), (5, None, "course_speed_mpm")]  # fmt: skip
# what a level states of its course; None where it does not
LEVELS = [
    {"length_max_m": 2200, "speed_min_mpm": 350, "speed_max_mpm": 400},  # 5.5 min
    {"length_max_m": 1800, "speed_mpm": 450},  # 4 min
    {"length_max_m": 3150, "speed_min_mpm": 400, "speed_mpm": 450},  # 7 min
    {"length_max_m": 1000, "speed_min_mpm": 300, "speed_max_mpm": 350},
    {"length_max_m": 2200},
    {"speed_mpm": 400},
    {"length_min_m": 1400, "speed_mpm": 400},
    {},
]


def whole_minutes(course_min: Fraction) -> int:
    """The fewest whole minutes that hold the course."""
    minutes = 0
    while minutes < course_min:
        minutes += 1
    return minutes


def steps(course_min, course_speed_mpm):
    longest = whole_minutes(Fraction(str(course_min)))
    speeds = [min(350, course_speed_mpm), min(400, course_speed_mpm)]
    rungs = [rung for rung in LADDER if rung[0] <= longest] or LADDER[:1]
    return [{"canters": 3, "work_min": work, "walk_min": walk, "speed_mpm": speeds} for work, walk in rungs]


def of_level(stated):
    speeds = [stated[name] for name in ("speed_min_mpm", "speed_mpm", "speed_max_mpm") if name in stated]
    if "length_max_m" not in stated or not speeds:
        return {"course_min": None, "steps": []}
    minutes = Fraction(stated["length_max_m"], max(speeds))
    return {"course_min": float(minutes), "steps": steps(minutes, max(speeds))}


def vectors():
    yield from ({"input": {"course_min": minutes, "course_speed_mpm": mpm}, "expected": {"steps": steps(minutes, mpm)}}
                for minutes, mpm in COURSES)  # fmt: skip
    yield from ({"input": {"course_min": minutes, "course_speed_mpm": mpm}, "expected": {"refused": field}}
                for minutes, mpm, field in REFUSED)  # fmt: skip
    yield from ({"input": {"level": stated}, "expected": of_level(stated)} for stated in LEVELS)


def text():
    return "[\n" + ",\n".join("  " + json.dumps(vector) for vector in vectors()) + "\n]\n"


if __name__ == "__main__":
    TARGET.write_text(text(), encoding="utf-8")
