"""`fieldtally standing` from an exported file."""

import json
from uuid import UUID

import pytest
from click.testing import CliRunner

from fieldtally.cli import main


def entry(number, kind, body, record_id=None):
    return {
        "id": str(UUID(int=number + 1000)), "record_id": record_id or str(UUID(int=number)), "supersedes": [],
        "kind": kind, "kind_version": 1, "body": body, "recorded_at": "2026-05-03T09:12:33.120Z",
        "utc_offset_min": 60, "local_date": "2026-05-03", "clock": None, "number": number, "author": "a",
    }  # fmt: skip


@pytest.fixture
def export(tmp_path):
    horse, fence, outing = (str(UUID(int=number)) for number in (1, 2, 3))
    entries = [
        entry(1, "horse", {"name": "Bracken", "rulebook_id": "us-2025"}),
        entry(2, "fence", {"label": "4 Ditch", "profile": "ditch", "spread_without_height_cm": 150}),
        entry(3, "outing", {"horse_id": horse, "date": "2026-05-03", "activity": "cross_country_school"}),
        entry(4, "attempt", {"outing_id": outing, "fence_id": fence, "outcome": "clear",
                             "presentation": {"company": "alone", "ground": "downhill"}}),
        entry(5, "attempt", {"outing_id": outing, "fence_id": fence, "outcome": "clear"}),
    ]  # fmt: skip
    entries.append(entry(6, "attempt", None, record_id=entries[4]["record_id"]) | {"supersedes": [entries[4]["id"]]})
    path = tmp_path / "logbook.json"
    path.write_text(json.dumps({"fieldtally_export": 1, "logbook": {}, "entries": entries}), encoding="utf-8")
    return path


def standing(*arguments):
    return CliRunner().invoke(main, ["standing", *map(str, arguments)])


def test_one_level_in_words(export):
    result = standing("--export", export, "--horse", "bracken", "--level", "novice", "--as-of", "2026-06-01")
    assert result.exit_code == 0, result.output
    assert "[building] Ditch, downhill\n    1 clear of 1 attempt, in 1 outing at 1 field" in result.output
    assert "the decision is yours, your coach's and the officials'" in result.output
    assert "safe" not in result.output


def test_every_level_as_json_and_before_anything_happened(export):
    result = standing("--export", export, "--horse", "Bracken", "--as-of", "2026-05-02", "--json")
    found = json.loads(result.output)
    assert [each["level_id"] for each in found][:2] == ["beginner_novice", "novice"]
    questions = [each for each in found[0]["findings"] if each["phase"] == "cross_country"]
    assert {each["state"] for each in questions} == {"untried"}


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (["--horse", "Nobody"], "no horse named “Nobody”"),
        (["--horse", "Bracken", "--level", "moon"], "no level 'moon'"),
        (["--horse", "Bracken", "--as-of", "yesterday"], "is not a date"),
    ],
)
def test_mistakes_are_named_on_stderr_with_status_2(export, arguments, said):
    result = standing("--export", export, *arguments)
    assert result.exit_code == 2 and said in result.stderr


def test_a_file_that_is_no_export_says_so(tmp_path):
    path = tmp_path / "x.json"
    path.write_text("[]", encoding="utf-8")
    result = standing("--export", path, "--horse", "B")
    assert result.exit_code == 2 and "is not an exported logbook" in result.stderr
    assert standing("--horse", "B").exit_code == 2
