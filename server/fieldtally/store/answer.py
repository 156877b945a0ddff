"""What the server says to one entry of a push. Every entry gets exactly one answer."""

from dataclasses import dataclass

from fieldtally.book.entry import Refusal


@dataclass(frozen=True)
class Answer:
    """`result` is accepted, already, held or refused. `number` goes with the first two; `code`, `field`,
    `message` and `fix` with refused, `code` also with held (why)."""

    id: str | None
    result: str
    number: int | None = None
    code: str | None = None
    field: str | None = None
    message: str | None = None
    fix: str | None = None

    def to_json(self) -> dict:
        said = {name: getattr(self, name) for name in ("number", "code", "field", "message", "fix")}
        return {"id": self.id, "result": self.result} | {n: v for n, v in said.items() if v is not None}


def accepted(entry_id: str, number: int) -> Answer:
    return Answer(entry_id, "accepted", number)


def already(entry_id: str, number: int) -> Answer:
    return Answer(entry_id, "already", number)


def held(entry_id: str, reason: str) -> Answer:
    return Answer(entry_id, "held", code=reason)


def refused(refusal: Refusal) -> Answer:
    return Answer(
        refusal.id, "refused", None, refusal.code, refusal.field, refusal.message, refusal.fix
    )


def id_taken(entry_id: str) -> Answer:
    return Answer(entry_id, "refused", None, "id_taken", "id", "Another entry has this id.",
                  "Save it again as a new entry; two entries never share an id.")


def not_allowed(entry_id: str, role: str, kind: str) -> Answer:
    return Answer(entry_id, "refused", None, "not_allowed", "kind",
                  f"A {role} of this logbook may not write a {kind.replace('_', ' ')}.",
                  "Ask the rider to enter it, or to change your role.")


def other_kind(entry_id: str, kind: str) -> Answer:
    return Answer(entry_id, "refused", None, "other_kind", "kind",
                  f"This record is a {kind.replace('_', ' ')} and stays one.",
                  "Save it again as a new record.")
