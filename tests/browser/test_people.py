"""The rider lets a coach in by a link, and out again; everybody looks after their own account."""

import re

import pytest
from playwright.sync_api import expect

from browser.person import DESK, PASSWORD

NEW = "four drops one bank"


@pytest.fixture
def wren(server, people):
    server.command("user", "add", "wren", "--display-name", "Wren Hollis", "--password-stdin", given=PASSWORD)
    rider = people("wren")
    rider.open("/")
    rider.sign_in("wren")
    return rider


def invite(rider, role: str) -> str:
    """The address of a new invitation."""
    rider.go("/people")
    rider.choose("As", role)
    rider.tap("Make an invitation")
    return rider.page.locator(".link-to-copy").inner_text()


def join(coach, link: str) -> None:
    coach.open(link.removeprefix(coach.address))
    coach.sees("Wren Hollis invites you to the logbook of Wren Hollis, as Coach.")
    coach.fill("Your name", "Maren Oduya")
    coach.fill("Sign-in name", "maren")
    coach.fill("Password", NEW)
    coach.tap("Make an account and join")
    expect(coach.page.get_by_role("navigation", name="Main")).to_be_visible()


def test_a_coach_joins_by_a_link_and_is_put_out_again(wren, people):
    link = invite(wren, "Coach")
    coach = people("maren", DESK)
    join(coach, link)
    coach.heading("Today")
    wren.go("/people")
    wren.sees("Maren Oduya")
    expect(wren.page.get_by_text("Not taken up yet")).to_have_count(0)
    wren.tap("Put Maren Oduya out")
    wren.sees(re.compile("will see nothing new"))
    wren.tap("Put Maren Oduya out")
    expect(wren.page.get_by_text("Maren Oduya")).to_have_count(0)
    coach.page.reload()
    coach.heading("No logbook yet")
    coach.tap("Open my own logbook")
    coach.heading("Today")


def test_a_used_link_says_so_in_words(wren, people):
    link = invite(wren, "Reader")
    join_as_reader = people("first", DESK)
    join_as_reader.open(link.removeprefix(wren.address))
    join_as_reader.fill("Your name", "First")
    join_as_reader.fill("Sign-in name", "first")
    join_as_reader.fill("Password", NEW)
    join_as_reader.tap("Make an account and join")
    join_as_reader.heading("Today")
    late = people("late", DESK)
    late.open(link.removeprefix(wren.address))
    late.sees(re.compile("used, withdrawn or out of date"))


def test_a_lost_phone_is_signed_out_and_the_account_deleted(wren, people):
    lost = people("lost")
    lost.open("/")
    lost.sign_in("wren")
    wren.go("/account")
    expect(wren.page.get_by_text("(this one)")).to_have_count(1)
    wren.tap("Sign out there")
    expect(wren.page.get_by_role("button", name="Sign out there")).to_have_count(0)
    wren.tap("Delete your account …")
    wren.sees(re.compile("The logbook of Wren Hollis goes with everything in it"))
    form = wren.page.locator(".notice--stop form")
    form.get_by_label("Your password now").fill("not this one at all")
    wren.tap("Delete it for good")
    wren.sees("This is not your password. Type it again.")
    form.get_by_label("Your password now").fill(PASSWORD)
    wren.tap("Delete it for good")
    wren.heading(re.compile("Sign in|Make the first account"))
    assert wren.page.evaluate("indexedDB.databases().then((all) => all.length)") == 0
