"""Pull as a phone sees it, over HTTP."""

import gzip
import json

import pytest

from support.asking import Browser, error_of
from support.cheap_passwords import cheap_passwords  # noqa: F401
from support.riders import wire


@pytest.fixture
def sixty(wren, book, people):
    """Sixty entries that all carry the same instant."""
    sent = [wire() for _ in range(60)]
    push = {"protocol": 1, "device": people.wren, "entries": sent}
    assert wren.send("POST", f"{book}/entries", push).status_code == 200
    return sent


def pull(browser, book, **asked):
    query = "&".join(f"{name}={value}" for name, value in asked.items())
    return browser.get(f"{book}/entries?{query}").get_json()


def test_an_empty_logbook(wren, book):
    page = pull(wren, book)
    assert (page["entries"], page["last_number"], page["more"]) == ([], 0, False)
    assert set(page) == {"log_id", "last_number", "entries", "more", "server_time"}


def test_pages_hold_everything_once(wren, book, sixty):
    seen, after = [], 0
    while True:
        page = pull(wren, book, after=after, limit=21)
        seen += page["entries"]
        if not page["more"]:
            break
        after = page["entries"][-1]["number"]
    assert [entry["id"] for entry in seen] == [entry["id"] for entry in sixty]
    assert [entry["number"] for entry in seen] == list(range(1, 61))


def test_a_pulled_entry_has_everything(wren, book, sixty, people):
    entry = pull(wren, book, limit=1)["entries"][0]
    assert {name: entry[name] for name in sixty[0]} == sixty[0]
    assert set(entry) - set(sixty[0]) == {
        "number", "author", "author_name", "device", "skew_ms", "received_at", "receipt",
    }  # fmt: skip


def test_every_role_may_read(app, book, sixty):
    for role in ("coach", "scribe", "reader"):
        browser = Browser(app)
        browser.sign_in(role)
        assert len(pull(browser, book)["entries"]) == 60


@pytest.mark.parametrize(
    ("asked", "field"),
    [
        ({"after": "-1"}, "after"), ({"after": "x"}, "after"), ({"after": "1.5"}, "after"), ({"after": ""}, "after"),
        ({"after": "9" * 30}, "after"), ({"after": "²"}, "after"), ({"limit": "0"}, "limit"),
        ({"limit": "501"}, "limit"),
    ],
)  # fmt: skip
def test_senseless_questions(wren, book, asked, field):
    response = wren.get(f"{book}/entries?{'&'.join(f'{k}={v}' for k, v in asked.items())}")
    assert response.status_code == 400
    assert (error_of(response)["code"], error_of(response)["field"]) == ("out_of_range", field)


def test_long_pages_are_compressed_for_whoever_takes_it(wren, book, sixty):
    plain = wren.get(f"{book}/entries")
    packed = wren.get(f"{book}/entries", headers={"Accept-Encoding": "br, gzip"})
    assert "Content-Encoding" not in plain.headers and packed.headers["Content-Encoding"] == "gzip"
    assert len(packed.data) < len(plain.data) / 3
    unpacked = json.loads(gzip.decompress(packed.data))
    assert unpacked["entries"] == plain.get_json()["entries"]
    assert "Accept-Encoding" in plain.headers["Vary"] and "Accept-Encoding" in packed.headers["Vary"]
    assert "Content-Encoding" not in wren.get(f"{book}/entries", headers={"Accept-Encoding": "gzip;q=0"}).headers
