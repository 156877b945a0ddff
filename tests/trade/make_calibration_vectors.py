"""Writes fixtures/contract/calibration.json, the calibrations that Python and TypeScript both work out.

Independent of fieldtally: decimal arithmetic to 40 digits, the scatter by the two-pass formula, and the
uncertainties by finite differences (see make_pace_vectors.py) instead of the product rule the code uses.

Run: python tests/trade/make_calibration_vectors.py
"""

import json
from decimal import Decimal
from pathlib import Path

from make_pace_vectors import kragten, plain

TARGET = Path(__file__).parents[2] / "fixtures" / "contract" / "calibration.json"
TAPE_RELATIVE_U = Decimal("0.002")

# taped_distance_m, walked_m, taped_u_m, reading_step_m, reading_m
GOOD = [
    (50, [50.3, 50.5, 50.4], None, 0.1, 412.5),
    (50, [50.3, 50.5, 50.4], 0.02, 0.1, 412.5),
    (50, [49.8, 49.9, 49.7, 49.8], None, 0.01, 300),
    (50, [58, 57, 58, 59, 57], None, 1, 481),  # paces: one counts as one metre
    (50, [50, 50, 50], None, 1, 400),  # nothing scatters: the step and the tape remain
    (50, [50, 50, 50], 0, 0, 400),  # nothing is uncertain
    (100, [98.2, 101.1, 99.4, 100.3, 97.6, 102.2, 99.9, 100.8, 98.8, 101.4], None, 0.5, 1000),
    (30, [33, 33.4, 32.9], 0.1, 0.1, 9_000),
    (50, [25, 25.2, 24.9], None, 0.1, 200),  # a wheel that counts half
]
REFUSED = [
    (50, [50.3, 50.5], None, 0.1, 400, "walked_m"),
    (50, [], None, 0.1, 400, "walked_m"),
    (50, [50.3, 0, 50.4], None, 0.1, 400, "walked_m"),
    (50, [50.3, "50.4", 50.4], None, 0.1, 400, "walked_m"),
    (0, [50.3, 50.5, 50.4], None, 0.1, 400, "taped_distance_m"),
    (50, [50.3, 50.5, 50.4], -0.1, 0.1, 400, "taped_u_m"),
    (50, [50.3, 50.5, 50.4], None, -0.1, 400, "reading_step_m"),
    (50, [50.3, 50.5, 50.4], None, 0.1, 0, "reading_m"),
]
KEYS = ("taped_distance_m", "walked_m", "taped_u_m", "reading_step_m", "reading_m")


def exact(value):
    return Decimal(str(value))


def expected(taped_distance_m, walked_m, taped_u_m, reading_step_m, reading_m):
    taped, walks = exact(taped_distance_m), [exact(reading) for reading in walked_m]
    tape_u = taped * TAPE_RELATIVE_U if taped_u_m is None else exact(taped_u_m)
    n = len(walks)
    mean = sum(walks) / n
    scatter = ((sum(w * w for w in walks) - n * mean * mean) / (n - 1)).sqrt()
    step_u = exact(reading_step_m) / Decimal(12).sqrt()
    mean_u = (scatter * scatter / n + step_u * step_u).sqrt()
    factor, factor_u = kragten(lambda d, m: d / m, (taped, mean), (tape_u, mean_u))
    reading = exact(reading_m)
    reading_u = ((scatter / mean * reading) ** 2 + step_u * step_u).sqrt()
    distance, distance_u = kragten(lambda d, m, r: d / m * r, (taped, mean, reading), (tape_u, mean_u, reading_u))
    return {"factor": factor, "factor_u": factor_u, "mean_m": mean, "scatter_m": scatter,
            "distance_m": distance, "distance_u_m": distance_u}  # fmt: skip


def vectors():
    good = [{"input": dict(zip(KEYS, row, strict=True)),
             "expected": {key: plain(value) for key, value in expected(*row).items()}} for row in GOOD]  # fmt: skip
    refused = [{"input": dict(zip(KEYS, row[:-1], strict=True)), "expected": {"refused": row[-1]}}
               for row in REFUSED]  # fmt: skip
    return good + refused


def text():
    rows = ",\n".join("  " + json.dumps(vector) for vector in vectors())
    return f"[\n{rows}\n]\n"


if __name__ == "__main__":
    TARGET.write_text(text(), encoding="utf-8")
