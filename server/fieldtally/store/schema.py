"""The state of the database's tables: which migrations it has had, and how to give it the others."""

from pathlib import Path

import flask_migrate
from alembic.migration import MigrationContext
from alembic.script import ScriptDirectory
from flask import current_app
from sqlalchemy import Engine

from fieldtally.store.db import db

MIGRATIONS = Path(__file__).parents[1] / "migrations"


class NewerDatabase(Exception):
    """The database was upgraded by a newer release, which this one must not write to."""


def upgrade() -> list[str]:
    """Run the migrations the database has not had, in order. Returns their names, such as `0001`."""
    todo = pending()
    if todo:
        db.session.remove()  # a reading transaction of ours must not stand in the way
        if "migrate" not in current_app.extensions:
            flask_migrate.Migrate(current_app, db, directory=str(MIGRATIONS))
        flask_migrate.upgrade(directory=str(MIGRATIONS))
    return todo


def pending(engine: Engine | None = None) -> list[str]:
    """The migrations the database (the app's, or `engine`'s) has not had. Raises NewerDatabase if it had one
    that is unknown here."""
    known = [revision.revision for revision in ScriptDirectory(str(MIGRATIONS)).walk_revisions()][::-1]
    with (engine or db.engine).connect() as connection:
        current = MigrationContext.configure(connection).get_current_revision()
    if current is None:
        return known
    if current not in known:
        raise NewerDatabase(f"the database is at {current}, this release knows up to {known[-1]}")
    return known[known.index(current) + 1 :]
