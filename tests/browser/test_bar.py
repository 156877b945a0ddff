"""A coach turns the bar: she sees what it does before she saves it, what cannot be meant is refused, the rider reads
who changed what and why beside the finding, two coaches' changes both stay, and a phone with no signal says so."""

import re
from datetime import date
from uuid import uuid4

import pytest
from playwright.sync_api import expect

from browser.person import PASSWORD, PHONE
from browser.test_every_screen import faults
from browser.test_recording import PUSH, entry

pytestmark = pytest.mark.xdist_group("browser")

EXPORT = """async () => {
  const { logbooks } = await (await fetch('/api/session')).json();
  const { entries } = await (await fetch(`/api/logbooks/${logbooks[0].id}/export`)).json();
  return entries.filter((one) => one.kind === 'bar_change').map((one) => one.body);
}"""
REFUSED = {
    "": "Write a number.",
    "99": "From 0 to 50.",
    "1.5": "A whole number.",
    "2": "That is what it is now.",
}
ASKED = {"rulebook_id": "us-2025", "level_id": "novice", "requirement_id": "horses", "quantity": "horses"}


@pytest.fixture
def horse(rider):
    """A horse at the lowest level, ridden once: of the two horses that the bar asks of a rider, one."""
    ids = [str(uuid4()) for _ in range(2)]
    body = {"name": "Bracken Lane", "rulebook_id": "us-2025", "present_level_id": "beginner_novice"}
    day = {"horse_id": ids[0], "date": str(date.today()), "activity": "flatwork"}
    rider.page.evaluate(PUSH, [entry("horse", body, ids[0]), entry("outing", day, ids[1])])
    rider.page.reload()
    rider.all_sent()
    return ids[0]


@pytest.fixture
def coaches(server, horse, people):
    """Two coaches of the rider, each on a phone that is kept for the field."""
    found = []
    for name, display_name in (("idris", "Idris Vale"), ("odile", "Odile Brand")):
        server.command(
            "user", "add", name, "--display-name", display_name, "--coach-of", "wren", "--password-stdin",
            given=PASSWORD,
        )  # fmt: skip
        phone = people(name, PHONE)
        phone.open("/")
        phone.sign_in(name)
        phone.ready_for_the_field()
        found.append(phone)
    return found


def opened(person, horse: str):
    """The bar's part about the horses ridden, opened."""
    person.go(f"/bar/{horse}/novice")
    part = person.page.locator("details").filter(has=person.page.locator("summary", has_text="Horses ridden"))
    part.locator("summary").click()
    return part


def turned(part, value: str):
    """The number chosen, the value typed, and the answer asked for."""
    part.get_by_label("Change").select_option("horses")
    part.get_by_label(re.compile("^New value")).fill(value)
    part.get_by_role("button", name="See what it does").click()


def kept(person, part, reason: str) -> None:
    part.get_by_label("Why").fill(reason)
    part.get_by_role("button", name="Save the change").click()
    person.sees("Changed; standings follow")


def changes(person):
    heading = person.page.get_by_role("heading", name="Changes so far")
    return person.page.locator("section").filter(has=heading).locator("li")


def test_a_change_is_seen_before_it_is_saved_and_the_rider_reads_who_and_why(rider, horse, coaches):
    coach, _ = coaches
    part = opened(coach, horse)
    save = part.get_by_role("button", name="Save the change")
    expect(part).to_contain_text("Where it comes from: common practice, no source")
    for value, trouble in REFUSED.items():
        turned(part, value)
        expect(part.get_by_label(re.compile("^New value"))).to_have_attribute("aria-invalid", "true")
        expect(part).to_contain_text(trouble)
        expect(save).to_have_count(0)
    turned(part, "1")
    expect(part).to_contain_text("1 finding would change")
    expect(part).to_contain_text("The change holds for every horse of this logbook at this level.")
    assert faults(coach.page, "the bar, answered") == []
    save.click()
    expect(part).to_contain_text("Say why")
    assert coach.page.evaluate(EXPORT) == []
    kept(coach, part, "She rides one horse, and rides it well.")
    coach.all_sent()
    assert coach.page.evaluate(EXPORT) == [ASKED | {"value": 1, "reason": "She rides one horse, and rides it well."}]
    rider.go(f"/finding/{horse}/novice/horses")
    rider.page.reload()
    rider.sees("horses ridden: 1 instead of 2. “She rides one horse, and rides it well.”")
    rider.sees(re.compile("Idris Vale, "))
    assert faults(rider.page, "a finding whose bar was changed") == []
    part = opened(rider, horse)
    expect(part).to_contain_text("She rides one horse")
    expect(rider.page.get_by_text("Only the coach changes the bar.")).to_be_visible()
    expect(rider.page.get_by_role("button", name="Take back")).to_have_count(0)
    expect(part.locator("select")).to_have_count(0)


def test_two_coaches_who_change_one_number_both_stay_and_the_later_counts_until_it_is_taken_back(horse, coaches):
    first, second = coaches
    for coach, value, reason in ((first, "1", "One is enough."), (second, "4", "Four, I say.")):
        part = opened(coach, horse)  # neither has read the other's
        coach.context.set_offline(True)
        turned(part, value)
        expect(part).to_contain_text("No signal: what it does is worked out on the server")
        kept(coach, part, reason)
        coach.waits(1)
        expect(changes(coach)).to_contain_text(["not sent yet"])
    for coach in coaches:
        coach.context.set_offline(False)
        coach.page.reload()
        coach.all_sent()
    first.page.reload()
    expect(changes(first)).to_have_count(2, timeout=30_000)
    expect(changes(first).nth(0)).to_contain_text("Odile Brand")
    expect(changes(first).nth(1)).to_contain_text(re.compile("One is enough.*a later change counts instead"))
    expect(opened(first, horse)).to_contain_text("horses ridden: 4 instead of 2")
    changes(first).nth(0).get_by_role("button", name="Take back").click()
    expect(changes(first)).to_have_count(1)
    first.all_sent()
    first.page.reload()
    expect(opened(first, horse)).to_contain_text("horses ridden: 1 instead of 2", timeout=30_000)
