"""The migrations lead to exactly the tables that the models describe, and lose nothing on the way."""

import pytest
from alembic.autogenerate import compare_metadata
from alembic.migration import MigrationContext
from alembic.operations import Operations
from flask import Flask
from sqlalchemy import inspect, select, text
from sqlalchemy.exc import IntegrityError

from fieldtally.store import schema
from fieldtally.store.db import connect, db, writing
from fieldtally.store.models import Logbook, Membership
from support.riders import wire

LOOKS = ("get_columns", "get_pk_constraint", "get_foreign_keys", "get_indexes", "get_unique_constraints",
         "get_check_constraints")  # fmt: skip


def description() -> dict:
    """Every table as the database itself describes it, whatever order things were made in."""
    look = inspect(db.engine)
    return {
        (table, what): sorted(_items(getattr(look, what)(table)))
        for table in sorted(look.get_table_names())
        if table != "alembic_version"
        for what in LOOKS
    }


def _items(found) -> list[str]:
    found = [found] if isinstance(found, dict) else found
    return [str(sorted((key, str(value)) for key, value in each.items())) for each in found]


def made_from_models(url: str) -> dict:
    app = Flask("fresh")
    connect(app, url)
    with app.app_context():
        with db.engine.begin() as connection:
            db.metadata.create_all(connection)
        fresh = description()
        db.engine.dispose()
    return fresh


@pytest.fixture
def second_url(database_url, request, tmp_path):
    if database_url.startswith("sqlite"):
        return f"sqlite:///{tmp_path / 'fresh.db'}"
    return request.getfixturevalue("postgres").new_database()


def test_fresh_schema_is_the_migrated_schema(store, second_url):
    migrated = description()
    assert len(migrated) >= 8 * len(LOOKS)
    assert migrated == made_from_models(second_url)


def test_nothing_is_left_to_migrate(store):
    with db.engine.connect() as connection:
        assert compare_metadata(MigrationContext.configure(connection), db.metadata) == []
    assert schema.pending() == []
    assert schema.upgrade() == []


def test_upgrade_names_what_it_ran(empty_store):
    due = schema.pending()
    assert due[0] == "0001" and due == sorted(due)
    assert schema.upgrade() == due


def test_a_failed_migration_leaves_no_trace(empty_store, monkeypatch):
    """The tables and the record that they were made come together or not at all."""
    made = Operations.create_table

    def fails_at_entry(self, name, *columns, **how):
        if name == "entry":
            raise OSError("disk full")
        return made(self, name, *columns, **how)

    monkeypatch.setattr(Operations, "create_table", fails_at_entry)
    with pytest.raises(OSError, match="disk full"):
        schema.upgrade()
    assert inspect(db.engine).get_table_names() == []
    monkeypatch.undo()
    schema.upgrade()
    assert schema.pending() == []


def test_a_row_without_its_parent_is_refused(store):
    """Also right after an upgrade, which on SQLite switches foreign keys off while it runs."""
    stray = Membership(logbook_id="no such book", account_id="nobody", role="rider", created_at_ms=0)
    with pytest.raises(IntegrityError), writing() as session:
        session.add(stray)


def test_a_newer_database_is_not_touched(store):
    with db.engine.begin() as connection:
        connection.execute(text("UPDATE alembic_version SET version_num = '9999'"))
    with pytest.raises(schema.NewerDatabase, match="9999"):
        schema.upgrade()


def test_deleting_a_logbook_leaves_no_orphans(stable):
    """Foreign keys hold on both databases (SQLite has them off unless told)."""
    stable.push(wire(), wire(kind="newer"))
    with writing() as session:
        session.delete(session.get(Logbook, stable.logbook))
    left = {
        table.name: db.session.execute(
            select(text("count(*)")).select_from(table).where(table.c.logbook_id == stable.logbook)
        ).scalar()
        for table in db.metadata.tables.values()
        if "logbook_id" in table.c
    }
    assert set(left.values()) == {0} and len(left) >= 5
