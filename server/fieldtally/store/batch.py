"""One push inside its transaction: what each entry is answered, and the rows that come of it."""

from dataclasses import asdict, dataclass, field, replace

from sqlalchemy import Row, insert, select, update
from sqlalchemy.orm import Session

from fieldtally.book.entry import ADDED, Entry, Held, Refusal, check, digest
from fieldtally.book.kinds import KINDS
from fieldtally.store import answer, held
from fieldtally.store.answer import Answer
from fieldtally.store.models import Entry as EntryRow
from fieldtally.store.models import Logbook
from fieldtally.store.receipt import Origin, proven_origin
from fieldtally.store.rows import to_row
from fieldtally.store.sender import Sender


@dataclass(frozen=True)
class Incoming:
    """One raw entry, checked. `claim` is what the server once added to it, as the phone sent it back."""

    outcome: Entry | Held | Refusal
    digest: str = ""
    claim: dict = field(default_factory=dict)


def incoming(raw: object) -> Incoming:
    outcome = check(raw)
    match outcome:
        case Entry():
            claim = {name: raw[name] for name in ADDED if name in raw}
            return Incoming(outcome, digest(outcome.content()), claim)
        case Held():
            return Incoming(outcome, held.digest_of(outcome.text))
    return Incoming(outcome)


class Batch:
    """Holds the state of one push: numbers are given out only here, and only while the row is taken."""

    def __init__(self, session: Session, logbook_id: str, sender: Sender, book: Row) -> None:
        self.session, self.logbook_id, self.sender = session, logbook_id, sender
        self.key = book.receipt_key
        self.last_number, self.evidence_number = book.last_number, book.evidence_number
        self.accepted: list[Entry] = []
        self.rows: list[dict] = []
        self.to_hold: list[dict] = []
        self.released: list[str] = []

    def answer_all(self, entries: list[Incoming]) -> list[Answer]:
        ids = [each.outcome.id for each in entries if not isinstance(each.outcome, Refusal)]
        record_ids = [each.outcome.record_id for each in entries if isinstance(each.outcome, Entry)]
        self.numbered = self._numbered(ids)
        self.kinds = self._kinds(record_ids)
        self.held = held.kept(self.session, self.logbook_id, ids)
        return [self._answer(each) for each in entries]

    def store(self) -> None:
        """Write what the answers promised."""
        if self.rows:
            self.session.execute(insert(EntryRow), self.rows)
            self.session.execute(
                update(Logbook)
                .where(Logbook.id == self.logbook_id)
                .values(last_number=self.last_number, evidence_number=self.evidence_number),
                execution_options={"synchronize_session": False},
            )
        held.hold(self.session, self.to_hold)
        held.release(self.session, self.logbook_id, self.released)

    def _answer(self, each: Incoming) -> Answer:
        match each.outcome:
            case Entry():
                return self._answer_entry(each, each.outcome)
            case Held():
                return self._answer_held(each, each.outcome)
            case Refusal():
                return answer.refused(each.outcome)

    def _answer_entry(self, each: Incoming, entry: Entry) -> Answer:
        if entry.id in self.numbered:
            return self._again(each)
        if entry.id in self.held and not held.was(self.held[entry.id], each.digest):
            return answer.id_taken(entry.id)
        origin = proven_origin(self.key, self.logbook_id, each.digest, each.claim)
        if origin is None and self.sender.role not in KINDS[entry.kind].writers:
            return answer.not_allowed(entry.id, self.sender.role, entry.kind)
        kind = self.kinds.get(entry.record_id, entry.kind)
        if kind != entry.kind:
            return answer.other_kind(entry.id, kind)
        return self._accept(each, entry, origin or self.sender.origin)

    def _answer_held(self, each: Incoming, entry: Held) -> Answer:
        if entry.id in self.numbered:
            return self._again(each)
        if self.sender.role == "reader":
            return answer.not_allowed(entry.id, self.sender.role, "entry")
        kept = self.held.get(entry.id)
        if kept is None:
            self.held[entry.id] = held.Kept(each.digest, entry.text)
            self.to_hold.append(held.to_row(self.logbook_id, self.sender, entry, each.digest))
        elif kept.digest != each.digest:
            return answer.id_taken(entry.id)
        return answer.held(entry.id, entry.reason)

    def _again(self, each: Incoming) -> Answer:
        number, content_digest = self.numbered[each.outcome.id]
        if content_digest != each.digest:
            return answer.id_taken(each.outcome.id)
        return answer.already(each.outcome.id, number)

    def _accept(self, each: Incoming, entry: Entry, origin: Origin) -> Answer:
        self.last_number += 1
        if KINDS[entry.kind].evidence:
            self.evidence_number = self.last_number
        self.numbered[entry.id] = (self.last_number, each.digest)
        self.kinds[entry.record_id] = entry.kind
        self.rows.append(to_row(self.logbook_id, self.last_number, entry, each.digest, origin))
        self.accepted.append(replace(entry, number=self.last_number, **asdict(origin)))
        if self.held.pop(entry.id, None):
            self.released.append(entry.id)
        return answer.accepted(entry.id, self.last_number)

    def _numbered(self, ids: list[str]) -> dict[str, tuple[int, str]]:
        rows = self.session.execute(
            select(EntryRow.id, EntryRow.number, EntryRow.content_digest).where(
                EntryRow.logbook_id == self.logbook_id, EntryRow.id.in_(ids)
            )
        )
        return {row.id: (row.number, row.content_digest) for row in rows}

    def _kinds(self, record_ids: list[str]) -> dict[str, str]:
        rows = self.session.execute(
            select(EntryRow.record_id, EntryRow.kind)
            .distinct()
            .where(EntryRow.logbook_id == self.logbook_id, EntryRow.record_id.in_(record_ids))
        )
        return dict(rows.all())
