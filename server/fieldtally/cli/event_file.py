"""Event results from a file, CSV or JSON, read with the place of every fault named."""

import csv
import io
import json
import uuid
from collections.abc import Mapping
from pathlib import Path

from marshmallow import ValidationError

from fieldtally.book.bodies.results import EventResult
from fieldtally.trade.bad_input import BadInput
from fieldtally.trade.total import PARTS, Result

MOST_BYTES = 4 * 1024 * 1024
HORSES = uuid.UUID("5f0c3c1e-1d0a-4c55-9a37-3f1f0a7f2f11")  # namespace: a horse's name becomes its id
NUMBERS = {name for name, field in EventResult().fields.items() if type(field).__name__ == "Number"}
FLAGS = {"dangerous_riding", "rider_fall", "horse_fall"}
YES, NO = ("true", "yes", "1"), ("false", "no", "0", "")


def text_of(path: str) -> str:
    file = Path(path)
    try:
        if file.stat().st_size > MOST_BYTES:
            raise BadInput(path, "The file is larger than 4 MiB.", "Give a file of event results only.")
        return file.read_text(encoding="utf-8-sig")
    except UnicodeDecodeError:
        raise BadInput(path, "The file is not UTF-8 text.", "Save it as UTF-8.") from None
    except OSError as wrong:
        raise BadInput(path, f"The file cannot be read: {wrong.strerror}.", "Check its path.") from None


def json_rows(path: str, text: str) -> list[dict]:
    try:
        rows = json.loads(text)
    except (json.JSONDecodeError, RecursionError):
        raise BadInput(path, "This is not JSON.", "Give a list of results, each an object.") from None
    if not isinstance(rows, list) or not all(isinstance(row, dict) for row in rows):
        raise BadInput(path, "This is not a list of results.", "Give a list, each result an object.")
    return rows


def csv_rows(path: str, text: str) -> list[dict]:
    try:
        rows = list(csv.DictReader(io.StringIO(text, newline=""), strict=True))
    except csv.Error as wrong:
        raise BadInput(path, f"This is not CSV: {wrong}.", "Save it as comma-separated text.") from None
    for index, row in enumerate(rows):
        if None in row or None in row.values():
            raise BadInput(f"{path} row {index + 2}", "It has more or fewer cells than the heading.",
                           "Check its commas.")  # fmt: skip
    return [{name.strip(): cell.strip() for name, cell in row.items()} for row in rows]


def read_rows(path: str) -> list[dict]:
    """The rows of a file: JSON where it ends in .json, else CSV with a heading line."""
    text = text_of(path)
    return json_rows(path, text) if path.lower().endswith(".json") else csv_rows(path, text)


def as_number(field: str, cell: object) -> object:
    """A CSV cell as a number; JSON numbers pass as they are, and empty is not stated."""
    if not isinstance(cell, str):
        return cell
    if cell == "":
        return None
    try:
        number = float(cell)
    except ValueError:
        raise BadInput(field, f"“{cell}” is not a number.", "Write a number, or leave it empty.") from None
    return int(number) if number == number // 1 else number


def as_flag(field: str, cell: object) -> object:
    if not isinstance(cell, str):
        return cell
    if cell.lower() not in (*YES, *NO):
        raise BadInput(field, f"“{cell}” is neither yes nor no.", "Write yes or no.")
    return cell.lower() in YES


def typed(row: Mapping, place: str) -> dict:
    """A row with numbers and flags read; empty cells of other columns are left out."""
    found = {}
    for name, cell in row.items():
        if name in NUMBERS:
            found[name] = as_number(f"{place}.{name}", cell)
        elif name in FLAGS:
            found[name] = as_flag(f"{place}.{name}", cell)
        elif cell != "":
            found[name] = cell
    return {name: value for name, value in found.items() if value is not None}


def horse_id(name: str) -> str:
    return str(uuid.uuid5(HORSES, name.strip().casefold()))


def first_fault(errors: object, path: str = "") -> tuple[str, str, str]:
    """(field, message, fix) of the first complaint in a schema's errors."""
    while isinstance(errors, dict) and "message" not in errors:
        key = next(iter(errors))
        path, errors = f"{path}.{key}".strip("."), errors[key]
        errors = errors[0] if isinstance(errors, list) else errors
    if isinstance(errors, dict):
        return path, errors["message"], errors["fix"]
    return path, str(errors), "Add it."


def body(row: Mapping, index: int) -> dict:
    """An event result's body, as a logbook would hold it; the column `horse` names the horse."""
    place = f"results[{index}]"
    given = typed(row, place)
    given["horse_id"] = horse_id(str(given.pop("horse", "")))
    try:
        return EventResult().load(given)
    except ValidationError as error:
        field, message, fix = first_fault(error.messages)
        raise BadInput(f"{place}.{field}", message, fix) from None


def result(row: Mapping, index: int) -> Result:
    """One pair's parts and status, for the places."""
    place = f"results[{index}]"
    unknown = [name for name in row if name not in ("pair", "status", *PARTS)]
    if unknown:
        raise BadInput(f"{place}.{unknown[0]}", "This column is not known here.",
                       f"Use pair, status, {', '.join(PARTS)}.")  # fmt: skip
    parts = {name: as_number(f"{place}.{name}", row.get(name)) for name in PARTS}
    stated = {name: penalties for name, penalties in parts.items() if penalties is not None}
    return Result(str(row.get("pair", index + 1)), stated, row.get("status") or "completed")
