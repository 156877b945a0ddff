"""People and logbooks named on a command line."""

from fieldtally.cli.output import complain
from fieldtally.store.accounts import find_account
from fieldtally.store.memberships import own_logbook
from fieldtally.store.models import Account, Logbook


def named(name: str) -> Account:
    account = find_account(name)
    if account is None:
        complain(f"nobody signs in as “{name}”.", "fieldtally user list shows everybody.")
    return account


def book_of(rider: str) -> Logbook:
    logbook = own_logbook(named(rider))
    if logbook is None:
        complain(f"{rider} has no logbook: only riders have one.")
    return logbook
