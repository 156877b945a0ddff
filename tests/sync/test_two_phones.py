"""Stories of two phones and one logbook, told with the model phone and the real feed."""

import pytest

from fieldtally.book.entry import Entry, check
from fieldtally.book.fold import fold, living
from fieldtally.store import feed
from fieldtally.store.db import db
from support.phone import Line, Phone
from support.riders import Stable, edit, new_id, wire


@pytest.fixture
def stable(app):
    with app.app_context():
        yield Stable()
        db.session.remove()


@pytest.fixture
def phone(stable):
    def phone(role: str = "rider") -> Phone:
        return Phone(stable.sender(role), Line(stable.logbook, lambda: ""), batch=500, page=500)

    return phone


def records(stable) -> dict:
    return fold(feed.every_entry(stable.logbook))


def field(name: str, notes: str | None = None) -> dict:
    return {"name": name, "notes": notes}


def sync(*phones: Phone) -> None:
    for phone in phones:
        assert phone.sync()


def test_both_edit_the_same_field_and_one_tap_settles_it(stable, phone):
    mine, hers = phone(), phone("scribe")
    first = wire(body=field("Home"))
    mine.write(first)
    sync(mine, hers)
    mine.write(edit(first, field("Hill")))
    hers.write(edit(first, field("Valley")))
    sync(mine, hers, mine)
    forked = records(stable)[first["record_id"]]
    assert [side.body["name"] for side in forked.fork.sides] == ["Hill", "Valley"]
    assert forked.body["name"] == "Valley"
    mine.write(wire(body=forked.fork.sides[0].body, record_id=first["record_id"], supersedes=list(forked.heads)))
    sync(mine, hers)
    settled = records(stable)[first["record_id"]]
    assert settled.fork is None and settled.body["name"] == "Hill"


def test_edits_of_different_fields_just_merge(stable, phone):
    mine, hers = phone(), phone("scribe")
    first = wire(body=field("Home"))
    mine.write(first)
    sync(mine, hers)
    mine.write(edit(first, field("Hill")))
    hers.write(edit(first, field("Home", "Gate sticks")))
    sync(mine, hers)
    merged = records(stable)[first["record_id"]]
    assert merged.fork is None and merged.body == field("Hill", "Gate sticks")


def test_away_all_winter(stable, phone):
    """Twenty records are taken back while a phone that has them lies in a drawer. It comes back with three new
    ones: the twenty stay away, the three arrive. Nothing was purged, so its old cursor still serves (SY-05)."""
    mine, drawer = phone(), phone()
    old = [wire() for _ in range(20)]
    for entry in old:
        mine.write(entry)
    sync(mine, drawer)
    for entry in old:
        mine.write(edit(entry, None))
    sync(mine)
    new = [wire(recorded_at="2025-11-02T10:00:00.000Z", local_date="2025-11-02") for _ in range(3)]
    for entry in new:
        drawer.write(entry)
    sync(drawer, mine)
    assert set(living(records(stable))) == {entry["record_id"] for entry in new}
    assert set(living(fold(map(read, mine.entries.values())))) == {entry["record_id"] for entry in new}


def read(raw: dict) -> Entry:
    entry = check(raw)
    assert isinstance(entry, Entry)
    return entry


def test_a_season_s_backlog_is_not_refused_for_its_age(stable, phone):
    """Two thousand entries, some years old; no batch, day or order stands in the way (SY-10)."""
    backlog = phone()
    for place in range(2000):
        day = f"{2020 + place % 7}-{1 + place % 12:02d}-{1 + place % 28:02d}"
        backlog.write(wire(recorded_at=f"{day}T12:00:00.000Z", local_date=day))
    sync(backlog)
    assert backlog.cursor == 2000 and backlog.needs_you == {}


def test_one_refused_entry_holds_nobody_up(stable, phone):
    """It stays on the phone with its reason, is not sent again by itself, and goes through once mended (SY-07)."""
    mine = phone()
    bad = wire(body=field(""))
    for entry in (wire(), bad, *[wire() for _ in range(50)]):
        mine.write(entry)
    sync(mine)
    assert mine.cursor == 51 and mine.needs_you == {bad["id"]: "empty"}
    mine.sync()
    assert bad["id"] in mine.entries and mine.outbox() == []
    mine.write(wire(body=field("Mended"), record_id=bad["record_id"]))
    sync(mine)
    assert mine.cursor == 52


def test_a_newer_phone_and_this_server(stable, phone):
    """What it writes in its newer kinds is kept here, and everything else goes on (BE-06)."""
    newer = phone()
    held = wire("saddle_fit", {"pressure": [1, 2, 3]}, kind_version=3)
    newer.write(held)
    newer.write(wire())
    sync(newer)
    assert newer.cursor == 1 and newer.needs_you == {} and newer.held == {held["id"]}
    assert newer.entries[held["id"]].get("number") is None


def test_a_reader_s_phone_gets_everything_and_writes_nothing(stable, phone):
    mine, reader = phone(), phone("reader")
    mine.write(wire())
    reader.write(wire("note", {"about_id": new_id(), "text": "not mine to write"}))
    sync(mine, reader)
    assert reader.cursor == 1 and list(reader.needs_you.values()) == ["not_allowed"]
