"""What is worked out in columns, or once for all levels, is what a plain look at each attempt would give."""

import random

import numpy as np
import pytest

from fieldtally.readiness.attempts import CLEAR, FALL, OTHER, STOP
from fieldtally.readiness.bar import shipped_bars
from fieldtally.readiness.met_whole import met_whole
from fieldtally.readiness.selection import ROUNDING_CM
from fieldtally.readiness.standing import compute_standings
from fieldtally.readiness.tally import tally
from fieldtally.trade.rulebook import shipped
from readiness.made_up import TODAY
from readiness.test_any_logbook import random_logbook


def countings(seed: int) -> list:
    """(requirement, counted, attempts) of every question of every level of a random logbook."""
    found = compute_standings(random_logbook(seed).records, shipped(), shipped_bars(), TODAY, 1)
    return [
        (finding.requirement, standing.weighing.counted[finding.requirement.id], standing.weighing.book.attempts)
        for standing in found
        for finding in standing.findings
        if finding.requirement.condition
    ]


@pytest.mark.parametrize("seed", range(200, 216))
def test_a_tally_that_levels_share_is_the_one_each_would_make(seed):
    checked = countings(seed)
    assert checked
    for requirement, counted, attempts in checked:
        for shared, fading in ((counted.faded, True), (counted.unfaded, False)):
            alone = tally(attempts, counted.selection.rows, TODAY.toordinal(), requirement.numbers, fading)
            assert shared.rows.tolist() == alone.rows.tolist(), requirement.id
            assert shared.weights.tolist() == alone.weights.tolist(), requirement.id


@pytest.mark.parametrize("seed", range(200, 216))
def test_the_window_and_the_size_are_told_row_by_row(seed):
    for requirement, counted, attempts in countings(seed):
        first = TODAY.toordinal() - requirement.numbers["window_days"]
        assert counted.faded.rows.tolist() == [row for row in counted.unfaded.rows if attempts.day[row] >= first]
        if counted.selection.least_cm is not None:
            size = attempts.parts.size(requirement.condition.size)[attempts.part]
            least = counted.selection.least_cm - ROUNDING_CM
            counts = [size[row] >= least or attempts.result[row] == FALL for row in counted.selection.rows]
            assert all(counts)
            assert all(size[row] < least for row in counted.selection.smaller)
            assert all(np.isnan(size[row]) for row in counted.selection.unmeasured)


def whole_of(attempts: list[tuple[int, int]], listed: int) -> tuple[int, int]:
    """(elements, result) of one presentation, in plain words: the rule that docs/method.md states."""
    results = [result for _, result in attempts]
    worst = next((each for each in (FALL, STOP, OTHER) if each in results), CLEAR)
    letters = {letter for letter, _ in attempts}
    return (listed if worst != CLEAR or 0 in letters else len(letters)), worst


@pytest.mark.parametrize("seed", range(20))
def test_a_combination_is_what_its_attempts_add_up_to(seed):
    pick = random.Random(seed)
    entries, seen = [], {}
    for place in range(pick.randint(1, 60)):
        presentation = pick.randint(0, len(seen))
        listed = seen.setdefault(presentation, (place, pick.randint(1, 3)))[1]
        result = pick.choice((CLEAR, CLEAR, CLEAR, STOP, FALL, OTHER))
        entries.append((presentation, pick.choice((0, 1, 1, 2, 2, 3)), result, listed))
    found = met_whole(*(np.array(column) for column in zip(*entries, strict=True)))
    expected = []
    for presentation, (first, listed) in seen.items():
        elements, worst = whole_of([each[1:3] for each in entries if each[0] == presentation], listed)
        expected += [(first, elements, worst)] if elements >= 2 else []
    assert list(zip(found.first.tolist(), found.elements.tolist(), found.result.tolist(), strict=True)) == expected
