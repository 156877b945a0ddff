"""Phones that lose replies, send twice, stay away, and a server that is restored from backups: nothing a
phone holds is lost, nobody's entry changes its author, and all end with the same logbook.

The server is the real feed on a real database; the phones are the model of support/phone.py.
"""

import random
import sqlite3
from dataclasses import asdict

import pytest
from flask import Flask

from fieldtally.book.entry import check
from fieldtally.book.fold import fold
from fieldtally.store import feed, schema
from fieldtally.store.db import connect, db
from fieldtally.store.sender import Sender
from support.phone import Line, Phone
from support.riders import NOON_MS, Stable, new_id, wire

SEEDS = 30
STEPS = 60
ROLES = ("rider", "rider", "coach", "scribe", "reader")


class World:
    """A server, its backups, and the phones of a rider (two of them), a coach, a scribe and a reader."""

    def __init__(self, seed: int, database: str) -> None:
        self.dice = random.Random(seed)
        self.stable = Stable()
        self.database = database
        self.backup = sqlite3.connect(":memory:", check_same_thread=False)
        self.calm = False
        self.written: dict[str, str] = {}  # entry id -> account that wrote it
        self.restores = 0
        self.phones = [self.phone(role) for role in ROLES]
        self.take_backup()

    def phone(self, role: str) -> Phone:
        sender = Sender(self.stable.accounts[role], role, new_id(), 0, NOON_MS)
        return Phone(sender, Line(self.stable.logbook, self.mishap), self.dice.randint(1, 6), self.dice.randint(1, 6))

    def mishap(self) -> str:
        if self.calm:
            return ""
        return self.dice.choices(["", "request", "reply", "twice"], [10, 2, 3, 1])[0]

    def step(self) -> None:
        act = self.dice.choices(
            [self.write, self.sync, self.take_backup, self.restore, self.new_phone], [30, 30, 3, 2, 1]
        )[0]
        act()

    def write(self) -> None:
        phone = self.dice.choice([each for each in self.phones if each.sender.role != "reader"])
        kind, body = ("remark", {"about_id": new_id(), "text": "Softer"}) if (
            phone.sender.role == "coach" and self.dice.random() < 0.5
        ) else ("field", {"name": self.dice.choice("ABCDEF"), "notes": self.dice.choice([None, "x", "y"])})
        known = [entry for entry in phone.entries.values() if entry["kind"] == kind]
        entry = wire(kind, body, recorded_at=self.time_of_day())
        if known and self.dice.random() < 0.5:
            entry |= self.editing(self.dice.choice(known), known)
        phone.write(entry)
        self.written[entry["id"]] = phone.sender.account_id

    def editing(self, one: dict, known: list[dict]) -> dict:
        """An edit, or now and then a taking back, of everything this phone knows of the record."""
        versions = [entry for entry in known if entry["record_id"] == one["record_id"]]
        superseded = {old for entry in versions for old in entry["supersedes"]}
        heads = [entry["id"] for entry in versions if entry["id"] not in superseded]
        change = {"body": None} if self.dice.random() < 0.2 else {}
        return {"record_id": one["record_id"], "supersedes": heads} | change

    def time_of_day(self) -> str:
        """Phones' clocks are days apart; nothing may depend on them."""
        return f"2026-05-{self.dice.randint(1, 28):02d}T12:00:{self.dice.randint(0, 59):02d}.000Z"

    def sync(self) -> None:
        self.dice.choice(self.phones).sync()

    def new_phone(self) -> None:
        self.phones.append(self.phone(self.dice.choice(ROLES)))

    def take_backup(self) -> None:
        self._copy(self.backup, into_backup=True)

    def restore(self) -> None:
        """As the operator does it: put the backup in place, then renew the log ids."""
        self._copy(self.backup, into_backup=False)
        feed.renew_log_ids()
        self.restores += 1

    def _copy(self, backup: sqlite3.Connection, into_backup: bool) -> None:
        db.session.remove()
        db.engine.dispose()
        live = sqlite3.connect(self.database)
        live.backup(backup) if into_backup else backup.backup(live)
        live.close()

    def settle(self) -> None:
        """Everybody has signal and syncs until nothing is left to do."""
        self.calm = True
        for _ in range(6):
            if all([phone.sync() for phone in self.phones]) and self.quiet():
                return
        raise AssertionError("the phones never came to rest")

    def quiet(self) -> bool:
        last = feed.head(self.stable.logbook).last_number
        return all(phone.cursor == last and not phone.outbox() for phone in self.phones)


@pytest.fixture
def world(request, tmp_path):
    path = str(tmp_path / "model.db")
    app = Flask(__name__)
    connect(app, f"sqlite:///{path}", synchronous="OFF")  # the model has its own mishaps, no power cuts
    with app.app_context():
        schema.upgrade()
        yield World(request.param, path)
        db.session.remove()
        db.engine.dispose()


def records_on(phone: Phone) -> dict:
    """What the phone shows, folded from its own entries."""
    entries = []
    for raw in phone.entries.values():
        entry = check(raw)
        entries.append(type(entry)(**{**asdict_shallow(entry), "number": raw["number"], "author": raw["author"]}))
    return fold(entries)


def asdict_shallow(entry) -> dict:
    return {name: getattr(entry, name) for name in entry.__slots__}


@pytest.mark.parametrize("world", range(SEEDS), indirect=True)
def test_nothing_is_lost_and_all_converge(world):
    for _ in range(STEPS):
        world.step()
    world.settle()
    entries = list(feed.every_entry(world.stable.logbook))

    assert [entry.number for entry in entries] == list(range(1, len(entries) + 1))
    assert {entry.id: entry.author for entry in entries} == world.written
    numbers = {entry.id: entry.number for entry in entries}
    records = {record_id: asdict(record) for record_id, record in fold(entries).items()}
    for phone in world.phones:
        assert phone.needs_you == {}
        assert {entry["id"]: entry["number"] for entry in phone.entries.values()} == numbers
        assert {record_id: asdict(record) for record_id, record in records_on(phone).items()} == records


@pytest.mark.parametrize("world", [7], indirect=True)
def test_the_model_meets_what_it_is_for(world):
    """Restores, phones that had to begin again, forks: a model in which these never happen proves nothing."""
    for _ in range(STEPS * 7):
        world.step()
    world.settle()
    assert world.restores >= 5
    assert sum(phone.resets for phone in world.phones) >= 10
    assert any(record.fork for record in fold(feed.every_entry(world.stable.logbook)).values())
    assert len(world.written) > 100
