"""`fieldtally rulebooks`: which there are, what one states and how sure that is, and adding one of your own."""

from collections.abc import Iterator
from pathlib import Path

import click

from fieldtally.cli.books import rulebook_named, rulebooks_here, settings
from fieldtally.cli.output import answer, complain, json_option
from fieldtally.trade.rulebook import Level, Rulebook, RulebookError, Value
from fieldtally.trade.rulebook_file import add as add_file
from fieldtally.trade.units import show_feet

CHECK = (
    "Rules change every year, and these tables could only be read in part: check each value in the rulebook in force."
)


class ListOrOne(click.Group):
    """`rulebooks`, `rulebooks us-2025` and `rulebooks add FILE`: a word that is no command is an id."""

    def parse_args(self, ctx: click.Context, args: list[str]) -> list[str]:
        if args and not args[0].startswith("-") and args[0] not in self.commands:
            args = ["show", *args]
        return super().parse_args(ctx, args)


@click.group(cls=ListOrOne, invoke_without_command=True)
@json_option
@click.pass_context
def rulebooks(ctx: click.Context, as_json: bool) -> None:
    """Levels of each governing body, by edition, every value with its source.

    \b
    fieldtally rulebooks                  which there are
    fieldtally rulebooks ID [--level ID]  what one states
    fieldtally rulebooks add FILE         add one of your own, or put it in the place of one
    """
    if ctx.invoked_subcommand is None:
        books = list(rulebooks_here().values())
        answer([heading(book) for book in books], as_json, lambda: "\n".join(map(line, books)))


def heading(book: Rulebook) -> dict:
    levels = [{"id": level.id, "name": level.name} for level in book.levels]
    return {"id": book.id, "title": book.title, "body": book.body, "edition": book.edition, "status": book.status,
            "levels": levels}  # fmt: skip


def line(book: Rulebook) -> str:
    older = " (older)" if book.status == "older" else ""
    return f"{book.id:<20} {book.title}{older}\n{'':<20} {book.edition}; levels: {len(book.levels)}"


@rulebooks.command()
@click.argument("rulebook_id")
@click.option("--level", "level_id", help="Only this level.")
@json_option
def show(rulebook_id: str, level_id: str | None, as_json: bool) -> None:
    """Everything one rulebook states."""
    book = rulebook_named(rulebook_id)
    levels = [level for level in book.levels if level_id in (None, level.id)]
    if not levels:
        complain(f"{book.id} has no level {level_id!r}.", f"It has: {', '.join(level.id for level in book.levels)}.")
    answer(as_data(book, levels), as_json, lambda: "\n".join(in_words(book, levels)))


def as_data(book: Rulebook, levels: list[Level]) -> dict:
    data, chosen = book.to_json(), {level.id for level in levels}
    return data | {"levels": [level for level in data["levels"] if level["id"] in chosen]}


def in_words(book: Rulebook, levels: list[Level]) -> Iterator[str]:
    yield f"{book.title}. {book.body}. {book.edition}."
    yield CHECK
    for level in levels:
        yield f"\n{level.name} ({level.id})"
        for phase, values in level.phases.items():
            yield from (f"  {phase:<14} {value_line(value)}" for value in values.values())
        yield from (f"  {'entry':<14} {value_line(value)}" for value in level.entry.values())
        yield from (f"  {'entry':<14} {rule.text} [{rule.grade}: {rule.source}]" for rule in level.eligibility)
        yield from (f"  {'asks':<14} {ask.word}: {ask.text} [{ask.grade}: {ask.source}]" for ask in level.asks)
    yield from (f"\n{note.about}: {note.text}" for note in book.notes)


def value_line(value: Value) -> str:
    feet = f" ({show_feet(value.value)})" if value.unit == "cm" else ""
    note = f" {value.note}" if value.note else ""
    return f"{value.quantity:<38} {value.value:g} {value.unit}{feet} [{value.grade}: {value.source}]{note}"


@rulebooks.command()
@click.argument("file", type=click.Path(path_type=Path))
@json_option
def add(file: Path, as_json: bool) -> None:
    """Check FILE and keep it in the data folder. It takes the place of a rulebook with the same id."""
    data_dir = settings().data_dir
    try:
        book, target = add_file(file, data_dir)
    except RulebookError as wrong:
        complain(f"{wrong.file}: {wrong.key}: {wrong.reason}", wrong.fix)
    except OSError as wrong:
        complain(f"{data_dir} cannot be used: {wrong.strerror}.", "Name another folder in FIELDTALLY_DATA_DIR.")
    answer(heading(book) | {"file": str(target)}, as_json, lambda: f"{line(book)}\nKept in {target}.")
