"""A logbook kept open between pushes gives the standings that reading all of it again would give."""

import random
from dataclasses import replace
from datetime import timedelta

import pytest

from fieldtally.book.words import DECISIONS
from fieldtally.store import feed
from fieldtally.web import opened as opening
from fieldtally.web import recompute
from support.asking import Browser
from support.cheap_passwords import cheap_passwords  # noqa: F401
from support.riders import edit, new_id, wire
from web.test_standings_api import RULEBOOK, TODAY, Season, attempts, push, standings  # noqa: F401


def close_all(app):
    app.extensions.pop(recompute.OPEN, None)


def random_entries(seasons, made, pick) -> list[dict]:
    season = pick.choice(seasons)
    if pick.random() < 0.2:
        return new_day(season, seasons, pick)
    if pick.random() < 0.2:
        return [place_edited(season, seasons, pick)]
    if pick.random() < 0.15:
        return [wire("jumping_round", {"horse_id": season.horse["record_id"], "date": "2026-01-05", "height_cm": 100,
                                       "efforts": 8, "knockdowns": pick.randint(0, 4)}, utc_offset_min=0)]  # fmt: skip
    if made and pick.random() < 0.3:
        place = pick.randrange(len(made))
        body = None if pick.random() < 0.5 else made[place]["body"] and made[place]["body"] | {"outcome": "refusal"}
        made[place] = edit(made[place], body)
        return [made[place]]
    made.append(season.attempt(pick.choice(("clear", "clear", "refusal", "rider_fall"))))
    return [made[-1]]


def new_day(season, seasons, pick) -> list[dict]:
    """A new outing, sometimes over a new fence, with its attempts in the same push."""
    day = TODAY - timedelta(days=pick.randint(0, 30))
    told = {"horse_id": season.horse["record_id"], "activity": "cross_country_school", "rider_confidence": 4}
    season.outing = wire("outing", told | {"date": day.isoformat()}, kind_version=2, utc_offset_min=0)
    found = [season.outing]
    if pick.random() < 0.5:
        season.fence = wire("fence", Season().fence["body"], kind_version=2, utc_offset_min=0)
        found.append(season.fence)
    return [*found, *(season.attempt() for _ in range(3))]


def place_edited(season, seasons, pick) -> dict:
    """The outing of another day, horse or confidence, or the fence of another height; taken back, or put back."""
    name = pick.choice(["outing", "fence"])
    place = getattr(season, name)
    said = {"outing": [{"date": (TODAY - timedelta(days=3)).isoformat()}, {"rider_confidence": 2},
                       {"horse_id": pick.choice(seasons).horse["record_id"]}],
            "fence": [{"height_cm": 60}, {"height_cm": 95}, {"asks": ["ditch"]}]}[name]  # fmt: skip
    season.last_said = getattr(season, "last_said", {}) | {name: place["body"] or season.last_said[name]}
    body = None if place["body"] and pick.random() < 0.25 else season.last_said[name] | pick.choice(said)
    setattr(season, name, edit(place, body, kind_version=2, utc_offset_min=0))
    return getattr(season, name)


def coach_says(app, book, season, pick):
    """A word on a level, or a change of its bar."""
    coach = Browser(app)
    coach.sign_in("coach")
    word = {"horse_id": season.horse["record_id"], "decision": pick.choice(DECISIONS), "reason": "Steady first"}
    change = {"requirement_id": "fixed", "quantity": "clear", "value": pick.randint(2, 6), "reason": "Young horse"}
    kind, body = pick.choice([("word", word), ("bar_change", change)])
    entry = wire(kind, body | {"rulebook_id": RULEBOOK, "level_id": "novice"}, utc_offset_min=0)
    answer = coach.send("POST", f"{book}/entries", {"protocol": 1, "device": new_id(), "entries": [entry]}).get_json()
    assert answer["answers"][0]["result"] == "accepted", answer


def fresh_standings(app, people) -> list[dict]:
    """What a process that was just started works out."""
    close_all(app)
    with app.app_context():
        fresh = recompute.refresh(people.book, everything=True)
    return [each for horse in fresh.values() for each in horse]


@pytest.mark.parametrize("seed", range(4))
def test_push_after_push_is_what_a_process_just_started_would_answer(seed, app, push, wren, book, people):  # noqa: F811
    pick, seasons = random.Random(seed), [Season("Bramble"), Season("Sorrel")]
    push(*(entry for season in seasons for entry in season.entries()))
    made: list[dict] = []
    for _ in range(6):
        for _ in range(2):
            push(*random_entries(seasons, made, pick))
        if pick.random() < 0.3:
            coach_says(app, book, pick.choice(seasons), pick)
        kept = standings(wren, book)
        open_ones = app.extensions[recompute.OPEN]
        assert kept["standings"] == fresh_standings(app, people)
        app.extensions[recompute.OPEN] = open_ones


def test_a_push_reads_on_and_not_all_again(push, wren, book, monkeypatch):  # noqa: F811
    season = Season()
    push(*season.entries())
    read = []
    real = feed.every_entry

    def every_entry(logbook_id, upto, after=0):
        found = list(real(logbook_id, upto, after))
        read.append(len(found))
        return iter(found)

    monkeypatch.setattr(feed, "every_entry", every_entry)
    push(season.attempt())
    assert read == [1] and attempts(standings(wren, book)) == 2


