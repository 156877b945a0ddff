"""Chance of a clear first presentation: Beta posterior from weighted counts.

With clear weight c out of total weight n and a prior Beta(a, b), the posterior is Beta(a + c, b + n - c). Its
mean is (a + c) / (a + b + n); the one-sided lower bound at level q is its (1 - q) quantile. Nothing else
known, the prior is Jeffreys', Beta(1/2, 1/2): H. Jeffreys, Theory of Probability (1961), from memory; L. Brown,
T. Cai, A. DasGupta, "Interval Estimation for a Binomial Proportion", Statistical Science 16(2), 2001.
"""

from dataclasses import dataclass

from scipy.special import betaincinv

from fieldtally.readiness.once import once


@dataclass(frozen=True)
class Prior:
    """Beta(clear, other): what is believed of a question before it was met, in attempts' weights."""

    clear: float = 0.5
    other: float = 0.5


JEFFREYS = Prior()


@dataclass(frozen=True)
class Estimate:
    """`alpha` and `beta` of the posterior; mean, bound and `confidence` are shares, 0 to 1."""

    alpha: float
    beta: float
    confidence: float

    @property
    def mean(self) -> float:
        return self.alpha / (self.alpha + self.beta)

    @once
    def lower_bound(self) -> float:
        """The chance is at least this with probability `confidence`."""
        return float(betaincinv(self.alpha, self.beta, 1 - self.confidence))


def estimate(clear_weight: float, weight: float, confidence: float = 0.8, prior: Prior = JEFFREYS) -> Estimate:
    """Posterior from `clear_weight` out of `weight` (sums of attempt weights, each 0 to 1)."""
    other = max(0.0, weight - clear_weight)
    return Estimate(prior.clear + clear_weight, prior.other + other, confidence)


def clear_still_needed(
    clear_weight: float, weight: float, bound: float, confidence: float = 0.8, prior: Prior = JEFFREYS, most: int = 50
) -> int:
    """How many more clear attempts of full weight lift the lower bound to `bound`; `most` at most."""
    for more in range(most):
        if estimate(clear_weight + more, weight + more, confidence, prior).lower_bound >= bound:
            return more
    return most
