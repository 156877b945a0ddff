"""A logbook kept open between pushes gives the standings that reading all of it again would give."""

import random

import pytest

from fieldtally.store import feed
from fieldtally.web import opened as opening
from fieldtally.web import recompute
from support.cheap_passwords import cheap_passwords  # noqa: F401
from support.riders import edit, wire
from web.test_standings_api import Season, attempts, book, push, standings, wren  # noqa: F401


def close_all(app):
    app.extensions.pop(recompute.OPEN, None)


def random_entries(seasons, made, pick) -> list[dict]:
    season = pick.choice(seasons)
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


@pytest.mark.parametrize("seed", range(3))
def test_push_after_push_is_what_a_process_just_started_would_answer(seed, app, push, wren, book, people):  # noqa: F811
    pick, seasons = random.Random(seed), [Season("Bramble"), Season("Sorrel")]
    push(*(entry for season in seasons for entry in season.entries()))
    made: list[dict] = []
    for _ in range(8):
        push(*random_entries(seasons, made, pick))
        kept = standings(wren, book)
        close_all(app)
        with app.app_context():
            fresh = recompute.refresh(people.book, everything=True)
        assert kept["standings"] == [each for horse in fresh.values() for each in horse]
        if pick.random() < 0.3:
            close_all(app)


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
