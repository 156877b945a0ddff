"""Every test of the store runs on both databases: SQLite in a file, and a PostgreSQL of the tests' own."""

import pytest
from flask import Flask

from fieldtally.store import schema
from fieldtally.store.db import connect, db
from support.postgres import Postgres
from support.riders import Stable


@pytest.fixture(scope="session")
def postgres():
    server = Postgres()
    yield server
    server.stop()


@pytest.fixture(params=["sqlite", "postgresql"])
def database_url(request, tmp_path):
    """The URL of an empty database."""
    if request.param == "sqlite":
        return f"sqlite:///{tmp_path / 'test.db'}"
    return request.getfixturevalue("postgres").new_database()


@pytest.fixture
def empty_store(database_url):
    """An app bound to a database without any tables, inside its context."""
    app = Flask(__name__)
    connect(app, database_url)
    with app.app_context():
        yield app
        db.session.remove()
        db.engine.dispose()


@pytest.fixture
def store(empty_store):
    """An app bound to a database with all tables, inside its context."""
    schema.upgrade()
    return empty_store


@pytest.fixture
def stable(store):
    """A logbook with its rider, coach, scribe and reader, and a second one nobody of them belongs to."""
    return Stable()
