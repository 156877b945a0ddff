"""`fieldtally export`: take a logbook away, whole as JSON or one kind as a table."""

import os
import sys
from collections.abc import Iterable, Iterator
from pathlib import Path

import click

from fieldtally.book.fold import fold, living
from fieldtally.book.kinds import KINDS
from fieldtally.cli.opening import opened
from fieldtally.cli.output import complain
from fieldtally.cli.people import book_of
from fieldtally.reports.table import table
from fieldtally.reports.whole_logbook import whole_logbook
from fieldtally.store.feed import every_entry
from fieldtally.store.whole import author_names, heading, held_texts, media_files, wire_entries


@click.command()
@click.option("--logbook", "rider", metavar="RIDER", required=True, help="Whose: the rider's sign-in name.")
@click.option("--format", "form", type=click.Choice(["json", "csv"]), default="json", show_default=True)
@click.option("--kind", type=click.Choice(list(KINDS)), default="attempt", show_default=True, help="For csv.")
@click.option("--bom", is_flag=True, help="For csv: begin with a byte order mark, as Excel wants for accents.")
@click.option("--without-media", is_flag=True, help="For json: leave the photos and voice notes out.")
@click.option("--output", type=click.Path(path_type=Path, dir_okay=False), help="A new file; else standard output.")
def export(rider: str, form: str, kind: str, bom: bool, without_media: bool, output: Path | None) -> None:
    """Everything in a logbook as JSON, or its records of one kind as CSV."""
    with opened():
        logbook_id = book_of(rider).id
        write(everything(logbook_id, without_media) if form == "json" else one_kind(logbook_id, kind, bom), output)


def everything(logbook_id: str, without_media: bool = False) -> Iterator[str]:
    about = heading(logbook_id)
    media = () if without_media else media_files(logbook_id)
    return whole_logbook(about.to_json(), wire_entries(about), held_texts(logbook_id), media)


def one_kind(logbook_id: str, kind: str, bom: bool) -> Iterator[str]:
    return table(kind, living(fold(every_entry(logbook_id))), author_names(), bom)


def write(pieces: Iterable[str], output: Path | None) -> None:
    """UTF-8 with the line ends as given, to standard output or to a new file only its owner may read."""
    if output is None:
        for piece in pieces:
            sys.stdout.buffer.write(piece.encode())
        return
    try:
        handle = os.open(output, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o600)
        with open(handle, "wb") as out:
            out.writelines(piece.encode() for piece in pieces)
    except FileExistsError:
        complain(f"{output} exists already.", "Name a new file, or remove that one first.")
    except OSError as wrong:
        complain(f"{output} cannot be written: {wrong.strerror}.")
