"""Writes fixtures/contract/course.json, the course-card vectors that Python and TypeScript both run.

Independent of fieldtally: whole-number arithmetic only (times in seconds as ceil(60 L / v) by floor division
of negatives, markers by counting up). Run: python tests/trade/make_course_vectors.py
"""

import json
from pathlib import Path

TARGET = Path(__file__).parents[2] / "fixtures" / "contract" / "course.json"

# length in m, speed in m/min, fastest unpunished speed in m/min or None, window in s or None, limit factor,
# fences as (label, m)
ROWS = [
    (1800, 360, 450, None, 2, [("1", 120), ("2", 300), ("9AB", 1080)]),
    (3150, 450, None, None, 2, []),  # BE90 championship 2019, Horse & Hound: 7:00 exactly
    (2300, 600, None, None, 2, []),  # 3:50
    (2000, 520, None, None, 2, [("1", 130), ("20", 2000)]),  # 3:50.77, brought to 3:51
    (3400, 520, None, None, 2, []),  # Alberta Horse Trials Handbook 2017, Preliminary
    (2500, 450, None, None, 2, []),  # the same, Training
    (2250, 400, None, None, 2, []),  # the same, Pre-Training
    (6840, 570, None, None, 2, []),  # the longest five-star course: 12:00
    (1800, 360, None, 20, None, [("1", 0)]),
    (360, 360, None, None, 2, []),  # one minute: no marker but the finish
]
REFUSED = [
    ({"length_m": 0, "speed_mpm": 360}, "length_m"),
    ({"length_m": 1800, "speed_mpm": -360}, "speed_mpm"),
    ({"length_m": 1800000, "speed_mpm": 360}, "length_m"),
    ({"length_m": 1800, "speed_mpm": 360, "fences": [["1", 1801]]}, "fences[0].distance_m"),
    ({"length_m": 1800, "speed_mpm": 360, "fences": [["1", 500], ["2", 400]]}, "fences[1].distance_m"),
    ({"length_m": 1800, "speed_mpm": 360, "fences": [["1", -1]]}, "fences[0].distance_m"),
]


def whole_s(length_m, speed_mpm):
    return -(-60 * length_m // speed_mpm)


def rules(fastest_mpm, window_s, factor):
    stated = {"too_fast_speed_mpm": fastest_mpm, "too_fast_window_s": window_s, "time_limit_factor": factor}
    return {name: value for name, value in stated.items() if value is not None}


def fastest_s(length_m, optimum, fastest_mpm, window_s):
    if fastest_mpm is not None:
        return whole_s(length_m, fastest_mpm)
    return None if window_s is None else optimum - window_s


def vector(length_m, speed_mpm, fastest_mpm, window_s, factor, fences):
    optimum = whole_s(length_m, speed_mpm)
    return {
        "input": {"length_m": length_m, "speed_mpm": speed_mpm, "rules": rules(fastest_mpm, window_s, factor),
                  "fences": fences},
        "expected": {"optimum_s": optimum, "limit_s": factor and factor * optimum,
                     "fastest_s": fastest_s(length_m, optimum, fastest_mpm, window_s),
                     "minute_markers_m": list(range(speed_mpm, length_m, speed_mpm)),
                     "fence_clocks_s": [round(60 * metres / speed_mpm, 9) for _, metres in fences]},
    }  # fmt: skip


def text():
    good = [vector(*row) for row in ROWS]
    bad = [{"input": {"rules": {}, "fences": []} | given, "expected": {"refused": field}} for given, field in REFUSED]
    return "[\n" + ",\n".join("  " + json.dumps(each) for each in good + bad) + "\n]\n"


if __name__ == "__main__":
    TARGET.write_text(text(), encoding="utf-8")
