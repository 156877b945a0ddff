"""The short hand in which a season's attempts are written in fixtures/riders.

`"ditch_rail.B x2 clear bold left downhill alone"` reads: at fence `ditch_rail`, element B, twice: clear,
the horse bold, on the left rein, downhill, met alone. Every word belongs to exactly one vocabulary of
`book.words`, so order does not matter. An attempt may state `90cm` where the height jumped differs from
the fence's own.
"""

import re
from dataclasses import dataclass, field

from fieldtally.book import words

PRESENTATION = {
    "rein": words.REINS, "ground": words.GROUNDS, "way": words.WAYS,
    "landing": words.LANDINGS, "company": words.COMPANIES, "pace": words.PACES,
}  # fmt: skip


@dataclass
class WrittenAttempt:
    """One line of the short hand; `times` attempts alike. Height in cm."""

    fence: str
    element: str | None = None
    times: int = 1
    outcome: str = "clear"
    attitude: str | None = None
    height_cm: int | None = None
    presentation: dict[str, str] = field(default_factory=dict)


def read_attempt(line: str) -> WrittenAttempt:
    """Read one line; `ValueError` names the word that belongs to no vocabulary."""
    first, *rest = line.split()
    fence, _, element = first.partition(".")
    attempt = WrittenAttempt(fence, element or None)
    for word in rest:
        take_word(attempt, word, line)
    return attempt


def take_word(attempt: WrittenAttempt, word: str, line: str) -> None:
    if re.fullmatch(r"x\d+", word):
        attempt.times = int(word[1:])
    elif re.fullmatch(r"\d+cm", word):
        attempt.height_cm = int(word[:-2])
    elif word in words.OUTCOMES:
        attempt.outcome = word
    elif word in words.ATTITUDES:
        attempt.attitude = word
    else:
        attempt.presentation[aspect_of(word, line)] = word


def aspect_of(word: str, line: str) -> str:
    for aspect, vocabulary in PRESENTATION.items():
        if word in vocabulary:
            return aspect
    raise ValueError(f"“{word}” in “{line}” is no word of an attempt")
