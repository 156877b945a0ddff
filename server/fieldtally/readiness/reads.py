"""Which kinds of record each way of weighing reads: a push of another kind leaves its findings as they are.

tests/readiness/test_renewed.py holds this list against what the ways of weighing look at.
"""

# What these say decides how everything is read: after a change of one, all is worked out anew. So it is with the
# horse that the standings are of.
FOR_ALL = frozenset(("rulebook_value", "bar_change"))

# What other records are read by: an attempt has its day from its outing and its size from its fence. After a change
# of one of these fields, or of any where none is named, those that refer to it count as changed too.
READ_BY = {"outing": ("horse_id", "date", "field_id"), "fence": None}

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
    "breadth": frozenset(("outing",)),
    "confidence": frozenset(("outing",)),
    "hours": frozenset(("outing",)),
    "rides": frozenset(("outing",)),
    "horses": frozenset(("outing",)),
}
FORECAST = frozenset(("attempt", "timed_canter", "jumping_round", "flatwork_test"))
