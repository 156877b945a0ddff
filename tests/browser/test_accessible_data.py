"""axe-core finds nothing on the screens for one's own data, the emergency card and the phone, in all three looks."""

import re

import pytest
from playwright.sync_api import expect

from browser.test_accessible_times_and_results import LOOKS, in_each_look, nothing_found
from browser.test_import import PAST, choose

pytestmark = pytest.mark.xdist_group("browser")


def looked_at(phone, where: str, prepare) -> None:
    """Without signs of trouble in each look, after `prepare` has brought the page to what is looked at."""
    for look, set_look in LOOKS.items():
        phone.page.evaluate(set_look)
        phone.page.reload()
        prepare()
        phone.page.wait_for_timeout(400)
        nothing_found(phone, f"{where} in {look}")


def test_no_violations_without_an_account(server, people):
    phone = people("nobody")
    phone.open("/")
    phone.ready_for_the_field()
    in_each_look(phone, "/sign-in")
    in_each_look(phone, "/emergency")
    looked_at(phone, "/emergency, written on", lambda: phone.tap("Fill it in"))
    phone.go("/")
    phone.tap("Start on this phone")
    phone.sees("Your logbook is ready")
    for path in ("/", "/settings", "/phone", "/import", "/needs-you", "/board"):
        in_each_look(phone, path)


def test_no_violations_with_a_table_and_a_round(rider):
    rider.go("/horse/new")
    rider.fill("Name", "Goldfinch")
    rider.tap(re.compile("^(Save|Add)"))
    rider.all_sent()
    rider.go("/import")
    choose(rider, "saison.csv", PAST)
    rider.sees("3 rows")
    rider.page.wait_for_timeout(600)
    looked_at(rider, "/import with a table", lambda: rider.sees("3 rows"))
    rider.go("/")
    looked_at(rider, "/ alone", lambda: rider.choose("Is somebody with you?", "Alone"))
    rider.go("/results/new/jumping_round")
    rider.choose("Enter", "Fence by fence")
    rider.button("Clear").click()
    rider.page.wait_for_timeout(600)
    looked_at(rider, "a round", lambda: rider.sees("Fence 2"))


def test_the_table_is_worked_by_keyboard_alone(rider):
    rider.go("/import")
    choose(rider, "saison.csv", PAST)
    rider.sees("3 rows: 0 new")
    make = rider.page.get_by_label("Make them")
    make.focus()
    rider.page.keyboard.press("Space")
    rider.page.keyboard.press("Tab")
    rider.page.keyboard.press("l")
    rider.sees("3 rows: 2 new")
    button = rider.page.get_by_role("button", name="Take in 2 rows")
    button.focus()
    rider.page.keyboard.press("Enter")
    rider.sees("2 taken in")
    expect(rider.page.get_by_label(re.compile("Row 2, Ergebnis"))).to_be_visible()


def test_text_at_twice_its_size_pushes_nothing_off_a_narrow_phone(rider):
    rider.go("/horse/new")
    rider.fill("Name", "Goldfinch")
    rider.tap(re.compile("^(Save|Add)"))
    rider.all_sent()
    for path in ("/", "/import", "/emergency", "/phone", "/settings", "/results/new/jumping_round", "/sign-in"):
        rider.go(path)
        if path == "/import":
            choose(rider, "saison.csv", PAST)
            rider.sees("3 rows")
        if path == "/results/new/jumping_round":
            rider.choose("Enter", "Fence by fence")
        rider.page.evaluate("document.documentElement.style.fontSize = '200%'")
        rider.page.wait_for_timeout(300)
        wide = rider.page.evaluate("document.documentElement.scrollWidth - document.documentElement.clientWidth")
        assert wide <= 0, f"{path} is {wide} px too wide"
