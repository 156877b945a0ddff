"""The rider and her scribe log the same outing on two phones with no signal; afterwards both hold the same book."""

import re

import pytest
from playwright.sync_api import expect

from browser.person import PASSWORD, Person
from browser.test_journey import add_fence, add_field, add_horse, start_outing

pytestmark = pytest.mark.xdist_group("browser")


@pytest.fixture
def scribe(server, rider, people):
    server.command(
        "user", "add", "tam", "--display-name", "Tam Reed", "--scribe-of", "wren", "--password-stdin", given=PASSWORD
    )
    phone = people("tam")
    phone.open("/")
    phone.sign_in("tam")
    phone.ready_for_the_field()
    return phone


def at_fence(phone: Person, outing: str, label: str) -> None:
    phone.go(f"/outing/{outing}")
    phone.page.get_by_role("link", name=re.compile(f"^{label}")).click()
    phone.heading(label)


def clear(phone: Person, times: int) -> None:
    for _ in range(times):
        phone.thumb(phone.button("Clear"))
    expect(phone.page.get_by_text("Saved").locator("visible=true").first).to_be_visible()


def attempts(phone: Person, outing: str) -> int:
    phone.go(f"/outing/{outing}/attempts")
    phone.page.wait_for_timeout(800)
    return phone.page.locator("main a[href^='/attempt/']").count()


def test_two_phones_log_one_outing_and_settle_a_change_made_on_both(server, rider, scribe):
    add_horse(rider)
    add_field(rider)
    add_fence(rider, "1 Long log", "Log", "88")
    add_fence(rider, "2 Birch brush", "Brush", "85")
    outing = start_outing(rider)
    at_fence(rider, outing, "1 Long log")
    clear(rider, 1)
    rider.all_sent()
    scribe.go(f"/outing/{outing}")
    scribe.page.reload()
    expect(scribe.page.get_by_role("link", name=re.compile("^1 Long log"))).to_be_visible(timeout=30_000)
    scribe.go(f"/outing/{outing}/attempts")
    shared = scribe.page.locator("main a[href^='/attempt/']").first
    shared.wait_for(timeout=30_000)
    attempt = shared.get_attribute("href")

    server.stop()
    at_fence(rider, outing, "1 Long log")
    clear(rider, 2)
    at_fence(scribe, outing, "2 Birch brush")
    clear(scribe, 3)
    for phone, attitude in ((rider, "Bold"), (scribe, "Looky")):
        phone.go(attempt)
        phone.page.get_by_role("radio", name=attitude, exact=True).first.click()
        phone.page.wait_for_timeout(1200)

    server.start()
    for phone in (rider, scribe, rider):
        phone.page.reload()
        phone.page.wait_for_timeout(4000)
    assert attempts(rider, outing) == attempts(scribe, outing) == 6
    rider.go("/needs-you")
    rider.sees("Looky")
    rider.page.locator(".side", has_text="Bold").get_by_role("button").click()
    rider.sees("Settled")
    rider.all_sent()
    scribe.page.reload()
    scribe.page.wait_for_timeout(4000)
    scribe.go(attempt)
    expect(scribe.page.get_by_role("radio", name="Bold", exact=True).first).to_be_checked()
