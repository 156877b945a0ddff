"""The fence form says live which level a fence fits, and a correction moves it with no signal; the server follows."""

import json
import re
import time
from datetime import date

import pytest
from playwright.sync_api import Locator, expect

from browser.person import Person
from browser.test_journey import add_horse

pytestmark = pytest.mark.xdist_group("browser")


@pytest.fixture
def phone(rider):
    """A rider with a horse under us-2025, whose novice fixed height is 90 cm."""
    add_horse(rider)
    rider.all_sent()
    return rider


def fit_of(phone: Person, profile: str, **measured: str) -> Locator:
    """What the form of a new fence says of one with these measurements."""
    phone.go("/fence/new")
    afresh = phone.button("Forget what I typed")
    either = afresh.or_(phone.page.get_by_label("Name or number"))
    either.first.wait_for()
    if afresh.is_visible():
        afresh.click()
    phone.choose("How it is built", profile)
    for name, text in measured.items():
        phone.fill(re.compile(f"^{name.replace('_', ' ')}$"), text)
    return phone.page.get_by_role("region", name="Which level it fits")


def open_value(phone: Person, wanted: str, name: str) -> None:
    phone.go("/levels")
    phone.choose("Level", "Novice")
    phone.fill("Find a value", wanted)
    phone.page.locator("summary").filter(has_text=name).first.click()
    phone.tap("Correct this value")


def correct(phone: Person, value: str) -> None:
    phone.fill(re.compile("Value in the rulebook"), value)
    phone.fill("Edition in your hand", "2027")
    phone.fill("Article or page", "EV140")
    phone.tap("Save the correction")


def standing_of(phone: Person, level: str) -> dict:
    """What the server says of the one horse at a level."""
    asked = """async () => {
      const { logbooks } = await (await fetch("/api/session")).json();
      return (await fetch(`/api/logbooks/${logbooks[0].id}/standings`)).text();
    }"""
    (standing,) = [each for each in json.loads(phone.page.evaluate(asked))["standings"] if each["level_id"] == level]
    return standing


def may_enter(phone: Person, level: str) -> str:
    """The state of the finding about the entry rules of a level."""
    findings = standing_of(phone, level)["findings"]
    (finding,) = [each for each in findings if each["requirement_id"] == "eligibility"]
    assert finding["phase"] == "results"
    return finding["state"]


def comes_to(phone: Person, level: str, state: str) -> None:
    """Waits for what was saved to be sent and weighed."""
    deadline = time.monotonic() + 30
    while (found := may_enter(phone, level)) != state:
        assert time.monotonic() < deadline, f"{level} stays {found}, never {state}"
        phone.page.wait_for_timeout(200)


def test_the_form_says_live_what_a_fence_fits(phone):
    says = fit_of(phone, "Table", Height="2'11\"")
    expect(says).to_contain_text("Not decided: nothing measured is too big for Novice")
    expect(says).to_contain_text("Height 88.9 cm: 1.1 cm under the limit of 90 cm (Governing body)")
    expect(says).to_contain_text("Top spread: not measured; the limit is 100 cm")
    expect(says).to_contain_text("Too big for Beginner Novice. Height 88.9 cm: 8.9 cm over the limit of 80 cm")
    phone.fill(re.compile("^Top spread$"), "90")
    phone.fill(re.compile("^Base spread$"), "145")
    expect(says).to_contain_text("Novice is the lowest level that admits it")
    phone.fill(re.compile("^Base spread$"), "200")
    expect(says).to_contain_text("Straight fences with a spread of 2 m or more went with more falls of horses.")
    expect(says).to_contain_text("Check the limits in the rulebook in force.")
    assert "safe" not in says.inner_text().lower()


def test_lengths_are_said_in_the_persons_units(phone):
    phone.go("/settings")
    phone.choose("Heights and distances", "ft, in and yd")
    says = fit_of(phone, "Log", Height="36in")
    expect(says).to_contain_text("Height 3'0\": 3.4 in under the limit of 3'3\"")
    expect(says).to_contain_text("Too big for Novice. Height 3'0\": 0.6 in over the limit of 2'11\"")