def test_another_run_of_numbers_is_read_from_the_start(app, push, wren, book, people):  # noqa: F811
    season = Season()
    push(*season.entries())
    with app.app_context():
        feed.renew_log_ids()
        head = feed.head(people.book)
        taken = app.extensions[recompute.OPEN].take_out(people.book, head)
    assert taken.log_id == head.log_id and not taken.horses and taken.book.number == head.last_number


def test_the_logbook_used_longest_ago_is_closed_first(app, monkeypatch):
    monkeypatch.setattr(opening, "MOST_ENTRIES", 5)
    logbooks = opening.OpenLogbooks()
    for name in ("one", "two", "three"):
        opened = opening.Opened("log")
        opened.book.entries.extend([None, None])
        logbooks.bring_back(name, opened)
    assert list(logbooks.kept) == ["two", "three"]


def test_a_horse_counts_for_as_many_entries_as_its_standings_weigh(monkeypatch):
    """Many small logbooks take memory too: for their standings, not for their entries."""
    monkeypatch.setattr(opening, "MOST_ENTRIES", 3 * opening.ENTRIES_OF_STANDINGS)
    logbooks = opening.OpenLogbooks()
    for name in ("one", "two", "three", "four"):
        opened = opening.Opened("log")
        opened.horses["horse"] = opening.Remembered([])
        logbooks.bring_back(name, opened)
    assert list(logbooks.kept) == ["two", "three", "four"]


def test_a_logbook_that_lost_entries_is_read_from_the_start(app, push, people):  # noqa: F811
    """A database put back by hand, with the same run of numbers but fewer of them."""
    season = Season()
    push(*season.entries())
    with app.app_context():
        head = replace(feed.head(people.book), last_number=3)
        taken = app.extensions[recompute.OPEN].take_out(people.book, head)
    assert taken.book.number == 3 and not taken.horses


def test_another_process_takes_entries_in(app, make_app, push, wren, book, people):  # noqa: F811
    """Two servers on one database, each with the logbook open: each sees at once what the other took in."""
    other = make_app()
    phone, season, pick = Browser(other), Season(), random.Random(5)
    phone.sign_in("wren")
    push(*season.entries())
    made = []
    for turn in range(8):
        entries = random_entries([season], made, pick)
        if turn % 2:
            push(*entries)
        else:
            told = {"protocol": 1, "device": people.wren, "entries": entries}
            assert phone.send("POST", f"{book}/entries", told).status_code == 200
        assert standings(wren, book) == standings(phone, book)
    assert standings(wren, book)["standings"] == fresh_standings(app, people)


def test_a_past_day_reads_nothing_again(app, push, wren, book, monkeypatch):  # noqa: F811
    season, read = Season(day=TODAY - timedelta(days=10)), []
    push(*season.entries())
    every_entry = feed.every_entry
    monkeypatch.setattr(feed, "every_entry", lambda *given: [read.append(each) or each for each in every_entry(*given)])
    asked = f"{book}/horses/{season.horse['record_id']}/standings?as_of={TODAY - timedelta(days=5)}"
    before = wren.get(asked).get_json()["standings"]
    assert read == []
    push(season.attempt())
    assert len(read) == 1 and wren.get(asked).get_json()["standings"] != before and len(read) == 1
    now = wren.get(asked).get_json()["standings"]
    close_all(app)
    assert wren.get(asked).get_json()["standings"] == now and len(read) == 6


def test_who_has_them_already_is_answered_without_reading_them(push, wren, book, monkeypatch):  # noqa: F811
    push(*Season().entries())
    tag = {"If-None-Match": wren.get(f"{book}/standings?packed=1").headers["ETag"]}
    monkeypatch.setattr(recompute.standings, "kept", None)
    answer = wren.get(f"{book}/standings?packed=1", headers=tag)
    assert (answer.status_code, answer.data, answer.headers["ETag"]) == (304, b"", tag["If-None-Match"])
    assert answer.headers["Cache-Control"] == "private, no-cache" and "Accept-Encoding" in answer.headers["Vary"]


def test_what_was_read_on_for_a_past_day_still_counts_as_changed(app, push, wren, book, people):  # noqa: F811
    """An attempt is moved to another fence twice, and between the two nobody worked out today's standings."""
    season, ditch, bank = Season(), Season(), Season()
    ditch.fence["body"] |= {"profile": "ditch", "asks": ["ditch"]}
    bank.fence["body"] |= {"profile": "bank", "asks": ["bank"]}
    push(*season.entries(), ditch.fence, bank.fence)
    attempt = season.attempt()
    push(attempt)
    to_ditch = edit(attempt, attempt["body"] | {"fence_id": ditch.fence["record_id"]}, utc_offset_min=0)
    push(to_ditch, more=True)
    assert wren.get(f"{book}/horses/{season.horse['record_id']}/standings?as_of={TODAY}").status_code == 200
    push(edit(to_ditch, attempt["body"] | {"fence_id": bank.fence["record_id"]}, utc_offset_min=0))
    assert standings(wren, book)["standings"] == fresh_standings(app, people)
