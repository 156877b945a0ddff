"""The stopwatch's modes in a real browser: repeated canters, minute markers, keys, fences on the clock.

The fault is that of docs/faults.md: a page thrown away (ST-09).
"""

import re

import pytest
from playwright.sync_api import expect

from browser.watching import (
    PRETEND_PHONE,
    RECORDS,
    canters,
    choose_target,
    open_watch,
    opened_watch,
    shown_canter,
    start,
    start_button,
    stop,
    stop_button,
)

pytestmark = pytest.mark.xdist_group("browser")


@pytest.fixture
def rider(saddled):
    """The phone just opened, with nothing running; afterwards no error thrown by a page."""
    yield from opened_watch(saddled)


def test_the_same_canter_again_is_one_tap_and_makes_a_set(rider):
    rider.context.add_init_script(PRETEND_PHONE)
    choose_target(rider)
    times = []
    for n, seconds in enumerate((17, 18, 19), 1):
        start(rider)
        rider.page.evaluate(f"phone.awake({seconds}000)")
        rider.page.wait_for_timeout(300)
        stop(rider)
        times.append(shown_canter(rider)["elapsed_ms"])
        if n < 3:
            rider.tap(re.compile("^Again"))
            expect(start_button(rider)).to_be_visible()
            rider.sees(re.compile(rf"^Next: canter {n + 1} of the set"))
    speeds = [6_000_000 / ms for ms in times]
    mean = sum(speeds) / 3
    spread = (sum((v - mean) ** 2 for v in speeds) / 2) ** 0.5
    rider.sees("3 canters of this set")
    rider.sees(re.compile(rf"Mean {round(mean)} ± \d+ m/min"))
    rider.sees(re.compile(rf"They scatter by {round(spread)} m/min"))
    for n, mpm in enumerate(speeds, 1):
        row = rider.page.get_by_role("link", name=re.compile(rf"{round(mpm)} ± \d.*Canter {n} of the set"))
        expect(row).to_be_visible()
    expect(rider.page.get_by_role("img", name=re.compile("^3 canters over this stretch"))).to_be_visible()
    # another set-up is no longer this set
    rider.tap(re.compile("^Again"))
    rider.tap("Change")
    rider.tap("More Target speed")
    expect(rider.page.get_by_text(re.compile("of the set"))).to_have_count(0)


def test_a_set_survives_the_death_of_the_browser(rider):
    rider.context.add_init_script(PRETEND_PHONE)
    open_watch(rider)
    start(rider)
    rider.page.evaluate("phone.awake(17000)")
    stop(rider)
    rider.tap(re.compile("^Again"))
    start(rider)
    rider.kill()
    rider.open("/watch")
    expect(stop_button(rider)).to_be_visible()
    rider.page.wait_for_timeout(600)
    stop(rider)
    rider.sees("2 canters of this set")


def test_at_the_minute_she_is_told_where_to_be(rider):
    rider.context.add_init_script(PRETEND_PHONE)
    choose_target(rider)
    start(rider)
    rider.sees("At 1 min be 350 m from the first flag, 250 m past the second")
    rider.page.evaluate("phone.awake(58500)")
    expect(rider.page.locator(".watch--minute")).to_be_visible(timeout=5_000)
    rider.sees("1 min")
    rider.sees("Be 350 m from the first flag, 250 m past the second")
    stop(rider)


def test_a_clicker_of_one_button_rides_a_whole_set(rider):
    rider.context.add_init_script(PRETEND_PHONE)
    open_watch(rider)
    before = canters(rider)
    for n in (1, 2):
        rider.page.keyboard.press("Space")
        expect(stop_button(rider)).to_be_visible()
        rider.page.evaluate("phone.awake(17000)")
        rider.page.wait_for_timeout(400)
        rider.page.keyboard.press("Space")
        rider.page.wait_for_url(re.compile("/watch/canter/"))
        if n == 1:
            rider.page.wait_for_timeout(1700)  # a nervous second press before that does nothing
            rider.page.keyboard.press("Space")
            expect(start_button(rider)).to_be_visible()
    rider.sees("2 canters of this set")
    assert canters(rider) - before == 2


