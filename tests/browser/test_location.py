"""The phone's location as a second witness, by Playwright's emulation of it: recorded while the stopwatch runs, kept
through a killed browser, refused in words, shown beside the watch and never mixed in; GPX in and out by the screens.

Faults FD-05 (the location wanders), IE-04 and IE-06 (tracks without times, hostile tracks) of the project's list.
"""

import math
import re
import time

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import expect

from browser.person import Person
from browser.watching import open_watch, saved_canter, start, stop, stop_button

pytestmark = pytest.mark.xdist_group("browser")

LATITUDE, LONGITUDE = 52.2, -1.6  # an invented field
METRES_PER_DEGREE = 111_266  # of latitude, there
MPS = 6.7

TRACES = """async () => {
  const answer = (request) => new Promise((done) => { request.onsuccess = () => done(request.result); });
  const { name } = (await indexedDB.databases()).find((one) => one.name.startsWith('fieldtally-'));
  const db = await answer(indexedDB.open(name));
  const all = await answer(db.transaction('records').objectStore('records').getAll());
  db.close();
  return all.filter((row) => row.shelf === 'trace').map((row) => ({ record_id: row.record_id, ...row.body }));
}"""
KEPT = """async () => {
  const answer = (request) => new Promise((done) => { request.onsuccess = () => done(request.result); });
  const { name } = (await indexedDB.databases()).find((one) => one.name.startsWith('fieldtally-'));
  const db = await answer(indexedDB.open(name));
  const all = await answer(db.transaction('meta').objectStore('meta').getAll());
  db.close();
  return all.filter((row) => row.key.startsWith('trace ')).reduce((sum, row) => sum + row.value.points.length, 0);
}"""
GPX = '<?xml version="1.0"?><gpx version="1.1" creator="invented" xmlns="http://www.topografix.com/GPX/1/1"><trk>'


@pytest.fixture
def rider(saddled):
    saddled.open("/watch")
    allow(saddled)
    yield saddled
    saddled.close()
    mistakes, saddled.mistakes = saddled.mistakes, []
    assert mistakes == []


def allow(rider: Person, metres: float = 0) -> None:
    rider.context.grant_permissions(["geolocation"], origin=rider.address)
    be_at(rider, metres)


def be_at(rider: Person, metres: float, accuracy_m: float = 4) -> None:
    place = {"latitude": LATITUDE + metres / METRES_PER_DEGREE, "longitude": LONGITUDE, "accuracy": accuracy_m}
    rider.context.set_geolocation(place)


def ride(rider: Person, seconds: float, since: float) -> None:
    """North at 6.7 m/s from `since` on, with a fix twice a second."""
    until = time.monotonic() + seconds
    while time.monotonic() < until:
        be_at(rider, MPS * (time.monotonic() - since))
        rider.page.wait_for_timeout(450)


def switch_on(rider: Person) -> None:
    open_watch(rider)
    if not rider.page.get_by_role("group", name="Record the phone’s location").count():
        rider.tap("Change")
    rider.choose(re.compile("^Record the phone’s location"), "On")


def accessible(rider: Person) -> None:
    """axe-core finds nothing, in any of the three looks."""
    for theme in ("light", "dark", "sun"):
        rider.page.evaluate(f"document.documentElement.dataset.theme = '{theme}'")
        found = Axe().run(rider.page)
        assert found.violations_count == 0, f"{theme}: {found.generate_report()}"


def traces(rider: Person) -> list[dict]:
    return rider.page.evaluate(TRACES)


def newest_trace(rider: Person) -> dict:
    """The trace saved last, once there is one."""
    deadline = time.monotonic() + 10
    while time.monotonic() < deadline:
        if found := traces(rider):
            return max(found, key=lambda trace: trace["record_id"])
        rider.page.wait_for_timeout(200)
    raise AssertionError("no trace was saved")


def metres_of(trace: dict) -> float:
    return sum(trace["latitude_udeg"][1:]) * METRES_PER_DEGREE / 1e6


