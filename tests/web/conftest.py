"""A server in this process with an empty database, and the people of two logbooks."""

from types import SimpleNamespace

import pytest

from fieldtally import create_app
from fieldtally.settings import Settings
from fieldtally.store.accounts import add_account
from fieldtally.store.db import db
from fieldtally.store.memberships import join, open_logbook
from support.asking import PASSWORD, Browser


@pytest.fixture
def make_app(tmp_path):
    """Makes a server with the given settings; it has all tables, and is closed at the end."""
    made = []

    def make(**settings):
        app = create_app(Settings(**{"data_dir": tmp_path} | settings))
        with app.app_context(), db.engine.begin() as connection:
            db.metadata.create_all(connection)
        made.append(app)
        return app

    yield make
    for app in made:
        with app.app_context():
            db.engine.dispose()


@pytest.fixture
def app(make_app):
    return make_app()


@pytest.fixture
def browser(app):
    return Browser(app)


def add_people(app):
    """Wren with her logbook and three helpers; Maren, a stranger to it, with her own. Ids of all."""
    with app.app_context():
        wren, maren = (add_account(name, name.title(), PASSWORD) for name in ("wren", "maren"))
        book, other = open_logbook(wren), open_logbook(maren)
        for role in ("coach", "scribe", "reader"):
            join(add_account(role, role.title(), PASSWORD), book, role)
        return SimpleNamespace(wren=wren.id, maren=maren.id, book=book.id, other=other.id)


@pytest.fixture
def people(app):
    return add_people(app)


@pytest.fixture
def people_of():
    """Adds the people to a server and hands it back."""

    def fill(app):
        add_people(app)
        return app

    return fill


@pytest.fixture
def book(people):
    """The address of Wren's logbook."""
    return f"/api/logbooks/{people.book}"


@pytest.fixture
def wren(app, people):
    """Wren, signed in."""
    browser = Browser(app)
    browser.sign_in("wren")
    return browser
