"""What the stopwatch's browser tests share: a horse and a track, taps with a known moment, what was saved."""

import re
import time
from collections.abc import Iterator

from playwright.sync_api import CDPSession, expect

from browser.person import Person

TRACK_M = 100
OWN_ERROR_MS = 10  # the design's bar for the stopwatch's own error

# Both of the page's clocks and its visibility in the test's hands. `phone.sleep(ms)`: only the wall clock
# runs; `phone.awake(ms)`: both run; `phone.change(ms)`: somebody sets the wall clock.
PRETEND_PHONE = """
(() => {
  const offsets = JSON.parse(sessionStorage.getItem('pretend') || '{"wall":0,"monotonic":0,"hidden":false}');
  const keep = () => sessionStorage.setItem('pretend', JSON.stringify(offsets));
  const [wall, monotonic] = [Date.now.bind(Date), performance.now.bind(performance)];
  Date.now = () => wall() + offsets.wall;
  performance.now = () => monotonic() + offsets.monotonic;
  const seen = () => (offsets.hidden ? 'hidden' : 'visible');
  Object.defineProperty(document, 'visibilityState', { get: seen });
  Object.defineProperty(document, 'hidden', { get: () => offsets.hidden });
  const show = (hidden) => { offsets.hidden = hidden; keep(); document.dispatchEvent(new Event('visibilitychange')); };
  window.phone = {
    hide: () => show(true), show: () => show(false),
    sleep: (ms) => { offsets.wall += ms; keep(); },
    awake: (ms) => { offsets.wall += ms; offsets.monotonic += ms; keep(); },
    change: (ms) => { offsets.wall += ms; keep(); },
  };
})();
"""

LAST_CANTER = """async () => {
  const answer = (request) => new Promise((done) => { request.onsuccess = () => done(request.result); });
  const { name } = (await indexedDB.databases()).find((one) => one.name.startsWith('fieldtally-'));
  const db = await answer(indexedDB.open(name));
  const all = await answer(db.transaction('records').objectStore('records').getAll());
  db.close();
  const canters = all.filter((row) => row.shelf === 'timed_canter');
  canters.sort((a, b) => (a.record_id < b.record_id ? -1 : 1));
  return { count: canters.length, body: canters.length ? canters[canters.length - 1].body : null };
}"""

RECORDS = """async (shelf) => {
  const answer = (request) => new Promise((done) => { request.onsuccess = () => done(request.result); });
  const { name } = (await indexedDB.databases()).find((one) => one.name.startsWith('fieldtally-'));
  const db = await answer(indexedDB.open(name));
  const all = await answer(db.transaction('records').objectStore('records').getAll());
  db.close();
  return Object.fromEntries(all.filter((row) => row.shelf === shelf).map((row) => [row.record_id, row.body]));
}"""


def ready_to_time(rider: Person) -> None:
    """A horse, a track, and the stopwatch open with START in reach."""
    make_horse_and_track(rider)
    open_watch(rider)


def opened_watch(saddled: Person, canters_more: int | None = None) -> Iterator[Person]:
    """For a fixture: the phone just opened, with nothing running; afterwards so many canters more where that is asked,
    and no error thrown by a page."""
    saddled.open("/watch")
    expect(start_button(saddled).or_(stop_button(saddled)).or_(call_off(saddled))).to_be_visible()
    if start_button(saddled).count() == 0:  # left over by a test that failed
        saddled.tap("Throw away")
    before = canters(saddled)
    yield saddled
    after = canters(saddled)
    saddled.close()
    mistakes, saddled.mistakes = saddled.mistakes, []
    assert mistakes == []
    assert canters_more in (None, after - before)


def open_watch(rider: Person) -> None:
    rider.go("/watch")
    expect(start_button(rider)).to_be_enabled()


def make_horse_and_track(rider: Person) -> None:
    rider.go("/horse/new")
    rider.fill("Name", "Bracken Lane")
    rider.tap(re.compile("^Save"))
    rider.sees("Bracken Lane")
    rider.go("/tracks/new")
    rider.fill("Name", "Top hedge")
    rider.fill(re.compile("^Distance"), str(TRACK_M))
    rider.tap("Save track")
    rider.heading("Top hedge")


def start_button(rider: Person):
    return rider.page.get_by_role("button", name=re.compile("^START"))


def stop_button(rider: Person):
    return rider.page.get_by_role("button", name=re.compile("^STOP"))


def call_off(rider: Person):
    return rider.page.get_by_role("button", name=re.compile("^CALL OFF"))


def choose_target(rider) -> None:
    open_watch(rider)
    rider.tap("Change")
    rider.choose("Start", "Flying")
    rider.choose("Target speed", "No target")
    rider.choose("Target speed", "Own speed")
    rider.tap("Done")
    rider.sees("350 m/min")


def start(rider: Person) -> None:
    start_button(rider).click()
    rider.sees("Kept on this phone")


def stop(rider: Person) -> None:
    stop_button(rider).click()
    rider.page.wait_for_url(re.compile("/watch/canter/"))


def canters(rider: Person) -> int:
    return rider.page.evaluate(LAST_CANTER)["count"]


def saved_canter(rider: Person) -> dict:
    """The body of the newest timed canter on the phone."""
    return rider.page.evaluate(LAST_CANTER)["body"]


def shown_canter(rider) -> dict:
    """The body of the canter on the screen: the newest by its id may be another test's, whose clock ran ahead."""
    return rider.page.evaluate(RECORDS, "timed_canter")[rider.page.url.rsplit("/", 1)[1]]


def middle(button) -> tuple[float, float]:
    box = button.bounding_box()
    return box["x"] + box["width"] / 2, box["y"] + box["height"] / 2


def tap_at(cdp: CDPSession, place: tuple[float, float], moment_s: float) -> None:
    """A finger on the glass at `moment_s` (seconds since 1970), whenever the page gets round to it."""
    point = [{"x": place[0], "y": place[1]}]
    cdp.send("Input.dispatchTouchEvent", {"type": "touchStart", "touchPoints": point, "timestamp": moment_s})
    cdp.send("Input.dispatchTouchEvent", {"type": "touchEnd", "touchPoints": [], "timestamp": moment_s + 0.08})


def swipe(cdp: CDPSession, start_at: tuple[float, float], end_at: tuple[float, float]) -> None:
    cdp.send("Input.dispatchTouchEvent", {"type": "touchStart", "touchPoints": [{"x": start_at[0], "y": start_at[1]}]})
    for step in range(1, 5):
        x, y = (start_at[n] + (end_at[n] - start_at[n]) * step / 4 for n in (0, 1))
        cdp.send("Input.dispatchTouchEvent", {"type": "touchMove", "touchPoints": [{"x": x, "y": y}]})
    cdp.send("Input.dispatchTouchEvent", {"type": "touchEnd", "touchPoints": []})


class Between:
    """Bounds of a time measured from outside: from within one call to within another, in ms."""

    def mark(self, deed) -> tuple[float, float]:
        before = time.monotonic()
        deed()
        return before, time.monotonic()

    def within(self, first: tuple[float, float], last: tuple[float, float], elapsed_ms: float) -> None:
        least, most = (last[0] - first[1]) * 1000, (last[1] - first[0]) * 1000
        assert least - 10 <= elapsed_ms <= most + 10, (least, elapsed_ms, most)
