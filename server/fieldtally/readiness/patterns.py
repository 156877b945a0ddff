"""Where stops gather: one rein, one kind of ground, one company, one attitude before it.

A national body's magazine advises to log each refusal by rein and kind of fence and to look for patterns.
Something is called a pattern when at least four stops have the side noted, and so many of them on one value
would come about in fewer than one of twenty logbooks if stops fell as attempts do (one-sided binomial test; the
threshold is common practice in statistics, no source in the trade).
"""

from collections.abc import Iterator

import numpy as np
from scipy.special import bdtrc

from fieldtally.readiness.attempts import CLEAR, FALL, Attempts
from fieldtally.readiness.met_as import IN_WORDS
from fieldtally.readiness.plain import in_words
from fieldtally.readiness.shapes import BITS

LEAST_STOPS = 4
RARE = 0.05
WINDOW_DAYS = 365


def patterns(attempts: Attempts, today: int) -> list[str]:
    """Each pattern as a sentence."""
    lately = (today - attempts.day <= WINDOW_DAYS) & (attempts.parts.elements[attempts.part] == 0)
    manner, result = attempts.manner[lately], attempts.result[lately]
    stopped = (result != CLEAR) & (result != FALL)
    if np.count_nonzero(stopped) < LEAST_STOPS:
        return []
    return [sentence for side in BITS for sentence in on_side(side, attempts.manners.sides[side][manner], stopped)]


def on_side(side: str, said: np.ndarray, stopped: np.ndarray) -> Iterator[str]:
    known = said != 0
    attempts, stops = int(np.count_nonzero(known)), int(np.count_nonzero(known & stopped))
    if stops < LEAST_STOPS:
        return
    for value, bit in BITS[side].items():
        here = int(np.count_nonzero(said == bit))
        stops_here = int(np.count_nonzero((said == bit) & stopped))
        if 0 < here < attempts and bdtrc(stops_here - 1, stops, here / attempts) < RARE:
            share = round(100 * here / attempts)
            yield (
                f"A pattern: {in_words(stops_here)} of {in_words(stops)} stops came {IN_WORDS[side, value]}, "
                f"where {share} % of the attempts were."
            )
