"""Coverage benchmark: does a whole event end inside the interval that the forecast states about as often as it says?

    python tests/bench/coverage.py [--pairs N] [--first SEED] [--json OUT]

Pairs of known ability write a season of records: attempts at every question of a made-up level, flatwork tests,
jumping rounds, timed canters. The real standing is made of them, and then the event is ridden from the truth, with
falls at the published rate. Intervals say 80 %; the chance of not completing is held against how often it happened.
"""

import argparse
import json
import sys
from concurrent.futures import ProcessPoolExecutor
from dataclasses import dataclass
from datetime import timedelta
from pathlib import Path

sys.path[:0] = [str(Path(__file__).parents[1]), str(Path(__file__).parents[2] / "server")]

import numpy as np  # noqa: E402

from bench.pairs import DAYS_BETWEEN, EASIER_AGAIN, OUTINGS, STRONG, WEAK, chance, logit, presentations  # noqa: E402
from fieldtally.readiness.bar import shipped_bars  # noqa: E402
from fieldtally.readiness.limits import level_speed_mpm  # noqa: E402
from fieldtally.readiness.typical_course import efforts_of, mix  # noqa: E402
from fieldtally.readiness.what_if import record, supposed_fence, supposed_presentation  # noqa: E402
from readiness.made_up import TODAY, Logbook  # noqa: E402

LEVEL, PHASES = "second", ("dressage", "show_jumping", "time")
TESTS, ROUNDS, CANTERS, ROUND_EFFORTS = 5, 5, 6, 12
NUMBERS = shipped_bars().forecast_numbers


@dataclass(frozen=True)
class Truth:
    """A pair's ability: log-odds of clear at each question, per cent in the dressage, rails, speed in m/min."""

    skill: dict[str, float]
    percent: tuple[float, float]
    rail: float
    speed_mpm: tuple[float, float]


def truth_of(questions: list[str], target_mpm: float, random: np.random.Generator) -> Truth:
    """Half of the pairs are weak at one to four questions, as in pairs.py. The rest: common practice, no source."""
    chances = random.uniform(*STRONG, len(questions))
    if random.random() < 0.5:
        weak = random.choice(len(questions), random.integers(1, 5), replace=False)
        chances[weak] = random.uniform(*WEAK, len(weak))
    return Truth(
        dict(zip(questions, logit(chances), strict=True)),
        (random.uniform(60, 72), random.uniform(1.5, 3.5)),
        random.beta(2, 18),
        (target_mpm + random.normal(-5, 10), random.uniform(3, 10)),
    )


def written(truth: Truth, asked: dict, logbook: Logbook, target_mpm: float, random: np.random.Generator) -> None:
    """A season's records: fences and outings, then what happened."""
    level = logbook.book.level(LEVEL)
    for question, requirement in asked.items():
        keep(logbook, "fence", question, supposed_fence(requirement, level))
    for number in range(OUTINGS):
        day = TODAY - timedelta(days=1 + DAYS_BETWEEN * (OUTINGS - 1 - number))
        outing = logbook.outing((TODAY - day).days)
        for question in asked:
            if random.random() < 0.6:
                for result in presentations(truth.skill[question], random):
                    attempt(logbook, outing, question, asked[question], result, day)
        if number % 3 == 0:
            other_phases(truth, logbook, outing, day.isoformat(), target_mpm, random)


def keep(logbook: Logbook, kind: str, key: str, body: dict, on=TODAY) -> None:
    logbook.records[key] = record(kind, key, body, on)


def attempt(logbook: Logbook, outing: str, question: str, requirement, result: int, day) -> None:
    body = {"outing_id": outing, "fence_id": question, "outcome": "clear" if result else "refusal",
            "presentation": supposed_presentation(requirement)}  # fmt: skip
    keep(logbook, "attempt", f"attempt-{len(logbook.records)}", body, day)


def other_phases(truth: Truth, logbook: Logbook, outing: str, day: str, target: float, random) -> None:
    logbook.add("flatwork_test", horse_id=logbook.horse, date=day, test="T", level_id=LEVEL,
                rulebook_id=logbook.book.id, percent=round(random.normal(*truth.percent), 2))  # fmt: skip
    logbook.add("jumping_round", horse_id=logbook.horse, date=day, height_cm=90, efforts=ROUND_EFFORTS,
                knockdowns=int(random.binomial(ROUND_EFFORTS, truth.rail)))  # fmt: skip
    ridden = random.normal(*truth.speed_mpm)
    logbook.add("timed_canter", outing_id=outing, distance_m=400, measured_by="tape",
                elapsed_ms=round(400 * 60_000 / ridden), target_speed_mpm=target)  # fmt: skip


