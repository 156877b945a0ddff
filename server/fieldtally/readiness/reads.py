"""Which kinds of record each way of weighing reads: a push of another kind leaves its findings as they are.

tests/readiness/test_renewed.py holds this list against what the ways of weighing look at.
"""

# What these say decides how others are read: after a change of one, everything is worked out anew.
FOR_ALL = frozenset(("horse", "outing", "fence", "track", "rulebook_value", "bar_change"))

READS: dict[str, frozenset[str]] = {
    "attempts": frozenset(("attempt",)),
    "attitude": frozenset(("attempt",)),
    "pace": frozenset(("timed_canter",)),
    "recovery": frozenset(("interval_set",)),
    "rounds": frozenset(("jumping_round",)),
    "tests": frozenset(("flatwork_test",)),
    "results": frozenset(("event_result",)),
    "eligibility": frozenset(("event_result",)),
    "word": frozenset(("word",)),
    "breadth": frozenset(),
    "confidence": frozenset(),
    "hours": frozenset(),
    "rides": frozenset(),
    "horses": frozenset(),
}
FORECAST = frozenset(("attempt", "timed_canter", "jumping_round", "flatwork_test"))
