"""Decision benchmark: how often is a standing complete when the truth is below the bar, and how long does a pair
above it wait, side by side with rules people use without a tool; and how well the forecast is calibrated.

    python tests/bench/decision.py [--quick] [--pairs N] [--first SEED] [--clear-share SHARE] [--trade] [--json OUT]
                                   [--set NAME=VALUE …]

Everything is seeded: the same command gives the same numbers; `--first` begins with another pair. `--set` tries
another value of a number of the bar, or as `forecast.NAME` of the forecast, which is how the defaults were chosen.
`--clear-share` draws pairs without a weak question so that they are clear in that share of courses (pairs.py).
"""

import argparse
import json
import sys
from concurrent.futures import ProcessPoolExecutor
from dataclasses import dataclass
from functools import partial
from pathlib import Path

sys.path[:0] = [str(Path(__file__).parents[1]), str(Path(__file__).parents[2] / "server")]

import numpy as np  # noqa: E402

from bench.calibration import calibration, course  # noqa: E402
from bench.naive import CAREFUL, PERFECT, RULES, first_complete, perfect_judge  # noqa: E402
from bench.our_rule import DEFAULTS, Judge  # noqa: E402
from bench.pairs import BELOW, OUTINGS, WORLDS, better_for, course_clear, season  # noqa: E402
from bench.tradeoff import alike, best_within, planned, points  # noqa: E402

OURS = "fieldtally"


@dataclass(frozen=True)
class Run:
    """One pair: the outing at which each rule said complete (None: never), and the truth then and at first."""

    world: str
    complete: dict[str, int | None]
    weakest: dict[str, float]
    is_above: bool
    course_clear: float
    shown: int
    shown_below: int
    forecast: float
    perfect_forecast: float
    best_forecast: float
    is_covered: bool
    was_clear: bool


def run(world: str, numbers: dict[str, float], seed: int, better: float = 0.0) -> Run:
    one = season(world, seed, better)
    judge = Judge(one, numbers)
    complete = {name: first_complete(one, rule) for name, rule in (RULES | CAREFUL).items()}
    complete[OURS] = our_first_complete(judge)
    if world == "independent":
        complete |= perfect_judge(one)
    at_end = np.array(judge.shown(OUTINGS - 1))
    return Run(
        world,
        complete,
        {name: float(one.truth[(outing or OUTINGS) - 1].min()) for name, outing in complete.items()},
        one.is_above,
        course_clear(one.before),
        int(at_end.sum()),
        int((at_end & (one.truth[-1] < BELOW)).sum()),
        **course(one, judge, seed),
    )


def our_first_complete(judge: Judge) -> int | None:
    return next((outing + 1 for outing in range(OUTINGS) if all(judge.shown(outing))), None)


def false_complete(runs: list[Run], rule: str) -> float:
    """Of the pairs below the bar, the share that the rule lets through in a season."""
    below = [each for each in runs if rule in each.complete and each.weakest[rule] < BELOW]
    return float(np.mean([each.complete[rule] is not None for each in below]))


def outings_to_complete(runs: list[Run], rule: str) -> float:
    """Of the pairs above the bar from the start: mean outings; one more than the season where never."""
    above = [each for each in runs if rule in each.complete and each.is_above]
    return float(np.mean([each.complete[rule] or OUTINGS + 1 for each in above]))


def table(runs: list[Run]) -> dict[str, dict]:
    rules = [rule for rule in (*RULES, *CAREFUL, OURS, *PERFECT) if any(rule in each.complete for each in runs)]
    return {
        rule: {"false_complete": false_complete(runs, rule), "outings_to_complete": outings_to_complete(runs, rule)}
        for rule in rules
    }


def report(runs: list[Run]) -> dict:
    worlds = {world: [each for each in runs if each.world == world] for world in WORLDS}
    everywhere = table(runs)
    naive = min(RULES, key=lambda rule: everywhere[rule]["false_complete"])
    return {
        "n_pairs": len(runs),
        "false_complete": everywhere[OURS]["false_complete"],
        "outings_to_complete": everywhere[OURS]["outings_to_complete"],
        "best_naive": naive,
        "false_complete_best_naive": everywhere[naive]["false_complete"],
        "outings_best_naive": everywhere[naive]["outings_to_complete"],
        "false_shown": sum(each.shown_below for each in runs) / max(1, sum(each.shown for each in runs)),
        **calibration(worlds),
        "course_clear": {world: clear_courses(each) for world, each in worlds.items()},
        "rules": {rule: each for rule, each in everywhere.items() if rule not in PERFECT},
        "share_of_each_naive": {
            rule: round(everywhere[OURS]["false_complete"] / everywhere[rule]["false_complete"], 3)
            for rule in (*RULES, *CAREFUL)
        },
        "worlds": {world: table(each) for world, each in worlds.items()},
    }


