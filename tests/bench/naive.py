"""The rules people use without a tool, and the judge nobody can be."""

from collections.abc import Iterator
from math import comb

import numpy as np

from bench.pairs import EASIER_AGAIN, QUESTIONS, Season, chance, logit, strong


def in_a_row(count: int):
    return lambda logged: len(logged) >= count and sum(logged[-count:]) == count


def rate_over(share: float, least: int = 1):
    return lambda logged: len(logged) >= least and sum(logged) / len(logged) > share


RULES = {"three clear in a row": in_a_row(3), "raw rate over 80 %": rate_over(0.8)}
# nobody was found to use this one; it is what the second rule becomes in careful hands
CAREFUL = {"raw rate over 80 % of at least three": rate_over(0.8, 3)}
# both rules at every strictness: whoever is told to be more careful would ask for more in a row, or for a higher
# rate of more attempts
WHOLE_FAMILY = {f"{count} clear in a row": in_a_row(count) for count in range(2, 9)} | {
    f"rate over {share:.0%} of at least {least}": rate_over(share, least)
    for share in (0.70, 0.75, 0.80, 0.85, 0.90, 0.95)
    for least in (1, 3, 5, 8)
}


def first_complete(season: Season, rule) -> int | None:
    """The outing after which every question passes the rule for the first time."""
    logged: list[list[int]] = [[] for _ in range(QUESTIONS)]
    for number, outing in enumerate(season.outcomes, start=1):
        for so_far, today in zip(logged, outing, strict=True):
            so_far.extend(today)
        if all(rule(each) for each in logged):
            return number
    return None


WEAK = np.linspace(0.40, 0.85, 46)
PERFECT = {f"perfect judge at {share:.0%}": share for share in (0.80, 0.85, 0.90)}


def perfect_judge(season: Season) -> dict[str, int | None]:
    """Knows how the independent world was made, to the last parameter, and says complete when the chance that
    no question is weak reaches a share. Nobody can do better; it bounds what any rule can reach."""
    chances = [chance_of_no_weakness(counts, season.better) for counts in counted(season)]
    return {name: first_at_least(chances, share) for name, share in PERFECT.items()}


def best_forecast(season: Season) -> float:
    """The chance of clear at every question once that the same judge would give at the season's end: what can be
    known of it from the logbook at all."""
    *_, counts = counted(season)
    grid = strong(season.better)
    clear = weighted(likelihood(counts, grid, clear=1), likelihood(counts, WEAK, clear=1))
    return clear / weighted(likelihood(counts, grid), likelihood(counts, WEAK))


def counted(season: Season) -> Iterator[np.ndarray]:
    """After each outing, of each question: first presentations clear and not, later ones clear and not."""
    counts = np.zeros((QUESTIONS, 4))
    for outing in season.outcomes:
        for question, today in enumerate(outing):
            if today:
                again = sum(today[1:])
                counts[question] += (today[0], 1 - today[0], again, len(today) - 1 - again)
        yield counts


def first_at_least(chances: list[float], share: float) -> int | None:
    return next((number for number, each in enumerate(chances, start=1) if each >= share), None)


def chance_of_no_weakness(counts: np.ndarray, better: float = 0.0) -> float:
    fine, weak = likelihood(counts, strong(better)), likelihood(counts, WEAK)
    return float(0.5 * fine.prod() / weighted(fine, weak))


def most_likely_weak(counts: np.ndarray, better: float = 0.0) -> list[int]:
    ratio = likelihood(counts, WEAK) / likelihood(counts, strong(better))
    return [int(question) for question in np.argsort(-ratio, kind="stable")]


def weighted(fine: np.ndarray, weak: np.ndarray) -> float:
    """Half of the pairs have no weak question, the others one to four of 14 with equal chance."""
    subsets = np.zeros(5)
    subsets[0] = 1
    for each in weak / fine:
        subsets[1:] += subsets[:-1] * each
    some_weak = sum(subsets[k] / comb(QUESTIONS, k) / 4 for k in range(1, 5))
    return float(0.5 * fine.prod() * (1 + some_weak))


def likelihood(counts: np.ndarray, grid: np.ndarray, clear: int = 0) -> np.ndarray:
    """Of each question's counts, averaged over the grid of chances; with `clear` further first presentations."""
    again = chance(logit(grid) + EASIER_AGAIN)
    logs = np.stack([np.log(grid), np.log(1 - grid), np.log(again), np.log(1 - again)])
    return np.exp(counts @ logs + clear * np.log(grid)).mean(axis=1)
