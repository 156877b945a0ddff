"""Another language than the phone's own: chosen once with signal, there with none, numbers as its riders write them."""

import re

import pytest
from playwright.sync_api import expect

pytestmark = pytest.mark.xdist_group("browser")

KEPT = """async () => {
  const store = await caches.open('fieldtally-texts');
  return (await store.keys()).map(({ url }) => url.match(/words-(.+)-[0-9a-f]+/)[1]);
}"""
TOO_WIDE = """() => [...document.querySelectorAll('main *')]
  .filter((each) => each.scrollWidth > each.clientWidth + 1 && each.clientWidth > 1 && !each.closest('svg, .unseen'))
  .filter((each) => getComputedStyle(each).overflowX === 'visible' && getComputedStyle(each).display !== 'inline')
  .map((each) => `${each.className}: ${each.textContent.slice(0, 40)}`)"""


def in_german(rider) -> None:
    rider.go("/settings")
    rider.choose("Language", "Deutsch")
    rider.heading("Mehr")


def language_of(rider) -> str:
    return rider.page.evaluate("document.documentElement.lang")


def test_german_is_fetched_once_and_an_outing_is_recorded_in_it_with_no_signal(server, rider):
    assert rider.page.evaluate(KEPT) == []
    in_german(rider)
    assert rider.page.evaluate(KEPT) == ["de"]
    server.stop()
    rider.page.reload()
    rider.heading("Mehr")
    assert language_of(rider) == "de"
    rider.go("/horse/new")
    rider.fill("Name", "Goldfinch")
    rider.tap("Pferd speichern")
    rider.sees(re.compile("1 wartet seit"))
    rider.go("/")
    rider.choose("Pferd", "Goldfinch")
    rider.tap("Einheit starten")
    rider.page.wait_for_url(re.compile("/outing/"))
    rider.tap("Hindernis anlegen", role="link")
    rider.page.get_by_text("Baumstamm", exact=True).first.click()
    rider.tap("Dieses Hindernis nehmen")
    rider.thumb(rider.button("Fehlerfrei"))
    expect(rider.page.locator(".tap-bar")).to_contain_text("Gespeichert")
    rider.thumb(rider.button("Mit Fehler"))
    rider.thumb(rider.button("Verweigerung"))
    expect(rider.page.locator(".tap-bar")).to_contain_text("Verweigerung")
    assert rider.page.evaluate(TOO_WIDE) == []
    rider.page.reload()
    rider.sees(re.compile("1 × Fehlerfrei, 1 × Verweigerung"))


def test_a_decimal_comma_is_taken_and_shown(server, rider):
    rider.go("/horse/new")
    rider.fill("Name", "Goldfinch")
    rider.tap(re.compile("^(Save|Add)"))
    rider.all_sent()
    in_german(rider)
    server.stop()
    rider.go("/tracks/new")
    rider.fill("Name", "Obere Hecke")
    rider.fill(re.compile("^Länge"), "402,5")
    rider.sees("hier ± 4,0 m")  # a wheel is taken as good to 1 %: 4.025 m
    rider.tap("Strecke speichern")
    rider.sees(re.compile("402,5 m"))
    rider.go("/results/new/flatwork_test")
    rider.choose("Pferd", "Goldfinch")
    rider.fill("Aufgabe", "Aufgabe VA1")
    rider.fill(re.compile("^Prozent$"), "68,25")
    rider.tap("Speichern")
    rider.sees("Auf diesem Handy gespeichert.")
    rider.go("/results")
    rider.sees("68,25 %, Aufgabe VA1")


@pytest.mark.parametrize("screen", ["/", "/watch", "/board", "/settings", "/fields", "/tracks", "/results", "/help"])
def test_long_german_words_stay_within_a_narrow_phone(rider, screen):
    in_german(rider)
    rider.go(screen)
    expect(rider.page.get_by_role("heading", level=1)).to_be_visible()
    rider.page.wait_for_timeout(500)
    assert rider.page.evaluate("document.documentElement.scrollWidth") <= 360
    assert rider.page.evaluate(TOO_WIDE) == []


def test_without_signal_a_language_that_is_not_here_is_english_and_says_so(server, rider):
    server.stop()
    rider.go("/settings")
    rider.choose("Language", "Deutsch")
    rider.sees("Not on this phone yet: Deutsch")
    rider.heading("More")
    assert language_of(rider) == "en-GB"
    rider.page.reload()
    rider.heading("More")
    rider.sees("Not on this phone yet: Deutsch")
    server.start()
    rider.tap("Try again")
    rider.heading("Mehr")
    expect(rider.page.get_by_text("Not on this phone yet")).to_have_count(0)


def test_as_the_device_follows_the_device_and_the_choice_outlives_the_browser(rider):
    in_german(rider)
    rider.close()
    rider.open("/settings")
    rider.heading("Mehr")
    rider.choose("Sprache", "Wie das Gerät")
    rider.heading("More")  # these phones are British
    assert language_of(rider) == "en-GB"
