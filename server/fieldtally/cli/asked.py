"""What several commands ask for alike: a rulebook, one of its levels, and refusals told in words."""

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path

import click

from fieldtally.cli.output import complain
from fieldtally.trade.bad_input import BadInput
from fieldtally.trade.rulebook import Level, Rulebook, RulebookError, load_file

rulebook_option = click.option("--rulebook", "rulebook_id", help="A rulebook's id, or the path of its TOML file.")
level_option = click.option("--level", "level_id", help="A level's id in that rulebook.")


@contextmanager
def refused_in_words() -> Iterator[None]:
    """Inside, an input that cannot be ends the command with its field, the reason and the fix."""
    try:
        yield
    except BadInput as refusal:
        complain(f"{refusal.field}: {refusal.message}", refusal.fix)


def known_rulebooks() -> dict[str, Rulebook]:
    """The shipped rulebooks and those added to the data folder."""
    from fieldtally.settings import SettingError, read_settings
    from fieldtally.trade.rulebook_file import available_rulebooks

    try:
        return available_rulebooks(read_settings().data_dir)
    except SettingError as wrong:
        complain(f"{wrong.variable}: {wrong.message}", wrong.fix)


def usable(load: Callable[[], Rulebook]) -> Rulebook:
    try:
        return load()
    except RulebookError as wrong:
        complain(f"{wrong.file}: {wrong.key}: {wrong.reason}", wrong.fix)


def rulebook(rulebook_id: str) -> Rulebook:
    """The rulebook with that id, or of that file."""
    if rulebook_id.endswith(".toml"):
        if not Path(rulebook_id).is_file():
            complain(f"there is no file {rulebook_id}.", "Give the path of a rulebook's TOML file, or a rulebook's id.")
        return usable(lambda: load_file(rulebook_id))
    books = known_rulebooks()
    if rulebook_id not in books:
        complain(f"there is no rulebook “{rulebook_id}”.", f"Use one of: {', '.join(sorted(books))}.")
    return books[rulebook_id]


def level(rulebook: Rulebook, level_id: str | None) -> Level:
    """The rulebook's level with that id."""
    found = next((each for each in rulebook.levels if each.id == level_id), None)
    if found is None:
        complain("name a level." if level_id is None else f"{rulebook.id} has no level “{level_id}”.",
                 f"Use --level with one of: {', '.join(each.id for each in rulebook.levels)}.")  # fmt: skip
    return found


def rulebook_and_level(rulebook_id: str | None, level_id: str | None) -> tuple[Rulebook, Level] | None:
    """Both, or None where neither was named."""
    if rulebook_id is None:
        if level_id is not None:
            complain("a level needs its rulebook.", "Add --rulebook; `fieldtally rulebooks` lists them.")
        return None
    book = rulebook(rulebook_id)
    return book, level(book, level_id)


def heading(found: tuple[Rulebook, Level] | None) -> str:
    """“Novice, Name of the rulebook (edition)”."""
    return f"{found[1].name}, {found[0].title} ({found[0].edition})" if found else "No rulebook named"
