"""The coverage benchmark in small: it repeats itself, keeps the rules, and would see intervals too narrow."""

import json

import numpy as np
import pytest

from bench.coverage import Truth, cross_country, held, one, report

CERTAIN, NEVER = 50.0, -50.0


@pytest.fixture(scope="module")
def pairs():
    return [one(seed) for seed in range(24)]


def test_it_repeats_itself_and_every_pair_gets_a_forecast_with_a_total(pairs):
    assert one(3) == pairs[3]
    assert all(each["said"]["spoken"] and each["said"]["total"] for each in pairs)
    found = report(pairs)
    assert json.loads(json.dumps(found, allow_nan=False)) == found
    assert set(found["coverage"]) == {"dressage", "show_jumping", "time", "total", "clear_chance"}


def test_stated_intervals_hold_most_pairs_and_ones_half_as_wide_hold_fewer(pairs):
    done = [each for each in pairs if each["event"]]
    totals = [each["event"]["total"] for each in done]
    stated = [each["said"]["total"] for each in done]
    narrow = [half_as_wide(**each) for each in stated]
    assert held(narrow, totals) < held(stated, totals) >= 0.6


def test_the_ends_of_an_interval_belong_to_it():
    assert held([{"low": 1, "high": 2}] * 4, [1, 2, 0.9, 2.1]) == 0.5


def test_a_course_is_ridden_by_the_rules():
    random = np.random.default_rng(5)
    clear = [cross_country(pair(CERTAIN), {"log": 18}, random) for _ in range(2000)]
    assert set(clear) == {0, None}
    assert np.mean([each is None for each in clear]) == pytest.approx(0.0237, abs=0.01)  # falls alone
    assert cross_country(pair(NEVER), {"log": 1}, random) is None
    some = {cross_country(pair(0.0), {"log": 2}, random) for _ in range(400)}
    assert some == {None, 0, 20, 40, 60, 80}


def half_as_wide(low: float, high: float, **_) -> dict[str, float]:
    return {"low": (3 * low + high) / 4, "high": (low + 3 * high) / 4}


def pair(skill: float) -> Truth:
    return Truth({"log": skill}, (65, 2), 0.1, (400, 5))
