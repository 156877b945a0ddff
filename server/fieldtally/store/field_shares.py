"""Fields handed on by a code: what the code opens lies here as text, apart from any logbook's entries, for a week.
Only the code's digest is kept."""

import secrets
from hashlib import sha256

from sqlalchemy import delete, select, update

from fieldtally.store.clock import now_ms
from fieldtally.store.db import db, writing
from fieldtally.store.models import FieldShare

GOOD_FOR_MS = 7 * 86_400_000
MOST_USES = 20
LETTERS = "0123456789ABCDEFGHJKMNPQRSTVWXYZ"  # Crockford's base 32: no I, L, O, U
LENGTH = 12  # 60 bits
MISREAD = str.maketrans("OIL", "011")


def plain_code(typed: str) -> str:
    """A code as typed, without what people put between groups and with letters read as the digits they look like."""
    return "".join(each for each in typed.upper() if each.isalnum()).translate(MISREAD)


def digest(code: str) -> str:
    return sha256(plain_code(code).encode("utf-8", "replace")).hexdigest()


def share(logbook_id: str, account_id: str, name: str, text: str) -> tuple[str, FieldShare]:
    """Keeps `text` under a new code, which is known only now: three groups of four. What ran out is dropped."""
    code, now = "".join(secrets.choice(LETTERS) for _ in range(LENGTH)), now_ms()
    made = FieldShare(
        logbook_id=logbook_id, id=digest(code), name=name, text=text, made_by=account_id, made_at_ms=now,
        expires_at_ms=now + GOOD_FOR_MS, uses_left=MOST_USES,
    )  # fmt: skip
    with writing() as session:
        session.execute(delete(FieldShare).where(FieldShare.expires_at_ms <= now))
        session.add(made)
    return "-".join(code[at : at + 4] for at in range(0, LENGTH, 4)), made


def open_shares(logbook_id: str) -> list[FieldShare]:
    """Those whose code still opens something, oldest first."""
    which = select(FieldShare).where(FieldShare.logbook_id == logbook_id, *_still_good())
    return list(db.session.scalars(which.order_by(FieldShare.made_at_ms, FieldShare.id)))


def withdraw(logbook_id: str, share_id: str) -> bool:
    """False if there was none to withdraw."""
    which = delete(FieldShare).where(FieldShare.logbook_id == logbook_id, FieldShare.id == share_id)
    with writing() as session:
        return session.execute(which).rowcount > 0


def take(code: str) -> str | None:
    """What the code opens, and one use less of it; None if it opens nothing (any more)."""
    which = update(FieldShare).where(FieldShare.id == digest(code), *_still_good())
    with writing() as session:
        return session.scalar(which.values(uses_left=FieldShare.uses_left - 1).returning(FieldShare.text))


def _still_good() -> tuple:
    return FieldShare.uses_left > 0, FieldShare.expires_at_ms > now_ms()
