"""Opening the server's database from the command line, with complaints in words."""

import os
from collections.abc import Iterator
from contextlib import contextmanager

from flask import Flask
from limits.errors import ConfigurationError
from sqlalchemy.exc import SQLAlchemyError

from fieldtally import create_app
from fieldtally.cli.output import complain
from fieldtally.settings import SettingError, Settings, read_settings
from fieldtally.store.db import db
from fieldtally.store.schema import NewerDatabase, upgrade


def settings_from_environment(**given: object) -> Settings:
    try:
        return read_settings(**given)
    except SettingError as wrong:
        complain(f"{wrong.variable}: {wrong.message}", wrong.fix)


def open_app(settings: Settings) -> Flask:
    """The server on these settings, its database made or brought up to date."""
    os.umask(0o077)  # what this process makes is for its owner only
    try:
        if settings.is_sqlite:
            settings.data_dir.mkdir(mode=0o700, parents=True, exist_ok=True)
        app = create_app(settings)
        with app.app_context():
            upgrade()
        return app
    except OSError as wrong:
        complain(
            f"{settings.data_dir} cannot be used: {wrong.strerror}.", "Name another folder in FIELDTALLY_DATA_DIR."
        )
    except NewerDatabase as wrong:
        complain(f"{wrong}.", "Install the newer release again; an older one must not write to this database.")
    except ConfigurationError as wrong:
        complain(f"FIELDTALLY_LIMIT_STORAGE: {wrong}.", "Leave it empty, or install what it needs (pip install redis).")
    except SQLAlchemyError as wrong:
        complain(f"the database does not answer: {str(wrong).splitlines()[0]}", "Check FIELDTALLY_DATABASE_URL.")


@contextmanager
def opened() -> Iterator[Settings]:
    """Inside, the database can be used; at the end it is closed."""
    settings = settings_from_environment()
    with open_app(settings).app_context():
        try:
            yield settings
        finally:
            db.session.remove()
            db.engine.dispose()
