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


def members_of(logbook_id: str) -> list[tuple[Account, str]]:
    """Everybody in the logbook with their role, the rider first, then by name."""
    rows = db.session.execute(
        select(Account, Membership.role)
        .join(Membership, Membership.account_id == Account.id)
        .where(Membership.logbook_id == logbook_id)
        .order_by(Membership.role != "rider", Account.display_name, Account.id)
    )
    return [(account, role) for account, role in rows]


def end_membership(logbook_id: str, account_id: str) -> bool:
    """End what a helper is in the logbook; never the rider's own place. False if there was nothing to end."""
    which = (Membership.logbook_id == logbook_id, Membership.account_id == account_id, Membership.role != "rider")
    with writing() as session:
        return session.execute(delete(Membership).where(*which)).rowcount > 0
