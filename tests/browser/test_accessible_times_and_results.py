"""axe-core finds nothing on the screens of the stopwatch, tracks, results and course card, in all three looks.

axe-core's rules follow WCAG 2.2; what a machine can find is a part of it only. Target sizes and the main
number's size are measured beside it (recording controls 64 by 64 px with 16 px between them).
"""

import re

import pytest
from axe_playwright_python.sync_playwright import Axe

from browser.person import Person
from browser.watching import ready_to_time, start, start_button, stop, stop_button

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
    for path in ("/watch", "/tracks", "/results/new/event_result", "/course"):
        rider.go(path)
        rider.page.evaluate("document.documentElement.style.fontSize = '200%'")
        rider.page.wait_for_timeout(300)
        wide, window = rider.page.evaluate("[document.querySelector('main').scrollWidth, innerWidth]")
        assert wide <= window, path
    rider.go("/watch")
    start(rider)
    rider.page.evaluate("document.documentElement.style.fontSize = '200%'")
    box = stop_button(rider).bounding_box()
    assert box["y"] + box["height"] <= 801, "STOP has left the screen"
