"""How well forecasts fit what happened: Brier score, reliability, and whether the stated interval holds the truth."""

import numpy as np

from bench.naive import best_forecast
from bench.our_rule import Judge
from bench.pairs import OUTINGS, QUESTIONS, Season
from fieldtally.readiness.forecast import clear_interval
from fieldtally.readiness.stops import stopped_efforts


def course(one: Season, judge: Judge, seed: int) -> dict:
    """A course that asks every question once at the season's end, each fence met for the first time: our chance of
    clear and its interval, the true chance, the best that can be said from the logbook, and what happened."""
    asked = [(1, each.alpha, each.beta) for each in judge.posterior(OUTINGS - 1)]
    low, high = clear_interval(asked, fall=0.0)
    truth = one.truth[-1]
    random = np.random.default_rng((99, seed))
    return {
        "forecast": float(stopped_efforts(asked)[0]),
        "perfect_forecast": float(truth.prod()),
        "best_forecast": best_forecast(one),
        "is_covered": bool(low <= truth.prod() <= high),
        "was_clear": bool((random.random(QUESTIONS) < truth).all()),
    }


def brier(runs: list, chance: str) -> float:
    return float(np.mean([(getattr(each, chance) - each.was_clear) ** 2 for each in runs]))


def forecast_error(runs: list) -> float:
    """Mean square of what was said less the true chance: the Brier score without the luck of what happened."""
    return round(float(np.mean([(each.forecast - each.perfect_forecast) ** 2 for each in runs])), 5)


def brier_noise(runs: list) -> float:
    """Standard error of the perfect forecaster's Brier score: what chance alone moves it."""
    return standard_error([(each.perfect_forecast - each.was_clear) ** 2 for each in runs])


def paired_distance(runs: list, chance: str) -> list[float]:
    """Brier score less the perfect forecaster's, pair by pair, and its standard error."""
    scores = [
        (getattr(each, chance) - each.was_clear) ** 2 - (each.perfect_forecast - each.was_clear) ** 2 for each in runs
    ]
    return [float(np.mean(scores)), standard_error(scores)]


def standard_error(scores: list[float]) -> float:
    return float(np.std(scores, ddof=1) / np.sqrt(len(scores)))


def reliability(runs: list, bins: int = 5) -> list[dict]:
    """Forecasts in bins of equal counts: what was said, and what happened."""
    ordered = sorted(runs, key=lambda each: each.forecast)
    parts = [ordered[len(ordered) * k // bins : len(ordered) * (k + 1) // bins] for k in range(bins)]
    return [
        {
            "said": float(np.mean([each.forecast for each in part])),
            "happened": float(np.mean([each.was_clear for each in part])),
            "pairs": len(part),
        }
        for part in parts
    ]


def covered(runs: list) -> float:
    return round(float(np.mean([each.is_covered for each in runs])), 3)


def calibration(worlds: dict[str, list]) -> dict:
    """`coverage`: the share of pairs whose true chance of clear lies in the stated interval, which says 80 %."""
    independent = worlds["independent"]
    return {
        "brier": brier(independent, "forecast"),
        "brier_perfect": brier(independent, "perfect_forecast"),
        "brier_noise": brier_noise(independent),
        "brier_best_possible": brier(independent, "best_forecast"),
        "brier_paired_distance": paired_distance(independent, "forecast"),
        "brier_paired_distance_best_possible": paired_distance(independent, "best_forecast"),
        "reliability": reliability(independent),
        "forecast_error": {world: forecast_error(runs) for world, runs in worlds.items()},
        "coverage": {world: covered(runs) for world, runs in worlds.items()},
    }