def test_digits_mark_flags_choose_and_leave_what_is_typed_alone(rider):
    rider.context.add_init_script(PRETEND_PHONE)
    open_watch(rider)
    expect(rider.page.locator("kbd")).to_have_count(0)
    rider.page.keyboard.press("Enter")
    expect(stop_button(rider)).to_be_visible()
    expect(rider.page.locator("kbd")).to_have_text(["1–9", "Space"])
    for digit in "27":
        rider.page.evaluate("phone.awake(5000)")
        rider.page.wait_for_timeout(400)
        rider.page.keyboard.press(digit)
    rider.sees(re.compile("^Flag 2: "))
    rider.page.wait_for_timeout(400)
    rider.page.evaluate("""() => { for (let n = 0; n < 30; n++) {
      document.body.dispatchEvent(new KeyboardEvent('keydown', { key: '1', bubbles: true, repeat: n > 0 }));
    } }""")
    rider.page.wait_for_timeout(600)
    rider.sees("3 flags")
    stop(rider)
    canter = shown_canter(rider)
    assert len(canter["splits_ms"]) == 3
    note = rider.page.get_by_label("Note")
    note.click()
    rider.page.keyboard.type("1 s 2")
    assert note.input_value() == "1 s 2"
    assert "/watch/canter/" in rider.page.url
    note.blur()
    rider.page.wait_for_timeout(300)
    rider.page.keyboard.press("1")
    expect(start_button(rider)).to_be_visible()


def test_fences_on_the_clock_survive_a_kill_and_can_be_put_right(rider):
    open_watch(rider)
    rider.tap("Change")
    rider.choose("What is ridden", "Over fences")
    rider.tap("Done")
    start(rider)
    rider.page.wait_for_timeout(600)
    stop(rider)
    outing = shown_canter(rider)["outing_id"]
    rider.tap(re.compile("^Again"))
    start(rider)
    rider.go(f"/outing/{outing}/made-up")
    rider.fill(re.compile("What you call it"), "Hay rail")
    rider.choose("How it is built", "Rail")
    rider.tap("Use this fence")
    clear = rider.page.get_by_role("button", name=re.compile("^Clear"))
    rider.thumb(clear)
    rider.all_sent()  # the count is shown before the attempt is on the disk
    at_fence = rider.page.url.removeprefix(rider.address)
    rider.kill()
    rider.open(at_fence)
    expect(rider.page.get_by_role("link", name=re.compile("^Running"))).to_be_visible()
    rider.thumb(rider.button("Not clear"))
    rider.thumb(rider.page.get_by_role("button", name="Refusal", exact=True))
    rider.all_sent()
    rider.go("/watch")
    stop(rider)
    elapsed_ms = shown_canter(rider)["elapsed_ms"]
    rider.sees("Fences on the way")
    rider.sees("Hay rail: Clear")
    rider.sees("Hay rail: Refusal")
    expect(rider.page.locator(".canter-way__fence")).to_have_count(2)
    tied = [one for one in rider.page.evaluate(RECORDS, "attempt").values() if one["canter_id"]]
    tied.sort(key=lambda one: one["canter_offset_ms"])
    assert len({one["canter_id"] for one in tied}) == 1
    assert 300 <= tied[0]["canter_offset_ms"] < tied[1]["canter_offset_ms"] <= elapsed_ms
    rider.page.get_by_text("Change the fences of this canter").click()
    rider.tap("More Hay rail")
    whole = round(tied[0]["canter_offset_ms"] / 1000) + 1
    rider.sees(re.compile(rf"^{whole}\.0$"))
    rider.tap("Not in this canter: Hay rail")
    expect(rider.page.locator(".canter-way__fence")).to_have_count(1)
    rider.tap("Add Hay rail, Clear")
    expect(rider.page.locator(".canter-way__fence")).to_have_count(2)
    rider.all_sent()
    rider.page.reload()
    expect(rider.page.locator(".canter-way__fence")).to_have_count(2)
