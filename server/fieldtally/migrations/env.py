"""How migrations run: whatever is due in one transaction, together with the record that it ran, on both
databases. After a failure the database is as it was."""

from alembic import context
from sqlalchemy import Connection, text

from fieldtally.store.db import WRITES, db

ONE_AT_A_TIME = 0x0F1E1D7A  # any number, the same on every server that shares the database


def run() -> None:
    with db.engine.connect().execution_options(**{WRITES: True}) as connection:
        if connection.dialect.name == "sqlite":
            run_on_sqlite(connection)
        else:
            run_on_postgresql(connection)


def run_on_sqlite(connection: Connection) -> None:
    """With foreign keys off: SQLite changes a table by making it anew, and dropping the old one would take
    along whatever refers to it. They are checked before the commit instead."""
    driver = connection.connection.dbapi_connection
    driver.execute("PRAGMA foreign_keys = OFF")
    try:
        with connection.begin():
            migrate(connection)
            orphans = connection.exec_driver_sql("PRAGMA foreign_key_check").all()
            if orphans:
                raise RuntimeError(f"the migration would leave {len(orphans)} rows without their parent")
    finally:
        driver.execute("PRAGMA foreign_keys = ON")


def run_on_postgresql(connection: Connection) -> None:
    with connection.begin():
        connection.execute(text("SELECT pg_advisory_xact_lock(:key)"), {"key": ONE_AT_A_TIME})
        migrate(connection)


def migrate(connection: Connection) -> None:
    context.configure(
        connection=connection, target_metadata=db.metadata, render_as_batch=True, transactional_ddl=True
    )
    context.run_migrations()


run()