def test_recorded_during_a_canter_and_shown_beside_the_watch(rider):
    switch_on(rider)
    start(rider)
    ride(rider, 14, time.monotonic())
    rider.sees(re.compile(r"Location: \d+ fixes, ± 4 m"))
    stop(rider)
    canter, trace = saved_canter(rider), newest_trace(rider)
    assert trace["source"] == "phone" and trace["outing_id"] == canter["outing_id"]
    assert 20 <= len(trace["dt_ms"]) <= 40
    assert metres_of(trace) == pytest.approx(MPS * sum(trace["dt_ms"]) / 1000, rel=0.1)  # the test's own steps are late
    rider.sees(re.compile(r"^Stopwatch: \d+ ± \d+ m/min\.$"))
    line = rider.page.get_by_text(re.compile("^Phone’s location: ")).inner_text()
    by_phone = int(re.search(r"location: (\d+) ±", line)[1])
    assert by_phone == pytest.approx(60 * MPS, rel=0.05)
    mpm = round(100 * 60_000 / canter["elapsed_ms"])
    expect(rider.page.get_by_text(re.compile(rf"^{mpm} ± \d+ m/min"))).to_have_count(1)  # the headline is the watch's
    rider.sees("Readiness counts the stopwatch only.")
    expect(rider.page.get_by_role("img", name=re.compile("^Speed over .* with 0 gaps"))).to_be_visible()
    accessible(rider)


def test_a_killed_browser_goes_on_with_a_gap(rider):
    switch_on(rider)
    start(rider)
    since = time.monotonic()
    ride(rider, 6, since)
    deadline = time.monotonic() + 5
    while rider.page.evaluate(KEPT) < 8:
        assert time.monotonic() < deadline, "the points were not kept as they came"
        rider.page.wait_for_timeout(100)
    rider.kill()
    time.sleep(6)
    rider.open("/watch")
    allow(rider, MPS * (time.monotonic() - since))
    expect(stop_button(rider)).to_be_visible()
    ride(rider, 6, since)
    stop(rider)
    trace = newest_trace(rider)
    assert len(trace["breaks"]) == 1
    assert trace["dt_ms"][trace["breaks"][0]] > 6000
    rider.sees(re.compile("^1 gap: nothing is counted across it"))
    expect(rider.page.get_by_role("img", name=re.compile("with 1 gap"))).to_be_visible()
    assert rider.page.evaluate(KEPT) == 0


def test_refused_is_said_and_the_time_goes_on(rider):
    switch_on(rider)
    rider.context.clear_permissions()
    rider.page.reload()
    rider.context.add_init_script(
        "navigator.geolocation.watchPosition = (_, fail) => { setTimeout(() => fail({ code: 1 }), 50); return 1; };"
    )
    switch_on(rider)
    rider.choose(re.compile("^Record the phone’s location"), "Off")
    rider.page.wait_for_timeout(1500)  # what is chosen is remembered a moment later
    rider.choose(re.compile("^Record the phone’s location"), "On")
    rider.sees("This phone does not tell Fieldtally where it is.")
    start(rider)
    rider.sees("No location just now. The time goes on.")
    rider.page.wait_for_timeout(600)
    before = len(traces(rider))
    stop(rider)
    rider.sees("Saved on this phone.")
    assert len(traces(rider)) == before
    rider.go("/watch")
    rider.tap("Change")
    rider.choose(re.compile("^Record the phone’s location"), "Off")


def test_nobody_is_asked_who_did_not_ask(rider):
    counting = "window.asked = 0; navigator.geolocation.watchPosition = () => { asked++; return 1; };"
    switch_on(rider)
    rider.choose(re.compile("^Record the phone’s location"), "Off")
    rider.page.wait_for_timeout(1500)  # what is chosen is remembered a moment later
    rider.context.add_init_script(counting)
    open_watch(rider)
    start(rider)
    rider.page.wait_for_timeout(600)
    stop(rider)
    rider.sees("Saved on this phone.")
    assert rider.page.evaluate("asked") == 0


def trackpoints(count: int, timed: bool, radius_m: float = 100) -> str:
    """Round and round an invented field at 7 m/s."""
    points = []
    for n in range(count):
        turn = n * 7 / radius_m
        latitude = LATITUDE + radius_m * math.sin(turn) / METRES_PER_DEGREE
        longitude = LONGITUDE + radius_m * math.cos(turn) / (METRES_PER_DEGREE * math.cos(math.radians(LATITUDE)))
        moment = f"<time>2026-05-03T09:{n // 60:02d}:{n % 60:02d}Z</time>" if timed else ""
        points.append(f'<trkpt lat="{latitude:.6f}" lon="{longitude:.6f}">{moment}</trkpt>')
    return f"<trkseg>{''.join(points)}</trkseg>"


def open_traces(rider: Person) -> str:
    """The screen with the traces of the newest canter's outing."""
    if saved_canter(rider) is None:
        open_watch(rider)
        start(rider)
        rider.page.wait_for_timeout(1500)
        stop(rider)
    outing = saved_canter(rider)["outing_id"]
    rider.go(f"/outing/{outing}/details")
    rider.tap("Traces", "link")
    rider.heading("Traces")
    return outing


def choose_file(rider: Person, text: str, name: str = "ride.gpx") -> None:
    rider.page.get_by_label("GPX file").set_input_files({"name": name, "mimeType": "", "buffer": text.encode()})


