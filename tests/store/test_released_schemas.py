"""A database of every released schema is brought up to today's and loses nothing on the way.

fixtures/databases holds one small SQLite database per released schema, as the SQL that makes it: a field that a
coach edited, a horse, and an entry of a kind that release did not know.
"""

import sqlite3
from pathlib import Path

import pytest
from flask import Flask
from sqlalchemy import select

from fieldtally.store import schema
from fieldtally.store.db import connect, db
from fieldtally.store.feed import every_entry
from fieldtally.store.memberships import logbooks_of, members_of
from fieldtally.store.models import Account, HeldEntry, Logbook

RELEASED = sorted((Path(__file__).parents[2] / "fixtures" / "databases").glob("*.sql"))


def counts(connection: sqlite3.Connection) -> dict[str, int]:
    tables = connection.execute("SELECT name FROM sqlite_master WHERE type = 'table'").fetchall()
    names = [name for (name,) in tables if name != "alembic_version" and not name.startswith("sqlite_")]
    return {name: connection.execute(f'SELECT count(*) FROM "{name}"').fetchone()[0] for name in names}


@pytest.fixture(params=RELEASED, ids=lambda path: path.stem)
def upgraded(request, tmp_path):
    """An app over such a database after the upgrade, and how many rows each table had before and has now."""
    file = tmp_path / "released.db"
    with sqlite3.connect(file) as connection:
        connection.executescript(request.param.read_text(encoding="utf-8"))
        before = counts(connection)
    app = Flask("released")
    connect(app, f"sqlite:///{file}")
    with app.app_context():
        schema.upgrade()
        with sqlite3.connect(file) as connection:
            after = counts(connection)
        yield before, after
        db.session.remove()
        db.engine.dispose()


def test_there_is_one_for_every_released_schema():
    assert RELEASED, "fixtures/databases is empty"


def test_every_row_is_still_there(upgraded):
    before, after = upgraded
    assert before["entry"] == 3 and before["held_entry"] == 1
    assert {name: after[name] for name in before} == before
    assert after.keys() > before.keys()


def test_the_logbook_reads_as_it_did(upgraded):
    book = db.session.scalar(select(Logbook).where(Logbook.last_number == 3))
    entries = list(every_entry(book.id))
    assert [(entry.number, entry.kind) for entry in entries] == [(1, "field"), (2, "horse"), (3, "field")]
    assert entries[2].body["notes"] == "drained" and entries[2].supersedes == (entries[0].id,)
    assert [role for _, role in members_of(book.id)] == ["rider", "coach", "reader", "scribe"]
    assert db.session.scalar(select(HeldEntry.reason))
    rider = db.session.scalar(select(Account).where(Account.sign_in_name == "rider"))
    assert [role for _, role in logbooks_of(rider.id)] == ["rider"]
