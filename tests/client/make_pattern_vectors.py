"""Writes fixtures/contract/exact_test.json, the chances that the phone's patterns of trouble rest on.

Made with scipy and numpy, not with our code: each day's hypergeometric distribution from scipy.stats, their
sum by numpy.convolve. Where there is one day, scipy.stats.fisher_exact (one-sided) must say the same, and does
so before anything is written. Published examples stand first, with their source.

Run: python tests/client/make_pattern_vectors.py
"""

import json
import random
from math import isclose
from pathlib import Path

import numpy as np
from scipy.stats import fisher_exact, hypergeom

TARGET = Path(__file__).parents[2] / "fixtures" / "contract" / "exact_test.json"
KEYS = ("met", "on_side", "troubles", "troubles_on_side")

# why, days as (met, on side, troubles, troubles on the side)
EXAMPLES = [
    ("Fisher's lady tasting tea: all four cups right (The Design of Experiments, 1935: 1 in 70)", [(8, 4, 4, 4)]),
    ("Fisher's lady tasting tea: three right or more (17 in 70)", [(8, 4, 4, 3)]),
    ("penicillin and rabbits, five strata (Agresti 1990, pages 231-237; R's help page of mantelhaen.test: 0.020)",
     [(11, 6, 0, 0), (12, 6, 3, 3), (12, 6, 8, 6), (12, 6, 11, 5), (7, 2, 7, 2)]),
    ("no day at all", []),
    ("days without trouble tell nothing", [(12, 5, 0, 0), (9, 4, 0, 0)]),
    ("a day with every fence on the side tells nothing", [(9, 9, 2, 2)]),
    ("5 of 7 stops on the right rein, 40 % of the fences, one stop a day", [(10, 4, 1, 1)] * 5 + [(10, 4, 1, 0)] * 2),
    ("9 of 10, the same", [(10, 4, 1, 1)] * 9 + [(10, 4, 1, 0)]),
    ("a bad day, half of it on the side, is no evidence", [(10, 5, 6, 3), (10, 5, 0, 0)]),
    ("more stops than fences off the side", [(10, 8, 5, 3)]),
    ("hundreds of fences", [(400, 150, 30, 22), (300, 20, 10, 3)]),
]  # fmt: skip


def made_up(count, seed):
    """Days with numbers of all sizes; the troubles fall where a hypergeometric draw puts them."""
    chance = random.Random(seed)
    for number in range(count):
        days = []
        for _ in range(chance.randint(1, 25)):
            met = chance.randint(1, 20)
            on_side, troubles = chance.randint(0, met), min(met, chance.choice([0, 0, 0, 1, 1, 2, 4]))
            order = [True] * on_side + [False] * (met - on_side)
            days.append((met, on_side, troubles, sum(chance.sample(order, troubles))))
        yield f"made up {number + 1}", days


def by_chance(days):
    total = np.array([1.0])
    for met, on_side, troubles, _ in days:
        total = np.convolve(total, hypergeom(met, on_side, troubles).pmf(np.arange(min(on_side, troubles) + 1)))
    found = sum(day[3] for day in days)
    p = float(total[found:].sum())
    if len(days) == 1:
        met, on_side, troubles, there = days[0]
        table = [[there, on_side - there], [troubles - there, met - on_side - troubles + there]]
        assert isclose(p, fisher_exact(table, alternative="greater").pvalue, rel_tol=1e-9)
    return {"p": min(1.0, p), "least_p": float(total[-1]), "expected": float(total @ np.arange(len(total)))}


def vectors():
    for why, days in [*EXAMPLES, *made_up(40, 1935)]:
        answer = {key: float(f"{value:.12g}") for key, value in by_chance(days).items()}
        yield {"why": why, "input": [dict(zip(KEYS, day, strict=True)) for day in days], "expected": answer}


def text():
    return "[\n" + ",\n".join("  " + json.dumps(vector) for vector in vectors()) + "\n]\n"


if __name__ == "__main__":
    TARGET.write_text(text(), encoding="utf-8")
