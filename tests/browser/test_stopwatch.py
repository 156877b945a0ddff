"""The stopwatch in a real browser: its own error, sleep, a changed clock, a killed process, fingers and keys.

The faults are those of the project's list of how such apps fail: clocks that stop in sleep (TM-01), throttled
timers (TM-03), a screen that turns off (TM-06), no haptics (TM-07), a page thrown away (ST-09), swipes (FD-03).
"""

import random
import re
import time

import pytest
from playwright.sync_api import expect

from browser.person import PASSWORD, PHONE, Person
from browser.running_server import RunningServer
from browser.watching import (
    PRETEND_PHONE,
    TRACK_M,
    Between,
    canters,
    make_horse_and_track,
    middle,
    open_watch,
    saved_canter,
    start,
    start_button,
    stop,
    stop_button,
    swipe,
    tap_at,
)

pytestmark = pytest.mark.xdist_group("browser")

OWN_ERROR_MS = 10  # the design's bar for the stopwatch's own error


@pytest.fixture(scope="module")
def saddled(playwright, tmp_path_factory):
    """A rider's phone with a horse and a track, shared by this file: every test opens the browser anew."""
    folder = tmp_path_factory.mktemp("stopwatch")
    server = RunningServer(folder / "data")
    server.start()
    server.command("user", "add", "wren", "--display-name", "Wren Ashdown", "--password-stdin", given=PASSWORD)
    person = Person(playwright, folder / "profile", server.address, PHONE)
    person.open("/")
    person.sign_in("wren")
    person.ready_for_the_field()
    make_horse_and_track(person)
    person.close()
    yield person
    server.stop()


@pytest.fixture
def rider(saddled):
    """The phone just opened, with nothing running; afterwards a canter more, and no error thrown by a page."""
    saddled.open("/watch")
    expect(start_button(saddled).or_(stop_button(saddled))).to_be_visible()
    if stop_button(saddled).count():  # left over by a test that failed
        saddled.tap("Throw away")
    before = canters(saddled)
    yield saddled
    after = canters(saddled)
    saddled.close()
    mistakes, saddled.mistakes = saddled.mistakes, []
    assert mistakes == []
    assert after - before == 1


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
    rider.page.wait_for_timeout(500)
    assert (saved_canter(rider)["note"], saved_canter(rider)["over_fences"]) == ("Into the wind", True)


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
