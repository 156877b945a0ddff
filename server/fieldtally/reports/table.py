"""Records of one kind as a table for a spreadsheet: one row a record, one column a field, ids made readable.

Comma separated by RFC 4180. A text that a spreadsheet would take for a formula gets an apostrophe in front
(OWASP, CSV Injection), and so does one that looks as if it had got one: whoever reads takes one away again and
has the very text. Numbers are written bare and stay numbers. The phone's twin is webclient/src/copies/csv.ts;
both run fixtures/contract/csv.json.
"""

import csv
import io
import json
from collections.abc import Iterable, Iterator, Mapping

from marshmallow import Schema, fields

from fieldtally.book.fold import Record
from fieldtally.book.kinds import KINDS

STARTS_A_FORMULA = ("=", "+", "-", "@", "\t", "\r", "\n", "＝", "＋", "－", "＠")
BYTE_ORDER_MARK = "\ufeff"
LEADING = ("date", "horse", "field", "fence")
NAMED_BY = ("label", "name")


def table(kind: str, records: Mapping[str, Record], authors: Mapping[str, str], mark: bool = False) -> Iterator[str]:
    """The table of `kind` in lines, oldest day first; `mark` puts a byte order mark in front.

    `records` are all living records of the logbook, `authors` maps account id to display name.
    """
    columns = [*LEADING, *paths(KINDS[kind].schema()), "author", "number", "record_id"]
    yield (BYTE_ORDER_MARK if mark else "") + line(columns)
    of_kind = [record for record in records.values() if record.kind == kind]
    for record in sorted(of_kind, key=lambda one: (day_of(one, records), one.number or 0)):
        yield line(row(record, columns, records, authors))


def paths(schema: Schema, before: str = "") -> Iterator[str]:
    """Every field of a body in the order of its schema; a nested one as `presentation.rein`."""
    for name, field in schema.fields.items():
        if isinstance(field, fields.Nested):
            yield from paths(field.schema, f"{before}{name}.")
        elif before or name != "date":
            yield before + name


def row(record: Record, columns: Iterable[str], records: Mapping[str, Record], authors: Mapping[str, str]) -> list:
    known = {
        "date": day_of(record, records),
        **{kind: name_of(related(record, kind, records)) for kind in ("horse", "field", "fence")},
        "author": authors.get(record.author, ""),
        "number": record.number,
        "record_id": record.record_id,
    }
    return [known[column] if column in known else value_at(record.body, column) for column in columns]


def related(record: Record, kind: str, records: Mapping[str, Record]) -> Record | None:
    """The horse, field or fence of a record: its own, or that of its outing or fence."""
    if record.kind == kind:
        return record
    own = records.get(record.body.get(f"{kind}_id"))
    for link in ("outing_id", "fence_id", "track_id"):
        through = records.get(record.body.get(link))
        own = own or (through and records.get(through.body.get(f"{kind}_id")))
    return own


def name_of(record: Record | None) -> str:
    return next((record.body[key] for key in NAMED_BY if record and record.body.get(key)), "")


def day_of(record: Record, records: Mapping[str, Record]) -> str:
    """The day a record is about: its own date, its outing's, or the day it was written down."""
    outing = records.get(record.body.get("outing_id"))
    return record.body.get("date") or (outing and outing.body.get("date")) or record.local_date


def value_at(body: dict, path: str) -> object:
    value: object = body
    for step in path.split("."):
        value = value.get(step) if isinstance(value, dict) else None
    return value


def line(values: Iterable[object]) -> str:
    out = io.StringIO()
    csv.writer(out).writerow([cell(value) for value in values])
    return out.getvalue()


def cell(value: object) -> str:
    match value:
        case None:
            return ""
        case bool():
            return "yes" if value else "no"
        case int() | float():
            return f"{value:.15g}"
        case list() if all(isinstance(each, str) for each in value):
            return harmless(" ".join(value))
        case list() | dict():
            return harmless(json.dumps(value, ensure_ascii=False))
    return harmless(str(value))


def harmless(text: str) -> str:
    return "'" + text if text.lstrip("'").startswith(STARTS_A_FORMULA) else text


def unharmed(cell: str) -> str:
    """The text that `harmless` made this cell of."""
    return cell[1:] if cell.startswith("'") and harmless(cell) != cell else cell
