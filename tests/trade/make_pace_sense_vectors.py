"""Writes fixtures/contract/pace_sense.json: several canters against one target, for Python and TypeScript.

Independent of fieldtally: decimal arithmetic, the scatter by the two-pass formula, each canter's distance
error taken as one that all of them share (JCGM 100:2008, 5.2).

Run: python tests/trade/make_pace_sense_vectors.py
"""

import json
from decimal import Decimal
from pathlib import Path

from make_pace_vectors import plain

TARGET = Path(__file__).parents[2] / "fixtures" / "contract" / "pace_sense.json"

# distance_m, distance_u_m, [elapsed_ms …], target_speed_mpm
SETS = [
    (420, 4.2, [61_200, 60_300, 62_000], 420),
    (420, 1.2, [63_200, 58_900], 400),
    (412.5, 0, [60_000, 60_000, 60_000, 60_000], 400),
    (300, 3, [45_000, 44_100, 46_800, 43_200, 45_900, 44_550], 400),
    (420, 4.2, [61_200], 420),
]
KEYS = ("distance_m", "distance_u_m", "elapsed_ms", "target_speed_mpm")


def expected(distance_m, distance_u_m, elapsed_ms, target_speed_mpm):
    d, u, n = Decimal(str(distance_m)), Decimal(str(distance_u_m)), len(elapsed_ms)
    speeds = [60 * d / (Decimal(ms) / 1000) for ms in elapsed_ms]
    mean = sum(speeds) / n
    bias = mean - target_speed_mpm
    if n < 2:
        return {"bias_mpm": bias, "spread_mpm": None, "bias_u_mpm": None}
    spread = ((sum(v * v for v in speeds) - n * mean * mean) / (n - 1)).sqrt() if len(set(speeds)) > 1 else Decimal(0)
    shared = sum((v * u / d) ** 2 for v in speeds) / n
    return {"bias_mpm": bias, "spread_mpm": spread, "bias_u_mpm": (spread * spread / n + shared).sqrt()}


def vectors():
    return [{"input": dict(zip(KEYS, row, strict=True)),
             "expected": {key: plain(value) for key, value in expected(*row).items()}} for row in SETS]  # fmt: skip


def text():
    rows = ",\n".join("  " + json.dumps(vector) for vector in vectors())
    return f"[\n{rows}\n]\n"


if __name__ == "__main__":
    TARGET.write_text(text(), encoding="utf-8")