def test_a_correction_counts_at_once_on_the_phone_and_after_the_sync_on_the_server(phone, server):
    expect(fit_of(phone, "Log", Height="92")).to_contain_text("Training is the lowest level that admits it")
    server.stop()
    open_value(phone, "fixed", "Fixed height")
    correct(phone, "0.95")
    phone.sees("That cannot be meant: this goes from 30 cm to 150 cm. Check the unit.")
    correct(phone, "95")
    phone.sees("Corrected in this logbook")
    expect(fit_of(phone, "Log", Height="92")).to_contain_text("Novice is the lowest level that admits it")
    open_value(phone, "age", "Rider’s age, at least")
    correct(phone, "12")
    server.start()
    phone.go("/")
    phone.all_sent()
    open_value(phone, "fixed", "Fixed height")
    phone.tap("Put the old value back")
    phone.sees("Governing body")
    expect(fit_of(phone, "Log", Height="92")).to_contain_text("Training is the lowest level that admits it")


def test_a_corrected_entry_gate_reaches_the_board(phone):
    """us-2025 asks four years of a novice horse; this one is nine."""
    horse_id = standing_of(phone, "novice")["horse_id"]
    phone.go(f"/horse/{horse_id}")
    phone.fill("Year of birth", str(date.today().year - 9))
    phone.tap(re.compile("^Save"))
    comes_to(phone, "novice", "shown")
    open_value(phone, "horse", "Horse’s age")
    correct(phone, "11")
    comes_to(phone, "novice", "on_hold")
    phone.go(f"/finding/{horse_id}/novice/eligibility")
    phone.sees(re.compile("turns 11 in"))
    open_value(phone, "horse", "Horse’s age")
    phone.tap("Put the old value back")
    comes_to(phone, "novice", "shown")


def test_a_correction_that_changes_nothing_is_said_and_can_be_taken_back(phone):
    """As another program, or a rulebook since replaced, may leave one: the phone's own form refuses it."""
    asked = """async (body) => {
      const { logbooks } = await (await fetch("/api/session")).json();
      const now = new Date().toISOString();
      const entry = {
        id: crypto.randomUUID(), record_id: crypto.randomUUID(), supersedes: [], kind: "rulebook_value",
        kind_version: 1, body, recorded_at: now, utc_offset_min: 0, local_date: now.slice(0, 10), clock: null,
      };
      const device = crypto.randomUUID();
      const push = { protocol: 1, app: "0.1.0", device, sent_at: now, log_id: null, entries: [entry] };
      const headers = { "X-Fieldtally": "1", "Content-Type": "application/json" };
      const told = { method: "POST", headers, body: JSON.stringify(push) };
      return (await (await fetch(`/api/logbooks/${logbooks[0].id}/entries`, told)).json()).answers[0].result;
    }"""
    where = {"rulebook_id": "us-2025", "level_id": "novice", "phase": "cross_country", "quantity": "fixed_height_cm"}
    assert phone.page.evaluate(asked, where | {"value": 0.9, "edition": "2027", "article": "EV140"}) == "accepted"
    phone.go("/levels")
    phone.sees("A correction that changes nothing")
    phone.sees("Fixed height, novice: 0.9. That cannot be meant in its unit.")
    expect(fit_of(phone, "Log", Height="88")).to_contain_text("Novice is the lowest level that admits it")
    phone.go("/levels")
    phone.tap("Take the correction back")
    expect(phone.page.get_by_text("A correction that changes nothing")).to_have_count(0)


def test_rulebooks_in_force_come_before_the_older_editions(phone):
    phone.go("/horse/new")
    box = phone.page.get_by_label("Rulebook")
    box.locator("optgroup option").first.wait_for(state="attached")
    every = [each.get_attribute("value") for each in box.get_by_role("option").all()]
    older = [each.get_attribute("value") for each in box.locator("optgroup[label='Older editions'] option").all()]
    assert "us-2014" in older and "us-2025" not in older
    assert every[-len(older) :] == older
