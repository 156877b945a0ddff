"""Who has which role in which logbook."""

from uuid import uuid4

from sqlalchemy import delete, select

from fieldtally.store.clock import now_ms
from fieldtally.store.db import db, writing
from fieldtally.store.models import Account, Logbook, Membership


def open_logbook(account: Account) -> Logbook:
    """A new, empty logbook whose rider is `account`."""
    logbook = Logbook(id=str(uuid4()), title=account.display_name, log_id=str(uuid4()), created_at_ms=now_ms())
    with writing() as session:
        session.add(logbook)
        session.flush()
        join(account, logbook, "rider")
    return logbook


def join(account: Account, logbook: Logbook, role: str) -> None:
    """Give `account` this `role` in `logbook`, instead of any role it had there."""
    with writing() as session:
        session.merge(Membership(logbook_id=logbook.id, account_id=account.id, role=role, created_at_ms=now_ms()))


def leave(account: Account, logbook: Logbook) -> bool:
    """End the membership. False if there was none."""
    with writing() as session:
        which = (Membership.logbook_id == logbook.id, Membership.account_id == account.id)
        return session.execute(delete(Membership).where(*which)).rowcount > 0


def logbooks_of(account_id: str) -> list[tuple[Logbook, str]]:
    """Every logbook the account is a member of, with its role; its own first, then by title."""
    rows = db.session.execute(
        select(Logbook, Membership.role)
        .join(Membership, Membership.logbook_id == Logbook.id)
        .where(Membership.account_id == account_id)
        .order_by(Membership.role != "rider", Logbook.title, Logbook.id)
    )
    return [(logbook, role) for logbook, role in rows]


def own_logbook(account: Account) -> Logbook | None:
    """The logbook whose rider is `account`."""
    return next((logbook for logbook, role in logbooks_of(account.id) if role == "rider"), None)
