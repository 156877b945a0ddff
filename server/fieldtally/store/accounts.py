"""Accounts: made, found, given a new password. Logbooks and roles are in memberships.py."""

from uuid import uuid4

from sqlalchemy import delete, func, select, text
from sqlalchemy.exc import IntegrityError
from sqlalchemy.orm import Session

from fieldtally.store.clock import now_ms
from fieldtally.store.db import db, writing
from fieldtally.store.memberships import logbooks_of, open_logbook
from fieldtally.store.models import Account, Logbook
from fieldtally.store.names import sign_in_key, tidy_name
from fieldtally.store.passwords import hash_password, needs_new_hash, new_password, password_matches, prepared
from fieldtally.store.sign_ins import end_all, end_others
from fieldtally.trade.bad_input import BadInput


class AccountsExist(Exception):
    """The first account was asked for, but there is one already."""


def any_account() -> bool:
    return db.session.scalar(select(Account.id).limit(1)) is not None


def all_accounts() -> list[Account]:
    return list(db.session.scalars(select(Account).order_by(Account.sign_in_key)))


def find_account(sign_in_name: str) -> Account | None:
    """The account of that name, however it is spelled; None if nobody has it or it cannot be a name."""
    try:
        key = sign_in_key(tidy_name("sign_in_name", sign_in_name))
    except BadInput:
        return None
    return db.session.scalar(select(Account).where(Account.sign_in_key == key))


def add_account(sign_in_name: object, display_name: object, password: object) -> Account:
    """A new account without any logbook. BadInput: a field cannot be used, or the name is taken."""
    account = _new_account(sign_in_name, display_name, password)
    try:
        with writing() as session:
            session.add(account)
            session.flush()
    except IntegrityError:
        taken = f"“{account.sign_in_name}” is taken."
        raise BadInput("sign_in_name", taken, "Choose another name to sign in with.") from None
    return account


def add_first_account(sign_in_name: object, display_name: object, password: object) -> Account:
    """The first account, a rider with her own logbook. AccountsExist if somebody was quicker."""
    account = _new_account(sign_in_name, display_name, password)
    with writing() as session:
        _keep_others_out(session)
        if session.scalar(select(func.count()).select_from(Account)):
            raise AccountsExist
        session.add(account)
        open_logbook(account)
    return account


def account_of(sign_in_name: str, password: str) -> Account | None:
    """The account that this name and password open, or None. Takes as long for a name nobody has."""
    account = find_account(sign_in_name)
    if not password_matches(password, account and account.password_hash):
        return None
    if needs_new_hash(account.password_hash):
        with writing() as session:
            session.merge(account).password_hash = hash_password(prepared(password))
    return account


def change_password(account: Account, password: object, but_here: str | None = None) -> None:
    """Give a new password and sign the account out everywhere, but for the browser with the secret `but_here`."""
    ready = new_password(password, account.sign_in_name)
    with writing() as session:
        session.merge(account).password_hash = hash_password(ready)
        end_others(account.id, but_here) if but_here else end_all(account.id)


def remove_account(account: Account) -> list[str]:
    """Delete the account for good, and with it every logbook it is the rider of, whoever else wrote there.
    What it wrote in the logbooks of others stays, without a name. Returns the ids of the logbooks deleted."""
    own = [logbook.id for logbook, role in logbooks_of(account.id) if role == "rider"]
    with writing() as session:
        session.execute(delete(Logbook).where(Logbook.id.in_(own)))
        session.execute(delete(Account).where(Account.id == account.id))
    return own


def _new_account(sign_in_name: object, display_name: object, password: object) -> Account:
    name = tidy_name("sign_in_name", sign_in_name)
    shown = tidy_name("display_name", display_name or name)
    return Account(
        id=str(uuid4()),
        sign_in_name=name,
        sign_in_key=sign_in_key(name),
        display_name=shown,
        password_hash=hash_password(new_password(password, name)),
        created_at_ms=now_ms(),
    )


def _keep_others_out(session: Session) -> None:
    """Two first accounts at once: SQLite's write lock is held already, PostgreSQL needs to be told."""
    if session.get_bind().dialect.name == "postgresql":
        session.execute(text("LOCK TABLE account IN SHARE ROW EXCLUSIVE MODE"))
