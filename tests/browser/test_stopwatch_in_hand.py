"""The stopwatch in somebody's hand: keys and clickers, the screen's light, a stop by mistake, what the result says.

The faults are those of the project's list of how such apps fail: a screen that turns off (TM-06), no haptics (TM-07).
"""

import re
import time

import pytest
from playwright.sync_api import expect

from browser.watching import (
    PRETEND_PHONE,
    TRACK_M,
    middle,
    open_watch,
    opened_watch,
    saved_canter,
    start,
    start_button,
    stop,
    stop_button,
    tap_at,
)

pytestmark = pytest.mark.xdist_group("browser")


@pytest.fixture
def rider(saddled):
    """The phone just opened, with nothing running; afterwards a canter more, and no error thrown by a page."""
    yield from opened_watch(saddled, canters_more=1)


def test_keys_and_clickers(rider):
    open_watch(rider)
    rider.page.keyboard.press("Space")
    expect(stop_button(rider)).to_be_visible()
    rider.page.wait_for_timeout(600)
    rider.page.keyboard.press("s")
    rider.sees(re.compile(r"Flag 1: 0\.\d"))
    rider.page.wait_for_timeout(600)
    rider.page.keyboard.press("Enter")
    rider.page.wait_for_url(re.compile("/watch/canter/"))
    canter = saved_canter(rider)
    assert len(canter["splits_ms"]) == 1
    rider.page.keyboard.press("Space")  # a clicker pressed once too often starts nothing
    rider.page.wait_for_timeout(300)
    assert saved_canter(rider) == canter


def test_a_phone_without_wake_lock_buzz_or_sound(rider):
    """TM-06 and TM-07: refused and missing capabilities are told, and throw nothing."""
    rider.context.add_init_script(
        "navigator.wakeLock.request = () => Promise.reject(new DOMException('no', 'NotAllowedError'));"
        "Object.defineProperty(navigator, 'vibrate', { value: undefined }); delete window.AudioContext;"
    )
    open_watch(rider)
    start(rider)
    rider.sees("Screen may turn off. The time goes on.")
    rider.page.wait_for_timeout(600)
    stop(rider)
    saved_canter(rider)


def test_the_wake_lock_is_taken_again_and_let_go(rider):
    rider.context.add_init_script(PRETEND_PHONE)
    rider.context.add_init_script("""
      window.locks = { asked: 0, held: [] };
      navigator.wakeLock.request = async () => {
        const lock = new EventTarget();
        lock.release = async () => { locks.held = locks.held.filter((one) => one !== lock); };
        locks.asked += 1; locks.held.push(lock);
        return lock;
      };
    """)
    open_watch(rider)
    start(rider)
    assert rider.page.evaluate("[locks.asked, locks.held.length]") == [1, 1]
    rider.page.evaluate("phone.hide()")
    rider.page.evaluate("locks.held.splice(0).forEach((lock) => lock.dispatchEvent(new Event('release')))")
    rider.sees("Screen may turn off. The time goes on.")
    rider.page.evaluate("phone.show()")
    expect(rider.page.get_by_text("Screen may turn off")).to_have_count(0)
    assert rider.page.evaluate("[locks.asked, locks.held.length]") == [2, 1]
    rider.page.wait_for_timeout(600)
    stop(rider)
    assert rider.page.evaluate("locks.held.length") == 0


def test_a_stop_by_mistake_is_asked_about(rider):
    open_watch(rider)
    started = time.time()
    cdp = rider.context.new_cdp_session(rider.page)
    tap_at(cdp, middle(start_button(rider)), started)
    expect(stop_button(rider)).to_be_visible()
    place = middle(stop_button(rider))
    time.sleep(max(0, started + 0.46 - time.time()))  # a tap cannot come from the future
    tap_at(cdp, place, started + 0.45)
    rider.sees("Stopped after 0.4 s")
    rider.tap("Keep running")
    rider.page.wait_for_timeout(1200)
    stop(rider)
    assert saved_canter(rider)["elapsed_ms"] > 1_200
    rider.sees(re.compile("That is faster than a horse gallops"))
    rider.tap("Keep running")
    expect(stop_button(rider)).to_be_visible()
    stop(rider)
    assert saved_canter(rider)["elapsed_ms"] > 1_500


