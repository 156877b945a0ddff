"""The whole server on both databases: sign in, push, standings, pull, from several phones at once."""

from concurrent.futures import ThreadPoolExecutor

import pytest

from fieldtally import create_app
from fieldtally.settings import Settings
from fieldtally.store import schema
from fieldtally.store.accounts import add_account
from fieldtally.store.db import db
from fieldtally.store.memberships import open_logbook
from support.asking import PASSWORD, Browser
from support.cheap_passwords import cheap_passwords  # noqa: F401
from support.riders import new_id, wire


@pytest.fixture
def server(database_url, tmp_path):
    app = create_app(Settings(data_dir=tmp_path, database_url=database_url, secret_key="k" * 32))
    with app.app_context():
        schema.upgrade()
        logbook = open_logbook(add_account("wren", "Wren", PASSWORD)).id
        db.session.remove()
    yield app, f"/api/logbooks/{logbook}"
    with app.app_context():
        db.engine.dispose()


def phone(app) -> Browser:
    browser = Browser(app)
    assert browser.sign_in("wren").status_code == 200
    return browser


def push(browser: Browser, book: str, *entries: dict):
    response = browser.send("POST", f"{book}/entries", {"protocol": 1, "device": new_id(), "entries": entries})
    assert response.status_code == 200, response.get_json()
    return response.get_json()


def a_horse_s_day(attempts: int = 5) -> list[dict]:
    horse = wire("horse", {"name": "Bramble", "rulebook_id": "us-2025"})
    fence = wire("fence", {"label": "Log", "profile": "log", "asks": ["fixed"], "height_cm": 88})
    outing = wire("outing", {"horse_id": horse["record_id"], "date": "2026-05-03", "activity": "cross_country_school"})
    return [horse, fence, outing, *(an_attempt(outing, fence) for _ in range(attempts))]


def an_attempt(outing: dict, fence: dict) -> dict:
    said = {"outing_id": outing["record_id"], "fence_id": fence["record_id"], "outcome": "clear"}
    return wire("attempt", said)


def test_from_sign_in_to_the_standing(server):
    app, book = server
    wren = phone(app)
    day = a_horse_s_day()
    assert [a["result"] for a in push(wren, book, *day)["answers"]] == ["accepted"] * 8
    assert [a["result"] for a in push(wren, book, *day)["answers"]] == ["already"] * 8
    standings = wren.get(f"{book}/standings").get_json()
    assert standings["logbook_number"] == 8 and standings["standings"]
    pulled = wren.get(f"{book}/entries").get_json()["entries"]
    assert [{key: entry[key] for key in sent} for entry, sent in zip(pulled, day, strict=True)] == day


def test_five_phones_push_and_read_standings_at_once(server):
    """Every push also computes the horse's standings and keeps them; none may fail and none may be lost."""
    app, book = server
    day = _, fence, outing = a_horse_s_day(attempts=0)
    push(phone(app), book, *day)

    def one_phone(_: int) -> set[str]:
        browser, results = phone(app), set()
        for _ in range(4):
            results |= {a["result"] for a in push(browser, book, *[an_attempt(outing, fence)] * 3)["answers"]}
            assert browser.get(f"{book}/standings").status_code == 200
        return results

    with ThreadPoolExecutor(5) as pool:
        assert set().union(*pool.map(one_phone, range(5))) == {"accepted", "already"}
    wren = phone(app)
    assert wren.get(f"{book}/entries?after=20").get_json()["last_number"] == 3 + 5 * 4
    (novice,) = [s for s in wren.get(f"{book}/standings").get_json()["standings"] if s["level_id"] == "novice"]
    assert novice["logbook_number"] == 23
    assert max(len(finding["evidence"]) for finding in novice["findings"]) == 20


def test_a_restart_changes_nothing(server, database_url, tmp_path):
    app, book = server
    push(phone(app), book, *a_horse_s_day())
    before = phone(app).get(f"{book}/standings").get_json()
    again = create_app(Settings(data_dir=tmp_path, database_url=database_url, secret_key="k" * 32))
    assert phone(again).get(f"{book}/standings").get_json() == before
    with again.app_context():
        assert schema.upgrade() == []
        db.engine.dispose()
