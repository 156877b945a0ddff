"""The stopwatch's modes in a real browser: countdown, repeated canters, minute markers, keys, fences on the clock,
and the tracks they run over.

The faults are those of docs/faults.md: clocks that stop in sleep (TM-01), a page thrown away (ST-09).
"""

import re
import time

import pytest
from playwright.sync_api import expect

from browser.person import PASSWORD, PHONE, Person
from browser.running_server import RunningServer
from browser.watching import (
    PRETEND_PHONE,
    Between,
    canters,
    make_horse_and_track,
    middle,
    open_watch,
    start,
    start_button,
    stop,
    stop_button,
    tap_at,
)

pytestmark = pytest.mark.xdist_group("browser")

OWN_ERROR_MS = 10  # the design's bar for the stopwatch's own error
RECORDS = """async (shelf) => {
  const answer = (request) => new Promise((done) => { request.onsuccess = () => done(request.result); });
  const { name } = (await indexedDB.databases()).find((one) => one.name.startsWith('fieldtally-'));
  const db = await answer(indexedDB.open(name));
  const all = await answer(db.transaction('records').objectStore('records').getAll());
  db.close();
  return Object.fromEntries(all.filter((row) => row.shelf === shelf).map((row) => [row.record_id, row.body]));
}"""


@pytest.fixture(scope="module")
def saddled(playwright, tmp_path_factory):
    """A rider's phone with a horse and a track, shared by this file: every test opens the browser anew."""
    folder = tmp_path_factory.mktemp("modes")
    server = RunningServer(folder / "data")
    server.start()
    server.command("user", "add", "wren", "--display-name", "Wren Ashdown", "--password-stdin", given=PASSWORD)
    person = Person(playwright, folder / "profile", server.address, PHONE)
    person.open("/")
    person.sign_in("wren")
    person.ready_for_the_field()
    make_horse_and_track(person)
    person.all_sent()
    person.close()
    yield person
    server.stop()


@pytest.fixture
def rider(saddled):
    """The phone just opened, with nothing running; afterwards no error thrown by a page."""
    saddled.open("/watch")
    expect(start_button(saddled).or_(stop_button(saddled)).or_(call_off(saddled))).to_be_visible()
    if start_button(saddled).count() == 0:  # left over by a test that failed
        saddled.tap("Throw away")
    yield saddled
    saddled.close()
    mistakes, saddled.mistakes = saddled.mistakes, []
    assert mistakes == []


def shown_canter(rider) -> dict:
    """The body of the canter on the screen: the newest by its id may be another test's, whose clock ran ahead."""
    return rider.page.evaluate(RECORDS, "timed_canter")[rider.page.url.rsplit("/", 1)[1]]


def call_off(rider):
    return rider.page.get_by_role("button", name=re.compile("^CALL OFF"))


def choose_countdown(rider, seconds: int) -> None:
    open_watch(rider)
    rider.tap("Change")
    rider.choose("Start", "Standing")
    rider.choose("Countdown", f"{seconds} s")
    rider.tap("Done")
    rider.sees(f"Countdown of {seconds} s")


def choose_target(rider) -> None:
    open_watch(rider)
    rider.tap("Change")
    rider.choose("Start", "Flying")
    rider.choose("Target speed", "No target")
    rider.choose("Target speed", "Own speed")
    rider.tap("Done")
    rider.sees("350 m/min")


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
    expect(rider.page.locator(".strip__fence")).to_have_count(2)
    tied = [one for one in rider.page.evaluate(RECORDS, "attempt").values() if one["canter_id"]]
    tied.sort(key=lambda one: one["canter_offset_ms"])
    assert len({one["canter_id"] for one in tied}) == 1
    assert 300 <= tied[0]["canter_offset_ms"] < tied[1]["canter_offset_ms"] <= elapsed_ms
    rider.page.get_by_text("Change the fences of this canter").click()
    rider.tap("More Hay rail")
    whole = round(tied[0]["canter_offset_ms"] / 1000) + 1
    rider.sees(re.compile(rf"^{whole}\.0$"))
    rider.tap("Not in this canter: Hay rail")
    expect(rider.page.locator(".strip__fence")).to_have_count(1)
    rider.tap("Add Hay rail, Clear")
    expect(rider.page.locator(".strip__fence")).to_have_count(2)
    rider.all_sent()
    rider.page.reload()
    expect(rider.page.locator(".strip__fence")).to_have_count(2)


