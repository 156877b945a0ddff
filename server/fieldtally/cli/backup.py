"""`fieldtally backup` and `fieldtally restored`: a copy of everything, and the word that one was put back."""

import os
import sqlite3
from pathlib import Path

import click

from fieldtally.cli.opening import opened
from fieldtally.cli.output import complain
from fieldtally.store.blob_use import every_logbook, missing
from fieldtally.store.blobs import blobs
from fieldtally.store.db import db
from fieldtally.store.feed import renew_log_ids


@click.command()
@click.argument("file", type=click.Path(path_type=Path, dir_okay=False))
def backup(file: Path) -> None:
    """Copy the SQLite database to FILE, whole and consistent, while the server may be running.

    Photos and voice notes, where there are any, go to the folder FILE.media beside it.
    """
    with opened() as settings:
        if not settings.is_sqlite:
            complain("this database is PostgreSQL.", "Use pg_dump; docs/deploy.md shows how.")
        try:
            os.close(os.open(file, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o600))
        except FileExistsError:
            complain(f"{file} exists already.", "Name a new file.")
        except OSError as wrong:
            complain(f"{file} cannot be written: {wrong.strerror}.")
        copy_to(file)
        copied = copy_media(Path(f"{file}.media"))  # after the database: whatever it speaks of is there by now
    if copied:
        click.echo(f"{copied} photos and voice notes copied to {file}.media.")
    click.echo(f"Copied to {file}. Keep secret_key with it: without it everybody has to sign in again.")


def copy_to(file: Path) -> None:
    source = db.engine.raw_connection()
    target = sqlite3.connect(file)
    try:
        source.driver_connection.backup(target)
    finally:
        target.close()
        source.close()


def copy_media(folder: Path) -> int:
    """Every whole file of every logbook, in the layout of the media folder; how many."""
    copied = 0
    for logbook_id in every_logbook():
        for blob in blobs().every(logbook_id):
            data = blobs().read(logbook_id, blob.sha256)
            if data is not None:
                keep_file(folder / logbook_id / blob.sha256, data)
                copied += 1
    return copied


def keep_file(file: Path, data: bytes) -> None:
    try:
        file.parent.mkdir(mode=0o700, parents=True, exist_ok=True)
        file.write_bytes(data)
    except OSError as wrong:
        complain(f"{file} cannot be written: {wrong.strerror}.", "The database is copied, the photos are not.")


@click.command()
def restored() -> None:
    """Say that this database was put back from a backup; run it once, before anybody syncs.

    It renews the log id of every logbook, so that each phone sends again what the backup does not have.
    """
    with opened():
        count = renew_log_ids()
        absent = sum(missing(logbook_id) for logbook_id in every_logbook())
    if absent:
        click.echo(f"{absent} photos and voice notes are not here; phones that still hold them send them again.")
    click.echo(f"{count} logbooks renewed: every phone now sends again what this backup does not have.")
