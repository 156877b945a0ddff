"""Recording before there is any account, and keeping it under one later: nothing is lost, nothing is doubled."""

import re

import pytest
from playwright.sync_api import expect

from browser.person import PASSWORD
from faults.test_phone_storage import REFUSES

pytestmark = pytest.mark.xdist_group("browser")


def begin(phone) -> None:
    """First visit with signal, no account; then the field."""
    phone.open("/")
    phone.ready_for_the_field()
    phone.tap("Start on this phone")
    phone.sees("Your logbook is ready")


def add_horse(phone, name: str) -> None:
    phone.go("/horse/new")
    phone.fill("Name", name)
    phone.tap(re.compile("^(Save|Add)"))
    phone.page.wait_for_url(re.compile(r"/(horse/[0-9a-f-]{30,})?$|/$"))
    phone.page.wait_for_timeout(400)


def start_outing(phone) -> None:
    phone.go("/")
    phone.tap("Start the outing")
    phone.page.wait_for_url(re.compile("/outing/"))


def kept_here(phone, count: int) -> None:
    words = re.compile(rf"Kept on this phone only: {count} entr(y|ies)")
    expect(phone.page.locator(".top__state")).to_contain_text(words, timeout=15_000)


def add_account(server, name: str, shown: str) -> None:
    server.command("user", "add", name, "--display-name", shown, "--password-stdin", given=PASSWORD)


def sign_in(phone, name: str) -> None:
    phone.go("/sign-in")
    phone.sign_in(name)
    phone.sees("belongs to no account and is not sent")


def test_everything_is_recorded_with_no_account_and_no_signal_and_nothing_is_sent(server, people):
    phone = people("nobody")
    begin(phone)
    server.stop()
    phone.page.reload()
    add_horse(phone, "Goldfinch")
    start_outing(phone)
    kept_here(phone, 2)
    phone.kill()
    phone.open("/")
    phone.sees("Continue with Goldfinch")
    kept_here(phone, 2)
    phone.go("/board")
    phone.sees("worked out by the server")
    pushes = []
    phone.page.on("request", lambda request: pushes.append(request.url) if request.method == "POST" else None)
    server.start()
    phone.page.reload()
    phone.page.wait_for_timeout(3000)
    kept_here(phone, 2)
    assert pushes == []


def test_signing_in_offers_them_and_they_go_under_the_account_once(server, people):
    phone = people("wren")
    begin(phone)
    add_horse(phone, "Goldfinch")
    start_outing(phone)
    kept_here(phone, 2)
    add_account(server, "wren", "Wren Ashdown")
    sign_in(phone, "wren")
    phone.tap("Look and decide", role="link")
    phone.sees("2 entries, recorded on this phone without an account")
    phone.sees("Horses: Goldfinch")
    phone.tap("Keep them under Wren Ashdown")
    phone.sees(re.compile("entr(y is|ies are) now under your account"))
    phone.all_sent()
    phone.go("/")
    phone.sees("Continue with Goldfinch")
    names = phone.page.evaluate("indexedDB.databases().then((all) => all.map((each) => each.name))")
    assert "fieldtally-local" not in names


def test_the_first_account_of_a_new_server_keeps_what_was_there_before_it(server, people):
    phone = people("wren")
    begin(phone)
    add_horse(phone, "Goldfinch")
    phone.page.locator(".top__state a").click()  # the line at the top leads to where it can be kept
    phone.heading("Make the first account")
    phone.fill("Your name", "Wren Ashdown")
    phone.fill("Sign-in name", "wren")
    phone.fill("Password", PASSWORD)
    phone.tap("Make the account")
    phone.tap("Look and decide", role="link")
    phone.tap("Keep them under Wren Ashdown")
    phone.sees("1 entry is now under your account")
    phone.all_sent()


def test_killed_before_the_server_has_them_the_copy_stays_and_is_finished_later(server, people):
    phone = people("wren")
    begin(phone)
    add_horse(phone, "Goldfinch")
    add_account(server, "wren", "Wren Ashdown")
    sign_in(phone, "wren")
    phone.close()  # Chromium writes cookies to disk only after a while
    phone.open("/keep")
    server.stop()
    phone.tap("Keep them under Wren Ashdown")
    phone.sees("0 of 1 have reached the server")
    phone.kill()
    phone.open("/keep")
    phone.sees("0 of 1 have reached the server")
    server.start()
    phone.go("/keep")
    phone.tap("Go on")
    phone.sees(re.compile("entr(y is|ies are) now under your account"))
    phone.go("/")
    expect(phone.page.get_by_role("radio", name="Goldfinch")).to_have_count(1)


def test_another_person_on_the_phone_is_asked_and_takes_nothing_by_mistake(server, people):
    phone = people("idris")
    begin(phone)
    add_horse(phone, "Goldfinch")
    add_account(server, "idris", "Idris Vale")
    sign_in(phone, "idris")
    phone.page.wait_for_timeout(2500)
    phone.go("/settings")
    phone.tap("Sign out")
    phone.tap("Sign out, remove the copy from this device")
    phone.heading("Sign in")
    phone.tap("Open this phone’s logbook")
    phone.sees("Goldfinch")
    kept_here(phone, 1)


def test_a_browser_that_keeps_nothing_says_so_instead_of_recording(server, people):
    phone = people("private")
    phone.open("/")
    phone.context.add_init_script(REFUSES)
    phone.page.reload()
    phone.tap("Start on this phone")
    phone.heading("Nothing can be kept here")
    assert phone.page.get_by_role("button", name="Start the outing").count() == 0


def test_it_can_be_deleted_from_the_phone_after_asking_twice(server, people):
    phone = people("nobody")
    begin(phone)
    add_horse(phone, "Goldfinch")
    phone.go("/settings")
    phone.tap("Delete this logbook")
    phone.sees("1 entry would be gone for good")
    phone.tap("Delete all of it")
    phone.sees("Start on this phone")
    phone.tap("Start on this phone")
    phone.sees("Your logbook is ready")
