"""Taps as a gloved person makes them on a slow, full or dying phone: nothing shown as saved before it is, and
nothing that was shown is ever lost."""

import re
from datetime import date
from uuid import uuid4

import pytest
from playwright.sync_api import expect

from browser.person import Person

pytestmark = pytest.mark.xdist_group("browser")

# `slowStore` ms: a transaction that writes an entry stays open that long. `fullStore`: it fails as a full
# phone does.
STORE_IN_HAND = """
(() => {
  const add = IDBObjectStore.prototype.add;
  IDBObjectStore.prototype.add = function (...given) {
    if (window.fullStore && this.name === 'entries') throw new DOMException('no room', 'QuotaExceededError');
    const request = add.apply(this, given);
    if (window.slowStore && this.name === 'entries') {
      const until = performance.now() + window.slowStore;
      const wait = () => { if (performance.now() < until) this.count().onsuccess = wait; };
      wait();
    }
    return request;
  };
})();
"""

RECORDS = """async (shelf) => {
  const { name } = (await indexedDB.databases()).find((one) => one.name.startsWith('fieldtally-'));
  const db = await new Promise((done) => { indexedDB.open(name).onsuccess = (event) => done(event.target.result); });
  const all = await new Promise((done) => {
    db.transaction('records').objectStore('records').getAll().onsuccess = (event) => done(event.target.result);
  });
  db.close();
  return all.filter((row) => row.shelf === shelf).sort((a, b) => (a.record_id < b.record_id ? -1 : 1));
}"""

# What another phone of this rider would send.
PUSH = """async (entries) => {
  const headers = { 'Content-Type': 'application/json', 'X-Fieldtally': '1' };
  const { logbooks } = await (await fetch('/api/session')).json();
  const sent_at = new Date().toISOString();
  const body = { protocol: 1, app: '0.1.0', device: crypto.randomUUID(), sent_at, log_id: null, entries };
  const address = `/api/logbooks/${logbooks[0].id}/entries`;
  const reply = await fetch(address, { method: 'POST', headers, body: JSON.stringify(body) });
  const { answers } = await reply.json();
  if (!answers.every((answer) => answer.result === 'accepted')) throw new Error(JSON.stringify(answers));
}"""

# Taps the button at these times in ms from the first, by events whose time stamps are the browser's own, and
# says after each what the button and the bar showed at the next frame.
TAPS = """async ([selector, times]) => {
  const frame = () => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)));
  const begun = performance.now();
  const seen = [];
  for (const at of times) {
    while (performance.now() - begun < at) await new Promise((done) => setTimeout(done, 1));
    document.querySelector(selector).click();
    await frame();
    const words = (place) => document.querySelector(place)?.textContent ?? '';
    seen.push({ count: words('.clear-button__count'), bar: words('.tap-bar__state') });
  }
  return seen;
}"""


def attempts(rider: Person) -> list[dict]:
    return [row["body"] for row in rider.page.evaluate(RECORDS, "attempt")]


def entry(kind: str, body: dict, record_id: str) -> dict:
    today = str(date.today())
    return {
        "id": str(uuid4()), "record_id": record_id, "supersedes": [], "kind": kind, "kind_version": 1, "body": body,
        "recorded_at": f"{today}T08:00:00.000Z", "utc_offset_min": 0, "local_date": today, "clock": None,
    }  # fmt: skip


def at_the_field(rider: Person) -> str:
    """A horse, a field with a log and a treble, an outing, all pulled from the server; returns the outing's
    address."""
    horse, field, outing = (str(uuid4()) for _ in range(3))
    treble = [{"letter": letter, "profile": "log", "asks": ["fixed"], "height_cm": 80} for letter in "ABC"]
    fences = [
        {"label": "1 Log", "profile": "log", "asks": ["fixed"], "height_cm": 80, "order": 1},
        {"label": "2 Treble", "profile": "log", "asks": ["combination"], "elements": treble, "order": 2},
    ]
    day = {"horse_id": horse, "field_id": field, "date": str(date.today()), "activity": "cross_country_school"}
    entries = [
        entry("horse", {"name": "Bracken Lane"}, horse),
        entry("field", {"name": "Thornybank"}, field),
        *(entry("fence", fence | {"field_id": field}, str(uuid4())) for fence in fences),
        entry("outing", day, outing),
    ]
    rider.context.add_init_script(STORE_IN_HAND)
    rider.page.evaluate(PUSH, entries)
    rider.page.reload()
    rider.go("/fields")
    rider.sees("2 fences")
    return f"/outing/{outing}"


def open_fence(rider: Person, outing: str, label: str) -> None:
    rider.go(outing)
    rider.tap(re.compile(label), "link")
    expect(clear(rider)).to_be_visible()


def clear(rider: Person):
    return rider.page.get_by_role("button", name=re.compile("^Clear"))


def saved(rider: Person) -> None:
    expect(rider.page.locator(".tap-bar__state--saved")).to_be_visible()


def not_clear(rider: Person, outcome: str) -> None:
    rider.thumb(rider.button("Not clear"))
    rider.thumb(rider.button(outcome))


