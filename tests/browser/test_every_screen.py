"""Every line of the route table, on a season's logbook: axe-core finds nothing in any look, the sun's contrast is
7:1, nothing sticks out or is cut at twice the text size or on its side.

axe-core's rules follow WCAG 2.2; 7:1 is its level AAA (success criterion 1.4.6). A route that has no address here
fails, so that a new screen cannot be forgotten.
"""

import json
import re
from uuid import uuid4

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import expect

from browser.person import PHONE
from browser.running_server import ROOT, RunningServer
from browser.test_recording import PUSH, entry

pytestmark = pytest.mark.xdist_group("browser")

ROUTE = re.compile(r'\{ path: "([^"]+)"')
# What stands for each gap of an address: the oldest record of that kind (of the horse that the season is about).
ADDRESSES = {
    "/board/:horseId/:levelId": "/board/{horse}/novice",
    "/finding/:horseId/:levelId/:requirementId": "/finding/{horse}/novice/fixed",
    "/plan/:horseId/:levelId": "/plan/{horse}/novice",
    "/what-if/:horseId/:levelId": "/what-if/{horse}/novice",
    "/bar/:horseId/:levelId": "/bar/{horse}/novice",
    "/invited/:code": "/invited/nobody-wrote-this",
    "/timeline/:id": "/timeline/{outing}",
    "/horse/:id": "/horse/{horse}",
    "/outing/:id": "/outing/{outing}",
    "/outing/:id/fence/:fenceId": "/outing/{outing}/fence/{fence}",
    "/outing/:id/made-up": "/outing/{outing}/made-up",
    "/outing/:id/details": "/outing/{outing}/details",
    "/outing/:id/attempts": "/outing/{outing}/attempts",
    "/outing/:id/traces": "/outing/{outing}/traces",
    "/attempt/:id": "/attempt/{attempt}",
    "/note/:id": "/note/{outing}",
    "/photo/:id": "/photo/none",
    "/field/:id": "/field/{field}",
    "/field/:id/edit": "/field/{field}/edit",
    "/field/:id/walk": "/field/{field}/walk",
    "/field/:id/sketch": "/field/{field}/sketch",
    "/field/:id/share": "/field/{field}/share",
    "/fence/:id": "/fence/{fence}",
    "/trace/:id": "/trace/{trace}",
    "/watch/canter/:id": "/watch/canter/{timed_canter}",
    "/tracks/:id": "/tracks/{track}",
    "/tracks/:id/edit": "/tracks/{track}/edit",
    "/calibration/:id": "/calibration/{calibration}",
    "/results/new/:kind": "/results/new/event_result",
    "/results/:kind/:id": "/results/event_result/{event_result}",
    "/conditioning/set/:id": "/conditioning/set/{interval_set}",
    "/patterns/:horseId": "/patterns/{horse}",
}
LYING = {"width": 740, "height": 360}  # px
CONTRAST = {"runOnly": ["color-contrast"]}
SUN = {"runOnly": ["color-contrast-enhanced"], "rules": {"color-contrast-enhanced": {"enabled": True}}}
# On a phone the window's innerWidth grows with what is too wide for it; clientWidth is the glass.
STICKS_OUT = """[...document.querySelectorAll('main *')].filter((one) => !one.closest('.unseen, svg'))
  .filter((one) => one.getBoundingClientRect().right > document.documentElement.clientWidth + 1)
  .map((one) => one.outerHTML.slice(0, 120)).slice(0, 3)"""
EXPORT = """async () => {
  const { logbooks } = await (await fetch('/api/session')).json();
  return (await (await fetch(`/api/logbooks/${logbooks[0].id}/export`)).json()).entries;
}"""
# Words wider than what they stand in: laid over their neighbour or cut off. A list's own row may scroll, and a space
# at the end of a line may hang over the edge where spaces are kept.
CUT = """() => {
const textsIn = (one) => {
  const nodes = document.createTreeWalker(one, NodeFilter.SHOW_TEXT), found = [];
  while (nodes.nextNode()) if (!nodes.currentNode.parentElement.closest('.unseen')) found.push(nodes.currentNode);
  return found;
};
return [...document.querySelectorAll('body *')].filter((one) => {
  if (![...one.childNodes].some((node) => node.nodeType === 3 && node.textContent.trim())) return false;
  const style = getComputedStyle(one);
  if (style.display === 'inline' || one.closest('.unseen, .skip, svg, option')) return false;
  if (!one.checkVisibility({ visibilityProperty: true })) return false;
  if (/hidden|clip/.test(style.overflowX + style.overflowY) && one.scrollHeight > one.clientHeight + 2) return true;
  const outer = one.getBoundingClientRect();
  const hangs = style.whiteSpace === 'pre-wrap' ? parseFloat(style.fontSize) / 2 : 0;
  const apart = textsIn(one).map((node) => {
    const words = document.createRange();
    words.selectNodeContents(node);
    const inner = words.getBoundingClientRect();
    return inner.width && Math.max(inner.right - hangs - outer.right, outer.left - inner.left);
  });
  return outer.width > 2 && Math.max(0, ...apart) > 1.5;
}).map((one) => one.outerHTML.slice(0, 120)).slice(0, 3); }"""
IDS = f"""async () => {{
  const entries = await ({EXPORT})();
  return Object.fromEntries(entries.filter((one) => one.body).reverse().map((one) => [one.kind, one.record_id]));
}}"""


