"""The emergency card stays on the phone, opens without anything, and goes nowhere; nor does anything personal go
with the details somebody copies for help."""

import json
import re

import pytest
from playwright.sync_api import expect

from browser.test_import import saved_by

pytestmark = pytest.mark.xdist_group("browser")

SECRET = "Penicillin 7731"


def fill_card(phone) -> None:
    phone.go("/emergency")
    phone.tap("Fill it in")
    phone.fill("I am", "Wren Ashdown")
    phone.fill("Call", "Idris, +44 (0)1632 960-123\nThe yard")
    phone.fill("Allergies", SECRET)
    phone.tap("Done")
    phone.sees(SECRET)


def test_it_is_one_tap_away_with_no_signal_and_no_account(server, people):
    phone = people("wren")
    phone.open("/")
    phone.ready_for_the_field()
    server.stop()
    phone.page.reload()
    phone.heading("Sign in")
    phone.tap("Emergency card", role="link")
    phone.sees("Whoever finds you can read it here")
    fill_card(phone)
    phone.kill()
    phone.open("/")
    phone.tap("Emergency card", role="link")
    phone.sees("Wren Ashdown")
    call = phone.page.get_by_role("link", name="Idris")
    assert call.get_attribute("href") == "tel:+4401632960123"
    box = call.bounding_box()
    assert box["height"] >= 64
    line = phone.page.locator(".emergency dd").first
    size = line.evaluate("(element) => parseFloat(getComputedStyle(element).fontSize)")
    assert size >= 24
    phone.go("/help")  # help, too, needs neither
    phone.sees("Never school cross-country alone")


def test_it_is_one_tap_from_today_and_from_the_outing(rider):
    rider.go("/horse/new")
    rider.fill("Name", "Goldfinch")
    rider.tap(re.compile("^(Save|Add)"))
    rider.all_sent()
    rider.go("/")
    rider.tap("Emergency card", role="link")
    rider.heading("Emergency card")
    rider.go("/")
    rider.tap("Start the outing")
    rider.page.wait_for_url(re.compile("/outing/"))
    rider.tap("Emergency card", role="link")
    rider.heading("Emergency card")


def test_nothing_of_it_is_sent_exported_or_copied_and_it_can_be_deleted(rider):
    sent = []
    rider.page.on("request", lambda request: sent.append(request.post_data or ""))
    fill_card(rider)
    rider.go("/horse/new")
    rider.fill("Name", "Zanzibar")
    rider.tap(re.compile("^(Save|Add)"))
    rider.all_sent()
    assert any("Zanzibar" in body for body in sent) and not any(SECRET in body for body in sent)

    rider.go("/import")
    exported = saved_by(rider, rider.page.get_by_role("button", name="Export everything on this device").click)
    assert b"Zanzibar" in exported and SECRET.encode() not in exported

    rider.page.evaluate("reportError(new SyntaxError('Unexpected token, \"Zanzibar bit me\" is not valid JSON'))")
    rider.mistakes.clear()  # that one was ours
    rider.page.get_by_role("link", name="More").click()
    rider.tap("What this phone can do", role="link")
    rider.page.evaluate("void (navigator.clipboard.writeText = () => Promise.reject(new Error('closed')))")
    rider.tap("Copy the details")
    text = rider.page.locator("textarea[readonly]").input_value()
    details = json.loads(text)
    for personal in (SECRET, "Zanzibar", "Wren", "wren"):
        assert personal not in text
    assert details["counts"]["entries"] == 1 and details["sync"]["waiting"] == 0
    assert details["clock"]["skew_ms"] is not None and details["server_version"] and details["build"]
    assert details["mistakes"][-1]["words"].startswith("SyntaxError: Unexpected token")

    rider.go("/emergency")
    rider.tap("Change")
    rider.tap("Delete the card")
    rider.tap("Yes, delete it")
    rider.sees("Nothing is written on it yet")
    left = rider.page.evaluate(
        "new Promise((done) => { const asked = indexedDB.open('fieldtally.emergency-card'); asked.onsuccess = () =>"
        " { const all = asked.result.transaction('card').objectStore('card').getAll();"
        " all.onsuccess = () => done(all.result); }; })"
    )
    assert left == []


def test_what_the_phone_can_do_is_asked_of_it_and_said(rider):
    rider.go("/phone")
    facts = rider.page.locator("dl.facts").first
    for name in ("On the home screen", "Opens with no signal", "Keeps the screen on", "Knows where it is"):
        expect(facts).to_contain_text(name)
    row = facts.locator("dt", has_text="Opens with no signal").locator("xpath=following-sibling::dd[1]")
    expect(row).to_contain_text("Yes.")
    rider.context.set_offline(True)
    refuse = "{ value: { request: () => Promise.reject() } }"
    rider.page.evaluate(f"Object.defineProperty(Navigator.prototype, 'wakeLock', {refuse})")
    rider.page.get_by_role("link", name="More").click()
    rider.tap("What this phone can do", role="link")
    blocked = facts.locator("dt", has_text="Keeps the screen on").locator("xpath=following-sibling::dd[1]")
    expect(blocked).to_contain_text("Not now")
    expect(blocked).to_contain_text("the time stays right")
    rider.context.set_offline(False)
