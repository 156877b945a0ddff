"""What a rider waits for on her phone, with few records on it and with a season of them, at full speed and at a sixth.

    python tests/bench/phone.py [--quick] [--json OUT]

Timed in Chromium, with no signal: from a tap to the count on the screen, from a tap to the disk's answer, and from
opening the app to its first screen; with signal, the first fetching of the whole logbook. What to read is the ratio of
one line to the one above it: machines differ. Each tap is also timed in a browser that has no cache for pages, so that
what the second copy of each entry costs (webclient/src/store/spare.ts) stands beside it.
"""

import argparse
import json
import random
import statistics
import sys
import tempfile
import time
from datetime import date, timedelta
from pathlib import Path
from uuid import UUID

sys.path[:0] = [str(Path(__file__).parents[1])]

from playwright.sync_api import Playwright, expect, sync_playwright  # noqa: E402

from browser.person import PASSWORD, PHONE, Person  # noqa: E402
from browser.running_server import RunningServer  # noqa: E402
from browser.test_recording import PUSH  # noqa: E402

SIZES = (500, 5_000, 50_000)
SLOWDOWNS = (1, 6)
TAPS = 40
AT_ONCE = 500
NO_CACHE = "Object.defineProperty(window, 'caches', { value: undefined })"

ENTRIES = """async () => {
  const { name } = (await indexedDB.databases()).find((one) => one.name.startsWith('fieldtally-'));
  const db = await new Promise((done) => { indexedDB.open(name).onsuccess = (event) => done(event.target.result); });
  const found = await new Promise((done) => {
    db.transaction('entries').objectStore('entries').count().onsuccess = (event) => done(event.target.result);
  });
  db.close();
  return found;
}"""

# Taps the big button, waits for the count to change and for the next frame, and for word of the transaction.
TIMED_TAPS = """async (taps) => {
  const channel = new BroadcastChannel('fieldtally-changes');
  const frame = () => new Promise((done) => requestAnimationFrame(done));
  const count = () => document.querySelector('.clear-button__count')?.textContent;
  const seen = [], kept = [];
  for (let n = 0; n < taps; n++) {
    const before = count(), from = performance.now();
    const durable = new Promise((done) => {
      channel.onmessage = ({ data }) => data.tables.includes('entries') && done(performance.now() - from);
    });
    document.querySelector('.clear-button').click();
    while (count() === before) await frame();
    seen.push(performance.now() - from);
    kept.push(await durable);
    await new Promise((done) => setTimeout(done, 500));
  }
  channel.close();
  return { seen, kept };
}"""


