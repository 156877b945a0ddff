"""People, logbooks and entries for the tests of the store and the wire."""

from uuid import uuid4

from fieldtally.book.instant import show_instant
from fieldtally.store.db import writing
from fieldtally.store.feed import append
from fieldtally.store.models import Account, Logbook, Membership
from fieldtally.store.sender import Sender

NOON_MS = 1_777_809_600_000  # 2026-05-03T12:00:00Z


def new_id() -> str:
    return str(uuid4())


def wire(kind: str = "field", body: object = "default", **changes) -> dict:
    """One entry as a phone sends it; a field named "Home" unless told otherwise."""
    return {
        "id": new_id(),
        "record_id": new_id(),
        "supersedes": [],
        "kind": kind,
        "kind_version": 1,
        "body": {"name": "Home", "notes": None} if body == "default" else body,
        "recorded_at": show_instant(NOON_MS),
        "utc_offset_min": 60,
        "local_date": "2026-05-03",
        "clock": {"wall_ms": NOON_MS, "monotonic_ms": 12_345.5},
    } | changes


def edit(of: dict, body: object, **changes) -> dict:
    return wire(of["kind"], body, record_id=of["record_id"], supersedes=[of["id"]], **changes)


class Stable:
    """A logbook and its people, straight in the database."""

    def __init__(self) -> None:
        self.device = new_id()
        self.accounts = {role: self.add_account(role) for role in ("rider", "coach", "scribe", "reader")}
        self.logbook = self.add_logbook("Wren Hollis")
        self.other_logbook = self.add_logbook("Somebody else")
        with writing() as session:
            for role, account in self.accounts.items():
                session.add(
                    Membership(logbook_id=self.logbook, account_id=account, role=role, created_at_ms=NOON_MS)
                )

    def add_account(self, name: str) -> str:
        account = Account(
            id=new_id(), sign_in_name=name, sign_in_key=name, display_name=name.title(), password_hash="-",
            created_at_ms=NOON_MS,
        )  # fmt: skip
        with writing() as session:
            session.add(account)
        return account.id

    def add_logbook(self, title: str) -> str:
        logbook = Logbook(id=new_id(), title=title, log_id=new_id(), created_at_ms=NOON_MS)
        with writing() as session:
            session.add(logbook)
        return logbook.id

    def sender(self, role: str = "rider") -> Sender:
        return Sender(self.accounts[role], role, self.device, 250, NOON_MS + 1000)

    def push(self, *entries: object, role: str = "rider", logbook: str | None = None, log_id: str | None = None):
        return append(logbook or self.logbook, self.sender(role), entries, log_id)

    def results(self, *entries: object, **how) -> list[str]:
        return [answer.result for answer in self.push(*entries, **how).answers]
