"""People, roles and sign-ins behave the same on both databases."""

import threading
import unicodedata

import pytest

from fieldtally.store import sign_ins
from fieldtally.store.accounts import (
    AccountsExist,
    account_of,
    add_account,
    add_first_account,
    all_accounts,
    change_password,
    find_account,
)
from fieldtally.store.db import db, writing
from fieldtally.store.memberships import join, leave, logbooks_of, open_logbook, own_logbook
from fieldtally.store.models import Account, Logbook, Membership, SignIn
from fieldtally.trade.bad_input import BadInput

PASSWORD = "rope halter seven gates"
SPELLINGS = ["Zoë", unicodedata.normalize("NFD", "Zoë"), "ZOË", "zoë", " Zoë "]


@pytest.mark.parametrize("typed", SPELLINGS)
def test_one_name_is_one_account(store, typed):
    add_account("Zoë", "", PASSWORD)
    assert find_account(typed).sign_in_name == "Zoë"
    with pytest.raises(BadInput, match="taken"):
        add_account(typed, "", PASSWORD)
    assert account_of(typed, PASSWORD) and not account_of(typed, PASSWORD + "!")


def test_a_name_taken_spoils_nothing_else_of_its_transaction(store):
    """Full case folding (Unicode, section 3.13): ß is ss, which no database's LOWER does."""
    add_account("Straße", "", PASSWORD)
    with pytest.raises(BadInput, match="taken"), writing():
        open_logbook(add_account("wren", "", PASSWORD))
        add_account("STRASSE", "", PASSWORD)
    assert [account.sign_in_name for account in all_accounts()] == ["Straße"]
    assert db.session.query(Logbook).count() == 0


def test_names_are_shown_as_typed_and_listed_in_one_order(store):
    for name in ("zita", "Émile", "Anna"):
        add_account(name, name.upper(), PASSWORD)
    assert {account.sign_in_name for account in all_accounts()} == {"Anna", "zita", "Émile"}
    assert find_account("emile") is None


def test_of_many_first_accounts_at_once_one_is_made(store):
    made, refused, start = [], [], threading.Barrier(8)

    def ask(number):
        with store.app_context():
            start.wait()
            try:
                made.append(add_first_account(f"rider{number}", "", PASSWORD).id)
            except AccountsExist:
                refused.append(number)
            finally:
                db.session.remove()

    threads = [threading.Thread(target=ask, args=(number,)) for number in range(8)]
    [thread.start() for thread in threads]
    [thread.join() for thread in threads]
    assert (len(made), len(refused)) == (1, 7)
    assert [account.id for account in all_accounts()] == made
    assert own_logbook(all_accounts()[0])


def test_roles(store):
    wren, idris = add_account("wren", "Wren", PASSWORD), add_account("idris", "Idris", PASSWORD)
    book = open_logbook(wren)
    open_logbook(idris)
    join(idris, book, "scribe")
    join(idris, book, "coach")
    assert [(found.title, role) for found, role in logbooks_of(idris.id)] == [("Idris", "rider"), ("Wren", "coach")]
    assert own_logbook(wren).id == book.id
    assert (leave(idris, book), leave(idris, book)) == (True, False)
    assert [role for _, role in logbooks_of(idris.id)] == ["rider"]


def test_removing_an_account_leaves_no_orphan(store):
    wren, idris = add_account("wren", "", PASSWORD), add_account("idris", "", PASSWORD)
    join(idris, open_logbook(wren), "coach")
    sign_ins.begin(idris, "phone")
    with writing() as session:
        session.delete(session.get(Account, idris.id))
    db.session.expire_all()
    assert db.session.query(SignIn).count() == 0
    assert [row.account_id for row in db.session.query(Membership)] == [wren.id]


def test_a_sign_in_is_kept_as_a_digest_only(store):
    token = sign_ins.begin(add_account("wren", "", PASSWORD), "x" * 500)
    [row] = db.session.query(SignIn)
    assert token not in (row.id, row.label) and len(row.id) == 64 and len(row.label) == 120
    account, found = sign_ins.find(token, 180, 365)
    assert (account.sign_in_name, found.id) == ("wren", row.id)
    assert sign_ins.find(token + "x", 180, 365) is None
    assert sign_ins.find("\ud800", 180, 365) is None
    assert sign_ins.seen(found) is False


def test_a_new_password_ends_every_sign_in_of_that_account_alone(store):
    wren, maren = (add_account(name, "", PASSWORD) for name in ("wren", "maren"))
    tokens = [sign_ins.begin(wren), sign_ins.begin(wren), sign_ins.begin(maren)]
    change_password(wren, "another gate entirely")
    assert [bool(sign_ins.find(token, 180, 365)) for token in tokens] == [False, False, True]
    assert account_of("wren", "another gate entirely") and not account_of("wren", PASSWORD)
