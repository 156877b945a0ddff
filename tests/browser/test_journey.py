"""The main job as its users live it: a field with no signal, a lorry with some, a coach at home.

The server is really stopped and started again; nothing here only pretends to be offline.
"""

import re

import pytest
from playwright.sync_api import expect

from browser.person import Person

pytestmark = pytest.mark.xdist_group("browser")


def add_horse(phone: Person) -> None:
    phone.go("/horse/new")
    phone.fill("Name", "Bracken Lane")
    phone.page.get_by_label("Rulebook").select_option("us-2025")
    phone.page.get_by_label(re.compile("level", re.I)).last.select_option("beginner_novice")
    phone.tap(re.compile("^Save"))
    phone.sees("Bracken Lane")


def add_field(phone: Person) -> None:
    phone.go("/field/new")
    phone.fill("Name", "Thornybank")
    phone.tap(re.compile("^(Save|Add)"))
    phone.heading("Thornybank")


def add_fence(phone: Person, label: str, profile: str, height: str) -> None:
    phone.tap(re.compile("Add a fence"), "link")
    phone.fill("Name or number", label)
    phone.choose("How it is built", profile)
    phone.fill(re.compile("^Height"), height)
    phone.tap(re.compile("Add the fence"))
    phone.heading("Thornybank")
    phone.sees(label)


def start_outing(phone: Person) -> str:
    phone.go("/")
    phone.page.get_by_text("Going, confidence, another day").click()
    phone.choose("Field", "Thornybank")
    phone.choose("Going", "Good")
    phone.choose("Rider’s confidence", re.compile("^4"))
    phone.tap("Start the outing")
    phone.page.wait_for_url(re.compile("/outing/"))
    caution = phone.page.get_by_role("button", name="I have read this")
    if caution.count():
        caution.first.click()
    return re.search(r"/outing/([0-9a-f-]+)", phone.page.url)[1]


def test_first_run_makes_the_first_account(people):
    phone = people("first")
    phone.open("/")
    phone.fill("Your name", "Wren Ashdown")
    phone.fill("Sign-in name", "wren")
    phone.fill("Password", "seven quiet grey mares")
    phone.tap("Make the account")
    phone.sees("Your logbook is ready")


def test_from_the_field_to_the_coach_and_back(server, rider, coach):
    add_horse(rider)
    add_field(rider)
    add_fence(rider, "1 Long log", "Log", "88")
    add_fence(rider, "2 Birch brush", "Brush", "85")
    rider.all_sent()

    server.stop()
    rider.page.reload()
    rider.go("/fields?from=home-screen")
    rider.sees("Thornybank")

    outing = start_outing(rider)
    tap_attempts(rider, outing)
    time_a_canter(rider, outing)
    waiting = rider.waiting()
    assert waiting >= 9

    rider.kill()
    rider.open(f"/outing/{outing}")
    rider.sees("1 Long log")
    assert rider.waiting() >= waiting  # what was on its way to the disk may have arrived

    server.start()
    rider.page.reload()
    rider.all_sent()
    read_the_board(rider)

    the_coach_answers(coach, outing)

    rider.go(f"/timeline/{outing}")
    rider.page.reload()
    rider.sees("Eyes up before the brush")
    rider.go("/board")
    rider.tap(re.compile("^Novice"), "link")
    rider.sees("Brush first, then we talk")
    server.stop()
    rider.page.reload()
    rider.sees("Brush first, then we talk")
    rider.sees(re.compile("As of .* from line"))


def tap_attempts(phone: Person, outing: str) -> None:
    phone.tap(re.compile("1 Long log"), "link")
    clear = phone.page.get_by_role("button", name=re.compile("^Clear"))
    clear.click()
    expect(clear).to_contain_text("1")
    phone.thumb(clear)
    expect(clear).to_contain_text("2")
    phone.thumb(phone.button("Not clear"))
    phone.thumb(phone.button("Refusal"))
    phone.sees("Today: 2 clear, 1 refusal")
    phone.thumb(phone.button("Undo"))
    phone.sees(re.compile("^Today: 2 clear$"))
    phone.thumb(phone.button("Not clear"))
    phone.thumb(phone.button("Run-out"))
    phone.sees("Today: 2 clear, 1 run-out")

    phone.go(f"/outing/{outing}/made-up")
    phone.choose("How it is built", "Rail")
    phone.fill(re.compile("What you call it"), "Hay rail")
    phone.fill(re.compile("^Height"), "2'9\"")
    phone.tap("Use this fence")
    phone.page.get_by_role("button", name=re.compile("^Clear")).click()
    expect(phone.page.get_by_role("button", name=re.compile("^Clear"))).to_contain_text("1")


def time_a_canter(phone: Person, outing: str) -> None:
    phone.go("/tracks/new")
    phone.fill("Name", "Top hedge")
    phone.fill(re.compile("^Distance"), "20")
    phone.choose("How it was measured", "Wheel")
    phone.tap("Save track")
    phone.heading("Top hedge")
    phone.page.wait_for_timeout(1000)  # leaving the page in the same breath would leave the writing behind
    phone.go(f"/watch?outing={outing}")
    phone.tap(re.compile("START"))
    phone.sees(re.compile("STOP"))
    phone.page.wait_for_timeout(1500)
    phone.page.reload()  # the run goes on without the page
    phone.page.wait_for_timeout(700)
    phone.tap(re.compile("STOP"))
    phone.sees(re.compile(r"\d+ ± \d+ m/min"))


def read_the_board(phone: Person) -> None:
    phone.go("/board")
    phone.sees("working towards")
    phone.tap(re.compile("^Novice"), "link")
    phone.sees("Fixed fence at height")
    phone.tap(re.compile("Fixed fence at height"), "link")
    phone.sees("Behind it")
    phone.sees("1 Long log")


def the_coach_answers(coach: Person, outing: str) -> None:
    coach.open("/")
    coach.sign_in("idris")
    coach.go("/roster")
    coach.sees("Wren Ashdown")
    coach.sees("Stops you have not answered")
    coach.go(f"/timeline/{outing}")
    coach.sees("1 Long log")
    coach.tap("Remark on the whole outing")
    coach.fill("Remark on the whole outing", "Eyes up before the brush")
    coach.tap("Save")
    coach.sees("Eyes up before the brush")
    coach.go("/board")
    coach.tap(re.compile("^Novice"), "link")
    coach.tap("Give your word")
    coach.choose("Decision", "Not yet")
    coach.fill("Reason", "Brush first, then we talk")
    coach.tap("Save the word")
    coach.sees("Brush first, then we talk")
    coach.all_sent()