def test_a_bounce_is_dropped_and_every_other_tap_shows_at_once(rider):
    open_fence(rider, at_the_field(rider), "1 Log")
    slow = rider.page.context.new_cdp_session(rider.page)
    slow.send("Emulation.setCPUThrottlingRate", {"rate": 6})
    rider.page.evaluate("window.slowStore = 1500")
    seen = rider.page.evaluate(TAPS, [".clear-button", [0, 120, 400, 900]])
    slow.send("Emulation.setCPUThrottlingRate", {"rate": 1})
    assert [each["count"] for each in seen] == ["1 today", "1 today", "2 today", "3 today"]
    assert all("Saving" in each["bar"] for each in seen)
    saved(rider)
    assert [each["outcome"] for each in attempts(rider)] == ["clear"] * 3
    rider.thumb(rider.button("Undo"))
    expect(rider.page.locator(".clear-button__count")).to_have_text("2 today")
    rider.thumb(rider.button("Undo"))
    expect(rider.page.locator(".clear-button__count")).to_have_text("1 today")


def test_a_tap_that_could_not_be_kept_says_so_stays_and_is_tried_again(rider):
    open_fence(rider, at_the_field(rider), "1 Log")
    rider.page.evaluate("window.fullStore = true")
    rider.thumb(clear(rider))
    expect(rider.page.locator(".tap-bar--not-saved")).to_contain_text("Not saved")
    expect(rider.page.locator(".clear-button__count")).to_have_text("1 today")
    assert attempts(rider) == []
    rider.page.evaluate("window.fullStore = false")
    rider.thumb(rider.button("Try again"))
    saved(rider)
    assert len(attempts(rider)) == 1


def test_a_tap_between_finger_and_disk_outlives_a_killed_browser(rider):
    outing = at_the_field(rider)
    open_fence(rider, outing, "1 Log")
    address = rider.page.url.removeprefix(rider.address)
    rider.page.evaluate("window.slowStore = 60000")
    rider.thumb(clear(rider))
    expect(rider.page.locator(".tap-bar__state")).to_have_text("Saving …")
    rider.page.wait_for_timeout(6000)  # the browser writes its small settings down every few seconds
    rider.kill()
    rider.open(address)
    expect(rider.page.locator(".clear-button__count")).to_have_text("1 today")
    saved(rider)
    assert len(attempts(rider)) == 1


def test_a_combination_is_tapped_element_by_element(rider):
    outing = at_the_field(rider)
    open_fence(rider, outing, "2 Treble")
    for letter in "AB":
        expect(clear(rider)).to_contain_text(f"Clear {letter}")
        rider.thumb(clear(rider))
    not_clear(rider, "Run-out")
    expect(clear(rider)).to_contain_text("Clear C")
    rider.thumb(rider.page.get_by_role("button", name=re.compile("^Element A")))
    rider.thumb(clear(rider))
    expect(clear(rider)).to_contain_text("Clear B")
    saved(rider)
    path = [(each["element"], each["outcome"]) for each in attempts(rider)]
    assert path == [("A", "clear"), ("B", "clear"), ("C", "run_out"), ("A", "clear")]
    sequences = [each["sequence_id"] for each in attempts(rider)]
    assert sequences[0] == sequences[1] == sequences[2] != sequences[3]
    rider.page.reload()
    expect(clear(rider)).to_contain_text("Clear B")
    rider.tap(re.compile("1 Log"), "link")
    rider.tap(re.compile("2 Treble"), "link")
    expect(clear(rider)).to_contain_text("Clear A")


def test_how_it_was_met_is_remembered_and_can_be_changed_after(rider):
    open_fence(rider, at_the_field(rider), "1 Log")
    rider.tap(re.compile("Next attempt"))
    rider.choose("Rein", "Left rein")
    rider.choose("How the horse met it", "Looky")
    rider.tap(re.compile("Next attempt"))
    rider.thumb(clear(rider))
    saved(rider)
    rider.page.reload()
    rider.thumb(clear(rider))
    saved(rider)
    assert [(each["presentation"]["rein"], each["attitude"]) for each in attempts(rider)] == [("left", "looky")] * 2
    rider.tap("Correct", "link")
    rider.choose("How the horse met it", "Bold")
    rider.sees("Attitude: Looky → Bold")
    assert attempts(rider)[1]["attitude"] == "bold"
    rider.tap("Take up again")
    rider.sees("Attitude: Bold → Looky")


def until_on_disk(phone, outcomes):
    """Waits until the living attempts in the phone's store have these outcomes."""
    for _ in range(100):
        if [each["outcome"] for each in attempts(phone)] == outcomes:
            return
        phone.page.wait_for_timeout(100)
    raise AssertionError(f"the store never held {outcomes}")


