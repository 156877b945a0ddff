"""One requirement weighed against the evidence: a state, its reasons, what is missing, what it rests on."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass, field

from fieldtally.readiness.once import once
from fieldtally.readiness.requirement import Requirement

STATES = ("shown", "building", "untried", "shaky", "gone_stale", "on_hold")


@dataclass(frozen=True)
class Reason:
    """A code and values for programs, and the same as one plain sentence for people."""

    code: str
    values: dict
    text: str

    def to_json(self) -> dict:
        return {"code": self.code, "values": self.values, "text": self.text}


@dataclass(frozen=True)
class Finding:
    """`evidence` lists the records behind the finding and `worked_out` says, sentence by sentence, how it came about,
    both when asked: most are never opened."""

    requirement: Requirement
    state: str
    reasons: tuple[Reason, ...] = ()
    needs: tuple[Reason, ...] = ()
    numbers: dict = field(default_factory=dict)
    worked_out: Callable[[], Sequence[Reason]] = tuple
    evidence: Callable[[], list[dict]] = list

    @property
    def shown(self) -> bool:
        return self.state == "shown"

    def to_json(self) -> dict:
        return self.in_full

    @once
    def in_full(self) -> dict:
        """Made once: a finding that still holds after a push is sent as it was. Nobody changes it."""
        requirement, worked_out = self.requirement, self.worked_out()
        return {
            "requirement_id": requirement.id,
            "phase": requirement.phase,
            "title": requirement.title,
            "state": self.state,
            "required": requirement.required,
            "reasons": [reason.to_json() for reason in self.reasons],
            "needs": [need.to_json() for need in self.needs],
            "numbers": self.numbers,
            "evidence": self.evidence(),
            "explanation": " ".join(each.text for each in worked_out),
            "worked_out": [{"code": each.code, "values": each.values} for each in worked_out],
            "bar": {"numbers": requirement.numbers, "source": requirement.source,
                    "changes": [vars(change) for change in requirement.changes]},
        }  # fmt: skip
