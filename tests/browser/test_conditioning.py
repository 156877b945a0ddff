"""A whole interval set as it is ridden: no signal, the page loaded anew in a canter, in a walk and between two
rates; nothing of it lost, and a slow recovery said where the next set is chosen.

The gates are the rulebook data's (at 2 minutes a heart of at most 100, at 10 minutes one of at most 80: notes of a
combined-training talk, 1998; second-hand).
"""

import re

import pytest
from playwright.sync_api import expect

from browser.person import Person
from browser.test_every_screen import EXPORT
from browser.test_recording import RECORDS, at_the_field
from browser.watching import PRETEND_PHONE

pytestmark = pytest.mark.xdist_group("browser")

MINUTE_MS = 60_000
SLOP_S = 20  # what a busy machine may take between two looks of this test


def pass_minutes(rider: Person, minutes: float) -> None:
    rider.page.evaluate("(ms) => phone.awake(ms)", minutes * MINUTE_MS)


def left_s(rider: Person) -> int:
    """What the running face says, in seconds."""
    face = rider.page.locator(".face__whole")
    expect(face).to_have_text(re.compile(r"^\d+:\d\d$"))  # it is drawn a frame later than the words above it
    minutes, seconds = face.inner_text().split(":")
    return 60 * int(minutes) + int(seconds)


def now_is(rider: Person, words: str) -> None:
    expect(rider.page.locator(".set-now")).to_have_text(words)


def take_rates(rider: Person, heart: int, breath: int) -> None:
    """By the buttons in tens; the first tap of each begins at 80 and at 40."""
    for name, first, rate in (("Heart", 80, heart), ("Breathing", 40, breath)):
        for _ in range((rate - first) // 10 + 1):
            rider.tap(re.compile(f"^10 more: {name}"))
        group = rider.page.get_by_role("group", name=re.compile(f"^{name}")).get_by_role("status")
        expect(group).to_have_text(str(rate))


def at_a_set(server, rider: Person) -> None:
    """A horse on the phone, and no signal."""
    rider.context.add_init_script(PRETEND_PHONE)
    rider.go("/horse/new")
    rider.fill("Name", "Bracken Lane")
    rider.tap(re.compile("^Save"))
    rider.all_sent()
    server.stop()
    rider.go("/conditioning")
    rider.sees("30:00 in all; walk first")  # 15 of walk, three canters of 3 with 3 of walk between


def ride_the_set(rider: Person) -> None:
    rider.tap(re.compile("^START"))
    rider.sees("Kept on this phone")
    now_is(rider, "WALK")
    pass_minutes(rider, 15)
    now_is(rider, "CANTER 1 of 3")
    pass_minutes(rider, 1)
    rider.page.reload()
    now_is(rider, "CANTER 1 of 3")
    assert 120 - SLOP_S <= left_s(rider) <= 120
    pass_minutes(rider, 2)
    now_is(rider, "WALK")
    rider.tap(re.compile(r"^\+1 min walk"))
    rider.sees("One minute of walk more.")
    rider.page.reload()
    now_is(rider, "WALK")
    assert 240 - SLOP_S <= left_s(rider) <= 240
    pass_minutes(rider, 4)
    now_is(rider, "CANTER 2 of 3")
    pass_minutes(rider, 3)
    now_is(rider, "WALK")
    rider.tap(re.compile("^CANTER NOW"))
    now_is(rider, "CANTER 3 of 3")
    pass_minutes(rider, 3)
    rider.page.wait_for_url(re.compile("/conditioning/set/"))


def recover(rider: Person) -> None:
    rider.sees("since the last canter")
    pass_minutes(rider, 2)
    rider.sees("TAKE THE RATES")
    take_rates(rider, 90, 40)
    rider.has_drafted('"breath":40')
    rider.page.reload()
    rider.sees("since the last canter")
    expect(rider.page.get_by_role("group", name=re.compile("^Heart")).get_by_role("status")).to_have_text("90")
    rider.tap("Keep these rates")
    rider.sees("At 2 min: heart 90, breathing 40")
    pass_minutes(rider, 8)
    take_rates(rider, 90, 40)
    rider.tap("Keep these rates")
    rider.sees("At 10 min: heart 90, breathing 40")
    rider.sees("Slower than it should be")
    rider.page.reload()
    rider.sees("At 2 min: heart 90, breathing 40")
    rider.sees("Slower than it should be")
    rider.tap("Done taking rates")
    expect(rider.page.get_by_text("since the last canter")).to_have_count(0)


def test_a_whole_set_and_its_recovery_without_signal_and_through_reloads(server, rider):
    at_a_set(server, rider)
    ride_the_set(rider)
    recover(rider)
    rider.go("/conditioning")
    rider.sees("The last recovery was slow")
    server.start()
    rider.page.reload()
    rider.all_sent()
    sent = [one for one in rider.page.evaluate(EXPORT) if one["kind"] == "interval_set"]
    assert len({one["record_id"] for one in sent}) == 1
    as_ridden(sent[-1]["body"])


def as_ridden(body: dict) -> None:
    first, second, third = body["intervals"]
    assert abs(first["work_s"] - 180) <= 1 and abs(first["rest_s"] - 240) <= 1
    assert abs(second["work_s"] - 180) <= 1 and second["rest_s"] <= SLOP_S, "the walk cut short by a tap"
    assert abs(third["work_s"] - 180) <= 1 and third["rest_s"] == 0
    assert [(one["minute"], one["heart_rate_bpm"], one["respiration_bpm"]) for one in body["recoveries"]] == [
        (2, 90, 40), (10, 90, 40),
    ]  # fmt: skip
    assert body["from_memory"] is False


def test_a_set_ended_before_its_first_canter_keeps_nothing_and_can_go_on(rider):
    """A slip on “End the set” is undone by one tap; the clock has run on."""
    rider.context.add_init_script(PRETEND_PHONE)
    rider.go("/horse/new")
    rider.fill("Name", "Bracken Lane")
    rider.tap(re.compile("^Save"))
    rider.all_sent()
    rider.go("/conditioning")
    rider.tap(re.compile("^START"))
    rider.sees("Kept on this phone")
    pass_minutes(rider, 5)
    rider.tap("End the set")
    rider.sees("Ended before a canter: nothing is kept.")
    rider.tap("Undo")
    now_is(rider, "WALK")
    assert 600 - SLOP_S <= left_s(rider) <= 600
    rider.all_sent()
    assert [one for one in rider.page.evaluate(EXPORT) if one["kind"] == "interval_set"] == []


def test_any_outing_has_a_door_to_a_set_of_its_own(rider):
    """Canters are ridden after a cross-country school too: the set belongs to that outing, not to a new one."""
    outing = at_the_field(rider)
    rider.go(outing)
    door = rider.page.get_by_role("link", name="Interval set")
    assert door.bounding_box()["height"] >= 64
    door.click()
    rider.sees("30:00 in all; walk first")
    rider.tap(re.compile("^START"))
    now_is(rider, "WALK")
    rider.page.wait_for_timeout(1500)  # kept at once, as every start
    rows = rider.page.evaluate(RECORDS, "outing")
    assert [f"/outing/{row['record_id']}" for row in rows] == [outing]
