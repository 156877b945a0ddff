"""The service worker: one complete version or none, updates by consent, and the app at every address offline.

Each test is one kind of fault that users of other programs reported.
"""

import json
import re
from pathlib import Path

import pytest
from playwright.sync_api import expect

from browser.person import PHONE, Person
from faults.client_builds import build, copied
from faults.shell_server import ShellServer

pytestmark = pytest.mark.xdist_group("browser")

STORED = """
  async () => {
    const found = [];
    for (const name of await caches.keys()) {
      const cache = await caches.open(name);
      for (const request of await cache.keys()) {
        const { redirected, type, status } = await cache.match(request);
        found.push({ url: request.url, redirected, type, status });
      }
    }
    return found;
  }
"""
NEWER_WORKERS = "navigator.serviceWorker.getRegistration().then((it) => [it.waiting, it.installing])"
FOREGROUND = """
  () => {
    const real = Date.now;
    window.later_ms = (window.later_ms ?? 0) + 3_600_000;
    Date.now = () => real() + window.later_ms;
    document.dispatchEvent(new Event("visibilitychange"));
    Date.now = real;
  }
"""


@pytest.fixture(scope="session")
def builds(tmp_path_factory) -> dict[str, Path]:
    """The client as it is, and as its next release."""
    folder = tmp_path_factory.mktemp("builds")
    copy = copied(folder)
    made = {}
    for version in ("0.1.0", "0.1.1"):
        package = json.loads((copy / "package.json").read_text(encoding="utf-8"))
        (copy / "package.json").write_text(json.dumps({**package, "version": version}), encoding="utf-8")
        made[version] = build(copy, folder / version)
    return made


@pytest.fixture
def shell(builds):
    server = ShellServer(builds["0.1.0"])
    yield server
    server.stop()


@pytest.fixture
def phone(playwright, shell, tmp_path):
    made = Person(playwright, tmp_path / "profile", shell.address, PHONE)
    made.open("/sign-in")
    made.ready_for_the_field()
    yield made
    made.close()
    assert made.mistakes == []

HOME_FETCHED = "performance.getEntriesByType('resource').some((it) => it.name.includes('/home-'))"
FIRST_SCRIPTS = """
    Promise.all([...document.querySelectorAll("script[src], link[rel=modulepreload]")]
      .map((each) => fetch(each.src || each.href).then((reply) => reply.text()))).then((texts) => texts.join())
"""


def version_of(phone: Person) -> str:
    """The release whose scripts run in the page."""
    return "0.1.1" if "0.1.1" in phone.page.evaluate(FIRST_SCRIPTS) else "0.1.0"


def loads_of(phone: Person) -> list[str]:
    loads: list[str] = []
    phone.page.on("load", lambda page: loads.append(page.url))
    return loads


@pytest.mark.parametrize("address", ["/", "/?source=home-screen", "/outing/abc?x=y#z", "/no/such/screen", "/watch"])
def test_every_address_opens_with_no_signal(phone, shell, address):
    shell.stop()
    phone.go(address)
    expect(phone.page.get_by_role("heading", level=1)).to_be_visible()
    phone.page.reload()
    expect(phone.page.get_by_role("heading", level=1)).to_be_visible()


def test_a_signed_out_browser_still_opens_with_no_signal(phone, shell):
    phone.context.clear_cookies()
    shell.stop()
    phone.page.reload()
    phone.heading("Sign in")


def test_what_is_kept_is_whole_ours_and_small(phone):
    stored = phone.page.evaluate(STORED)
    assert len(stored) > 8
    for item in stored:
        assert (item["redirected"], item["type"], item["status"]) == (False, "basic", 200), item
        assert item["url"].startswith(phone.address)
        assert "/api/" not in item["url"]
    usage = phone.page.evaluate("navigator.storage.estimate().then((room) => room.usage)")
    assert usage < 5_000_000


def test_nothing_is_asked_of_another_host(phone, shell):
    asked: list[str] = []
    phone.page.on("request", lambda request: asked.append(request.url))
    phone.page.reload()
    phone.heading("Sign in")
    assert [url for url in asked if not url.startswith(phone.address)] == []


