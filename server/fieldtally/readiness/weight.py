"""How much one attempt counts: age fades it, and repeats of one fence in one outing share a weight.

Recency: 2^(-age / half-life), age and half-life in days. Repeats: n attempts at one fence in one outing
together weigh 1 + r + r² + … + r^(n-1) = (1 - rⁿ) / (1 - r) with discount r, shared equally, so that the
tenth time over the same log on the same day teaches next to nothing.
"""

import numpy as np


def recency(age_days: np.ndarray, half_life_days: float) -> np.ndarray:
    return np.exp2(-age_days / half_life_days)


def shared(repeats: np.ndarray, discount: float) -> np.ndarray:
    """Weight of each attempt that is one of `repeats` at a fence in an outing."""
    if discount == 1:
        return np.ones(len(repeats))
    return (1 - discount**repeats) / ((1 - discount) * repeats)