def test_thrown_away_comes_back(rider):
    open_watch(rider)
    start(rider)
    rider.tap("Throw away")
    expect(start_button(rider)).to_be_visible()
    rider.tap("Undo")
    expect(stop_button(rider)).to_be_visible()
    rider.page.wait_for_timeout(600)
    stop(rider)
    before = saved_canter(rider)
    rider.tap("Throw away")
    rider.sees("Canter thrown away.")
    rider.tap("Undo")
    rider.page.wait_for_url(re.compile("/watch/canter/"))
    assert saved_canter(rider) == before


def test_the_result_says_what_it_means(rider):
    """100 m in about 15 s against 400 m/min: the number, its ±, early or late, and the picture in words."""
    rider.context.add_init_script(PRETEND_PHONE)
    open_watch(rider)
    rider.tap("Change")
    rider.choose("Target speed", "Own speed")
    rider.tap("More Target speed")
    rider.tap("Done")
    rider.sees("355 m/min")
    start(rider)
    rider.page.evaluate("phone.awake(20000)")
    rider.page.wait_for_timeout(300)
    stop(rider)
    canter = saved_canter(rider)
    mpm = round(TRACK_M * 60_000 / canter["elapsed_ms"])
    rider.sees(re.compile(rf"{mpm} ± \d m/min, {355 - mpm} slow"))
    late_s = canter["elapsed_ms"] / 1000 - TRACK_M * 60 / 355
    rider.sees(re.compile(rf"{late_s:.1f} s late"))
    rider.sees("Slower than 355 m/min, by more than the timing can be out.")
    expect(rider.page.get_by_role("img", name=re.compile(rf"canters? over this stretch.*\b{mpm}\b"))).to_be_visible()
    rider.fill("Note", "Into the wind")
    rider.page.get_by_label("Note").blur()
    rider.choose("What is ridden", "Over fences")
    rider.until(lambda: saved_canter(rider)["over_fences"])
    assert saved_canter(rider)["note"] == "Into the wind"


def test_the_time_is_said_when_asked_for_and_not_else(rider):
    open_watch(rider)
    start(rider)
    face = rider.page.get_by_role("timer")
    assert face.get_attribute("aria-live") == "off"
    live = rider.page.locator(".watch__say [aria-live=polite]")
    assert live.inner_text() == ""
    rider.tap("Say the time")
    expect(live).to_have_text(re.compile(r"^\d+\.\d seconds$"))
    said = live.inner_text()
    rider.page.wait_for_timeout(1500)
    assert live.inner_text() == said
    stop(rider)


def test_attempts_tapped_meanwhile_carry_its_clock(rider):
    """An over-fences canter: the fence is tapped on the outing's screen while the stopwatch runs."""
    open_watch(rider)
    start(rider)
    rider.page.wait_for_timeout(600)
    stop(rider)
    outing = saved_canter(rider)["outing_id"]
    rider.tap("Throw away")
    rider.sees("Canter thrown away.")
    rider.go(f"/watch?outing={outing}")
    start(rider)
    rider.go(f"/outing/{outing}/made-up")
    rider.fill(re.compile("What you call it"), "Hay rail")
    rider.choose("How it is built", "Rail")
    rider.tap("Use this fence")
    rider.page.get_by_role("button", name=re.compile("^Clear")).click()
    expect(rider.page.get_by_role("button", name=re.compile("^Clear"))).to_contain_text("1")
    rider.all_sent()  # the count is shown before the attempt is on the disk
    rider.go("/watch")
    stop(rider)
    rider.sees("Fences on the way")
    rider.sees(re.compile(r"^[\d:]+\.\d Hay rail: Clear"))
