"""`fieldtally export`: a logbook whole as JSON, or one kind as a table."""

import csv
import io
import json
import os

import pytest

from fieldtally.book.kinds import KINDS
from support.command import assert_complains


@pytest.fixture
def demo(command):
    assert command.run("demo", "--no-serve").exit_code == 0
    return command


def rows(text):
    return list(csv.DictReader(io.StringIO(text, newline="")))


def test_json_holds_every_entry(demo):
    data = json.loads(demo.run("export", "--logbook", "wren").stdout)
    numbers = [entry["number"] for entry in data["entries"]]
    assert numbers == list(range(1, data["logbook"]["last_number"] + 1))
    assert {"horse", "attempt", "timed_canter", "remark"} <= {entry["kind"] for entry in data["entries"]}
    assert data["logbook"]["title"] == "Wren Ashdown"


def test_csv_holds_every_attempt_with_names_and_day(demo):
    entries = json.loads(demo.run("export", "--logbook", "wren").stdout)["entries"]
    table = rows(demo.run("export", "--logbook", "wren", "--format", "csv").stdout)
    attempts = [entry for entry in entries if entry["kind"] == "attempt"]
    assert {row["record_id"] for row in table} == {entry["record_id"] for entry in attempts}
    assert {row["horse"] for row in table} == {"Bracken Lane", "Tolliver"}
    assert all(row["fence"] and row["field"] and row["outcome"] and row["author"] for row in table)
    assert [row["date"] for row in table] == sorted(row["date"] for row in table)
    outings = {entry["record_id"]: entry["body"]["date"] for entry in entries if entry["kind"] == "outing"}
    assert all(row["date"] == outings[row["outing_id"]] for row in table)


def test_every_kind_can_be_a_table(demo):
    for kind in KINDS:
        done = demo.run("export", "--logbook", "wren", "--format", "csv", "--kind", kind)
        assert done.exit_code == 0 and done.stdout.startswith("date,horse,field,fence,")


def test_a_file_is_made_once_and_for_its_owner_only(demo, tmp_path):
    file = tmp_path / "attempts.csv"
    words = ("export", "--logbook", "wren", "--format", "csv", "--bom", "--output", str(file))
    assert demo.run(*words).stdout == ""
    content = file.read_bytes()
    assert content.startswith(b"\xef\xbb\xbfdate,") and b"\r\n" in content
    assert os.stat(file).st_mode & 0o777 == 0o600
    assert_complains(demo.run(*words), "exists already")
    assert file.read_bytes() == content


def test_whom_it_cannot_find_it_says(demo):
    assert_complains(demo.run("export", "--logbook", "nobody"), "nobody signs in")
    assert_complains(demo.run("export", "--logbook", "idris"), "no logbook")
    assert_complains(demo.run("export", "--logbook", "wren", "--format", "xml"), "Invalid value")
