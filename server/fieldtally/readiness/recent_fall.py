"""Falls not long ago, whatever the level asks: a question that is not this level's is not on hold there, and yet the
fall was this pair's."""

import numpy as np

from fieldtally.readiness.attempts import FALL
from fieldtally.readiness.context import Book

RECENT_DAYS = 90  # common practice, no source


def fell_lately(book: Book) -> bool:
    """A fall at a fence, in a round or at an event in the last RECENT_DAYS."""
    others = [*book.since("jumping_round", RECENT_DAYS), *book.since("event_result", RECENT_DAYS)]
    return len(falls(book)) > 0 or any(each.body["rider_fall"] or each.body["horse_fall"] for each in others)


def asks_fallen_at(book: Book) -> int:
    """Bits of everything asked where the pair fell in the last RECENT_DAYS."""
    parts = book.attempts.parts.asks[book.attempts.part[falls(book)]]
    return int(np.bitwise_or.reduce(parts)) if len(parts) else 0


def falls(book: Book) -> np.ndarray:
    attempts = book.attempts
    return np.flatnonzero((attempts.result == FALL) & (attempts.day >= book.today - RECENT_DAYS))