def ridden(truth: Truth, course: dict[str, int], said: dict, target: float, random) -> dict[str, float] | None:
    """The event from the truth: penalties of each phase and their total; None where it was not completed."""
    jumping = cross_country(truth, course, random)
    if jumping is None:
        return None
    over = said["length_m"] * 60 * (1 / random.normal(*truth.speed_mpm) - 1 / target)
    found = {
        "dressage": 100 - random.normal(*truth.percent),
        "show_jumping": 4.0 * random.binomial(NUMBERS["show_jumping_efforts"], truth.rail),
        "time": 0.4 * np.ceil(max(0.0, over)),
    }
    return found | {"total": jumping + sum(found.values())}


def cross_country(truth: Truth, course: dict[str, int], random: np.random.Generator) -> int | None:
    """20 for a first stop at an effort, 40 more for a second; the third there, the fourth on the course or a fall
    eliminates: the made-up level's rules."""
    if random.random() < NUMBERS["falls_per_start"]:
        return None
    stops, cost = 0, 0
    for question, efforts in course.items():
        for _ in range(efforts):
            here = 0
            while random.random() >= chance(truth.skill[question] + (EASIER_AGAIN if here else 0)):
                here, stops, cost = here + 1, stops + 1, cost + (40 if here else 20)
                if here == 3 or stops == 4:
                    return None
    return cost


def one(seed: int) -> dict:
    random, logbook = np.random.default_rng((77, seed)), Logbook()
    empty = logbook.standing(LEVEL)
    target = level_speed_mpm(empty.weighing.level)
    asked = {each.requirement.id: each.requirement for each in empty.findings if each.requirement.condition}
    truth = truth_of(list(asked), target, random)
    written(truth, asked, logbook, target, random)
    said = logbook.standing(LEVEL).forecast
    course = mix(list(asked), efforts_of(empty.weighing.level, NUMBERS), shipped_bars().course)
    clear = (1 - NUMBERS["falls_per_start"]) * np.prod([chance(truth.skill[each]) ** n for each, n in course.items()])
    return {"said": said, "clear": float(clear), "event": ridden(truth, course, said, target, random)}


def report(pairs: list[dict]) -> dict:
    done = [each for each in pairs if each["event"]]
    said = {name: [each["said"]["phases"][name] for each in done] for name in PHASES}
    said["total"] = [each["said"]["total"] for each in done]
    inside = {name: held(intervals, [each["event"][name] for each in done]) for name, intervals in said.items()}
    chances = [{"low": each["said"]["clear_low"], "high": each["said"]["clear_high"]} for each in pairs]
    return {
        "n_pairs": len(pairs),
        "coverage": inside | {"clear_chance": held(chances, [each["clear"] for each in pairs])},
        "clear_said": mean(each["said"]["clear_chance"] for each in pairs),
        "clear_true": mean(each["clear"] for each in pairs),
        "not_completed_said": mean(each["said"]["elimination_chance"] for each in pairs),
        "not_completed_happened": mean(each["event"] is None for each in pairs),
        "total_said": mean(each["expected"] for each in said["total"]),
        "total_happened": mean(each["event"]["total"] for each in done),
    }


def held(intervals: list[dict], values: list[float]) -> float:
    """The share of values inside their intervals, ends included; rounding in print is forgiven."""
    slack = 1e-4
    pairs = zip(intervals, values, strict=True)
    return mean(each["low"] - slack <= value <= each["high"] + slack for each, value in pairs)


def mean(values) -> float:
    return round(float(np.mean(list(values))), 3)


def simulate(pairs: int, first: int = 0) -> list[dict]:
    with ProcessPoolExecutor(2) as workers:
        return list(workers.map(one, range(first, first + pairs), chunksize=max(1, pairs // 16)))


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--pairs", type=int, default=1000)
    parser.add_argument("--first", type=int, default=0)
    parser.add_argument("--json", type=Path)
    given = parser.parse_args()
    found = report(simulate(given.pairs, given.first))
    print(json.dumps(found, indent=2))
    if given.json:
        given.json.write_text(json.dumps(found, indent=2), encoding="utf-8")


if __name__ == "__main__":
    main()
