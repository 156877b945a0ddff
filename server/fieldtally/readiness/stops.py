"""How many efforts of a course are stopped at, and what that costs.

The efforts are independent given the pair's chances p of each question, so that the number stopped at is
Poisson-binomial; p itself is known only as Beta(α, β), which makes the number stopped at among n efforts of
one question beta-binomial: P(k) = C(n, k) B(α + n - k, β + k) / B(α, β). The questions' numbers are added by
convolution.

At a stopped effort the second presentation is clear with chance q: 20 penalties; else the third with q
again: 20 + 40; a third stop there eliminates, and so do too many stops on the course, and any fall.
"""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from scipy.special import betaln, comb

ELIMINATED = -1


@dataclass(frozen=True)
class Rules:
    """What a stop costs and when it eliminates, from the rulebook."""

    first_penalties: float = 20.0
    second_penalties: float = 40.0
    at_one_that_eliminate: int = 3
    on_course_that_eliminate: int = 3


def poisson_binomial(chances: Sequence[float]) -> np.ndarray:
    """P(k of the independent events happen), k = 0 … n, for events of these chances."""
    found = np.ones(1)
    for chance in chances:
        found = np.convolve(found, [1 - chance, chance])
    return found


def beta_binomial(efforts: int, alpha: float, beta: float) -> np.ndarray:
    """P(k of n efforts are stopped at), k = 0 … n, with the chance of clear known as Beta(alpha, beta)."""
    k = np.arange(efforts + 1)
    return comb(efforts, k) * np.exp(betaln(alpha + efforts - k, beta + k) - betaln(alpha, beta))


def stopped_efforts(questions: Sequence[tuple[int, float, float]]) -> np.ndarray:
    """P(k efforts of the course are stopped at) for questions of (efforts, alpha, beta)."""
    found = np.ones(1)
    for efforts, alpha, beta in questions:
        found = np.convolve(found, beta_binomial(efforts, alpha, beta))
    return found


def at_one_effort(second_clear: float, rules: Rules) -> list[tuple[int, float, float]]:
    """(stops, penalties, probability) of a stopped effort that ends clear; what lacks to 1 is elimination."""
    found, chance, penalties = [], 1.0, rules.first_penalties
    for stops in range(1, rules.at_one_that_eliminate):
        found.append((stops, penalties, chance * second_clear))
        chance *= 1 - second_clear
        penalties += rules.second_penalties
    return found


def penalties(stopped: np.ndarray, second_clear: float, rules: Rules, fall: float = 0.0) -> dict[float, float]:
    """Probability of each total of jumping penalties; ELIMINATED for everything that ends the round.

    `stopped`: P(k efforts stopped at). `fall`: chance of a fall on the course.
    """
    one = at_one_effort(second_clear, rules)
    states: dict[tuple[int, float], float] = {(0, 0.0): 1.0}
    total: dict[float, float] = {}
    for chance in stopped:
        for (_, cost), share in states.items():
            total[cost] = total.get(cost, 0.0) + chance * share * (1 - fall)
        states = with_another(states, one, rules)
        if not states:
            break
    left = {cost: float(chance) for cost, chance in sorted(total.items()) if chance > 0}
    return {ELIMINATED: max(0.0, 1 - sum(left.values()))} | left


def with_another(states: dict, one: list[tuple[int, float, float]], rules: Rules) -> dict[tuple[int, float], float]:
    """(stops, penalties) so far, with one more stopped effort; what eliminates falls out."""
    found: dict[tuple[int, float], float] = {}
    for (stops, cost), share in states.items():
        for more, price, chance in one:
            if stops + more < rules.on_course_that_eliminate:
                key = (stops + more, cost + price)
                found[key] = found.get(key, 0.0) + share * chance
    return found
