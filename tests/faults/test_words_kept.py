"""A language beside the shell through updates: its next edition comes with the app's; not coming is no fault."""

import json
from pathlib import Path

import pytest
from playwright.sync_api import expect

from browser.person import PHONE, Person
from faults.client_builds import build, copied
from faults.shell_server import ShellServer

pytestmark = pytest.mark.xdist_group("browser")

EDITIONS = "caches.open('fieldtally-texts').then((it) => it.keys()).then((all) => all.map(({ url }) => url))"
UPDATE = "navigator.serviceWorker.ready.then((it) => it.update())"


@pytest.fixture(scope="module")
def builds(tmp_path_factory) -> tuple[Path, Path]:
    """The client as it is, and its next release: one German text reworded, one text new and not yet in German."""
    folder = tmp_path_factory.mktemp("editions")
    copy = copied(folder)
    before = build(copy, folder / "before")
    german = copy / "src" / "words" / "de" / "sign.json"
    texts = json.loads(german.read_text(encoding="utf-8"))
    del texts["sign.about"]
    german.write_text(json.dumps(texts | {"sign.title": "Hereinspaziert"}), encoding="utf-8")
    return before, build(copy, folder / "after")


@pytest.fixture
def shell(builds):
    server = ShellServer(builds[0])
    yield server
    server.stop()


@pytest.fixture
def phone(playwright, shell, tmp_path):
    """A phone that reads German and is ready for the field."""
    made = Person(playwright, tmp_path / "profile", shell.address, PHONE)
    made.open("/sign-in")
    made.ready_for_the_field()
    made.page.evaluate("localStorage.setItem('fieldtally.language', '\"de\"')")
    made.page.reload()
    made.heading("Anmelden")
    yield made
    made.close()
    assert made.mistakes == []


def take_update(phone: Person) -> None:
    phone.page.evaluate(UPDATE)
    phone.tap("Jetzt aktualisieren")
    expect(phone.page.get_by_text("Jetzt aktualisieren")).to_have_count(0)


def test_the_next_edition_comes_with_the_update_and_the_one_before_goes(phone, shell, builds):
    shell.folders = [builds[1]]
    take_update(phone)
    phone.heading("Hereinspaziert")
    shell.stop()
    phone.page.reload()
    phone.heading("Hereinspaziert")
    phone.sees("Sign in once with signal")  # no German for it in this edition: English, not a hole
    phone.page.wait_for_function(f"{EDITIONS}.then((all) => all.length === 1)")


def test_until_the_next_edition_comes_the_one_before_serves(phone, shell, builds):
    german = next((builds[1] / "assets").glob("words-de-*.json")).name
    shell.folders, shell.spoiled = [builds[1]], {german}
    take_update(phone)
    phone.heading("Anmelden")
    shell.spoiled = set()
    phone.page.reload()
    phone.heading("Hereinspaziert")  # fetched by the page when the worker could not
    assert any(url.endswith(german) for url in phone.page.evaluate(EDITIONS))


def test_a_portals_page_is_never_kept_as_texts(phone, shell, builds):
    german = next((builds[0] / "assets").glob("words-de-*.json")).name
    phone.page.evaluate("caches.delete('fieldtally-texts')")
    shell.spoiled = {german}
    phone.page.reload()
    phone.heading("Sign in")
    phone.sees("Not on this phone yet: Deutsch")
    assert phone.page.evaluate(EDITIONS) == []
    shell.spoiled = set()
    phone.page.reload()
    phone.heading("Anmelden")