@pytest.mark.parametrize("spoiled", ["script", "page"])
def test_an_installation_with_one_wrong_file_fails_whole_and_the_old_version_stays(phone, shell, builds, spoiled):
    script = next((builds["0.1.1"] / "assets").glob("app-*.js")).name
    shell.folders = [builds["0.1.1"]]
    shell.spoiled = {script if spoiled == "script" else "index.html"}
    phone.page.evaluate("navigator.serviceWorker.ready.then((it) => it.update()).catch(() => null)")
    phone.page.wait_for_timeout(2500)
    assert phone.page.evaluate(NEWER_WORKERS) == [None, None]
    shell.stop()
    phone.page.reload()
    phone.heading("Sign in")
    assert version_of(phone) == "0.1.0"


def test_an_update_is_offered_on_coming_back_and_taken_by_one_tap(phone, shell, builds):
    loads = loads_of(phone)
    shell.folders = [builds["0.1.1"]]
    phone.page.evaluate(FOREGROUND)
    bar = phone.page.get_by_text("A new version of Fieldtally is ready.")
    expect(bar).to_be_visible(timeout=15_000)
    assert loads == []  # nothing happens by itself
    assert version_of(phone) == "0.1.0"
    phone.tap("Update now")
    expect(bar).to_have_count(0)
    phone.heading("Sign in")
    assert version_of(phone) == "0.1.1"
    assert len(loads) == 1


def test_the_old_version_goes_on_while_the_new_one_waits_though_the_server_forgot_its_files(phone, shell, builds):
    shell.folders = [builds["0.1.1"]]
    phone.page.evaluate(FOREGROUND)
    expect(phone.page.get_by_text("A new version of Fieldtally is ready.")).to_be_visible(timeout=15_000)
    phone.go("/help")  # a screen of the second script
    phone.heading("Help")
    phone.page.reload()
    phone.heading("Help")
    assert version_of(phone) == "0.1.0"


def test_a_later_screen_opens_in_a_page_whose_files_are_gone_everywhere(phone, shell, builds):
    """All scripts are in memory from the first second on: no screen is fetched when it is opened."""
    phone.page.wait_for_function(HOME_FETCHED)
    phone.page.wait_for_timeout(500)  # fetched; now read
    shell.stop()
    phone.page.evaluate("caches.keys().then((all) => Promise.all(all.map((name) => caches.delete(name))))")
    phone.page.evaluate("history.pushState(null, '', '/help')")
    phone.heading("Help")
    phone.page.evaluate("history.pushState(null, '', '/invited/nobody')")  # a screen of the third script
    phone.heading("You are invited")


def test_the_screens_of_home_open_with_no_signal(phone, shell):
    phone.page.wait_for_function(HOME_FETCHED)
    shell.stop()
    phone.go("/invited/nobody")
    phone.heading("You are invited")
    phone.sees(re.compile("needs signal"))


def test_a_phone_is_ready_for_the_field_without_the_screens_of_home(playwright, shell, builds, tmp_path):
    """What did not come with the installation comes when there is signal, and then stays."""
    home = next((builds["0.1.0"] / "assets").glob("home-*.js")).name
    shell.spoiled = {home}
    late = Person(playwright, tmp_path / "late", shell.address, PHONE)
    late.open("/sign-in")
    late.ready_for_the_field()
    late.go("/invited/nobody")
    late.heading("Not fetched completely")
    shell.spoiled = set()
    late.tap("Reload")
    late.heading("You are invited")
    shell.stop()
    late.page.reload()
    late.heading("You are invited")
    late.close()


def test_the_home_of_the_version_before_goes_with_it(phone, shell, builds):
    shell.folders = [builds["0.1.1"]]
    phone.page.evaluate(FOREGROUND)
    phone.tap("Update now")
    phone.heading("Sign in")
    kept = "caches.open('fieldtally-home').then((it) => it.keys())"
    phone.page.wait_for_function(f"{kept}.then((all) => all.length === 1)")
    home = next((builds["0.1.1"] / "assets").glob("home-*.js")).name
    assert phone.page.evaluate(f"{kept}.then((all) => all[0].url)").endswith(home)


def test_two_servers_with_different_workers_never_make_the_page_reload_by_itself(phone, shell, builds):
    loads = loads_of(phone)
    shell.folders = [builds["0.1.0"], builds["0.1.1"]]
    for _ in range(20):
        phone.page.evaluate(FOREGROUND)
        phone.page.wait_for_timeout(150)
    assert loads == []
    phone.heading("Sign in")
    assert re.search("/sign-in", phone.page.url)
