"""Fieldtally's own judge, run on a simulated season: the very functions that make a standing."""

from types import SimpleNamespace

import numpy as np

from bench.pairs import DAYS_BETWEEN, QUESTIONS, Season
from fieldtally.readiness.attempts import CLEAR, STOP
from fieldtally.readiness.bar import shipped_bars
from fieldtally.readiness.believed import believed
from fieldtally.readiness.estimate import Estimate
from fieldtally.readiness.judge import judge
from fieldtally.readiness.pool import pool
from fieldtally.readiness.tally import Tally, tally
from fieldtally.readiness.weight import recency

# the numbers of a plain question of the shipped bar
FORECAST = shipped_bars().forecast_numbers
DEFAULTS = next(each.numbers for each in shipped_bars().common if each.id == "water_in")


def columns(season: Season, question: int) -> SimpleNamespace:
    """What readiness reads of attempts, for one question: a row per attempt, one field, one fence."""
    rows = [
        (number, STOP if each == 0 else CLEAR)
        for number, outing in enumerate(season.outcomes)
        for each in outing[question]
    ]
    outing, result = np.array(rows, dtype=np.int64).reshape(len(rows), 2).T
    day = 1 + outing * DAYS_BETWEEN
    return SimpleNamespace(
        outing=outing,
        day=day,
        place=np.zeros_like(outing),
        group=outing,
        result=result,
        written=lambda rows: rows.tolist(),
        fades=lambda today, half_life_days: recency(today - day, half_life_days),
    )


class Judge:
    """Judges one season as of any outing."""

    def __init__(self, season: Season, numbers: dict[str, float] = DEFAULTS) -> None:
        self.numbers = numbers
        self.questions = [columns(season, question) for question in range(QUESTIONS)]

    def tallies(self, outing: int, fading: bool = True) -> list[Tally]:
        """Everything up to and with this outing, numbered from 0."""
        today = 1 + outing * DAYS_BETWEEN
        upto = [np.flatnonzero(each.outing <= outing) for each in self.questions]
        return [tally(each, rows, today, self.numbers, fading) for each, rows in zip(self.questions, upto, strict=True)]

    def states(self, outing: int) -> list[str]:
        faded, unfaded = self.tallies(outing), self.tallies(outing, fading=False)
        together = pool(faded)
        return [
            judge(one, ever, self.numbers, together.prior_without(one, self.numbers)).state
            for one, ever in zip(faded, unfaded, strict=True)
        ]

    def shown(self, outing: int) -> list[bool]:
        return [state == "shown" for state in self.states(outing)]

    def posterior(self, outing: int) -> list[Estimate]:
        set_ = [(name, each) for name, each in self.numbers.items() if name.startswith("forecast.")]
        own = {name.removeprefix("forecast."): each for name, each in set_}
        return believed([(each, self.numbers) for each in self.tallies(outing)], FORECAST | own)[0]