def test_a_wheel_is_calibrated_and_every_later_result_uses_it(rider):
    rider.context.add_init_script(PRETEND_PHONE)
    rider.go("/tracks/new")
    rider.fill("Name", "Oak stretch")
    rider.tap(re.compile("^Calibrate"), "link")
    rider.tap("Save calibration")
    rider.sees("Give at least three readings, each a number.")
    rider.fill("Instrument", "Yard wheel")
    for n, reading in enumerate(("50.3", "50.5", "50.4"), 1):
        rider.fill(re.compile(f"^Walk {n}"), reading)
    rider.sees("Reading × 0.992 (± 0.002) is metres")
    rider.page.wait_for_timeout(500)  # what is typed is on the disk within a third of a second
    rider.page.reload()
    expect(rider.page.get_by_label(re.compile("^Walk 2"))).to_have_value("50.5")
    rider.tap("Save calibration")
    expect(rider.page.get_by_label("Name")).to_have_value("Oak stretch")
    rider.fill("Reading of Yard wheel", "412.5")
    rider.sees(re.compile(r"^That is 409\.2 m ± 1\.3 m, by its calibration"))
    rider.fill(re.compile("^Flags on the way"), "100, 300")
    rider.tap("Save track")
    rider.heading("Oak stretch")
    rider.sees("409.2 m, wheel (± 1.3 m)")
    rider.tap("Time a canter here", "link")
    start(rider)
    for seconds in (15, 30):
        rider.page.evaluate(f"phone.awake({seconds}000)")
        rider.page.wait_for_timeout(400)
        rider.page.get_by_role("button", name=re.compile("^SPLIT")).click()
    rider.page.evaluate("phone.awake(15000)")
    rider.page.wait_for_timeout(400)
    stop(rider)
    canter, ridden = shown_canter(rider), rider.page.url.rsplit("/", 1)[1]
    assert (canter["distance_m"], canter["distance_u_m"], canter["flags_m"]) == (409.23, 1.267, [100, 300])
    mpm, first = 409.23 * 60_000 / canter["elapsed_ms"], 6_000_000 / canter["splits_ms"][0]
    rider.sees(re.compile(rf"^{round(mpm)} ± 1 m/min"))
    rider.sees(re.compile(rf"^Flag 1: 1\d\.\d, {round(first)} ± \d m/min"))
    rider.sees(re.compile(r"^To the end: \d{3} ± \d m/min"))
    # measured anew, the canter keeps what it was ridden over, and the track says so
    rider.go(f"/tracks/{canter['track_id']}/edit")
    rider.sees(re.compile("^1 canter was timed over this track. It keeps the distance of its day"))
    expect(rider.page.get_by_label("Reading of Yard wheel")).to_have_value("412.5")
    rider.go("/tracks")
    rider.tap(re.compile("^Yard wheel"), "link")
    rider.sees("Oak stretch")  # measured with it
    rider.tap("Take calibration away")
    rider.sees("Calibration taken away.")
    rider.all_sent()
    rider.go(f"/tracks/{canter['track_id']}/edit")  # without its calibration it keeps the distance it says
    expect(rider.page.get_by_label("Distance in metres")).to_have_value("409.23")
    rider.fill(re.compile("^Distance in"), "405")
    rider.fill("Own ± in metres", "0,5")
    rider.sees("± 0.5 m, your own figure")
    rider.tap("Save track")
    rider.sees("405 m, wheel (± 0.5 m)")
    rider.sees(re.compile("over 409.2 m as measured then"))
    assert rider.page.evaluate(RECORDS, "timed_canter")[ridden]["distance_m"] == 409.23


def test_an_interval_set_from_memory_and_its_speed(rider):
    rider.go("/")
    rider.tap("Fitness: an interval set", "link")
    rider.sees("Speed of each canter")
    rider.tap("Write one down from memory", "link")
    rider.fill("Day", "2199-01-01")
    rider.tap("Save set")
    rider.sees("Give the day it was ridden, today or earlier.")
    rider.fill("Day", "2026-05-03")
    rider.tap("More Speed of each canter")
    rider.tap("More Canters")
    rider.tap("Save set")
    rider.page.wait_for_url(re.compile("/conditioning/set/"))
    rider.sees("Canter 4: 3:00 at 350 m/min")
    rider.sees(re.compile("^Written down from memory"))
    rider.tap("To the outing", "link")
    rider.sees(re.compile("3 May"))
