"""Which level of a rulebook introduces a question, where the rulebook says so."""

from fieldtally.readiness.requirement import Condition
from fieldtally.trade.rulebook import Ask, Level, Rulebook

# how fast a table is met is our bar's business, not the rulebook's
NOT_INTRODUCED = ("pace",)


def introduction(condition: Condition | None, rulebook: Rulebook) -> tuple[Level, Ask] | None:
    """The lowest level whose asks name exactly this question, and that ask; None where no level does."""
    if condition is None or condition.elements > 2:
        return None
    for level in rulebook.levels:
        for ask in level.asks:
            if same_question(ask, condition):
                return level, ask
    return None


def same_question(ask: Ask, condition: Condition) -> bool:
    wanted = {side: values[0] for side, values in condition.presentation if side not in NOT_INTRODUCED}
    return ask.word == condition.ask and dict(ask.presentation) == wanted
