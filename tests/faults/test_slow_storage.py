"""A phone whose storage takes a third of a second over every write: what is tapped before the screen has caught up is
kept, and nothing is shown as gone that a page loaded at once would bring back.
"""

import re

import pytest
from playwright.sync_api import expect

from browser.person import Person
from browser.test_countdown import choose_countdown
from browser.test_recording import at_the_field
from browser.watching import PRETEND_PHONE, RECORDS, call_off, ready_to_time, start, start_button, stop

pytestmark = pytest.mark.xdist_group("browser")

# a write transaction is kept open by reads of nothing until its time is over
SLOW_STORAGE = """
(() => {
  const [begin, read] = [IDBDatabase.prototype.transaction, IDBObjectStore.prototype.get];
  const now = performance.now.bind(performance);
  IDBDatabase.prototype.transaction = function (stores, mode, ...more) {
    const transaction = begin.call(this, stores, mode, ...more);
    if (mode !== 'readwrite') return transaction;
    const until = now() + 300;
    const store = transaction.objectStore([stores].flat()[0]);
    const wait = () => {
      if (now() < until) try { read.call(store, 'nothing').onsuccess = wait; } catch { /* it is over */ }
    };
    wait();
    return transaction;
  };
})();
"""


@pytest.fixture
def slow(rider) -> Person:
    rider.context.add_init_script(SLOW_STORAGE)
    return rider


def the_one(phone: Person, shelf: str) -> dict:
    (body,) = phone.page.evaluate(RECORDS, shelf).values()
    return body


def test_the_storage_is_slow(slow):
    """Or the others here would prove nothing."""
    slow.page.reload()
    slow.heading("Today")
    took_ms = slow.page.evaluate("""async () => {
      const asked = indexedDB.open('slow', 1);
      asked.onupgradeneeded = () => asked.result.createObjectStore('one');
      const db = await new Promise((done) => { asked.onsuccess = () => done(asked.result); });
      const began = performance.now();
      const writing = db.transaction('one', 'readwrite');
      writing.objectStore('one').put(1, 1);
      await new Promise((done) => { writing.oncomplete = done; });
      return performance.now() - began;
    }""")
    assert took_ms >= 300


def test_a_note_left_by_tapping_something_else_is_kept_beside_it(slow):
    slow.go(f"{at_the_field(slow)}/details")
    slow.fill("About the day", "Wind from the west")
    slow.choose("Going", "Firm")
    slow.choose("Rider’s confidence", re.compile("^4"))
    slow.tap("Finish the outing")
    slow.heading("Today")
    outing = the_one(slow, "outing")
    assert (outing["notes"], outing["going"], outing["rider_confidence"], outing["closed"]) == (
        "Wind from the west", "firm", 4, True,
    )  # fmt: skip


def test_what_is_typed_while_the_first_half_is_being_kept_stays(slow):
    slow.go(f"{at_the_field(slow)}/details")
    box = slow.page.get_by_label("About the day")
    box.fill("Wind")
    box.blur()
    box.press_sequentially(" ")
    slow.until(lambda: the_one(slow, "outing")["notes"] == "Wind")
    slow.page.wait_for_timeout(500)  # the screen has caught up
    expect(box).to_have_value("Wind ")  # which says the same as what was kept
    box.press_sequentially("from the west", delay=60)
    expect(box).to_have_value("Wind from the west")
    box.blur()
    slow.until(lambda: the_one(slow, "outing")["notes"] == "Wind from the west")
    slow.page.reload()
    expect(box).to_have_value("Wind from the west")


def test_a_note_is_kept_when_its_screen_is_left_from_within_the_box(slow):
    outing = at_the_field(slow)
    slow.go(outing)
    slow.page.get_by_role("link", name="Details and finish").click()
    slow.fill("About the day", "Wind from the west")
    slow.page.go_back()
    slow.until(lambda: the_one(slow, "outing")["notes"] == "Wind from the west")


def test_a_note_is_kept_when_the_phone_is_put_away_from_within_the_box(slow):
    slow.context.add_init_script(PRETEND_PHONE)
    slow.go(f"{at_the_field(slow)}/details")
    slow.fill("About the day", "Wind from the west")
    slow.page.evaluate("phone.hide()")
    slow.until(lambda: the_one(slow, "outing")["notes"] == "Wind from the west")


def test_a_canter_thrown_away_with_a_note_half_typed_stays_away(slow):
    ready_to_time(slow)
    start(slow)
    slow.page.wait_for_timeout(1500)
    stop(slow)
    slow.fill("Note", "Into the wind")
    slow.tap("Throw away")
    slow.sees("Undo")
    slow.go("/needs-you")
    assert slow.page.evaluate(RECORDS, "timed_canter") == {}


def test_a_countdown_called_off_stays_called_off(slow):
    ready_to_time(slow)
    choose_countdown(slow, 10)
    start(slow)
    slow.sees("Kept on this phone")
    call_off(slow).click()
    expect(start_button(slow)).to_be_visible()
    slow.page.reload()
    expect(start_button(slow)).to_be_visible()


def test_a_run_thrown_away_stays_away(slow):
    ready_to_time(slow)
    start(slow)
    slow.sees("Kept on this phone")
    slow.tap("Throw away")
    expect(start_button(slow)).to_be_visible()
    slow.page.reload()
    expect(start_button(slow)).to_be_visible()
