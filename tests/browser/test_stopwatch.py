"""The stopwatch in a real browser: its own error, sleep, a changed clock, a killed process, swipes.

The faults are those of the project's list of how such apps fail: clocks that stop in sleep (TM-01), throttled
timers (TM-03), a page thrown away (ST-09), swipes (FD-03).
"""

import random
import re
import time

import pytest
from playwright.sync_api import expect

from browser.watching import (
    OWN_ERROR_MS,
    PRETEND_PHONE,
    Between,
    middle,
    open_watch,
    opened_watch,
    saved_canter,
    start,
    start_button,
    stop,
    stop_button,
    swipe,
    tap_at,
)

pytestmark = pytest.mark.xdist_group("browser")


@pytest.fixture
def rider(saddled):
    """The phone just opened, with nothing running; afterwards a canter more, and no error thrown by a page."""
    yield from opened_watch(saddled, canters_more=1)


@pytest.mark.parametrize("slowdown", [1, 6])
def test_its_own_error_is_small_even_on_a_busy_phone(rider, slowdown):
    """Taps with known moments, injected below the page, which is busy at each of them (TM-03)."""
    open_watch(rider)
    cdp = rider.context.new_cdp_session(rider.page)
    cdp.send("Emulation.setCPUThrottlingRate", {"rate": slowdown})
    rider.page.evaluate(
        "setInterval(() => { const until = performance.now() + 120; while (performance.now() < until); }, 200)"
    )
    started = time.time()
    tap_at(cdp, middle(start_button(rider)), started)
    expect(stop_button(rider)).to_be_visible()
    place = middle(stop_button(rider))
    rider.page.wait_for_timeout(2500)
    stopped = time.time()
    tap_at(cdp, place, stopped)
    rider.page.wait_for_url(re.compile("/watch/canter/"), timeout=30_000)
    canter = saved_canter(rider)
    error_ms = canter["elapsed_ms"] - (stopped - started) * 1000
    print(f"stopwatch's own error at {slowdown}x slowdown: {error_ms:.1f} ms")
    assert abs(error_ms) <= OWN_ERROR_MS
    assert canter["clock"] == "agree"


def test_a_sleeping_phone_is_timed_by_the_wall_clock_and_says_so(rider):
    """TM-01: hidden, wall clock +120.0 s, monotonic clock +30.0 s."""
    rider.context.add_init_script(PRETEND_PHONE)
    open_watch(rider)
    start(rider)
    rider.page.evaluate("phone.hide(); phone.awake(30000); phone.sleep(90000); phone.show()")
    stop(rider)
    canter = saved_canter(rider)
    assert 120_000 <= canter["elapsed_ms"] <= 123_000
    assert canter["clock"] == "slept"
    assert canter["wall_ms"] - canter["monotonic_ms"] == pytest.approx(90_000, abs=5)
    rider.sees("Screen was off, time from wall clock")
    rider.sees(re.compile(r"Take 3\d\.\d instead"))


@pytest.mark.parametrize("change_ms", [3_600_000, -3_600_000, 5_000])
def test_a_changed_wall_clock_leaves_the_time_right_and_says_so(rider, change_ms):
    rider.context.add_init_script(PRETEND_PHONE)
    open_watch(rider)
    start(rider)
    rider.page.evaluate("phone.awake(20000)")
    rider.page.wait_for_timeout(700)
    rider.page.evaluate(f"phone.change({change_ms})")
    rider.page.wait_for_timeout(700)
    rider.sees("The phone’s clock was changed: time from its running clock")
    stop(rider)
    canter = saved_canter(rider)
    assert 21_000 <= canter["elapsed_ms"] <= 25_000
    assert canter["clock"] == "wall_changed"
    assert canter["wall_ms"] - canter["elapsed_ms"] == pytest.approx(change_ms, abs=5)


def test_the_other_clock_is_one_tap_away(rider):
    rider.context.add_init_script(PRETEND_PHONE)
    open_watch(rider)
    start(rider)
    rider.page.evaluate("phone.awake(20000)")
    rider.page.wait_for_timeout(700)
    rider.page.evaluate("phone.change(5000)")
    rider.page.wait_for_timeout(700)
    stop(rider)
    rider.sees("The phone’s clock was changed during the run")
    before = saved_canter(rider)
    rider.tap(re.compile("^Take .* instead"))
    rider.sees("Screen was off, time from wall clock")
    after = saved_canter(rider)
    assert after["elapsed_ms"] == before["wall_ms"]
    assert after["clock"] == "slept"


def test_reload_and_another_screen_do_not_stop_it(rider):
    open_watch(rider)
    clock = Between()
    started = clock.mark(lambda: start_button(rider).click())
    rider.sees("Kept on this phone")
    rider.page.wait_for_timeout(800)
    rider.page.reload()
    rider.sees("Page was away: time from the wall clock")
    rider.go("/tracks")
    rider.tap(re.compile("^Running"), "link")
    stopped = clock.mark(lambda: stop_button(rider).click())
    rider.page.wait_for_url(re.compile("/watch/canter/"))
    canter = saved_canter(rider)
    clock.within(started, stopped, canter["elapsed_ms"])
    assert (canter["clock"], canter["monotonic_ms"]) == ("restored", None)
    rider.sees("The page was away during the run")


def test_a_killed_process_finds_it_running_with_the_true_time(rider):
    """ST-09: killed without a word while it runs, opened again later."""
    open_watch(rider)
    clock = Between()
    started = clock.mark(lambda: start_button(rider).click())
    rider.sees("Kept on this phone")
    rider.kill()
    time.sleep(2)
    rider.open("/watch")
    expect(stop_button(rider)).to_be_visible()
    stopped = clock.mark(lambda: stop_button(rider).click())
    rider.page.wait_for_url(re.compile("/watch/canter/"))
    clock.within(started, stopped, saved_canter(rider)["elapsed_ms"])
    rider.kill()
    rider.open("/watch")
    expect(start_button(rider)).to_be_visible()
    assert saved_canter(rider)["clock"] == "restored"


def test_two_hundred_swipes_neither_stop_nor_lose_it(rider):
    """FD-03: swipes from edges and over the buttons of a running stopwatch."""
    open_watch(rider)
    start(rider)
    cdp = rider.context.new_cdp_session(rider.page)
    chance = random.Random(5)
    for _ in range(200):
        x, y = chance.choice([0, 1, 359, chance.uniform(0, 359)]), chance.uniform(60, 790)
        across = chance.uniform(80, 300) * (1 if x < 180 else -1)
        swipe(cdp, (x, y), (min(359, max(0, x + across)), min(799, max(0, y + chance.uniform(-250, 250)))))
    assert rider.page.url.endswith("/watch")
    expect(stop_button(rider)).to_be_visible()
    stop(rider)
    assert saved_canter(rider)["splits_ms"] == []
