"""The rulebooks that this machine has, and one of them by name, for every command that needs it."""

import click

from fieldtally.cli.output import complain
from fieldtally.settings import SettingError, Settings, read_settings
from fieldtally.trade.rulebook import Level, Rulebook, RulebookError, available

rulebook_option = click.option("--rulebook", "rulebook_id", required=True, help="Its id: see `fieldtally rulebooks`.")


def settings() -> Settings:
    try:
        return read_settings()
    except SettingError as wrong:
        complain(f"{wrong.variable}: {wrong.message}", wrong.fix)


def say_unusable(wrong: RulebookError) -> None:
    click.echo(f"fieldtally: {wrong.file} is passed over: {wrong.key}: {wrong.reason} {wrong.fix}", err=True)


def rulebooks_here() -> dict[str, Rulebook]:
    """Shipped and added ones; an added file that cannot be used is passed over with a word on stderr."""
    return available(settings().data_dir, say_unusable)


def rulebook_named(rulebook_id: str) -> Rulebook:
    books = rulebooks_here()
    if rulebook_id not in books:
        complain(f"there is no rulebook {rulebook_id!r}.", f"There are: {', '.join(books)}.")
    return books[rulebook_id]


def level_named(rulebook: Rulebook, level_id: str) -> Level:
    """The level by its id, or by its name in any case."""
    for level in rulebook.levels:
        if level_id.casefold() in (level.id, level.name.casefold()):
            return level
    complain(
        f"{rulebook.id} has no level {level_id!r}.", f"It has: {', '.join(level.id for level in rulebook.levels)}."
    )
