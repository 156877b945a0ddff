"""A record the server will not take: kept on the phone with the reason, to be mended, exported or let go.

The real server refuses; the body is spoiled on its way, as a mistake of an older phone would be.
"""

import json
import re

import pytest
from playwright.sync_api import Route, expect

from browser.person import Person

pytestmark = pytest.mark.xdist_group("browser")


def spoil_on_the_way(phone: Person, change) -> None:
    """`change` alters every entry of every push that goes out from now on."""

    def spoil(route: Route) -> None:
        if route.request.method != "POST":
            return route.continue_()
        push = json.loads(route.request.post_data)
        for entry in push["entries"]:
            change(entry)
        return route.continue_(post_data=json.dumps(push))

    phone.context.route("**/api/logbooks/*/entries*", spoil)


def negative_height(entry: dict) -> None:
    if entry["kind"] == "fence":
        entry["body"]["height_cm"] = -3


def fence_and_field(phone: Person) -> None:
    phone.go("/field/new")
    phone.fill("Name", "Thornybank")
    phone.tap(re.compile("^(Save|Add)"))
    phone.heading("Thornybank")
    phone.tap(re.compile("Add a fence"), "link")
    phone.fill("Name or number", "1 Long log")
    phone.choose("How it is built", "Log")
    phone.fill(re.compile("^Height"), "88")
    phone.tap(re.compile("Add the fence"))
    phone.heading("Thornybank")


@pytest.fixture
def refused(rider):
    """A rider whose one fence was refused; its neighbour, the field, was taken."""
    spoil_on_the_way(rider, negative_height)
    fence_and_field(rider)
    expect(rider.page.locator(".top__state")).to_contain_text("1 record needs you", timeout=30_000)
    rider.context.unroute_all()
    rider.tap(re.compile("1 record needs you"), "link")
    rider.sees("1 Long log")
    return rider


def test_it_says_what_is_wrong_and_how_to_mend_it_and_outlives_a_restart(refused):
    refused.sees(re.compile("-3 cm is outside 1 to 250"))
    refused.sees(re.compile("Enter a value from 1 to 250 cm"))
    refused.close()
    refused.open("/needs-you")
    refused.sees(re.compile("-3 cm is outside 1 to 250"))


def test_mended_it_is_sent_and_taken(refused):
    refused.tap("Mend")
    refused.page.get_by_label(re.compile("corrected")).fill("90")
    refused.tap("Save and send again")
    refused.all_sent()
    refused.sees("Nothing needs you.")
    refused.go("/fields")
    refused.tap(re.compile("Thornybank"), "link")
    refused.sees(re.compile("90 cm high"))


def test_it_can_be_saved_as_a_file_and_let_go(refused):
    with refused.page.expect_download() as told:
        refused.tap("Export")
    kept = json.loads(told.value.path().read_text(encoding="utf-8"))
    assert "1 Long log" in json.dumps(kept)
    refused.tap("Discard")
    refused.tap("Discard for good")
    refused.sees("Nothing needs you.")
    refused.all_sent()
