"""What a rulebook states: one fact, where it stands, and how sure we are of it."""

from collections.abc import Mapping
from dataclasses import dataclass, field

GOVERNING_BODY, SECONDARY, FROM_MEMORY, CORRECTED = "governing_body", "secondary", "from_memory", "corrected"
GRADES = (GOVERNING_BODY, SECONDARY, FROM_MEMORY)  # a file may use these; CORRECTED comes from a logbook


@dataclass(frozen=True)
class Value:
    """One number of a rulebook. `unit` is the quantity's own (cm, m, m/min, s, penalties, count, …).

    `source` is the document in words; `grade` one of GRADES, or "corrected" where somebody put it right
    from the rulebook in her hand. `stated` is the text as the source prints it, where it prints other units.
    """

    quantity: str
    value: float
    unit: str
    source: str
    grade: str
    note: str = ""
    stated: str = ""


@dataclass(frozen=True)
class Ask:
    """A question introduced at a level: a word of the book's ASKS, and how it may be presented."""

    word: str
    text: str
    source: str
    grade: str
    presentation: Mapping[str, str] = field(default_factory=dict)


@dataclass(frozen=True)
class Movement:
    """A movement of the level's dressage tests. `figure_m` is the diameter of its circle, in m."""

    text: str
    source: str
    grade: str
    figure_m: float | None = None


@dataclass(frozen=True)
class Note:
    """Something the rulebook or a guideline says that no limit, score or gate of ours computes with.

    `about`: conflict, design, distance, example, safety, questions or local. `value` in `unit` where the note
    is a number.
    """

    about: str
    text: str
    source: str
    grade: str
    value: float | None = None
    unit: str = ""


class RulebookError(ValueError):
    """A rulebook's file that cannot be used: which file, which key, why, and how to mend it."""

    def __init__(self, file: str, key: str, reason: str, fix: str) -> None:
        super().__init__(f"{file}: {key}: {reason} {fix}")
        self.file, self.key, self.reason, self.fix = file, key, reason, fix
