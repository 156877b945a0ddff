"""What the dressage, the show jumping and the clock may cost, from their evidence. None where there is none.

Each is a sample of possible penalties at fixed, evenly spread probabilities, so that the same evidence
always gives the same numbers.
"""

from collections.abc import Mapping, Sequence

import numpy as np
from scipy.special import betaincinv, stdtrit

from fieldtally.readiness.context import Weighing
from fieldtally.readiness.limits import level_speed_mpm, show_jumping_height_cm
from fieldtally.readiness.typical_course import length_m_of
from fieldtally.readiness.weigh_pace import pace_of
from fieldtally.readiness.weigh_tests import test_percent, tests_of_level

DRAWS = 400
PROBABILITIES = (np.arange(DRAWS) + 0.5) / DRAWS
LAST = 8
NEAR_HEIGHT = 0.95


def next_value(values: Sequence[float]) -> np.ndarray | None:
    """Where the next of such values may fall: Student's t around the mean, s √(1 + 1/n)."""
    if len(values) < 2:
        return None
    spread = np.std(values, ddof=1) * np.sqrt(1 + 1 / len(values))
    return np.mean(values) + spread * stdtrit(len(values) - 1, PROBABILITIES)


def dressage(weighing: Weighing, window_days: float) -> np.ndarray | None:
    """Penalties: coefficient · (100 - per cent) of the last tests of this level or above."""
    tests = tests_of_level(weighing, {"window_days": window_days})[-LAST:]
    coefficient = weighing.level.value("dressage", "penalty_coefficient") or 1.0
    found = next_value([coefficient * (100 - test_percent(each.body)) for each in tests])
    return None if found is None else np.clip(found, 0, 100 * coefficient)


def show_jumping(weighing: Weighing, window_days: float, numbers: Mapping[str, float]) -> np.ndarray | None:
    """Rails at the level's efforts; the chance of a rail is Beta(1/2 + rails, 1/2 + clean efforts)."""
    height = show_jumping_height_cm(weighing.level)
    rounds = weighing.book.since("jumping_round", window_days)
    rounds = [each.body for each in rounds if height and each.body["height_cm"] >= height * NEAR_HEIGHT]
    if len(rounds) < 2:
        return None
    efforts = sum(each["efforts"] for each in rounds)
    rails = min(efforts, sum(each["knockdowns"] for each in rounds))
    at_level = weighing.level.value("show_jumping", "efforts_max") or numbers["show_jumping_efforts"]
    each_rail = weighing.level.value("show_jumping", "knockdown_penalties") or 4.0
    chance = betaincinv(rails + 0.5, efforts - rails + 0.5, PROBABILITIES)
    return each_rail * np.sort(np.random.default_rng(0).binomial(int(at_level), chance)).astype(float)


def clock(weighing: Weighing, window_days: float, numbers: Mapping[str, float]) -> np.ndarray | None:
    """Time penalties over the typical length at the speeds of the last canters against this level's speed,
    those over fences where there are two of them: 0.4 a second over, where the rulebook states no other."""
    target = level_speed_mpm(weighing.level)
    if target is None:
        return None
    speeds = next_value(speeds_against(weighing, window_days, target))
    if speeds is None:
        return None
    length = length_m_of(weighing.level, numbers)
    over = length * 60 / np.clip(speeds, target / 2, None) - length * 60 / target
    per_second = weighing.level.value("cross_country", "time_penalties_per_second") or 0.4
    return per_second * np.ceil(np.maximum(0, over))


def speeds_against(weighing: Weighing, window_days: float, target: float) -> list[float]:
    canters = weighing.book.since("timed_canter", window_days)
    canters = [each for each in canters if (each.body["target_speed_mpm"] or 0) >= 0.97 * target]
    over_fences = [each for each in canters if each.body["over_fences"]]
    return [pace_of(each).speed_mpm for each in (over_fences if len(over_fences) > 1 else canters)[-LAST:]]
