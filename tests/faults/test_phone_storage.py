"""The phone's storage hangs, refuses, is emptied, is full, or its page is killed: nothing is lost unsaid.

Each test names the kind of fault; docs/faults.md has the list and where it was reported.
"""

import re

import pytest
from playwright.sync_api import expect

pytestmark = pytest.mark.xdist_group("browser")

NEVER_ANSWERS = """
  window.openings = 0;
  IDBFactory.prototype.open = function () { window.openings += 1; return new EventTarget(); };
"""
REFUSES = """
  IDBFactory.prototype.open = function () {
    throw new DOMException("A mutation operation was attempted on a database that did not allow mutations.", "InvalidStateError");
  };
"""
EMPTY_ALL = """
  async () => {
    for (const { name } of await indexedDB.databases()) indexedDB.deleteDatabase(name);
    for (const name of await caches.keys()) await caches.delete(name);
  }
"""


def add_field(phone, name: str, notes: str = "") -> None:
    phone.go("/field/new")
    phone.fill("Name", name)
    if notes:
        phone.fill("Notes", notes)
    phone.tap(re.compile("^(Save|Add)"))


def test_a_store_that_never_opens_shows_a_way_out_within_seconds(rider):
    rider.context.add_init_script(NEVER_ANSWERS)
    rider.page.reload()
    expect(rider.page.get_by_role("heading", name="The storage does not answer")).to_be_visible(timeout=4500)
    assert rider.page.evaluate("window.openings") >= 2  # a second attempt with a new request
    for way_out in ("Try again", "Reload", "Copy the details"):
        expect(rider.page.get_by_role("button", name=way_out)).to_be_visible()
    rider.tap("Copy the details")
    expect(rider.page.get_by_role("button", name="Copied").or_(rider.page.get_by_label("Copy the details"))).to_be_visible()


def test_a_browser_that_keeps_nothing_says_so_and_records_nothing(server, people):
    server.command("user", "add", "wren", "--display-name", "Wren", "--password-stdin", given="seven quiet grey mares")
    phone = people("private")
    phone.open("/")
    phone.context.add_init_script(REFUSES)
    phone.page.reload()
    phone.sign_in("wren")  # signing in still works
    phone.heading("Nothing can be kept here")
    assert phone.page.get_by_role("button", name="Start the outing").count() == 0


def test_an_emptied_store_is_noticed_and_filled_again(server, rider):
    for name in ("Thornybank", "Low Moor"):
        add_field(rider, name)
    rider.all_sent()
    rider.page.evaluate(EMPTY_ALL)
    rider.page.reload()
    rider.sees("This browser had emptied its storage")
    rider.go("/fields")
    rider.sees("Thornybank")
    rider.sees("Low Moor")
    rider.all_sent()
    server.stop()
    rider.page.reload()  # the shell was put back too
    rider.sees("Thornybank")


def test_a_full_disk_is_told_at_the_tap_and_costs_nothing_older(rider):
    add_field(rider, "Thornybank")
    rider.all_sent()
    tools = rider.context.new_cdp_session(rider.page)
    used = rider.page.evaluate("navigator.storage.estimate().then(room => room.usage)")
    tools.send("Storage.overrideQuotaForOrigin", {"origin": rider.address, "quotaSize": used + 20_000})
    told = rider.page.get_by_role("alert").filter(has_text="no room left")
    for n in range(40):
        add_field(rider, f"Field {n}", "x" * 3900)
        rider.page.wait_for_timeout(150)
        if told.count():
            break
    expect(told).to_be_visible()
    tools.send("Storage.overrideQuotaForOrigin", {"origin": rider.address})
    rider.go("/fields")
    rider.sees("Thornybank")
    add_field(rider, "After the clear-out")
    rider.heading("After the clear-out")
    expect(told).to_have_count(0)


def test_typing_survives_the_death_of_the_page(rider):
    rider.go("/field/new")
    rider.fill("Name", "Thornybank")
    rider.page.get_by_label("Notes").press_sequentially("Wet corner by the gate", delay=20)
    rider.page.wait_for_timeout(1000)  # at most the last second may be lost
    rider.kill()
    rider.open("/field/new")
    expect(rider.page.get_by_label("Name")).to_have_value("Thornybank")
    expect(rider.page.get_by_label("Notes")).to_have_value("Wet corner by the gate")
