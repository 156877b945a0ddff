"""One line of a bar: what a pair must show, and the numbers that say how much of it."""

from dataclasses import dataclass, field, replace


@dataclass(frozen=True)
class Condition:
    """Which attempts speak for a requirement.

    `presentation` maps a side of the presentation (ground, way, landing, company, pace, rein) to the values
    that count. `size` names the measured dimension that the level limits; None means any size counts.
    `elements` is the least number of elements of a combination, 0 for single attempts.
    """

    ask: str
    presentation: tuple[tuple[str, tuple[str, ...]], ...] = ()
    size: str | None = None
    elements: int = 0


@dataclass(frozen=True)
class Change:
    """A number of the bar changed by a coach: what it was, who changed it and why."""

    quantity: str
    default: float | None
    value: float | None
    author: str
    reason: str
    record_id: str


@dataclass(frozen=True)
class Requirement:
    """`larger_than` is the requirement that asks the same question at a smaller size."""

    id: str
    phase: str
    weigh: str
    title: str
    numbers: dict[str, float]
    source: str
    required: bool = True
    condition: Condition | None = None
    from_height_cm: float = 0
    larger_than: str | None = None
    number_sources: dict[str, str] = field(default_factory=dict)
    changes: tuple[Change, ...] = ()

    def with_numbers(self, numbers: dict[str, float]) -> "Requirement":
        return replace(self, numbers={**self.numbers, **numbers})

    def to_json(self) -> dict:
        return {
            "requirement_id": self.id, "phase": self.phase, "title": self.title, "required": self.required,
            "numbers": self.numbers, "source": self.source, "number_sources": self.number_sources,
            "changes": [vars(change) for change in self.changes],
        }  # fmt: skip
