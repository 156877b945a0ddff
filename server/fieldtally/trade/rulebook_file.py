"""Rulebooks as files: those that come with Fieldtally, and those that a user adds or puts in their place."""

import os
import tomllib
from collections.abc import Callable, Iterator
from functools import cache
from pathlib import Path

from marshmallow import ValidationError

from fieldtally.trade import ladder
from fieldtally.trade.ladder import Fault
from fieldtally.trade.rulebook import Rulebook, RulebookError
from fieldtally.trade.rulebook_build import Builder
from fieldtally.trade.rulebook_extends import extended
from fieldtally.trade.rulebook_schema import MEMORY, RulebookTable

SHIPPED = Path(__file__).parent / "rulebooks"
MOST_BYTES = 2_000_000


def read_table(path: Path) -> dict:
    """The file as TOML, or RulebookError."""
    try:
        if path.stat().st_size > MOST_BYTES:
            raise RulebookError(
                path.name, "file", "it is larger than 2 MB.", "A rulebook is some 20 kB: check the file."
            )
        return tomllib.loads(path.read_text(encoding="utf-8"))
    except OSError as error:
        raise RulebookError(path.name, "file", f"it cannot be read: {error.strerror}.", "Check its name.") from error
    except UnicodeDecodeError as error:
        raise RulebookError(path.name, "file", "it is not UTF-8 text.", "Save it as UTF-8.") from error
    except tomllib.TOMLDecodeError as error:
        raise RulebookError(path.name, "file", f"it is not TOML: {error}.", "Mend the line named.") from error


def complaints(messages: object, table: object, path: str = "") -> Iterator[Fault]:
    """(key, reason, fix) of every fault that marshmallow found; levels are named by their ids."""
    if isinstance(messages, list):
        for each in messages:
            yield from complaints(each, table, path)
    elif isinstance(messages, str) or "reason" in messages:
        own = {"reason": messages, "fix": "See docs/rulebooks.md."} if isinstance(messages, str) else messages
        yield path or "file", own["reason"], own["fix"]
    else:
        for key, deeper in messages.items():
            yield from complaints(deeper, *below(table, path, key, deeper))


def below(table: object, path: str, key: object, deeper: object) -> tuple[object, str]:
    """The part of the file that `key` names, and its path. marshmallow's own steps are left out: "_schema", and
    the "value" it puts between a dictionary's key and what is wrong inside."""
    its_own = key == "value" and isinstance(deeper, dict) and "reason" not in deeper
    if key == "_schema" or its_own:
        return table, path
    inside = child(table, key)
    return inside, f"{path}.{step(key, inside)}".lstrip(".")


def step(key: object, inside: object) -> object:
    """A level's place in the list reads as its id."""
    return inside["id"] if isinstance(key, int) and isinstance(inside, dict) and "id" in inside else key


def child(table: object, key: object) -> object:
    if isinstance(table, dict):
        return table.get(key)
    return table[key] if isinstance(table, list) and isinstance(key, int) and key < len(table) else None


def unlisted_sources(table: object, known: set[str], path: str = "") -> Iterator[Fault]:
    """Every place that names a source which the file does not list."""
    items = table.items() if isinstance(table, dict) else enumerate(table) if isinstance(table, list) else ()
    for key, inside in items:
        here = f"{path}.{step(key, inside)}".lstrip(".")
        if key == "source" and inside not in known:
            yield here, f"{inside!r} is not one of the file's [sources].", "List it there with title and grade."
        yield from unlisted_sources(inside, known, here)


def check(table: dict, file: str) -> dict:
    """The table with defaults filled, or RulebookError for the first fault in it."""
    try:
        checked = RulebookTable().load(table)
    except ValidationError as error:
        raise RulebookError(file, *next(complaints(error.messages, table))) from None
    if MEMORY in checked["sources"]:
        raise RulebookError(file, f"sources.{MEMORY}", "this name is taken.", "Choose another key.")
    for fault in unlisted_sources(checked, {MEMORY, *checked["sources"]}):
        raise RulebookError(file, *fault)
    for fault in ladder.faults(checked["levels"]):
        raise RulebookError(file, *fault)
    return checked


def shipped_table(rulebook_id: str) -> dict | None:
    path = SHIPPED / f"{Path(rulebook_id).name}.toml"
    return read_table(path) if path.is_file() else None


def load(path: str | os.PathLike) -> Rulebook:
    """The rulebook of one TOML file, or RulebookError naming file, key, reason and fix."""
    path = Path(path)
    table = extended(read_table(path), path.name, shipped_table)
    return Builder(check(table, path.name)).rulebook()


@cache
def shipped_once() -> dict[str, Rulebook]:
    books = (load(path) for path in sorted(SHIPPED.glob("*.toml")))
    return {book.id: book for book in books}


def shipped_rulebooks() -> dict[str, Rulebook]:
    return dict(shipped_once())


def available_rulebooks(
    data_dir: str | os.PathLike, on_error: Callable[[RulebookError], None] | None = None
) -> dict[str, Rulebook]:
    """The shipped rulebooks, then those in `data_dir`/rulebooks, which take the place of one with their id.

    A file that cannot be used raises RulebookError, or is handed to `on_error` and passed over.
    """
    books = shipped_rulebooks()
    for path in sorted(Path(data_dir, "rulebooks").glob("*.toml")):
        try:
            book = load(path)
        except RulebookError as error:
            if on_error is None:
                raise
            on_error(error)
        else:
            books[book.id] = book
    return books


def add(path: str | os.PathLike, data_dir: str | os.PathLike) -> tuple[Rulebook, Path]:
    """Checks the file and copies it into `data_dir`/rulebooks under its id; an earlier one is replaced."""
    book = load(path)
    folder = Path(data_dir, "rulebooks")
    folder.mkdir(parents=True, exist_ok=True)
    target, half = folder / f"{book.id}.toml", folder / f".{book.id}.part"
    half.write_bytes(Path(path).read_bytes())
    half.replace(target)
    return book, target
