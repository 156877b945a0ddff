"""The whole trade between care and patience: every rule at every strictness, on seasons that befall all of them
alike, and each on the outings that it plans for itself."""

from dataclasses import dataclass

import numpy as np

from bench.naive import CAREFUL, PERFECT, RULES, WHOLE_FAMILY, first_complete, perfect_judge
from bench.our_rule import Judge
from bench.pairs import BELOW, OUTINGS, Season, season
from bench.planned import Pair, by_fieldtally, by_perfect_judge, by_rule_of_thumb

BOUNDS = (0.70, 0.73, 0.76, 0.79, 0.82, 0.85)
PLANNED_BOUNDS = (0.76, 0.79, 0.82)


@dataclass(frozen=True)
class Outcome:
    """Of one pair by one rule: when it was said complete, the weakest question then, and whether it was above the
    bar from the start."""

    complete: int | None
    weakest: float
    is_above: bool


def ours(bound: float) -> str:
    return f"fieldtally, bound {bound:.0%}"


def alike(world: str, numbers: dict[str, float], seed: int, better: float = 0.0) -> dict[str, Outcome]:
    """One pair's season, judged by all."""
    one = season(world, seed, better)
    found = {name: first_complete(one, rule) for name, rule in WHOLE_FAMILY.items()}
    found |= {ours(bound): first_shown(one, numbers | {"bound": bound}) for bound in BOUNDS}
    if world == "independent":
        found |= perfect_judge(one)
    return {name: outcome(one, outing) for name, outing in found.items()}


def first_shown(one: Season, numbers: dict[str, float]) -> int | None:
    judge = Judge(one, numbers)
    return next((outing + 1 for outing in range(OUTINGS) if all(judge.shown(outing))), None)


def outcome(one: Season, outing: int | None) -> Outcome:
    return Outcome(outing, float(one.truth[(outing or OUTINGS) - 1].min()), one.is_above)


def planned(world: str, numbers: dict[str, float], seed: int, better: float = 0.0) -> dict[str, Outcome]:
    """The same pair, once for each rule, schooled as the rule asks."""
    plans = {name: by_rule_of_thumb(rule) for name, rule in PLANNED_NAIVE.items()}
    plans |= {ours(bound): by_fieldtally(numbers | {"bound": bound}) for bound in PLANNED_BOUNDS}
    if world == "independent":
        plans |= {name: by_perfect_judge(share, better) for name, share in PERFECT.items()}
    pairs = {name: Pair(world, seed, plan, better).season() for name, plan in plans.items()}
    return {name: Outcome(each.complete, each.weakest, each.is_above) for name, each in pairs.items()}


PLANNED_NAIVE = RULES | CAREFUL | WHOLE_FAMILY


def point(outcomes: list[Outcome]) -> dict[str, float]:
    below = [each.complete is not None for each in outcomes if each.weakest < BELOW]
    above = [each.complete or OUTINGS + 1 for each in outcomes if each.is_above]
    return {"false_complete": round(float(np.mean(below)), 4), "outings_to_complete": round(float(np.mean(above)), 3)}


def points(runs: list[dict[str, Outcome]]) -> dict[str, dict[str, float]]:
    names = dict.fromkeys(name for each in runs for name in each)
    return {name: point([each[name] for each in runs if name in each]) for name in names}


def best_within(found: dict[str, dict], outings: float, names) -> tuple[str, float] | None:
    """The rule among `names` that lets fewest through in no more outings."""
    fit = [(found[name]["false_complete"], name) for name in names if found[name]["outings_to_complete"] <= outings]
    return (min(fit)[1], min(fit)[0]) if fit else None
