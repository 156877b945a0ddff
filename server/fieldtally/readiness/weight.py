"""How much one attempt counts: age fades it, and repeats of one fence in one outing share a weight.

Recency: 2^(-age / half-life), age and half-life in days. Repeats: n attempts at one fence in one outing
together weigh w(n) = 1 + r + r² + … + r^(n-1) = (1 - rⁿ) / (1 - r) with discount r, so that the tenth time
over the same log on the same day teaches next to nothing. What went wrong takes the first shares: of f
faults and c clear attempts the faults weigh w(f) and the clear ones only w(f + c) - w(f), for a fence met
first is the harder one, and clear after a stop is a second presentation.
"""

import numpy as np


def recency(age_days: np.ndarray, half_life_days: float) -> np.ndarray:
    return np.exp2(-age_days / half_life_days)


def together(attempts: np.ndarray, discount: float) -> np.ndarray:
    """w(n): what n attempts at one fence in one outing weigh together."""
    return attempts.astype(float) if discount == 1 else (1 - discount**attempts) / (1 - discount)


def share(faults: np.ndarray, attempts: np.ndarray, is_fault: np.ndarray, discount: float) -> np.ndarray:
    """Weight of each attempt: its group has so many `faults` among so many `attempts`."""
    weighing = together(np.arange(attempts.max(initial=0) + 1), discount)
    of_faults = weighing[faults]
    of_clear = weighing[attempts] - of_faults
    return np.where(is_fault, of_faults / np.maximum(faults, 1), of_clear / np.maximum(attempts - faults, 1))
