"""What a forecast believes of each question: the same attempts as the findings, weighed to be right on average.

A finding decides, so it leans to the careful side: repeats of a fence on one day count for little. A forecast should
lean to no side. Two errors of the logbook cancel when repeats count for more: a second presentation is easier than
the first, and a stop among several is counted as if it had been the first. And somebody whose logbook shows 98 %
has mostly had some luck as well, so that the usual rate, the forecast's `pool_stand_in`, counts for more than in a
finding. Both numbers were chosen in tests/bench/decision.py: of those tried they were the ones that made the
forecast better in one world without making it worse in another.
"""

from collections.abc import Mapping, Sequence

from fieldtally.readiness.estimate import Estimate, estimate
from fieldtally.readiness.pool import Pool, pool
from fieldtally.readiness.tally import Tally


def believed(
    counted: Sequence[tuple[Tally, Mapping[str, float]]], forecast_numbers: Mapping[str, float]
) -> tuple[list[Estimate], Pool]:
    """The posterior of each question's chance of a clear first presentation, and what all add up to. `counted` are
    all questions of the level: the tally in its window, fading, and the numbers of its requirement."""
    tallies = [tally.with_discount(forecast_numbers["repeat_discount"]) for tally, _ in counted]
    together = pool(tallies)
    stand_in = {"pool_stand_in": forecast_numbers["pool_stand_in"]}
    found = []
    for each, (_, numbers) in zip(tallies, counted, strict=True):
        prior = together.prior_without(each, {**numbers, **stand_in})
        found.append(estimate(each.clear_weight, each.weight, numbers["confidence"], prior))
    return found, together
