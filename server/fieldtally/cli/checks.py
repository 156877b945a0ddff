"""What `fieldtally doctor` looks at, one function a check. None of them changes anything."""

import json
import os
import shutil
import socket
import sys
import time
import urllib.request
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

from sqlalchemy import Connection, create_engine, text
from sqlalchemy.exc import SQLAlchemyError

from fieldtally.cli.startup_warnings import file_system, no_https, not_built, shared_folder
from fieldtally.settings import SettingError, Settings, read_settings, unknown_variables, variable
from fieldtally.store.db import with_driver
from fieldtally.store.schema import NewerDatabase, pending

OLDEST_PYTHON = (3, 11)
LITTLE_DISK, HARDLY_ANY_DISK = 500_000_000, 50_000_000  # bytes
CLOCKS_APART_S = 60


@dataclass(frozen=True)
class Check:
    """`state` is fine, attention (works, but look at it) or broken."""

    name: str
    state: str
    found: str
    fix: str | None = None


def fine(name: str, found: str) -> Check:
    return Check(name, "fine", found)


def all_checks() -> list[Check]:
    checks = [python(), client(), variables()]
    try:
        settings = read_settings()
    except SettingError as wrong:
        return [*checks, Check("settings", "broken", f"{wrong.variable}: {wrong.message}", wrong.fix)]
    return checks + [check(settings) for check in CHECKS]


def python() -> Check:
    found = ".".join(map(str, sys.version_info[:3]))
    if sys.version_info < OLDEST_PYTHON:
        return Check("python", "broken", found, "Install Python 3.11 or newer.")
    return fine("python", found)


def client() -> Check:
    warning = not_built()
    if warning:
        return Check("web client", "broken", warning)
    return fine("web client", "built")


def variables() -> Check:
    unknown = unknown_variables()
    if unknown:
        return Check(
            "settings", "attention", f"not known: {', '.join(unknown)}", "Check the spelling in docs/settings.md."
        )
    return fine("settings", "all known")


def data_folder(settings: Settings) -> Check:
    folder = nearest_existing(settings.data_dir)
    if not os.access(folder, os.W_OK | os.X_OK):
        return Check(
            "data folder", "broken", f"{folder} cannot be written", "Change its owner, or FIELDTALLY_DATA_DIR."
        )
    warning = shared_folder(settings)
    if warning:
        return Check("data folder", "attention", warning)
    return fine(
        "data folder", f"{settings.data_dir} ({file_system(folder) or 'a file system this machine does not tell'})"
    )


def secret(settings: Settings) -> Check:
    file = settings.data_dir / "secret_key"
    if settings.secret_key:
        return fine("secret key", f"set in {variable('secret_key')}")
    if not file.exists():
        return fine("secret key", "made at the first start")
    if os.name == "posix" and file.stat().st_mode & 0o077:
        return Check("secret key", "broken", f"{file} can be read by others", f"chmod 600 {file}")
    return fine("secret key", str(file))


def database(settings: Settings) -> Check:
    if settings.is_sqlite and not (settings.data_dir / "fieldtally.db").exists() and not settings.database_url:
        return fine("database", "SQLite, made at the first start")
    try:
        return database_state(settings)
    except NewerDatabase as wrong:
        return Check("database", "broken", str(wrong), "Install the newer release again.")
    except SQLAlchemyError as wrong:
        return Check(
            "database",
            "broken",
            str(getattr(wrong, "orig", wrong)).splitlines()[0],
            "Check FIELDTALLY_DATABASE_URL, and that it runs.",
        )


def database_state(settings: Settings) -> Check:
    engine = create_engine(with_driver(settings.database))
    try:
        todo = pending(engine)
        with engine.connect() as connection:
            damage = is_damaged(connection)
    finally:
        engine.dispose()
    if damage:
        return Check("database", "broken", damage, "Restore the last backup: docs/deploy.md.")
    if todo:
        return Check("database", "attention", f"{len(todo)} migrations to run", "fieldtally serve runs them.")
    return fine("database", f"{engine.dialect.name}, up to date")


def is_damaged(connection: Connection) -> str | None:
    if connection.dialect.name != "sqlite":
        return None
    found = connection.execute(text("PRAGMA quick_check(1)")).scalar()
    return None if found == "ok" else str(found)


def media(settings: Settings) -> Check:
    if settings.blobs_url:
        return fine("photos", settings.blobs_url.partition("?")[0])
    if not settings.is_sqlite:
        return Check(
            "photos", "attention", "kept in this machine's data folder",
            f"Several servers need one place for them: {variable('blobs_url')}.",
        )  # fmt: skip
    return fine("photos", "in the data folder")


def disk(settings: Settings) -> Check:
    free = shutil.disk_usage(nearest_existing(settings.data_dir)).free
    found = f"{free / 1e9:.1f} GB free"
    if free < LITTLE_DISK:
        state = "broken" if free < HARDLY_ANY_DISK else "attention"
        return Check("disk", state, found, "Make room on the disk of the data folder.")
    return fine("disk", found)


def clock(settings: Settings) -> Check:
    """A clock from before this program was installed is wrong. Nothing relies on it for order, but days do."""
    installed = Path(__file__).stat().st_mtime
    now = time.strftime("%Y-%m-%d %H:%M UTC", time.gmtime())
    if time.time() < installed - CLOCKS_APART_S:
        return Check("clock", "broken", f"{now} is before this program was installed", "Set the clock of this machine.")
    return fine("clock", now)


def port(settings: Settings) -> Check:
    with socket.socket(socket.AF_INET6 if ":" in settings.host else socket.AF_INET) as probe:
        probe.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
        try:
            probe.bind((settings.host, settings.port))
            return fine("port", f"{settings.port} is free")
        except OSError as wrong:
            why = wrong.strerror or str(wrong)
    if answers_as_fieldtally(settings):
        return fine("port", f"Fieldtally answers on {settings.port}")
    return Check("port", "broken", f"{settings.host} port {settings.port}: {why}", "Choose one in FIELDTALLY_PORT.")


def answers_as_fieldtally(settings: Settings) -> bool:
    host = f"[{settings.host}]" if ":" in settings.host else settings.host
    try:
        with urllib.request.urlopen(f"http://{host}:{settings.port}/api/health", timeout=3) as reply:
            return json.load(reply).get("name") == "fieldtally"
    except (OSError, ValueError, AttributeError):
        return False


def https(settings: Settings) -> Check:
    warning = no_https(settings)
    if warning:
        return Check("https", "attention", warning)
    return fine("https", "on" if settings.https else "not needed on this machine alone")


CHECKS: tuple[Callable[[Settings], Check], ...] = (data_folder, secret, database, media, disk, clock, port, https)


def nearest_existing(folder: Path) -> Path:
    """`folder`, or whichever folder above it exists: the one it would be made in."""
    whole = folder.absolute()
    return next(each for each in (whole, *whole.parents) if each.exists())
