"""Partial pooling: what the pair does at the other questions tells something of this one.

The prior of a question is Beta(s m, s (1 - m)) with strength s and mean
m = (Σ clear weight of the others + w₀ m₀) / (Σ weight of the others + w₀), where m₀ and w₀ are the mean and
the weight that stand in while little is known. It helps because pairs differ more than questions do; by how
much is measured in tests/bench/decision.py.
"""

from collections.abc import Mapping
from dataclasses import dataclass

from fieldtally.readiness.estimate import JEFFREYS, Prior
from fieldtally.readiness.tally import Tally


@dataclass(frozen=True)
class Pool:
    """Weights summed over all questions of a level."""

    clear_weight: float = 0.0
    weight: float = 0.0

    def prior_without(self, tally: Tally, numbers: Mapping[str, float]) -> Prior:
        """The prior of one question from all the others."""
        strength = numbers["pool_strength"]
        if not strength:
            return JEFFREYS
        others = max(0.0, self.weight - tally.weight)
        others_clear = min(others, max(0.0, self.clear_weight - tally.clear_weight))
        stand_in = numbers["pool_stand_in"]
        mean = (others_clear + stand_in * numbers["pool_mean"]) / (others + stand_in)
        return Prior(strength * mean, strength * (1 - mean))


def pool(tallies: list[Tally]) -> Pool:
    return Pool(sum(each.clear_weight for each in tallies), sum(each.weight for each in tallies))
