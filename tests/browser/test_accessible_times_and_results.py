"""axe-core finds nothing on the screens of the stopwatch, tracks, results and course card, in all three looks.

axe-core's rules follow WCAG 2.2; what a machine can find is a part of it only. Target sizes and the main
number's size are measured beside it (recording controls 64 by 64 px with 16 px between them).
"""

import re

import pytest
from axe_playwright_python.sync_playwright import Axe

from browser.person import Person
from browser.watching import PRETEND_PHONE, ready_to_time, saved_canter, start, start_button, stop, stop_button

pytestmark = pytest.mark.xdist_group("browser")

LOOKS = {
    "light": "localStorage.removeItem('fieldtally.sun'); localStorage.setItem('fieldtally.look', '\"light\"')",
    "dark": "localStorage.removeItem('fieldtally.sun'); localStorage.setItem('fieldtally.look', '\"dark\"')",
    "sun": "localStorage.setItem('fieldtally.sun', 'true')",
}


def nothing_found(phone: Person, where: str) -> None:
    found = Axe().run(phone.page)
    assert found.violations_count == 0, f"{where}: {found.generate_report()}"


def in_each_look(phone: Person, path: str) -> None:
    for look, set_look in LOOKS.items():
        phone.page.evaluate(set_look)
        phone.go(path)
        phone.page.wait_for_timeout(400)
        nothing_found(phone, f"{path} in {look}")


def test_no_violations(rider):
    ready_to_time(rider)
    for path in ("/watch", "/tracks", "/tracks/new", "/results", "/results/new/flatwork_test",
                 "/results/new/jumping_round", "/results/new/event_result", "/course"):  # fmt: skip
        in_each_look(rider, path)
    rider.go("/watch")
    start(rider)
    in_each_look(rider, "/watch")
    stop(rider)
    in_each_look(rider, rider.page.url.removeprefix(rider.address))


def test_no_violations_in_the_modes(rider):
    rider.context.add_init_script(PRETEND_PHONE)
    ready_to_time(rider)
    rider.go("/calibration/new")
    rider.fill("Instrument", "Yard wheel")
    for n in (1, 2, 3):
        rider.fill(re.compile(f"^Walk {n}"), f"50.{n}")
    rider.has_drafted("50.3")
    for path in ("/calibration/new", "/conditioning", "/conditioning/memory"):
        in_each_look(rider, path)
    rider.tap("Save set")  # nothing in the way: the one horse is chosen, the day is today
    rider.page.wait_for_url(re.compile("/conditioning/set/"))
    nothing_found(rider, "a set from memory")
    rider.go("/calibration/new")
    rider.tap("Save calibration")
    rider.heading("Tracks")
    rider.go("/tracks/new")
    rider.choose("Calibrated instrument", re.compile("Yard wheel"))
    nothing_found(rider, "a track by a calibrated wheel")
    rider.go("/watch")
    rider.tap("Change")
    rider.choose("Start", "Standing")
    rider.choose("Countdown", "10 s")
    nothing_found(rider, "the set-up of a countdown")
    start(rider)
    nothing_found(rider, "a countdown")
    a_set_over_fences(rider)
    in_each_look(rider, rider.page.url.removeprefix(rider.address))
    for box in (each.bounding_box() for each in rider.page.locator("button:visible, a.button:visible").all()):
        assert box["height"] >= 44 and box["width"] >= 44
    again = rider.page.get_by_role("button", name=re.compile("^Again")).bounding_box()
    assert again["height"] >= 64


def a_set_over_fences(rider) -> None:
    """Two canters of a set, the second with a fence on its clock; its list of changes is open."""
    rider.page.evaluate("phone.awake(30000)")
    stop(rider)
    outing = saved_canter(rider)["outing_id"]
    rider.tap(re.compile("^Again"))
    start(rider)
    rider.page.evaluate("phone.awake(30000)")
    rider.go(f"/outing/{outing}/made-up")
    rider.fill(re.compile("What you call it"), "Hay rail")
    rider.choose("How it is built", "Rail")
    rider.tap("Use this fence")
    rider.thumb(rider.button("Clear"))
    rider.all_sent()
    rider.go("/watch")
    stop(rider)
    rider.sees("2 canters of this set")
    rider.page.get_by_text("Change the fences of this canter").click()
    nothing_found(rider, "a canter of a set, its fences being changed")


def test_sizes_in_the_field(rider):
    ready_to_time(rider)
    assert start_button(rider).bounding_box()["height"] >= 64
    start(rider)
    stop_box = stop_button(rider).bounding_box()
    split_box = rider.page.get_by_role("button", name=re.compile("^SPLIT")).bounding_box()
    for box in (stop_box, split_box):
        assert box["width"] >= 64 and box["height"] >= 64
        assert box["y"] + box["height"] / 2 > 400, "not in the lower half"
    assert stop_box["x"] - (split_box["x"] + split_box["width"]) >= 16
    assert rider.page.locator(".face__whole").evaluate("(one) => parseFloat(getComputedStyle(one).fontSize)") >= 40
    rider.page.wait_for_timeout(600)
    stop(rider)
    for button in rider.page.locator("button:visible, a.button:visible").all():
        box = button.bounding_box()
        assert box["height"] >= 44 and box["width"] >= 44, button.inner_text()


def test_nothing_sticks_out_at_twice_the_text_size(rider):
    ready_to_time(rider)
    for path in ("/watch", "/tracks", "/tracks/new", "/calibration/new", "/conditioning/memory",
                 "/results/new/event_result", "/course"):  # fmt: skip
        rider.go(path)
        rider.page.evaluate("document.documentElement.style.fontSize = '200%'")
        rider.page.wait_for_timeout(300)
        wide = rider.page.evaluate("document.querySelector('main').scrollWidth")
        assert wide <= rider.page.evaluate("document.documentElement.clientWidth"), path
    rider.go("/watch")
    start(rider)
    rider.page.evaluate("document.documentElement.style.fontSize = '200%'")
    box = stop_button(rider).bounding_box()
    assert box["y"] + box["height"] <= 801, "STOP has left the screen"
