"""What canters run over and in: tracks measured by a calibrated wheel, and interval sets told from memory."""

import re

import pytest
from playwright.sync_api import expect

from browser.watching import (
    PRETEND_PHONE,
    RECORDS,
    opened_watch,
    shown_canter,
    start,
    stop,
)

pytestmark = pytest.mark.xdist_group("browser")


@pytest.fixture
def rider(saddled):
    """The phone just opened, with nothing running; afterwards no error thrown by a page."""
    yield from opened_watch(saddled)


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
    rider.has_drafted("50.4")
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
