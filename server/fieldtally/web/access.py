"""Who asks, and what they are in a logbook. Every room that touches a logbook begins with `member(…)`."""

from dataclasses import dataclass

from flask_login import UserMixin, current_user

from fieldtally.store.db import db
from fieldtally.store.models import Account, Membership
from fieldtally.web.errors import problem


class SignedIn(UserMixin):
    """An account in one browser; `token` is the secret that browser's cookie carries."""

    def __init__(self, account: Account, token: str) -> None:
        self.account, self.token = account, token

    def get_id(self) -> str:
        return self.token


@dataclass(frozen=True)
class Member:
    """The person who asks, in the logbook they ask about. `role` is one of book.words.ROLES."""

    logbook_id: str
    account_id: str
    display_name: str
    role: str


def signed_in() -> Account:
    """The account that asks; without one the answer is 401 `signed_out`, never a redirect."""
    if not current_user.is_authenticated:
        problem(401, "signed_out", "You are not signed in.", fix="Sign in again; this phone keeps everything.")
    return current_user.account


def member(logbook_id: str) -> Member:
    """The membership of whoever asks: 401 `signed_out`, or 403 `not_yours` for a logbook that is not
    shared with them, whether or not it exists."""
    account = signed_in()
    found = db.session.get(Membership, (logbook_id, account.id))
    if found is None:
        problem(403, "not_yours", "This logbook is not shared with you.", fix="Ask its rider to invite you.")
    return Member(logbook_id, account.id, account.display_name, found.role)


def rider(logbook_id: str) -> Member:
    """The rider of this logbook, asking for herself; for other members 403 `not_the_rider`."""
    who = member(logbook_id)
    if who.role != "rider":
        problem(403, "not_the_rider", "Only the rider decides who sees her logbook.", fix="Ask her.")
    return who
