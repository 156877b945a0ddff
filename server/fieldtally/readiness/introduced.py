"""Which level of a rulebook introduces a question, where the rulebook says so."""

from fieldtally.readiness.requirement import Condition
from fieldtally.trade.rulebook import Ask, Level, Rulebook

# how fast a table is met is our bar's business, not the rulebook's
NOT_INTRODUCED = ("pace",)


def level_that_introduces(condition: Condition | None, rulebook: Rulebook) -> Level | None:
    """The lowest level whose asks name exactly this question; None where no level does."""
    if condition is None or condition.elements > 2:
        return None
    for level in rulebook.levels:
        if any(same_question(ask, condition) for ask in level.asks):
            return level
    return None


def same_question(ask: Ask, condition: Condition) -> bool:
    wanted = {side: values[0] for side, values in condition.presentation if side not in NOT_INTRODUCED}
    return ask.word == condition.ask and dict(ask.presentation) == wanted
