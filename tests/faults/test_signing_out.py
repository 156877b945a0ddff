"""Signing out, or being signed out, never takes what was not sent.

Each test is one kind of fault that users of other programs reported.
"""

import re

import pytest
from playwright.sync_api import expect

pytestmark = pytest.mark.xdist_group("browser")


def add_field(phone, name: str) -> None:
    phone.go("/field/new")
    phone.fill("Name", name)
    phone.tap(re.compile("^(Save|Add)"))
    phone.heading(name)


def press_sign_out(phone) -> None:
    phone.go("/settings")
    phone.tap("Sign out")


def test_signing_out_with_unsent_records_names_them_and_keeps_them(server, rider):
    server.stop()
    names = [f"Field {n}" for n in range(1, 6)]
    for name in names:
        add_field(rider, name)
    press_sign_out(rider)
    asked = rider.page.locator(".notice").filter(has=rider.page.get_by_role("heading", name="Sign out"))
    expect(asked).to_contain_text("5 records have not been sent")
    expect(asked).to_contain_text("Signing in again needs signal")
    for name in names:
        expect(asked).to_contain_text(name)
    for choice in ("Send them now", "Export them", "Cancel"):
        expect(asked.get_by_role("button", name=choice)).to_be_visible()
    rider.tap("Send them now")
    expect(asked).to_contain_text("No answer from the server")

    rider.tap("Sign out, keep them here")
    rider.heading("Sign in")
    rider.page.reload()
    rider.heading("Sign in")  # with no signal nobody is let in by what the browser still knows

    server.start()
    rider.page.reload()
    rider.heading("Sign in")  # and the server was told as soon as it could be
    rider.sign_in("wren")
    rider.go("/fields")
    for name in names:
        rider.sees(name)
    rider.all_sent()


def test_the_unsent_ones_can_be_taken_along_as_a_file(server, rider):
    server.stop()
    add_field(rider, "Thornybank")
    press_sign_out(rider)
    with rider.page.expect_download() as coming:
        rider.page.evaluate("navigator.canShare = undefined")
        rider.tap("Export them")
    text = coming.value.path().read_text(encoding="utf-8")
    assert "Thornybank" in text
    assert re.fullmatch(r"fieldtally-\d{4}-\d\d-\d\d-unsent\.json", coming.value.suggested_filename)


def test_a_session_that_ended_on_the_server_pauses_sending_and_nothing_else(server, rider):
    add_field(rider, "Thornybank")
    rider.all_sent()
    rider.page.evaluate("fetch('/api/session', { method: 'DELETE', headers: { 'X-Fieldtally': '1' } })")
    add_field(rider, "Low Moor")
    rider.go("/needs-you")
    expect(rider.page.locator(".top__state")).to_contain_text("Signed out: 1 kept here")
    rider.sees("sign in again to send")
    rider.go("/fields")
    rider.sees("Thornybank")
    rider.sees("Low Moor")
    rider.go("/sign-in")
    rider.sign_in("wren")
    rider.all_sent()
    rider.go("/fields")
    rider.sees("Low Moor")


def test_when_all_is_sent_the_copy_can_be_removed_and_comes_back_by_signing_in(rider):
    add_field(rider, "Thornybank")
    rider.all_sent()
    press_sign_out(rider)
    rider.tap("Sign out, remove the copy from this device")
    rider.heading("Sign in")
    left = rider.page.evaluate("indexedDB.databases().then((all) => all.map((one) => one.name))")
    assert [name for name in left if name.startswith("fieldtally-")] == []
    rider.sign_in("wren")
    rider.go("/fields")
    rider.sees("Thornybank")
    assert rider.page.get_by_text("emptied its storage").count() == 0
