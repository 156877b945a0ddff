"""A person with a device: a Chromium profile on disk that survives the death of the browser."""

import os
import re
import shutil
import signal
import subprocess
import time
from collections.abc import Callable
from pathlib import Path

from playwright.sync_api import BrowserContext, Locator, Page, Playwright, expect

PHONE = {"viewport": {"width": 360, "height": 800}, "has_touch": True, "is_mobile": True, "device_scale_factor": 2}
DESK = {"viewport": {"width": 1280, "height": 800}}
QUIET = [
    "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking",
    "--disable-component-update", "--disable-sync",
]  # fmt: skip
PASSWORD = "seven quiet grey mares"


def chromium() -> str:
    """The browser's program: named by tests/run, else found on the path. Missing is an error, never a skip."""
    for candidate in (os.environ.get("FIELDTALLY_CHROMIUM"), "chromium", "chromium-browser", "google-chrome"):
        if candidate and (found := shutil.which(candidate)):
            return found
    raise AssertionError("The browser tests need Chromium: run tests/run, or name one in FIELDTALLY_CHROMIUM.")


IS_DRAFTED = """async (text) => {
  const answer = (request) => new Promise((done) => { request.onsuccess = () => done(request.result); });
  const { name } = (await indexedDB.databases()).find((one) => one.name.startsWith('fieldtally-'));
  const db = await answer(indexedDB.open(name));
  const all = await answer(db.transaction('drafts').objectStore('drafts').getAll());
  db.close();
  return all.some((draft) => draft.text.includes(text));
}"""
PATIENCE_S = 15


class Person:
    """Opens the app in a profile of its own; `kill` ends the browser as a flat battery would."""

    def __init__(self, playwright: Playwright, profile: Path, address: str, device: dict) -> None:
        self.playwright, self.profile, self.address, self.device = playwright, profile, address, device
        self.context: BrowserContext | None = None
        self.mistakes: list[str] = []

    def open(self, path: str = "/") -> Page:
        self.context = self.playwright.chromium.launch_persistent_context(
            str(self.profile), executable_path=chromium(), args=QUIET, locale="en-GB", **self.device
        )
        self.context.set_default_timeout(15_000)
        self.page = self.context.pages[0] if self.context.pages else self.context.new_page()
        self.page.on("pageerror", lambda error: self.mistakes.append(str(error)))
        self.page.goto(self.address + path)
        return self.page

    def close(self) -> None:
        if self.context:
            self.page.screenshot(path=self.profile.with_suffix(".png"))  # what it looked like at the end
            self.context.close()
        self.context = None

    def kill(self) -> None:
        """SIGKILL to every process of this profile: nothing gets to say goodbye."""
        pids = subprocess.run(["pgrep", "-f", str(self.profile)], capture_output=True, text=True).stdout.split()
        assert pids, "no browser process found to kill"
        for pid in pids:
            os.kill(int(pid), signal.SIGKILL)
        try:
            self.context.close()
        except Exception as error:  # the connection died with the browser, as it should
            assert "closed" in str(error).lower(), error
        self.context = None
        (self.profile / "SingletonLock").unlink(missing_ok=True)

    # what a person does

    def go(self, path: str) -> None:
        self.page.goto(self.address + path)

    def tap(self, name: str | re.Pattern, role: str = "button", **more) -> None:
        self.page.get_by_role(role, name=name, **more).first.click()

    def button(self, name: str) -> Locator:
        return self.page.get_by_role("button", name=re.compile("^" + re.escape(name))).first

    def thumb(self, button: Locator) -> None:
        """A tap by hand: never sooner after the last one than a bounce, which the app drops."""
        self.page.wait_for_timeout(300)
        button.click()

    def choose(self, label: str | re.Pattern, chip: str | re.Pattern) -> None:
        """A chip of the group `label`."""
        group = self.page.get_by_role("group", name=label).first
        exact = isinstance(chip, str)
        radio = group.get_by_role("radio", name=chip, exact=exact)
        radio.or_(group.get_by_role("button", name=chip, exact=exact)).first.click()

    def fill(self, label: str | re.Pattern, text: str) -> None:
        self.page.get_by_label(label).and_(self.page.locator("input, textarea")).first.fill(text)

    def sees(self, text: str | re.Pattern, timeout: float = 15_000) -> None:
        expect(self.page.get_by_text(text).locator("visible=true").first).to_be_visible(timeout=timeout)

    def has_drafted(self, text: str) -> None:
        """Waits until what is half typed is on the disk: a third of a second, or longer where the machine is busy."""
        self.until(lambda: self.page.evaluate(IS_DRAFTED, text))

    def until(self, holds: Callable[[], bool]) -> None:
        deadline = time.monotonic() + PATIENCE_S
        while not holds():
            assert time.monotonic() < deadline, "waited in vain"
            self.page.wait_for_timeout(100)

    def heading(self, text: str | re.Pattern) -> None:
        expect(self.page.get_by_role("heading", level=1, name=text)).to_be_visible()

    def all_sent(self) -> None:
        self.page.wait_for_timeout(1500)  # the line counts what was just written a moment later
        expect(self.page.locator(".top__state")).to_contain_text(re.compile("All sent at"), timeout=60_000)

    def waits(self, count: int) -> None:
        expect(self.page.locator(".top__state")).to_contain_text(f"{count} waiting", timeout=15_000)

    def waiting(self) -> int:
        """How many records the line at the top says wait, once it has said the same for three seconds: it counts
        what was just written a moment later."""
        readings = [self.waiting_now()]
        while len(readings) < 6 or len(set(readings[-6:])) > 1:
            self.page.wait_for_timeout(600)
            readings.append(self.waiting_now())
        return readings[-1]

    def waiting_now(self) -> int:
        found = re.search(r"(\d+) waiting", self.page.locator(".top__state").inner_text())
        return int(found[1]) if found else 0

    def sign_in(self, name: str, password: str = PASSWORD) -> None:
        self.fill("Sign-in name", name)
        self.fill("Password", password)
        self.tap("Sign in")
        expect(self.page.get_by_role("navigation", name="Main")).to_be_visible()

    def ready_for_the_field(self) -> None:
        """Waits until the worker keeps the shell, as the app itself does before it says so."""
        self.page.evaluate("navigator.serviceWorker.ready.then(() => true)")
        deadline = time.monotonic() + 20
        while not self.page.evaluate("!!navigator.serviceWorker.controller"):
            assert time.monotonic() < deadline, "the worker never took over"
            self.page.reload()
            time.sleep(0.2)
