"""`fieldtally standing --logbook`: the same findings as the board of the same server shows."""

from datetime import UTC, date, datetime, timedelta

import pytest

from fieldtally import create_app
from fieldtally.settings import Settings
from fieldtally.store.db import db
from support.asking import Browser
from support.command import assert_complains


@pytest.fixture
def demo(command):
    command.people = command.json("demo", "--no-serve")["people"]
    return command


def asked_of_the_server(demo, path):
    """The standings the server hands to Wren at /api/logbooks/{hers}`path`."""
    wren = next(person for person in demo.people if person["sign_in_name"] == "wren")
    app = create_app(Settings(data_dir=demo.data_dir))
    browser = Browser(app)
    book = browser.sign_in("wren", wren["password"]).get_json()["logbooks"][0]["id"]
    answer = browser.get(f"/api/logbooks/{book}{path}").get_json()
    with app.app_context():
        db.engine.dispose()
    return answer["standings"]


@pytest.mark.parametrize("days_ago", [0, 30])
def test_it_says_what_the_server_says(demo, days_ago):
    as_of = (datetime.now(UTC).date() - timedelta(days=days_ago)).isoformat()
    printed = demo.json("standing", "--logbook", "wren", "--horse", "bracken lane", "--as-of", as_of)
    horse = printed[0]["horse_id"]
    assert printed == asked_of_the_server(demo, f"/horses/{horse}/standings?as_of={as_of}")
    assert len(printed) > 3 and {each["as_of"] for each in printed} == {as_of}


def test_it_agrees_with_an_export_of_the_same_logbook(demo, tmp_path):
    file = tmp_path / "wren.json"
    demo.run("export", "--logbook", "wren", "--output", str(file))
    words = ("--horse", "Tolliver", "--as-of", date.today().isoformat())
    here = demo.json("standing", "--logbook", "wren", *words)
    there = demo.json("standing", "--export", str(file), *words)
    assert [each["findings"] for each in here] == [each["findings"] for each in there]


def test_in_words(demo):
    done = demo.run("standing", "--logbook", "wren", "--horse", "Bracken Lane", "--level", "novice")
    assert done.exit_code == 0
    assert "Novice" in done.stdout and "[" in done.stdout and "safe" not in done.stdout


def test_what_cannot_be_found_is_said(demo):
    assert_complains(demo.run("standing", "--logbook", "nobody", "--horse", "Bracken Lane"), "nobody signs in")
    assert_complains(demo.run("standing", "--logbook", "idris", "--horse", "Bracken Lane"), "no logbook")
    assert_complains(demo.run("standing", "--logbook", "wren", "--horse", "Pegasus"), "Bracken Lane, Tolliver")
    assert_complains(demo.run("standing", "--logbook", "wren", "--horse", "Tolliver", "--level", "moon"), "no level")
    assert_complains(demo.run("standing", "--logbook", "wren", "--horse", "Tolliver", "--as-of", "soon"), "soon")
    assert_complains(demo.run("standing", "--horse", "Tolliver"), "name one source")
