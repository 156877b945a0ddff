"""Writes fixtures/contract/pace.json, the pace vectors that Python and TypeScript both run.

Independent of fieldtally: decimal arithmetic to 40 digits, and the uncertainties by finite differences
(J. Kragten, Analyst 119:2161, 1994: shift each input by its uncertainty, here by a billionth of it, and add
the scaled effects in square) instead of the product rule the code uses.

Run: python tests/trade/make_pace_vectors.py
"""

import json
from decimal import ROUND_HALF_UP, Decimal, getcontext
from pathlib import Path

getcontext().prec = 40
TARGET = Path(__file__).parents[2] / "fixtures" / "contract" / "pace.json"
STEP = Decimal("1e-9")
HAND_SD_S = Decimal("0.10")
RELATIVE_U = {"wheel": Decimal("0.01"), "known": Decimal("0.005"), "tape": Decimal("0.002"),
              "paces": Decimal("0.03"), "phone": Decimal("0.02")}  # fmt: skip

# distance_m, elapsed_ms, distance_u_m, measured_by, resolution_ms, target_speed_mpm
GOOD = [
    (420, 63200, None, "wheel", 0, 420),
    (420, 61200, None, "wheel", 0, 420),  # 412 ± 4 m/min, 8 slow
    (400, 60000, None, "wheel", 0, 400),  # exactly on target
    (400, 60600, None, "tape", 0, 400),
    (400, 58000, None, "tape", 0, 400),
    (350, 60000, 1.5, "wheel", 0, 350),
    (100, 17143, None, "known", 0, 350),
    (200, 30000, 0, "tape", 0, 400),
    (400, 60000, None, "wheel", 1000, 400),  # read to whole seconds
    (235, 30100, None, "wheel", 100, 470),
    (1000, 115385, None, "known", 0, 520),
    (10, 500, None, "wheel", 0, 570),
    (10000, 7200000, None, "known", 0, 300),
    (420, 63200, None, "wheel", 0, None),
    (400, 60000, None, "paces", 0, 400),
    (400, 60000, None, "phone", 0, 400),
    (412.5, 60000, None, "tape", 0, 412.5),  # halves are rounded up
]
REFUSED = [
    (420, 0, None, "wheel", 0, 420, "elapsed_ms"),
    (420, -1, None, "wheel", 0, 420, "elapsed_ms"),
    (0, 60000, None, "wheel", 0, 420, "distance_m"),
    (-420, 60000, None, "wheel", 0, 420, "distance_m"),
    (420, 60000, -1, "wheel", 0, 420, "distance_u_m"),
    (420, 60000, None, "eye", 0, 420, "measured_by"),
    (420, 60000, None, "wheel", -1, 420, "resolution_ms"),
    (420, 60000, None, "wheel", 0, 0, "target_speed_mpm"),
    ("420", 60000, None, "wheel", 0, 420, "distance_m"),
    (420, None, None, "wheel", 0, 420, "elapsed_ms"),
]
KEYS = ("distance_m", "elapsed_ms", "distance_u_m", "measured_by", "resolution_ms", "target_speed_mpm")


def kragten(formula, values, uncertainties):
    base = formula(*values)
    effects = []
    for index, u in enumerate(uncertainties):
        shifted = [v + STEP * u if i == index else v for i, v in enumerate(values)]
        effects.append((formula(*shifted) - base) / STEP)
    return base, sum(effect**2 for effect in effects).sqrt()


def whole(value):
    return int((value + Decimal("0.5")).to_integral_value(rounding="ROUND_FLOOR"))


def headline(speed, u, target):
    text = f"{whole(speed)} ± {max(1, int(u.quantize(Decimal(1), ROUND_HALF_UP)))} m/min"
    if target is None:
        return text
    slow = whole(target) - whole(speed)
    return f"{text}, " + ("on target" if slow == 0 else f"{abs(slow)} {'slow' if slow > 0 else 'fast'}")


def expected(distance_m, elapsed_ms, distance_u_m, measured_by, resolution_ms, target_speed_mpm):
    d, t = Decimal(str(distance_m)), Decimal(str(elapsed_ms)) / 1000
    ud = d * RELATIVE_U[measured_by] if distance_u_m is None else Decimal(str(distance_u_m))
    ut = (HAND_SD_S**2 + (Decimal(resolution_ms) / 1000) ** 2 / 12).sqrt()
    speed, u = kragten(lambda d, t: 60 * d / t, (d, t), (ud, ut))
    if target_speed_mpm is None:
        return {"speed_mpm": speed, "speed_u_mpm": u, "headline": headline(speed, u, None)}
    v = Decimal(str(target_speed_mpm))
    seconds, seconds_u = kragten(lambda d, t: t - 60 * d / v, (d, t), (ud, ut))
    metres, metres_u = kragten(lambda d, t: v * t / 60 - d, (d, t), (ud, ut))
    apart = abs(v - speed) > 2 * u
    verdict = "on_target" if not apart else "slow" if speed < v else "fast"
    return {"speed_mpm": speed, "speed_u_mpm": u, "seconds_late": seconds, "seconds_late_u": seconds_u,
            "metres_late": metres, "metres_late_u": metres_u, "verdict": verdict,
            "headline": headline(speed, u, v)}  # fmt: skip


def plain(value):
    return float(f"{value:.12e}") if isinstance(value, Decimal) else value


def vectors():
    good = [{"input": dict(zip(KEYS, row, strict=True)),
             "expected": {key: plain(value) for key, value in expected(*row).items()}} for row in GOOD]  # fmt: skip
    refused = [{"input": dict(zip(KEYS, row[:-1], strict=True)), "expected": {"refused": row[-1]}}
               for row in REFUSED]  # fmt: skip
    return good + refused


def text():
    rows = ",\n".join("  " + json.dumps(vector, ensure_ascii=False) for vector in vectors())
    return f"[\n{rows}\n]\n"


if __name__ == "__main__":
    TARGET.write_text(text(), encoding="utf-8")
