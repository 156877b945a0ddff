"""Every line of the route table in German, in the default look: axe-core finds nothing, no text stayed English without
saying so to a screen reader, nothing sticks out or is cut at the usual or at twice the text size.

What people wrote stays as they wrote it, and so do the names of rulebooks, tests and levels: it is taken out first.
WCAG 2.2, success criterion 3.1.2, asks that a text in another language than the page's says so.
"""

import json
import re

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import expect

from browser.running_server import ROOT
from browser.test_every_screen import ADDRESSES, CUT, EXPORT, IDS, furnish, named, routes, too_wide

pytestmark = pytest.mark.xdist_group("browser")

WORDS = ROOT / "webclient" / "src" / "words"
LETTER = r"[^\W\d_]"
# Words that stand in nearly every English sentence and in no German one.
ENGLISH = re.compile(
    r"\b(the|and|of|is|are|with|for|not|your|you|it|this|that|on|to|by|from|has|have|at|as|be|or|if|no)\b",
    re.IGNORECASE,
)
# Published works keep their titles.
TITLES = re.compile(r"USCTA Book of Eventing|BE Life, BE100 to Novice|Equine Veterinary Journal|English \(U[KS]\)")
# Every text on the screen or said by a screen reader that does not say it is English: by text node, label and hint.
TEXTS = """() => {
  const own = (one) => !one.closest('[lang=en], script, style, option:not(:checked)');
  const nodes = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT), texts = [];
  while (nodes.nextNode()) {
    const { parentElement: parent, data } = nodes.currentNode;
    if (data.trim() && parent.checkVisibility({ visibilityProperty: true }) && own(parent)) texts.push(data.trim());
  }
  for (const name of ['aria-label', 'title', 'placeholder', 'alt']) {
    for (const one of document.querySelectorAll(`[${name}]`)) if (own(one)) texts.push(one.getAttribute(name));
  }
  return [...new Set([...texts, document.title])];
}"""
OPEN_ALL = "document.querySelectorAll('details').forEach((one) => { one.open = true; })"
STRINGS = f"""async () => {{
  const entries = await ({EXPORT})(), found = new Set();
  const walk = (it) => {{
    if (typeof it === 'string') found.add(it);
    else if (it && typeof it === 'object') Object.values(it).forEach(walk);
  }};
  for (const one of entries) {{ walk(one.body); found.add(one.author_name); }}
  for (const book of await (await fetch('/api/rulebooks')).json()) walk(book);
  return [...found].filter((one) => / /.test(one));
}}"""


def texts(language: str) -> dict[str, str]:
    files = [json.loads(file.read_text(encoding="utf-8")) for file in (WORDS / language).glob("*.json")]
    flat = {key: words for file in files for key, words in file.items()}
    return {key: words if isinstance(words, str) else words["other"] for key, words in flat.items()}


def still_british() -> re.Pattern:
    """What is, from end to end, a British text that has another German one."""
    german = texts("de")
    left = [
        words for key, words in texts("en-GB").items() if german[key] != words and re.search(LETTER * 3, gapless(words))
    ]
    return re.compile("|".join(".{1,60}".join(re.escape(part) for part in re.split(r"\{\w+\}", one)) for one in left))


def gapless(words: str) -> str:
    return re.sub(r"\{\w+\}", "", words)


class Reader:
    """Somebody who reads German only."""

    def __init__(self, page) -> None:
        own = sorted(page.evaluate(STRINGS), key=len, reverse=True)
        self.own = re.compile("|".join(re.escape(one) for one in own))
        self.british = still_british()

    def stumbles(self, page) -> list[str]:
        left = [(text, TITLES.sub("", self.own.sub("", text))) for text in page.evaluate(TEXTS)]
        return [text[:160] for text, rest in left if rest and (ENGLISH.search(rest) or self.british.fullmatch(rest))]


def test_every_screen_in_german(season):
    ids = furnish(season, season.page.evaluate(IDS))
    season.go("/settings")
    season.choose("Language", "Deutsch")
    season.heading("Mehr")
    reader, found = Reader(season.page), []
    for route in routes():
        season.go(ADDRESSES.get(route, route).format(**ids))
        expect(season.page.locator("h1").first).to_be_visible()
        season.page.wait_for_timeout(150)  # what comes out of the store a moment after the heading
        found += faults(season.page, reader, route)
    assert found == [], "\n".join(found)


def faults(page, reader: Reader, route: str) -> list[str]:
    page.evaluate(OPEN_ALL)
    found = named(Axe().run(page), route)
    found += [f"{route} is English: {text}" for text in reader.stumbles(page)]
    for size in ("100%", "200%"):
        page.evaluate("(size) => { document.documentElement.style.fontSize = size; }", size)
        found += too_wide(page, f"{route} at {size}")
        found += [f"{route} at {size} cuts {one}" for one in page.evaluate(CUT)]
    page.evaluate("document.documentElement.style.fontSize = ''")
    return found
