"""A server in this process, and the people of a logbook."""

from types import SimpleNamespace

import pytest

from fieldtally import create_app
from fieldtally.settings import Settings
from fieldtally.store import schema
from fieldtally.store.accounts import add_account
from fieldtally.store.db import db
from fieldtally.store.memberships import join, open_logbook
from support.asking import PASSWORD


@pytest.fixture
def app(tmp_path):
    app = create_app(Settings(data_dir=tmp_path))
    with app.app_context():
        schema.upgrade()
        db.session.remove()
    yield app
    with app.app_context():
        db.engine.dispose()


@pytest.fixture
def people(app):
    """Wren with her logbook, and her coach."""
    with app.app_context():
        wren = add_account("wren", "Wren", PASSWORD)
        book = open_logbook(wren)
        join(add_account("coach", "Coach", PASSWORD), book, "coach")
        return SimpleNamespace(wren=wren.id, book=book.id)
