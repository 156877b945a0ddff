"""Signing in, staying signed in, signing out, and the first account."""

import threading
import unicodedata

import pytest

from fieldtally.store import passwords, sign_ins
from fieldtally.store.accounts import add_account, change_password, find_account
from fieldtally.store.db import db
from fieldtally.store.models import Account, SignIn
from support.asking import PASSWORD, Browser, error_of

ZOE = "Zoë"  # composed, as most keyboards type it


def first(name="wren", password=PASSWORD):
    return {"sign_in_name": name, "display_name": "Wren Ashdown", "password": password}


def test_an_empty_server_says_that_it_waits_for_its_first_account(browser):
    answer = browser.get("/api/session").get_json()
    assert (answer["account"], answer["first_run"], answer["protocol"]) == (None, True, 1)


def test_the_first_account_is_a_rider_with_a_logbook_and_is_signed_in(browser):
    answer = browser.send("POST", "/api/first-account", first())
    assert answer.status_code == 200
    assert browser.who() == "wren"
    [logbook] = answer.get_json()["logbooks"]
    assert (logbook["title"], logbook["role"], logbook["last_number"]) == ("Wren Ashdown", "rider", 0)
    assert logbook["id"] and logbook["log_id"]


def test_there_is_only_one_first_account(browser):
    browser.send("POST", "/api/first-account", first())
    refused = browser.send("POST", "/api/first-account", first("maren"))
    assert (refused.status_code, error_of(refused)["code"]) == (403, "not_first")


def test_of_two_first_accounts_at_once_one_is_made(app):
    answers, start = [], threading.Barrier(6)

    def ask(name):
        start.wait()
        answers.append(Browser(app).send("POST", "/api/first-account", first(name)).status_code)

    threads = [threading.Thread(target=ask, args=(f"rider{n}",)) for n in range(6)]
    [thread.start() for thread in threads]
    [thread.join() for thread in threads]
    assert sorted(answers) == [200, 403, 403, 403, 403, 403]
    with app.app_context():
        assert db.session.query(Account).count() == 1


@pytest.mark.parametrize(
    ("field", "value"),
    [
        ("sign_in_name", ""), ("sign_in_name", None), ("sign_in_name", 7), ("sign_in_name", "x" * 101),
        ("sign_in_name", "a\u0000b"), ("sign_in_name", "\ud800"), ("sign_in_name", "\u200b"),
        ("password", "short"), ("password", "x" * 257), ("password", None), ("password", "aaaaaaaaaaaaaaaa"),
        ("password", "wrenwrenwrenwren"), ("password", "Fieldtally password"), ("password", "\ud800" * 20),
    ],
)  # fmt: skip
def test_names_and_passwords_that_cannot_be_are_refused_with_field_and_fix(browser, field, value):
    refused = browser.send("POST", "/api/first-account", first() | {field: value})
    error = error_of(refused)
    assert (refused.status_code, error["code"], error["field"]) == (400, "bad_field", field)
    assert error["message"] and error["fix"]
    assert browser.get("/api/session").get_json()["first_run"]


def test_signing_in_and_out(app, people, browser):
    assert browser.sign_in("wren").get_json()["account"]["display_name"] == "Wren"
    assert browser.who() == "wren"
    assert browser.sign_out().status_code == 204
    assert browser.who() is None


def test_a_copied_cookie_is_worth_nothing_after_signing_out(app, people, browser):
    browser.sign_in("wren")
    kept = browser.client.get_cookie("fieldtally").value
    browser.sign_out()
    thief = Browser(app)
    thief.client.set_cookie("fieldtally", kept)
    assert thief.who() is None


@pytest.mark.parametrize(("name", "password"), [("wren", "not her password"), ("nobody", PASSWORD)])
def test_a_wrong_password_and_an_unknown_name_get_the_same_answer(people, browser, name, password):
    refused = browser.sign_in(name, password)
    assert (refused.status_code, error_of(refused)["code"]) == (401, "wrong_password")
    assert browser.who() is None


