"""Simulated pairs of known ability, and what they write into their logbooks.

A pair has one true chance of a clear first presentation for each of 14 questions. It goes out every 12 days;
each outing meets some of the questions one to three times, and a stop is presented again. A fence seen once
that day is easier the next time (one unit of log-odds: common practice, no source), so that repeats flatter.

As it stands a pair above the bar is clear round a course of 18 efforts about every second time. `better`, in units of
log-odds, makes everything better that is not weak: `better_for(0.8)` is what makes it four times in five.
"""

from dataclasses import dataclass

import numpy as np

QUESTIONS = 14
OUTINGS = 16
DAYS_BETWEEN = 12
MOST_AT_ONE = 6
EASIER_AGAIN = 1.0
BELOW, ABOVE = 0.85, 0.92
STRONG, WEAK = (0.93, 0.995), (0.40, 0.85)
EFFORTS = 18

WORLDS = ("independent", "correlated", "learning", "bad_days", "only_what_goes_well", "forgets_refusals")


@dataclass(frozen=True)
class Season:
    """`outcomes[outing][question]` lists what was logged, 1 clear and 0 stop; `truth` is the chance of clear at
    each question after each outing, `before` on the first day; `better` as in this module's head."""

    outcomes: list[list[list[int]]]
    truth: np.ndarray
    before: np.ndarray
    better: float = 0.0

    @property
    def is_above(self) -> bool:
        return bool(self.before.min() >= ABOVE)


def logit(p: np.ndarray) -> np.ndarray:
    return np.log(p / (1 - p))


def chance(x: np.ndarray) -> np.ndarray:
    return 1 / (1 + np.exp(-x))


def strong(better: float, how_many: int = 21) -> np.ndarray:
    """Evenly spread chances of a question that is not weak."""
    return chance(logit(np.linspace(*STRONG, how_many)) + better)


def course_clear(chances: np.ndarray) -> float:
    """Chance of a clear course whose efforts are shared out evenly over the questions."""
    return float(np.exp(EFFORTS * np.log(chances).mean()))


def better_for(clear_share: float) -> float:
    """What makes pairs without a weak question clear in this share of courses, each effort another question."""
    low, high = -3.0, 5.0
    for _ in range(40):
        middle = (low + high) / 2
        low, high = (middle, high) if strong(middle, 1001).mean() ** EFFORTS < clear_share else (low, middle)
    return low


def abilities(world: str, random: np.random.Generator, better: float = 0.0) -> np.ndarray:
    """Half of the pairs are truly above the bar in everything; the others are weak at one to four questions,
    or, where questions are correlated, weaker all round."""
    above = random.random() < 0.5
    if world == "correlated":
        middle = 3.4 + better if above else 2.2
        return chance(middle + random.normal(0, 0.7) + random.normal(0, 0.6, QUESTIONS))
    p = chance(logit(random.uniform(*STRONG, QUESTIONS)) + better)
    if not above:
        weak = random.choice(QUESTIONS, random.integers(1, 5), replace=False)
        p[weak] = random.uniform(*WEAK, len(weak))
    return p


def season(world: str, seed: int, better: float = 0.0) -> Season:
    random = np.random.default_rng((WORLDS.index(world), seed))
    skill = logit(abilities(world, random, better))
    before = chance(skill)
    clear, tried = np.zeros(QUESTIONS), np.zeros(QUESTIONS)
    outcomes, truth = [], []
    for _ in range(OUTINGS):
        off_day = 1.5 if world == "bad_days" and random.random() < 0.2 else 0.0
        today = [[] for _ in range(QUESTIONS)]
        for question in np.flatnonzero(random.random(QUESTIONS) < appetite(world, clear, tried)):
            today[question] = presentations(skill[question] - off_day, random)
            if world == "learning":
                skill[question] += 0.08 * len(today[question])
        outcomes.append([written_down(world, each, random) for each in today])
        clear += [sum(each) for each in outcomes[-1]]
        tried += [len(each) for each in outcomes[-1]]
        truth.append(chance(skill))
    return Season(outcomes, np.array(truth), before, better)


def appetite(world: str, clear: np.ndarray, tried: np.ndarray) -> np.ndarray:
    """Chance of schooling each question on an outing; some riders only do what goes well."""
    if world != "only_what_goes_well":
        return np.full(QUESTIONS, 0.6)
    return np.where((clear + 1) / (tried + 1) > 0.9, 0.75, 0.3)


def presentations(skill: float, random: np.random.Generator, wanted: int | None = None) -> list[int]:
    """So many as wanted, one to three where nobody said, and after a stop again."""
    if wanted is None:
        wanted = random.choice([1, 2, 3], p=[0.4, 0.4, 0.2])
    found: list[int] = []
    while len(found) < MOST_AT_ONE and (len(found) < wanted or found[-1] == 0):
        easier = EASIER_AGAIN if found else 0.0
        found.append(int(random.random() < chance(skill + easier)))
    return found


def written_down(world: str, outcomes: list[int], random: np.random.Generator) -> list[int]:
    """Some loggers forget three refusals in ten."""
    if world != "forgets_refusals":
        return outcomes
    return [each for each in outcomes if each == 1 or random.random() >= 0.3]