class MadeUpSeason:
    """Entries as another phone of this rider would send them: one horse, fields with fences, outings of 40 attempts."""

    def __init__(self, attempts: int) -> None:
        self.random = random.Random(attempts)
        self.entries: list[dict] = []
        today = date.today()
        horse = self.add("horse", {"name": "Made Up"}, today)
        fences = [
            self.add("fence", {"label": f"{n} Log", "profile": "log", "asks": ["fixed"]}, today) for n in range(60)
        ]
        for n in range(-(-attempts // 40)):
            day = today - timedelta(days=n % 700)
            about = {"horse_id": horse, "date": str(day), "activity": "cross_country_school"}
            self.outing = self.add("outing", about, day)
            for _ in range(min(40, attempts - 40 * n)):
                fence_id = self.random.choice(fences)
                self.add("attempt", {"outing_id": self.outing, "fence_id": fence_id, "outcome": "clear"}, day)
        self.fence = fences[0]

    def add(self, kind: str, body: dict, day: date) -> str:
        entry_id, record_id = (str(UUID(int=self.random.getrandbits(128), version=4)) for _ in range(2))
        self.entries.append({
            "id": entry_id, "record_id": record_id, "supersedes": [], "kind": kind, "kind_version": 1, "body": body,
            "recorded_at": f"{day}T08:00:00.000Z", "utc_offset_min": 0, "local_date": str(day), "clock": None,
        })  # fmt: skip
        return record_id


class Bench:
    """A server with a made-up season, and a phone that fetched it."""

    def __init__(self, playwright: Playwright, attempts: int) -> None:
        folder = Path(tempfile.mkdtemp())
        self.server = RunningServer(folder / "data")
        self.server.start()
        self.server.command("user", "add", "wren", "--display-name", "Wren", "--password-stdin", given=PASSWORD)
        self.season = MadeUpSeason(attempts)
        self.person = Person(playwright, folder / "profile", self.server.address, PHONE)
        self.person.open("/")
        self.person.sign_in("wren")
        self.person.ready_for_the_field()

    def measure(self, taps: int) -> dict[str, float]:
        """All figures in ms."""
        found = {"fetch": self.fetched()}
        self.server.stop()
        for slowdown in SLOWDOWNS:
            found[f"start, {slowdown}x"] = statistics.median(self.started(slowdown) for _ in range(3))
            for name, prepare in (("", None), (", no second copy", NO_CACHE)):
                seen, kept = self.tapped(slowdown, taps, prepare)
                found |= {f"tap to screen, {slowdown}x{name}": seen, f"tap to disk, {slowdown}x{name}": kept}
        self.person.close()
        return found

    def fetched(self) -> float:
        """From the app's next start until every entry is on the phone."""
        entries = self.season.entries
        for start in range(0, len(entries), AT_ONCE):
            self.person.page.evaluate(PUSH, entries[start : start + AT_ONCE])
        begun = time.monotonic()
        self.person.page.reload()
        while self.person.page.evaluate(ENTRIES) < len(entries):
            self.person.page.wait_for_timeout(50)
        took = 1000 * (time.monotonic() - begun)
        self.person.all_sent()
        return took

    def started(self, slowdown: int) -> float:
        """The page opened in a new browser, until the first screen shows today's outing."""
        self.anew(slowdown, None)
        begun = time.monotonic()
        self.person.go("/")
        expect(self.person.page.get_by_text("Made Up").first).to_be_visible(timeout=60_000)
        return 1000 * (time.monotonic() - begun)

    def tapped(self, slowdown: int, taps: int, prepare: str | None) -> tuple[float, float]:
        """The 95th of a hundred taps, to the screen and to the disk."""
        self.anew(slowdown, prepare)
        self.person.go(f"/outing/{self.season.outing}/fence/{self.season.fence}")
        expect(self.person.page.locator(".clear-button")).to_be_visible(timeout=60_000)
        found = self.person.page.evaluate(TIMED_TAPS, taps)
        return p95(found["seen"]), p95(found["kept"])

    def anew(self, slowdown: int, prepare: str | None) -> None:
        self.person.close()
        self.person.open("/help")
        if prepare:
            self.person.context.add_init_script(prepare)
        session = self.person.context.new_cdp_session(self.person.page)
        session.send("Emulation.setCPUThrottlingRate", {"rate": slowdown})


def p95(times: list[float]) -> float:
    return statistics.quantiles(times, n=20)[-1]


def in_words(found: dict[int, dict[str, float]]) -> str:
    """A line for each figure, a column for each size, and how much the last is of the first."""
    sizes = [*found]
    lines = [f"{'ms, with so many attempts':36}" + "".join(f"{size:>10,}" for size in sizes) + f"{'ratio':>8}"]
    for name in found[sizes[0]]:
        values = [found[size][name] for size in sizes]
        lines.append(f"{name:36}" + "".join(f"{value:10.0f}" for value in values) + f"{values[-1] / values[0]:8.1f}")
    return "\n".join(lines)


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--quick", action="store_true", help="the two smaller sizes, ten taps")
    parser.add_argument("--json", type=Path)
    given = parser.parse_args()
    sizes, taps = (SIZES[:2], 10) if given.quick else (SIZES, TAPS)
    found: dict[int, dict[str, float]] = {}
    with sync_playwright() as playwright:
        for size in sizes:
            print(f"{size:,} attempts …", flush=True)
            found[size] = Bench(playwright, size).measure(taps)
    print(in_words(found))
    if given.json:
        given.json.write_text(json.dumps(found, indent=2), encoding="utf-8")


if __name__ == "__main__":
    main()