def test_an_unknown_name_costs_a_password_check_too(app, monkeypatch, people, browser):
    """Checked by counting, since a time measured in a test run proves nothing."""
    checked = []
    real = passwords.HASHER
    monkeypatch.setattr(passwords, "HASHER", Counting(real, checked))
    browser.sign_in("nobody")
    browser.sign_in("wren", "not her password")
    parameters = {kept.rpartition("$")[0].rpartition("$")[0] for kept in checked}
    assert (len(checked), parameters) == (2, {"$argon2id$v=19$m=19456,t=2,p=1"})


class Counting:
    def __init__(self, real, seen):
        self.real, self.seen = real, seen

    def verify(self, kept, password):
        self.seen.append(kept)
        return self.real.verify(kept, password)


@pytest.mark.parametrize(
    "typed", [ZOE, unicodedata.normalize("NFD", ZOE), "ZOË", "zoë", "  Zoë ", "Ｚｏë", "Z\u200boë"]
)
def test_one_person_is_one_account_however_the_name_is_typed(app, browser, typed):
    with app.app_context():
        add_account(ZOE, "", PASSWORD)
    assert browser.sign_in(typed).get_json()["account"]["sign_in_name"] == ZOE


def test_a_password_with_decomposed_letters_is_the_same_password(app, browser):
    """RFC 8265 section 4.3: é is one letter, composed or not."""
    with app.app_context():
        add_account("wren", "", "Šárka goes cantering")
    assert browser.sign_in("wren", unicodedata.normalize("NFD", "Šárka goes cantering")).status_code == 200
    assert browser.sign_in("wren", "šárka goes cantering").status_code == 401


def test_a_new_password_signs_out_everywhere(app, people, browser):
    browser.sign_in("wren")
    with app.app_context():
        change_password(find_account("wren"), "another gate entirely")
    assert browser.who() is None
    assert browser.sign_in("wren").status_code == 401
    assert browser.sign_in("wren", "another gate entirely").status_code == 200


def test_a_hash_made_at_an_older_cost_is_renewed_at_the_next_sign_in(app, people, browser):
    cheap = passwords.PasswordHasher(time_cost=1, memory_cost=8192, parallelism=1).hash(PASSWORD)
    with app.app_context():
        with db.engine.begin() as connection:
            connection.exec_driver_sql("UPDATE account SET password_hash = ?", (cheap,))
    browser.sign_in("wren")
    with app.app_context():
        assert find_account("wren").password_hash.startswith("$argon2id$v=19$m=19456,t=2,p=1$")
    assert browser.sign_in("wren").status_code == 200


def test_a_browser_unseen_for_too_long_is_signed_out_and_its_row_forgotten(app, people, browser):
    browser.sign_in("wren")
    age(app, "last_seen_at_ms", 179)
    assert browser.who() == "wren"  # seen again: the days begin anew
    age(app, "last_seen_at_ms", 181)
    assert browser.who() is None
    browser.sign_in("wren")
    with app.app_context():
        assert db.session.query(SignIn).count() == 1


def test_a_browser_has_to_sign_in_again_after_a_year(app, people, browser):
    browser.sign_in("wren")
    age(app, "signed_in_at_ms", 366)
    assert browser.who() is None


def age(app, column, days):
    with app.app_context(), db.engine.begin() as connection:
        earlier = sign_ins.now_ms() - days * sign_ins.DAY_MS
        connection.exec_driver_sql(f"UPDATE sign_in SET {column} = ?", (earlier,))


def test_signing_in_again_replaces_the_earlier_sign_in_of_this_browser(app, people, browser):
    browser.sign_in("wren")
    browser.sign_in("coach")
    assert browser.who() == "coach"
    with app.app_context():
        assert db.session.query(SignIn).count() == 1


def test_the_cookie_is_new_at_every_sign_in(people, browser):
    browser.sign_in("wren")
    one = browser.client.get_cookie("fieldtally").value
    browser.sign_in("wren")
    assert browser.client.get_cookie("fieldtally").value != one


def test_the_session_lists_every_logbook_with_the_role_there(app, people, browser):
    [logbook] = browser.sign_in("coach").get_json()["logbooks"]
    assert (logbook["id"], logbook["role"]) == (people.book, "coach")
    assert browser.sign_in("maren").get_json()["logbooks"][0]["id"] == people.other
