"""Every push any released client ever made is still accepted, read as today's, and sent back unchanged."""

import json
from pathlib import Path

import pytest

from fieldtally.book.fold import fold
from fieldtally.book.kinds import KINDS
from fieldtally.store.feed import every_entry
from fieldtally.web.version import PROTOCOL
from support.asking import Browser
from support.cheap_passwords import cheap_passwords  # noqa: F401

FOLDER = Path(__file__).parents[2] / "fixtures" / "old_clients"
PUSHES = sorted(FOLDER.glob("protocol-*.json"))


def role_of(path: Path) -> str:
    return path.stem.split("-")[2]


@pytest.fixture
def sent_by(app, people):
    """Signs in as the role's person and pushes the file's body, byte for byte."""

    def send(path: Path):
        browser = Browser(app)
        browser.sign_in("wren" if role_of(path) == "rider" else role_of(path))
        response = browser.client.post(
            f"/api/logbooks/{people.book}/entries",
            data=path.read_bytes(),
            headers={"X-Fieldtally": "1"},
            content_type="application/json",
        )
        return browser, response

    return send


@pytest.mark.parametrize("path", PUSHES, ids=lambda path: path.stem)
def test_it_is_accepted_and_comes_back_unchanged(sent_by, path, people):
    sent = json.loads(path.read_text(encoding="utf-8"))["entries"]
    browser, response = sent_by(path)
    assert response.status_code == 200, response.get_json()
    assert {answer["result"] for answer in response.get_json()["answers"]} == {"accepted"}
    pulled = browser.get(f"/api/logbooks/{people.book}/entries").get_json()["entries"]
    assert [{name: entry[name] for name in sent[0]} for entry in pulled] == sent


@pytest.mark.parametrize("path", PUSHES, ids=lambda path: path.stem)
def test_it_is_read_as_today_s(app, sent_by, path, people):
    sent_by(path)
    with app.app_context():
        records = fold(every_entry(people.book))
    for record in records.values():
        assert not record.unreadable
        assert record.body is None or set(record.body) == set(KINDS[record.kind].schema().fields)


def test_every_released_protocol_has_its_pushes_with_every_kind():
    for protocol in range(1, PROTOCOL + 1):
        kinds = set()
        for path in FOLDER.glob(f"protocol-{protocol}-*.json"):
            body = json.loads(path.read_text(encoding="utf-8"))
            assert body["protocol"] == protocol
            kinds |= {entry["kind"] for entry in body["entries"]}
        assert kinds >= set(KINDS)
