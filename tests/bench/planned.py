"""The same pairs, each outing planned by the rule that judges them: school what the rule still lacks.

What differs from the season that befalls every rule alike (pairs.py), and why:
- a pair chooses a field for its plan, so that a field offers four of five questions, not the three of five that an
  outing happens to meet (common practice, no source);
- it rides as many presentations as the other seasons come to, 15 an outing: a plan does not make a horse fitter;
- of these a plan works on at most four questions, twice each, as Fieldtally's own plan does, nearest to being put
  right first, and the rider does what she likes with the rest. The rules of thumb get the same plan;
- a rider who only schools what goes well leaves out the others as often as in her other seasons.
"""

from collections.abc import Callable
from dataclasses import dataclass, field

import numpy as np

from bench.naive import chance_of_no_weakness, counted, most_likely_weak
from bench.our_rule import Judge
from bench.pairs import (
    ABOVE,
    OUTINGS,
    QUESTIONS,
    WORLDS,
    Season,
    abilities,
    appetite,
    chance,
    logit,
    presentations,
    written_down,
)
from fieldtally.readiness.plan_steps import MOST_QUESTIONS, MOST_TIMES, ORDER

OFFERED = 0.8
PRESENTATIONS = 15

Lacking = Callable[[list], list[int]]
"""From the outcomes so far to what the rule still lacks, in the order in which to school it; empty: complete."""


@dataclass
class Pair:
    """One pair as it goes out, planned by `lacking`."""

    world: str
    seed: int
    lacking: Lacking
    better: float = 0.0
    outcomes: list = field(default_factory=list)
    complete: int | None = None

    def __post_init__(self) -> None:
        self.random = np.random.default_rng((WORLDS.index(self.world), self.seed))
        self.skill = logit(abilities(self.world, self.random, self.better))
        self.before = chance(self.skill)
        self.clear, self.tried = np.zeros(QUESTIONS), np.zeros(QUESTIONS)

    def season(self) -> "Pair":
        wanted = list(range(QUESTIONS))
        while len(self.outcomes) < OUTINGS and self.complete is None:
            self.go_out(wanted)
            wanted = self.lacking(self.outcomes)
            self.complete = None if wanted else len(self.outcomes)
        return self

    @property
    def is_above(self) -> bool:
        return bool(self.before.min() >= ABOVE)

    @property
    def weakest(self) -> float:
        return float(chance(self.skill).min())

    def go_out(self, wanted: list[int]) -> None:
        off_day = 1.5 if self.world == "bad_days" and self.random.random() < 0.2 else 0.0
        today = [[] for _ in range(QUESTIONS)]
        for question, times in self.programme(wanted):
            today[question] = presentations(self.skill[question] - off_day, self.random, times)
            if self.world == "learning":
                self.skill[question] += 0.08 * len(today[question])
        self.outcomes.append([written_down(self.world, each, self.random) for each in today])
        self.clear += [sum(each) for each in self.outcomes[-1]]
        self.tried += [len(each) for each in self.outcomes[-1]]

    def programme(self, wanted: list[int]) -> list[tuple[int, int]]:
        """(question, times): first the plan, then what she likes, up to the presentations of an outing."""
        # the share of 0.75, at most, at which a rider in that world takes up what does not go well
        willing = appetite(self.world, self.clear, self.tried) / appetite(self.world, self.clear, self.tried).max()
        there = self.random.random(QUESTIONS) < OFFERED * willing
        work = [question for question in wanted if there[question]][:MOST_QUESTIONS]
        programme = [(question, MOST_TIMES) for question in work]
        left = PRESENTATIONS - sum(times for _, times in programme)
        for question in self.random.permutation(QUESTIONS):
            times = int(self.random.choice([1, 2, 3], p=[0.4, 0.4, 0.2]))
            if there[question] and question not in work and times <= left:
                programme.append((int(question), times))
                left -= times
        return programme


def by_rule_of_thumb(rule) -> Lacking:
    """What the rule lacks, what it has seen most clear of first."""

    def lacking(outcomes: list) -> list[int]:
        logged = [[each for outing in outcomes for each in outing[question]] for question in range(QUESTIONS)]
        open_ = [question for question in range(QUESTIONS) if not rule(logged[question])]
        return sorted(open_, key=lambda question: -sum(logged[question]))

    return lacking


def by_fieldtally(numbers: dict[str, float]) -> Lacking:
    def lacking(outcomes: list) -> list[int]:
        states = Judge(Season(outcomes, np.empty(0), np.empty(0)), numbers).states(len(outcomes) - 1)
        open_ = [question for question, state in enumerate(states) if state != "shown"]
        return sorted(open_, key=lambda question: ORDER.index(states[question]))

    return lacking


def by_perfect_judge(share: float, better: float = 0.0) -> Lacking:
    """The one who knows how the independent world was made schools what is most likely weak."""

    def lacking(outcomes: list) -> list[int]:
        *_, counts = counted(Season(outcomes, np.empty(0), np.empty(0)))
        return [] if chance_of_no_weakness(counts, better) >= share else most_likely_weak(counts, better)

    return lacking
