"""A long list of fences on a phone: chips for what they ask, each with its count, by thumb and by keyboard; starred
fences first."""

import re

import pytest
from playwright.sync_api import expect

from browser.test_every_screen import IDS

pytestmark = pytest.mark.xdist_group("browser")


def listed(phone) -> list[str]:
    return phone.page.locator(".fence-row .row__title").all_inner_texts()


def chip(phone, words: str):
    return phone.page.get_by_role("group", name="What it asks").get_by_role("radio", name=re.compile(f"^{words}"))


@pytest.fixture
def outing(season):
    season.go("/outing/{outing}".format(**season.page.evaluate(IDS)))
    expect(season.page.locator(".fence-row").first).to_be_visible()
    return season


def back(phone) -> None:
    phone.page.get_by_role("link", name=re.compile("^Back")).or_(phone.page.get_by_role("button", name="Back")).click()


def test_chips_count_what_they_leave_stay_on_one_line_and_answer_to_arrow_keys(outing):
    every = listed(outing)
    chips = outing.page.locator(".ask-chips .chip__words").all_inner_texts()
    assert chips[0] == "Any kind" and len(chips) > 4
    for words in chips[1:]:
        ask, count = re.fullmatch(r"(.+) · (\d+)", words).groups()
        chip(outing, re.escape(ask)).check()
        expect(outing.page.locator(".fence-row")).to_have_count(int(count))
    boxes = [one.bounding_box() for one in outing.page.locator(".ask-chips .chip").all()]
    assert min(min(box["width"], box["height"]) for box in boxes) >= 44
    assert len({round(box["y"]) for box in boxes}) == 1
    outing.page.locator(".fence-row").first.click()
    back(outing)
    last = outing.page.locator(".ask-chips .chip").last
    expect(last.locator("input")).to_be_checked()
    expect(last).to_be_in_viewport(ratio=0.9)
    last.locator("input").focus()
    outing.page.keyboard.press("ArrowRight")  # from the last on to the first, as radio buttons do
    expect(chip(outing, "Any kind")).to_be_checked()
    assert listed(outing) == every


def test_a_star_puts_a_fence_first(outing):
    last = listed(outing)[-1]
    outing.page.locator(".fence-row").last.click()
    outing.tap("Favourite")
    expect(outing.page.get_by_role("button", name="Favourite")).to_have_attribute("aria-pressed", "true")
    back(outing)
    expect(outing.page.locator(".fence-row").first).to_contain_text(last)
