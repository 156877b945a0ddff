"""A table for a spreadsheet: nothing is lost, nothing runs."""

import csv
import io
import json
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fieldtally.book.fold import Record
from fieldtally.reports.table import BYTE_ORDER_MARK, harmless, line, table, unharmed

NOTE = "aaaaaaaa-0000-4000-8000-000000000001"
FENCE = "aaaaaaaa-0000-4000-8000-000000000002"


def record(kind, body, number=1, record_id=NOTE):
    return Record(record_id, kind, body, "2026-05-03", number, "wren", ())


def read(text):
    return list(csv.reader(io.StringIO(text, newline="")))


def note_text(text):
    """What a spreadsheet finds in the cell of a note with this text."""
    lines = table("note", {NOTE: record("note", {"about_id": FENCE, "text": text})}, {"wren": "Wren"})
    header, row = read("".join(lines))
    return dict(zip(header, row, strict=True))["text"]


# The starting characters are those of OWASP's page on CSV injection.
@pytest.mark.parametrize("text", ["=1+1", "+44", "-2", "@SUM(A1)", "\t=1", "\r=1", "\n=1", "＝1+1", "＠x"])
def test_a_text_that_would_run_as_a_formula_gets_an_apostrophe(text):
    assert note_text(text) == "'" + text


@given(st.text(st.characters(codec="utf-8", exclude_characters="\0"), max_size=60))
def test_every_other_text_arrives_as_it_was(text):
    assert note_text(text) in (text, "'" + text)
    assert harmless(text) == text or text.lstrip("'")[0] in "=+-@\t\r\n＝＋－＠"
    assert unharmed(harmless(text)) == text


@pytest.mark.parametrize(("value", "cell"), [(-5, "-5"), (0.1, "0.1"), (412, "412"), (True, "yes"), (None, "")])
def test_numbers_stay_numbers(value, cell):
    assert line([value]).rstrip("\r\n").strip('"') == cell


def test_lines_end_as_rfc_4180_says_and_the_mark_stands_first():
    text = "".join(table("note", {}, {}, mark=True))
    assert text.startswith(BYTE_ORDER_MARK + "date,") and text.endswith("\r\n")


def test_nested_fields_and_lists_have_their_place():
    fence = record("fence", {"label": "Log, long", "asks": ["fixed", "ditch"], "elements": []}, 1, FENCE)
    attempt = record("attempt", {"fence_id": FENCE, "presentation": {"rein": "left"}, "outcome": "clear"}, 2)
    records = {FENCE: fence, NOTE: attempt}
    header, row = read("".join(table("attempt", records, {})))
    found = dict(zip(header, row, strict=True))
    assert (found["fence"], found["presentation.rein"], found["presentation.way"]) == ("Log, long", "left", "")
    header, row = read("".join(table("fence", records, {})))
    assert dict(zip(header, row, strict=True))["asks"] == "fixed ditch"


VECTORS = json.loads((Path(__file__).parents[2] / "fixtures" / "contract" / "csv.json").read_text(encoding="utf-8"))


@pytest.mark.parametrize("vector", VECTORS["cells"], ids=lambda vector: repr(vector["text"]))
def test_cells_as_the_phone_makes_them(vector):
    assert harmless(vector["text"]) == vector["cell"]
    assert unharmed(vector["cell"]) == vector["text"]


@pytest.mark.parametrize("vector", VECTORS["lines"], ids=lambda vector: repr(vector["line"]))
def test_lines_as_the_phone_makes_them(vector):
    assert line(vector["values"]) == vector["line"]