def test_the_last_attempt_is_repeated_as_it_was_in_one_tap_but_never_a_fall(rider):
    outing = at_the_field(rider)
    open_fence(rider, outing, "2 Treble")
    not_clear(rider, "Refusal")
    saved(rider)
    rider.go(outing)
    rider.thumb(rider.button("Once more: Refusal, 2 Treble A"))
    until_on_disk(rider, ["refusal", "refusal"])
    first, second = attempts(rider)
    assert first["sequence_id"] != second["sequence_id"]  # another presentation, not the same one going on
    assert {**first, "sequence_id": None} == {**second, "sequence_id": None}
    rider.thumb(rider.button("Undo"))
    until_on_disk(rider, ["refusal"])
    open_fence(rider, outing, "1 Log")
    not_clear(rider, "Rider fall")
    rider.thumb(rider.button("I have read this"))
    rider.go(outing)
    rider.sees("Rider fall, 1 Log")
    expect(rider.button("Once more")).to_have_count(0)


def test_what_was_taken_back_lies_in_the_bin_and_returns(rider):
    outing = at_the_field(rider)
    open_fence(rider, outing, "1 Log")
    not_clear(rider, "Circle")
    saved(rider)
    rider.thumb(rider.button("Undo"))
    expect(rider.page.get_by_text("Today: nothing yet")).to_be_visible()
    until_on_disk(rider, [])  # leaving sooner would leave the undo behind with the page
    rider.go(f"{outing}/attempts")
    rider.sees("Circle, 1 Log")
    rider.tap("Put back")
    expect(rider.page.get_by_role("link", name=re.compile("Circle, 1 Log"))).to_be_visible()
    assert [each["outcome"] for each in attempts(rider)] == ["circle"]


def test_after_a_fall_the_attempt_is_kept_and_the_screen_says_stop(rider):
    outing = at_the_field(rider)
    open_fence(rider, outing, "1 Log")
    not_clear(rider, "Rider fall")
    rider.sees("Stop for today")
    rider.sees(re.compile("suspected concussion"))
    rider.sees(re.compile("vet"))
    assert [each["outcome"] for each in attempts(rider)] == ["rider_fall"]
    rider.tap("I have read this")
    rider.go(outing)
    rider.sees("A fall is recorded: stop for today")


def test_half_typed_words_and_half_filled_forms_outlive_a_killed_browser(rider):
    outing = at_the_field(rider)
    rider.go(f"/note/{outing.removeprefix('/outing/')}")
    words = "Tight in the right rein until she saw the water. " * 4
    rider.page.get_by_label("Your note").press_sequentially(words[:200], delay=2)
    rider.page.wait_for_timeout(1000)
    address = rider.page.url.removeprefix(rider.address)
    rider.kill()
    rider.open(address)
    expect(rider.page.get_by_label("Your note")).to_have_value(words[:200])
    rider.go("/fence/new")
    rider.fill("Name or number", "3 Half a fence")
    rider.tap("Log", exact=True)
    rider.page.get_by_role("group", name="Height").get_by_role("button", name=re.compile("5 cm more")).click()
    rider.page.wait_for_timeout(1000)
    rider.kill()
    rider.open("/fence/new")
    rider.sees("Taken up where you left off")
    expect(rider.page.get_by_label("Name or number")).to_have_value("3 Half a fence")
    expect(rider.page.get_by_label("Height", exact=True).and_(rider.page.locator("input"))).to_have_value("80 cm")


def test_held_keys_and_swipes_record_nothing_twice(rider):
    open_fence(rider, at_the_field(rider), "1 Log")
    clear(rider).focus()
    for _ in range(40):
        rider.page.keyboard.down("Enter")  # a held key repeats
    rider.page.keyboard.up("Enter")
    expect(rider.page.locator(".clear-button__count")).to_have_text("1 today")
    saved(rider)
    swipe = rider.page.context.new_cdp_session(rider.page)
    for start in range(100, 700, 60):
        touch = [{"x": 2, "y": start}], [{"x": 180, "y": start + 5}], [{"x": 340, "y": start}]
        swipe.send("Input.dispatchTouchEvent", {"type": "touchStart", "touchPoints": touch[0]})
        swipe.send("Input.dispatchTouchEvent", {"type": "touchMove", "touchPoints": touch[1]})
        swipe.send("Input.dispatchTouchEvent", {"type": "touchMove", "touchPoints": touch[2]})
        swipe.send("Input.dispatchTouchEvent", {"type": "touchEnd", "touchPoints": []})
    expect(rider.page.locator(".clear-button__count")).to_have_text("1 today")
    assert len(attempts(rider)) == 1


def test_nothing_to_tap_is_small_or_close(rider):
    outing = at_the_field(rider)
    open_fence(rider, outing, "2 Treble")
    rider.thumb(clear(rider))
    saved(rider)
    measured = rider.page.locator(".panel__controls").evaluate("""(place) => {
      const boxes = [...place.querySelectorAll('button, a')].map((each) => each.getBoundingClientRect());
      const gap = (a, b) => Math.max(a.left - b.right, b.left - a.right, a.top - b.bottom, b.top - a.bottom);
      const gaps = boxes.flatMap((a, at) => boxes.slice(at + 1).map((b) => gap(a, b)));
      return { least: Math.min(...boxes.flatMap((box) => [box.width, box.height])), closest: Math.min(...gaps) };
    }""")
    assert measured["least"] >= 64
    assert measured["closest"] >= 15.9
