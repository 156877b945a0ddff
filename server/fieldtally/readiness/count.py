"""Counts a level's attempts, requirement by requirement, before any of them is judged: each question is judged
in the light of the others."""

from collections.abc import Mapping, Sequence
from types import MappingProxyType

from fieldtally.readiness.context import Book, Counted, Weighing
from fieldtally.readiness.limits import level_below
from fieldtally.readiness.pool import pool
from fieldtally.readiness.requirement import Requirement
from fieldtally.readiness.selection import Selection, select
from fieldtally.readiness.tally import NUMBERS_USED, Tally, tally
from fieldtally.trade.rulebook import Level, Rulebook


def weighing_of(
    book: Book,
    rulebook: Rulebook,
    level: Level,
    requirements: Sequence[Requirement],
    still: Mapping[str, Counted] = MappingProxyType({}),
) -> Weighing:
    """`still` holds what was counted before and has not changed, by requirement."""
    counted = {each.id: still.get(each.id) or count(each, book, level) for each in requirements if each.condition}
    of_all = pool([each.faded for each in counted.values()])
    return Weighing(book, rulebook, level, level_below(rulebook, level), counted, of_all)


def count(requirement: Requirement, book: Book, level: Level) -> Counted:
    selection = select(requirement, book.attempts, level)
    faded, unfaded = tallies(requirement, book, selection)
    return Counted(selection, faded, unfaded)


def tallies(requirement: Requirement, book: Book, selection: Selection) -> tuple[Tally, Tally]:
    """Fading and not. Levels between whose sizes no fence lies select the same attempts: of one question, a
    larger size selects some of what a smaller one does, so that as many are the same."""
    attempts, numbers = book.attempts, requirement.numbers
    weighed = tuple(numbers[name] for name in NUMBERS_USED)
    return attempts.keep(
        (requirement.condition, len(selection.rows), weighed),
        lambda: tuple(tally(attempts, selection.rows, book.today, numbers, fading) for fading in (True, False)),
    )
