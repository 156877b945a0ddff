"""The field on a WebKit engine: open with no signal, log, time a canter, lose the browser, send it all.

The server is really stopped (WebKitGTK has no switch for the network; a closed port is no signal) and the browser
really killed. What the server holds in the end is read by the command line.
"""

import json
import time
from collections import Counter

import pytest

pytestmark = pytest.mark.xdist_group("webkit")

A_BOUNCE_S = 0.4  # a second tap sooner than this is a finger's bounce to the app


def in_the_book(server) -> Counter:
    """How many records of each kind the server holds in the rider's logbook; what was taken back does not count."""
    told = json.loads(server.command("export", "--logbook", "wren", "--without-media"))
    replaced = {gone for entry in told["entries"] for gone in entry["supersedes"]}
    stand = [entry for entry in told["entries"] if entry["id"] not in replaced and entry["body"] is not None]
    return Counter(entry["kind"] for entry in stand)


def tap_slowly(phone, name: str) -> None:
    time.sleep(A_BOUNCE_S)
    phone.tap(name, "button")


def log_attempts(phone) -> None:
    """Two clear, a refusal undone, a run-out: three stand."""
    phone.tap("1 Long log", "a")
    tap_slowly(phone, "Clear")
    phone.sees("Today: 1 clear")
    tap_slowly(phone, "Clear")
    phone.sees("Today: 2 clear")
    tap_slowly(phone, "Not clear")
    tap_slowly(phone, "Refusal")
    phone.sees("Today: 2 clear, 1 refusal")
    tap_slowly(phone, "Undo")
    phone.until(lambda: "1 refusal" not in phone.text(), "the refusal is undone")
    tap_slowly(phone, "Not clear")
    tap_slowly(phone, "Run-out")
    phone.sees("Today: 2 clear, 1 run-out")
    kept = "return !!document.querySelector('.tap-bar__state--saved')"
    phone.until(lambda: phone.run(kept), "the run-out is on the disk")  # shown is not yet kept


def make_a_track(phone) -> None:
    phone.go("/tracks/new")
    phone.sees("Save track")
    time.sleep(1)
    phone.fill("Name", "Thornybank straight")
    phone.fill("Distance", "100")
    phone.tap("Save track", "button")
    phone.sees("Canters over this track")
    time.sleep(1.5)  # the line at the top counts what was just written a moment later


def time_a_canter(phone, outing: str) -> None:
    """The run outlives a reload and the browser's death."""
    make_a_track(phone)
    phone.go(f"/watch?outing={outing}")
    phone.tap("Thornybank straight", "label")
    phone.tap("START", "button")
    phone.sees("Kept on this phone")
    started = time.monotonic()
    phone.reload()
    phone.sees("STOP")
    phone.kill()
    phone.open("/watch")
    phone.sees("STOP")
    time.sleep(max(0, 12 - (time.monotonic() - started)))  # shorter is too fast for a horse
    phone.tap("STOP", "button")
    phone.sees("m/min")


def test_a_day_in_the_field(server, phone):
    phone.open("/sign-in")
    phone.sign_in("wren", server.passwords["wren"])
    phone.sees("Start the outing")
    phone.ready_for_the_field()
    before = in_the_book(server)
    server.stop()
    phone.kill()

    phone.open("/")
    phone.tap("Start the outing", "button")
    outing = phone.until(lambda: phone.driver.current_url.partition("/outing/")[2], "the outing is open")
    log_attempts(phone)
    time_a_canter(phone, outing)
    phone.go(f"/outing/{outing}")
    phone.sees("waiting")
    phone.kill()

    server.start()
    phone.open(f"/outing/{outing}")
    phone.sees("All sent at", patience_s=60)
    phone.sees("2 clear, 1 run-out")
    added = in_the_book(server) - before
    assert added == Counter(outing=1, attempt=3, track=1, timed_canter=1)
