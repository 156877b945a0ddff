"""Chance of a clear first presentation: Beta posterior from weighted counts.

With clear weight c and total weight n, and Jeffreys' prior Beta(1/2, 1/2), the posterior is
Beta(c + 1/2, n - c + 1/2). Its mean is (c + 1/2) / (n + 1); the one-sided lower bound at level q is its
(1 - q) quantile. Source of the prior: H. Jeffreys, Theory of Probability (1961), from memory; the interval
is the one of L. Brown, T. Cai, A. DasGupta, "Interval Estimation for a Binomial Proportion", Statistical
Science 16(2), 2001.
"""

from dataclasses import dataclass

from scipy.special import betaincinv

PRIOR_CLEAR = 0.5
PRIOR_OTHER = 0.5


@dataclass(frozen=True)
class Estimate:
    """`alpha` and `beta` of the posterior; weights, mean and bound are without unit, 0 to 1."""

    alpha: float
    beta: float
    confidence: float

    @property
    def mean(self) -> float:
        return self.alpha / (self.alpha + self.beta)

    @property
    def lower_bound(self) -> float:
        """The chance is at least this with probability `confidence`."""
        return float(betaincinv(self.alpha, self.beta, 1 - self.confidence))


def estimate(clear_weight: float, weight: float, confidence: float = 0.8) -> Estimate:
    """Posterior from `clear_weight` out of `weight` (sums of attempt weights, each 0 to 1)."""
    return Estimate(PRIOR_CLEAR + clear_weight, PRIOR_OTHER + max(0.0, weight - clear_weight), confidence)


def clear_still_needed(
    clear_weight: float, weight: float, bound: float, confidence: float = 0.8, most: int = 50
) -> int | None:
    """How many more clear attempts of full weight lift the lower bound to `bound`; None beyond `most`."""
    for more in range(most + 1):
        if estimate(clear_weight + more, weight + more, confidence).lower_bound >= bound:
            return more
    return None
