"""Signed-in browsers. Each has a secret of its own in its cookie; here only that secret's digest is kept."""

import secrets
from hashlib import sha256

from sqlalchemy import delete, select, update

from fieldtally.store.clock import now_ms
from fieldtally.store.db import db, writing
from fieldtally.store.models import Account, SignIn

DAY_MS = 86_400_000
LONGEST_LABEL = 120


def digest(token: str) -> str:
    return sha256(token.encode("utf-8", "replace")).hexdigest()


def begin(account: Account, label: str = "") -> str:
    """Sign `account` in on one browser; returns the secret for its cookie."""
    token, now = secrets.token_urlsafe(32), now_ms()
    with writing() as session:
        session.add(
            SignIn(
                id=digest(token), account_id=account.id, label=label[:LONGEST_LABEL],
                signed_in_at_ms=now, last_seen_at_ms=now,
            )
        )  # fmt: skip
    return token


def find(token: str, idle_days: int, max_days: int) -> tuple[Account, SignIn] | None:
    """Who the secret signs in, unless not seen for `idle_days` or signed in `max_days` ago."""
    now = now_ms()
    row = db.session.execute(
        select(Account, SignIn)
        .join(SignIn, SignIn.account_id == Account.id)
        .where(
            SignIn.id == digest(token),
            SignIn.last_seen_at_ms > now - idle_days * DAY_MS,
            SignIn.signed_in_at_ms > now - max_days * DAY_MS,
        )
    ).first()
    return row and (row[0], row[1])


def seen(sign_in: SignIn) -> bool:
    """Note that this browser is in use, at most once a day. True if it was noted now."""
    now = now_ms()
    if now - sign_in.last_seen_at_ms < DAY_MS:
        return False
    with writing() as session:
        session.execute(update(SignIn).where(SignIn.id == sign_in.id).values(last_seen_at_ms=now))
    return True


def end(token: str) -> None:
    """Sign this browser out."""
    with writing() as session:
        session.execute(delete(SignIn).where(SignIn.id == digest(token)))


def end_all(account_id: str) -> None:
    """Sign the account out everywhere."""
    with writing() as session:
        session.execute(delete(SignIn).where(SignIn.account_id == account_id))


def forget_old(idle_days: int, max_days: int) -> None:
    """Drop the rows that sign nobody in any more."""
    now = now_ms()
    ended = (SignIn.last_seen_at_ms <= now - idle_days * DAY_MS) | (SignIn.signed_in_at_ms <= now - max_days * DAY_MS)
    with writing() as session:
        session.execute(delete(SignIn).where(ended))


def all_of(account_id: str) -> list[SignIn]:
    """Every browser the account is signed in on, the one used last first."""
    which = select(SignIn).where(SignIn.account_id == account_id)
    return list(db.session.scalars(which.order_by(SignIn.last_seen_at_ms.desc(), SignIn.id)))


def end_one(account_id: str, sign_in_id: str) -> bool:
    """Sign the account out on one browser. False if it was not signed in there."""
    with writing() as session:
        which = (SignIn.account_id == account_id, SignIn.id == sign_in_id)
        return session.execute(delete(SignIn).where(*which)).rowcount > 0


def end_others(account_id: str, token: str) -> None:
    """Sign the account out everywhere but on the browser with this secret."""
    with writing() as session:
        session.execute(delete(SignIn).where(SignIn.account_id == account_id, SignIn.id != digest(token)))
