"""A jumping round fence by fence, and whether somebody is there when it goes cross-country."""

import re

import pytest
from playwright.sync_api import expect

pytestmark = pytest.mark.xdist_group("browser")


@pytest.fixture
def goldfinch(rider):
    rider.go("/horse/new")
    rider.fill("Name", "Goldfinch")
    rider.tap(re.compile("^(Save|Add)"))
    rider.all_sent()
    return rider


def test_a_round_is_told_in_one_tap_a_fence_and_adds_itself_up(server, goldfinch):
    phone = goldfinch
    server.stop()
    phone.go("/results/new/jumping_round")
    phone.choose("Horse", "Goldfinch")
    phone.tap("More Height")
    phone.choose("Enter", "Fence by fence")
    taps = ["Clear"] * 3 + ["Refusal", "Clear", "Knockdown"]
    for outcome in taps:
        phone.button(outcome).click()
    phone.sees("Fence 6")
    phone.tap("It is 6A")
    phone.button("Clear").click()
    phone.sees("Fence 6B")
    phone.button("Run-out").click()
    phone.button("Undo").click()
    phone.button("Clear").click()
    phone.tap("On to 7")
    phone.button("Clear").click()
    phone.sees("8 efforts, 1 down, 1 refused")
    for button in phone.page.locator(".controls .big-button").all():
        box = button.bounding_box()
        assert box["width"] >= 64 and box["height"] >= 64
    phone.page.wait_for_timeout(500)
    phone.kill()
    phone.open("/results/new/jumping_round")
    phone.sees("8 efforts, 1 down, 1 refused")
    phone.tap("Save")
    phone.sees("Saved on this phone")
    server.start()
    phone.page.reload()
    phone.all_sent()
    phone.go("/results")
    phone.page.get_by_role("link", name=re.compile("8 efforts")).click()
    phone.sees("6A clear, 6B clear, 7 clear")


def test_going_alone_is_answered_with_what_to_do_and_stops_nobody(goldfinch):
    phone = goldfinch
    phone.go("/")
    phone.choose("Is somebody with you?", "Alone")
    phone.sees("Never school cross-country alone")
    phone.sees("tell somebody where you are, until when")
    phone.tap("Start the outing")
    phone.page.wait_for_url(re.compile("/outing/"))
    outing = phone.page.url.rsplit("/", 1)[1]
    phone.go(f"/timeline/{outing}")
    phone.sees("Somebody there")
    phone.sees("Alone")
    phone.all_sent()


def test_nobody_is_asked_for_flatwork(goldfinch):
    goldfinch.go("/")
    goldfinch.choose("What for", "Flatwork")
    expect(goldfinch.page.get_by_role("group", name="Is somebody with you?")).to_have_count(0)
