"""Invitations to a logbook: a code handed to one person, good once and for a week. Only its digest is kept,
so that a copy of the database invites nobody."""

import secrets
from dataclasses import dataclass
from hashlib import sha256

from sqlalchemy import delete, select, update

from fieldtally.store.clock import now_ms
from fieldtally.store.db import db, writing
from fieldtally.store.memberships import join
from fieldtally.store.models import Account, Invitation, Logbook, Membership

GOOD_FOR_MS = 7 * 86_400_000


@dataclass(frozen=True)
class Offer:
    """What a code invites to, and by whom; `inviter` is empty once that account is gone."""

    invitation: Invitation
    logbook: Logbook
    inviter: str


def digest(code: str) -> str:
    return sha256(code.encode("utf-8", "replace")).hexdigest()


def invite(logbook_id: str, account_id: str, role: str) -> tuple[str, Invitation]:
    """A new invitation and its code, which is known only now."""
    code, now = secrets.token_urlsafe(16), now_ms()
    made = Invitation(
        logbook_id=logbook_id, id=digest(code), role=role, made_by=account_id,
        made_at_ms=now, expires_at_ms=now + GOOD_FOR_MS,
    )  # fmt: skip
    with writing() as session:
        session.add(made)
    return code, made


def open_invitations(logbook_id: str) -> list[Invitation]:
    """Those that still can be taken up, oldest first."""
    which = select(Invitation).where(Invitation.logbook_id == logbook_id, *_still_good())
    return list(db.session.scalars(which.order_by(Invitation.made_at_ms, Invitation.id)))


def withdraw(logbook_id: str, invitation_id: str) -> bool:
    """False if there was none to withdraw."""
    which = (Invitation.logbook_id == logbook_id, Invitation.id == invitation_id, Invitation.used_at_ms.is_(None))
    with writing() as session:
        return session.execute(delete(Invitation).where(*which)).rowcount > 0


def offer_of(code: str) -> Offer | None:
    """What the code invites to; None if it never did, or does no more."""
    row = db.session.execute(
        select(Invitation, Logbook, Account.display_name)
        .join(Logbook, Logbook.id == Invitation.logbook_id)
        .join(Account, Account.id == Invitation.made_by, isouter=True)
        .where(Invitation.id == digest(code), *_still_good())
    ).first()
    return row and Offer(row[0], row[1], row[2] or "")


def take_up(code: str, account: Account) -> bool:
    """Join by the code. False if it was used, withdrawn or ran out meanwhile: of two at once one wins."""
    with writing() as session:
        taken = session.execute(
            update(Invitation)
            .where(Invitation.id == digest(code), *_still_good())
            .values(used_by=account.id, used_at_ms=now_ms())
            .returning(Invitation.logbook_id, Invitation.role)
        ).first()
        if taken:
            join(account, session.get_one(Logbook, taken.logbook_id), taken.role)
        return taken is not None


def is_rider_of(account_id: str, logbook_id: str) -> bool:
    found = db.session.get(Membership, (logbook_id, account_id))
    return found is not None and found.role == "rider"


def _still_good() -> tuple:
    return Invitation.used_at_ms.is_(None), Invitation.expires_at_ms > now_ms()
