"""The database: how it is reached and how a transaction begins. Imports nothing of ours.

Reading needs nothing special: use `db.session`. Writing happens inside `with writing() as session:` and
nowhere else; a write outside it raises. On SQLite such a transaction takes the write lock at its first
statement (BEGIN IMMEDIATE), so that it waits its turn instead of failing half-way with "database is
locked" when another writer came between its reading and its writing.
"""

import sqlite3
from collections.abc import Iterator
from contextlib import AbstractContextManager, contextmanager, nullcontext
from threading import Lock

from flask import Flask
from flask_sqlalchemy import SQLAlchemy
from sqlalchemy import Engine, MetaData, event
from sqlalchemy.engine import make_url
from sqlalchemy.orm import DeclarativeBase, Session

WRITES = "fieldtally_writes"
_ONE_WRITER = Lock()


class Base(DeclarativeBase):
    """All tables. Times are whole milliseconds since 1970 UTC, so both databases keep the same instant.

    Every constraint has a name, so that a later migration can speak of it on either database.
    """

    metadata = MetaData(
        naming_convention={
            "pk": "%(table_name)s_pk",
            "fk": "%(table_name)s_%(column_0_name)s_fk",
            "uq": "%(table_name)s_%(column_0_name)s_once",
            "ix": "%(table_name)s_of_%(column_0_name)s",
            "ck": "%(table_name)s_%(constraint_name)s",
        }
    )


db = SQLAlchemy(model_class=Base, session_options={"expire_on_commit": False})


OLDEST_SQLITE = (3, 35, 0)  # the first that can answer a write with the row it wrote (RETURNING)


def connect(app: Flask, url: str, *, synchronous: str = "FULL", busy_timeout_ms: int = 30_000) -> None:
    """Bind `app` to the database at `url` (SQLite or PostgreSQL).

    `synchronous` and `busy_timeout_ms` are SQLite's pragmas of these names. FULL survives a power cut
    without losing a commit that was acknowledged.
    """
    app.config["SQLALCHEMY_DATABASE_URI"] = with_driver(url)
    # as many connections as threads may ask at once: waiting for the database is better than for the pool
    options = {"pool_size": 8, "max_overflow": 248, "pool_pre_ping": not url.startswith("sqlite")}
    app.config.setdefault("SQLALCHEMY_ENGINE_OPTIONS", options)
    db.init_app(app)
    with app.app_context():
        if db.engine.dialect.name == "sqlite":
            _tame_sqlite(db.engine, synchronous, busy_timeout_ms)


def with_driver(url: str) -> str:
    """The URL with our driver named: `postgres://` and `postgresql://` mean psycopg 3."""
    parsed = make_url(url)
    if parsed.drivername in ("postgres", "postgresql"):
        parsed = parsed.set(drivername="postgresql+psycopg")
    return parsed.render_as_string(hide_password=False)


@contextmanager
def writing() -> Iterator[Session]:
    """One write transaction: commits at the end, rolls back on any error. Inside another one it joins it."""
    session = db.session()
    if session.info.get(WRITES):
        yield session
        return
    session.commit()  # ends a reading transaction; a write left pending there raises
    with _turn(session):
        session.info[WRITES] = True
        try:
            session.connection(execution_options={WRITES: True})
            yield session
            session.commit()
        except BaseException:
            session.rollback()
            raise
        finally:
            del session.info[WRITES]


def _turn(session: Session) -> AbstractContextManager:
    """SQLite has one writer at a time, and those who wait look for their turn now and then; the threads of
    this process wait for each other here instead, which is fairer and quicker."""
    return _ONE_WRITER if session.get_bind().dialect.name == "sqlite" else nullcontext()


def _tame_sqlite(engine: Engine, synchronous: str, busy_timeout_ms: int) -> None:
    if sqlite3.sqlite_version_info < OLDEST_SQLITE:
        raise RuntimeError(
            f"Python's SQLite is {sqlite3.sqlite_version}, but 3.35 or newer is needed: use a newer Python, or"
            " PostgreSQL by FIELDTALLY_DATABASE_URL."
        )

    @event.listens_for(engine, "connect")
    def set_pragmas(connection, _record) -> None:
        connection.isolation_level = None  # the driver must not begin transactions of its own
        for pragma in (
            f"busy_timeout = {int(busy_timeout_ms)}",
            "journal_mode = WAL",
            f"synchronous = {synchronous}",
            "foreign_keys = ON",
        ):
            connection.execute(f"PRAGMA {pragma}")

    @event.listens_for(engine, "begin")
    def begin(connection) -> None:
        writes = connection.get_execution_options().get(WRITES)
        connection.exec_driver_sql("BEGIN IMMEDIATE" if writes else "BEGIN")


@event.listens_for(Session, "before_flush")
def _refuse_stray_objects(session: Session, *_) -> None:
    _must_be_writing(session)


@event.listens_for(Session, "do_orm_execute")
def _refuse_stray_statements(state) -> None:
    if state.is_insert or state.is_update or state.is_delete:
        _must_be_writing(state.session)


def _must_be_writing(session: Session) -> None:
    if not session.info.get(WRITES):
        raise RuntimeError("a write outside `with writing():`")