def clear_courses(runs: list[Run]) -> dict[str, float]:
    """The mean true chance of a clear course on the first day, of pairs above the bar and of the others."""
    return {
        name: round(float(np.mean([each.course_clear for each in runs if each.is_above == is_above])), 3)
        for name, is_above in (("above", True), ("others", False))
    }


def simulate(pairs: int, numbers: dict[str, float], better: float = 0.0, first: int = 0) -> list[Run]:
    return [found for runs in by_world(run, pairs, numbers, better, first).values() for found in runs]


def trade(pairs: int, numbers: dict[str, float], better: float = 0.0, first: int = 0) -> dict:
    """Every rule at every strictness: on the same seasons, and each on the outings that it plans itself. Beside
    each of our points the rule of thumb that lets fewest through in no more outings."""
    return {how.__name__: of_trade(by_world(how, pairs, numbers, better, first)) for how in (alike, planned)}


def of_trade(runs: dict[str, list[dict]]) -> dict:
    found = points([each for world in runs.values() for each in world])
    found = {name: each for name, each in found.items() if name not in PERFECT}
    naive = [name for name in found if not name.startswith(OURS)]
    ours = found.keys() - set(naive)
    rivals = {name: best_within(found, found[name]["outings_to_complete"], naive) for name in sorted(ours)}
    return {"all worlds": found, "independent": points(runs["independent"]), "rule of thumb in no more outings": rivals}


def by_world(how, pairs: int, numbers: dict[str, float], better: float, first: int) -> dict[str, list]:
    each = pairs // len(WORLDS)
    seeds, chunk = range(first, first + each), max(1, each // 8)
    with ProcessPoolExecutor(2) as workers:
        return {
            world: list(workers.map(partial(how, world, numbers, better=better), seeds, chunksize=chunk))
            for world in WORLDS
        }


def in_words(found: dict) -> str:
    lines = [f"{found['n_pairs']} pairs", f"{'world':22}{'rule':40}{'false complete':>15}{'outings':>9}"]
    for world, rules in {"all": found["rules"], **found["worlds"]}.items():
        for rule, each in rules.items():
            lines.append(f"{world:22}{rule:40}{each['false_complete']:15.3f}{each['outings_to_complete']:9.2f}")
    lines.append(
        f"Brier {found['brier']:.4f}, perfect {found['brier_perfect']:.4f} ± {found['brier_noise']:.4f}, "
        f"best possible from the logbook {found['brier_best_possible']:.4f}; pair by pair from perfect "
        "{:.4f} ± {:.4f}, the best possible {:.4f} ± {:.4f}".format(
            *found["brier_paired_distance"], *found["brier_paired_distance_best_possible"]
        )
    )
    lines.append(f"true chance in the stated interval, which says 0.8: {found['coverage']}")
    lines.append(f"true chance of a clear course: {found['course_clear']}")
    lines.append(f"forecast's square distance to the true chance: {found['forecast_error']}")
    lines += [
        f"  said {each['said']:.2f}  happened {each['happened']:.2f}  ({each['pairs']})"
        for each in found["reliability"]
    ]
    for how, told in found.get("trade", {}).items():
        lines.append(f"{how}: false complete, outings")
        for world in ("all worlds", "independent"):
            lines += [
                f"  {world:14}{name:40}{each['false_complete']:8.3f}{each['outings_to_complete']:8.2f}"
                for name, each in told[world].items()
            ]
        lines += [f"  {name}: {rival}" for name, rival in told["rule of thumb in no more outings"].items()]
    return "\n".join(lines)


def asked() -> argparse.Namespace:
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--quick", action="store_true", help="600 pairs")
    parser.add_argument("--pairs", type=int, default=4800)
    parser.add_argument("--first", type=int, default=0, help="seed of the first pair of each world")
    parser.add_argument("--clear-share", type=float, help="of courses, by pairs without a weak question")
    parser.add_argument("--trade", action="store_true", help="every rule at every strictness, and planned outings")
    parser.add_argument("--json", type=Path)
    parser.add_argument("--set", action="append", default=[])
    return parser.parse_args()


def main() -> None:
    given = asked()
    numbers = DEFAULTS | {name: float(value) for name, value in (each.split("=") for each in given.set)}
    better = better_for(given.clear_share) if given.clear_share else 0.0
    simulated = (600 if given.quick else given.pairs, numbers, better, given.first)
    found = report(simulate(*simulated))
    if given.trade:
        found["trade"] = trade(*simulated)
    print(in_words(found))
    if given.json:
        given.json.write_text(json.dumps(found | {"numbers": numbers}, indent=2), encoding="utf-8")


if __name__ == "__main__":
    main()