def test_a_file_is_brought_in_taken_out_and_deleted(rider, tmp_path):
    open_traces(rider)
    choose_file(rider, f"{GPX}<name>Round the oak</name>{trackpoints(600, True)}</trk></gpx>")
    rider.sees(re.compile(r"^600 points with times, 4,?\d{3} m along all of them"))
    rider.tap("Keep as a trace of this outing")
    rider.heading("Round the oak")
    rider.sees(re.compile(r"^Phone’s location: 4[12]\d ± \d+ m/min, over 4,?\d{3} m"))
    accessible(rider)
    with rider.page.expect_download() as download:
        rider.tap("Take out as GPX")
    taken = tmp_path / "taken.gpx"
    download.value.save_as(taken)
    kept = next(trace for trace in traces(rider) if trace["name"] == "Round the oak")
    rider.go(f"/outing/{kept['outing_id']}/traces")
    rider.page.get_by_label("GPX file").set_input_files(taken)
    rider.sees(re.compile("^600 points with times"))
    rider.tap("Keep as a trace of this outing")
    rider.heading("Round the oak")
    twins = [trace for trace in traces(rider) if trace["name"] == "Round the oak"]
    for one in twins:
        del one["record_id"]
    assert len(twins) == 2 and twins[0] == twins[1]
    rider.tap("Delete trace")
    rider.sees("Trace deleted.")
    rider.tap("Undo")
    rider.until(lambda: len([trace for trace in traces(rider) if trace["name"] == "Round the oak"]) == 2)
    rider.all_sent()


def test_a_drawn_course_has_a_length_and_no_speed(rider):
    open_traces(rider)
    choose_file(rider, f"{GPX}{trackpoints(90, False)}</trk></gpx>")
    rider.sees(re.compile(r"^90 points without times: a course of 6\d\d m, and no speed"))
    rider.tap("Keep as a trace of this outing")
    rider.heading("Course")
    rider.sees(re.compile(r"^A course without times: 6\d\d m as drawn, and no speed"))
    rider.go("/course")
    rider.page.get_by_text("Length from a GPX file").click()
    choose_file(rider, f"{GPX}{trackpoints(420, False)}</trk></gpx>")
    expect(rider.page.get_by_label("Length of the course")).to_have_value(re.compile(r"^29\d\d$"))


@pytest.mark.parametrize(
    "text, words",
    [
        ('<!DOCTYPE gpx [<!ENTITY a "aa">]><gpx>&a;</gpx>', "This file defines a document type of its own."),
        ("PK\x03\x04", "This file is packed."),
        ("<gpx>" + "<a>" * 5000, "This file is nested deeper"),
        ("<html></html>", "This is not a GPX file."),
        ("<gpx><trk><trkseg/></trk></gpx>", "There is no track or route with two points or more"),
    ],
)
def test_what_cannot_be_read_says_why(rider, text, words):
    open_traces(rider)
    choose_file(rider, text)
    rider.sees(re.compile(re.escape(words)))


def test_fifty_megabytes_are_read_or_refused_within_ten_seconds(rider, tmp_path):
    """IE-06: 500,000 points; the page stays usable meanwhile, and does not grow by 150 MB."""
    big = tmp_path / "big.gpx"
    with big.open("w") as file:
        file.write(f"{GPX}<trkseg>")
        for n in range(500_000):
            moment = time.strftime("%Y-%m-%dT%H:%M:%SZ", time.gmtime(1_777_799_553 + n))
            place = f'lat="{LATITUDE + n * 3e-5 % 1:.7f}" lon="{LONGITUDE + n % 7 * 1e-5:.7f}"'
            file.write(f"<trkpt {place}><ele>101.5</ele><time>{moment}</time></trkpt>\n")
        file.write("</trkseg></trk></gpx>")
    assert big.stat().st_size > 45_000_000
    open_traces(rider)
    cdp = rider.context.new_cdp_session(rider.page)
    cdp.send("HeapProfiler.collectGarbage")
    before = cdp.send("Runtime.getHeapUsage")["usedSize"]
    began = time.monotonic()
    rider.page.get_by_label("GPX file").set_input_files(big)
    expect(rider.page.get_by_text(re.compile("^500,?000 points with times"))).to_be_visible(timeout=60_000)
    took_s = time.monotonic() - began
    grown_mb = (cdp.send("Runtime.getHeapUsage")["usedSize"] - before) / 1e6
    print(f"50 MB of GPX read in {took_s:.1f} s, heap grown by {grown_mb:.0f} MB")
    assert grown_mb < 150
    rider.sees(re.compile(r"^49\d,?\d{3} points were thinned out to fit"))