def furnish(phone, ids: dict[str, str]) -> dict[str, str]:
    """Sends what the demonstration's logbook has none of, so that those screens have something to show."""
    track = {"latitude_udeg": [51_500_000, *[40] * 60], "longitude_udeg": [-1_200_000, *[60] * 60]}
    walked = {"measured_by": "wheel", "taped_distance_m": 50, "walked_m": [50.1, 50.2, 50.3], "date": "2026-05-01"}
    checks = [{"minute": minute, "heart_rate_bpm": 90, "respiration_bpm": 40} for minute in (2, 10)]
    canters = [{"work_s": 180, "rest_s": 180, "speed_mpm": 350}] * 3
    bodies = {
        "calibration": {"instrument": "Yard wheel"} | walked,
        "interval_set": {"outing_id": ids["outing"], "intervals": canters, "recoveries": checks},
        "trace": {"outing_id": ids["outing"], "source": "file", "name": "The hedge line"} | track,
    }
    made = {kind: str(uuid4()) for kind in bodies}
    phone.page.evaluate(PUSH, [entry(kind, body, made[kind]) for kind, body in bodies.items()])
    phone.page.reload()
    phone.all_sent()
    return ids | made


def routes() -> list[str]:
    return ROUTE.findall((ROOT / "webclient" / "src" / "routes.ts").read_text(encoding="utf-8"))


@pytest.fixture
def server(tmp_path):
    """The demonstration's server."""
    running = RunningServer(tmp_path / "data")
    people = json.loads(running.command("demo", "--no-serve", "--json"))["people"]
    running.passwords = {one["sign_in_name"]: one["password"] for one in people}
    running.start()
    yield running
    running.stop()


@pytest.fixture
def signed_in(server, people):
    """The demonstration's rider, with her whole logbook on the phone."""
    phone = people("wren")
    phone.open("/sign-in")
    phone.sign_in("wren", server.passwords["wren"])
    phone.all_sent()
    return phone


def test_every_route_has_an_address():
    assert [one for one in routes() if ":" in one and one not in ADDRESSES] == []
    assert [one for one in ADDRESSES if one not in routes()] == []


def test_every_screen_in_every_look_and_at_twice_the_text_size(signed_in):
    ids, found = furnish(signed_in, signed_in.page.evaluate(IDS)), []
    for route in routes():
        signed_in.go(ADDRESSES.get(route, route).format(**ids))
        expect(signed_in.page.locator("h1").first).to_be_visible()
        signed_in.page.wait_for_timeout(150)  # what comes out of the store a moment after the heading
        found += faults(signed_in.page, route)
    assert found == [], "\n".join(found)


def faults(page, route: str) -> list[str]:
    axe = Axe()
    found = [*named(axe.run(page), f"{route} light")]
    for look, options in (("dark", CONTRAST), ("sun", SUN)):
        page.evaluate("(look) => { document.documentElement.dataset.theme = look; }", look)
        found += named(axe.run(page, options=options), f"{route} {look}")
    page.evaluate("document.documentElement.style.fontSize = '200%'")
    found += too_wide(page, f"{route} at twice the text size")
    found += [f"{route} at twice the text size cuts {one}" for one in page.evaluate(CUT)]
    page.evaluate("document.documentElement.style.fontSize = ''")
    page.set_viewport_size(LYING)
    found += too_wide(page, f"{route} on its side")
    page.set_viewport_size(PHONE["viewport"])
    return found


def too_wide(page, where: str) -> list[str]:
    wide, glass = page.evaluate("[document.documentElement.scrollWidth, document.documentElement.clientWidth]")
    return [f"{where} is {wide} px wide: {page.evaluate(STICKS_OUT)}"] if wide > glass else []


def named(results, where: str) -> list[str]:
    """One line a violation: where, which rule, the first thing it names."""
    return [
        f"{where}: {one['id']}: {one['nodes'][0]['html'][:160]} {one['nodes'][0]['failureSummary'][-160:]}"
        for one in results.response["violations"]
    ]
