"""The countdown of a standing start in a real browser: its exact zero, called off, killed, asleep, a changed clock.

The faults are those of docs/faults.md: clocks that stop in sleep (TM-01), a page thrown away (ST-09).
"""

import re
import time

import pytest
from playwright.sync_api import expect

from browser.watching import (
    OWN_ERROR_MS,
    PRETEND_PHONE,
    Between,
    call_off,
    canters,
    middle,
    open_watch,
    opened_watch,
    shown_canter,
    start,
    start_button,
    stop,
    stop_button,
    tap_at,
)

pytestmark = pytest.mark.xdist_group("browser")


@pytest.fixture
def rider(saddled):
    """The phone just opened, with nothing running; afterwards no error thrown by a page."""
    yield from opened_watch(saddled)


def choose_countdown(rider, seconds: int) -> None:
    open_watch(rider)
    rider.tap("Change")
    rider.choose("Start", "Standing")
    rider.choose("Countdown", f"{seconds} s")
    rider.tap("Done")
    rider.sees(f"Countdown of {seconds} s")


def test_a_countdown_starts_at_its_exact_zero_on_a_busy_phone(rider):
    choose_countdown(rider, 3)
    cdp = rider.context.new_cdp_session(rider.page)
    rider.page.evaluate(
        "setInterval(() => { const until = performance.now() + 120; while (performance.now() < until); }, 200)"
    )
    tapped = time.time()
    tap_at(cdp, middle(start_button(rider)), tapped)
    expect(call_off(rider)).to_be_visible()
    rider.sees("GO")
    expect(stop_button(rider)).to_be_visible()
    place = middle(stop_button(rider))
    rider.page.wait_for_timeout(1500)
    stopped = time.time()
    tap_at(cdp, place, stopped)
    rider.page.wait_for_url(re.compile("/watch/canter/"), timeout=30_000)
    canter = shown_canter(rider)
    assert abs(canter["elapsed_ms"] - ((stopped - tapped) * 1000 - 3000)) <= OWN_ERROR_MS
    assert (canter["start"], canter["countdown_s"], canter["clock"]) == ("standing", 3, "agree")
    rider.sees(re.compile("countdown of 3 s"))


def test_one_tap_calls_it_off_and_nothing_is_kept(rider):
    choose_countdown(rider, 10)
    before = canters(rider)
    start(rider)
    rider.sees(re.compile(r"^[5-9]$"))
    call_off(rider).click()
    expect(start_button(rider)).to_be_visible()
    rider.page.reload()
    expect(start_button(rider)).to_be_visible()
    assert canters(rider) == before


@pytest.mark.parametrize("away_s", [1, 5])
def test_killed_in_the_countdown_it_goes_on_from_the_true_zero(rider, away_s):
    """ST-09: opened again before the zero and after it."""
    choose_countdown(rider, 5)
    clock = Between()
    tapped = clock.mark(lambda: start_button(rider).click())
    rider.sees("Kept on this phone")
    rider.kill()
    time.sleep(away_s)
    rider.open("/watch")
    expect(stop_button(rider)).to_be_visible(timeout=15_000)
    rider.page.wait_for_timeout(600)
    stopped = clock.mark(lambda: stop_button(rider).click())
    rider.page.wait_for_url(re.compile("/watch/canter/"), timeout=30_000)
    canter = shown_canter(rider)
    clock.within(tapped, stopped, canter["elapsed_ms"] + 5000)
    assert (canter["clock"], canter["countdown_s"]) == ("restored", 5)


def test_asleep_across_the_zero_it_is_timed_by_the_wall_clock(rider):
    """TM-01: the screen goes off in the countdown and comes on a minute later."""
    rider.context.add_init_script(PRETEND_PHONE)
    choose_countdown(rider, 10)
    start(rider)
    rider.page.evaluate("phone.hide(); phone.sleep(70000); phone.show()")
    stop(rider)
    canter = shown_canter(rider)
    assert 60_000 <= canter["elapsed_ms"] <= 63_000
    assert (canter["clock"], canter["monotonic_ms"]) == ("slept", None)
    rider.sees("Screen was off, time from wall clock")


@pytest.mark.parametrize("change_ms", [3_600_000, -3_600_000])
def test_a_clock_changed_in_the_countdown_moves_no_zero(rider, change_ms):
    rider.context.add_init_script(PRETEND_PHONE)
    choose_countdown(rider, 10)
    start(rider)
    rider.page.wait_for_timeout(700)
    rider.page.evaluate(f"phone.change({change_ms})")
    rider.page.wait_for_timeout(700)
    rider.page.evaluate("phone.awake(30000)")
    rider.page.wait_for_timeout(700)
    stop(rider)
    canter = shown_canter(rider)
    assert 21_000 <= canter["elapsed_ms"] <= 25_000
    assert canter["clock"] == "wall_changed"


def test_a_countdown_flashes_and_sounds_each_second_and_at_zero(rider):
    rider.context.add_init_script("""
      window.tones = [];
      const make = AudioContext.prototype.createOscillator;
      AudioContext.prototype.createOscillator = function () {
        const oscillator = make.call(this);
        tones.push(() => oscillator.frequency.value);
        return oscillator;
      };
    """)
    choose_countdown(rider, 3)
    start_button(rider).click()
    expect(rider.page.locator(".watch--count")).to_be_visible()
    expect(rider.page.locator(".watch--go")).to_be_visible(timeout=6_000)
    assert [round(hz) for hz in rider.page.evaluate("tones.map((tone) => tone())")] == [660, 660, 1320]
    rider.page.wait_for_timeout(600)
    stop(rider)
