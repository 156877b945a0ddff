"""`fieldtally rulebooks` and `fieldtally fit`: text for people, JSON for programs, complaints with status 2."""

import json
import subprocess
import sys

import pytest
from click.testing import CliRunner

from fieldtally.cli import main
from fieldtally.trade.rulebook import shipped

YARD = """
id = "yard"
title = "Our yard"
body = "the yard"
edition = "2026"
status = "current"
[[levels]]
id = "low"
name = "Low"
[levels.cross_country]
fixed_height_cm = { value = 60, source = "from_memory" }
"""
TABLE = ("fit", "--rulebook", "us-2025", "--profile", "table", "--height", "2ft11", "--top", "3ft", "--base", "1.4 m")


@pytest.fixture
def run(tmp_path):
    def run(*words, data_dir=tmp_path):
        return CliRunner().invoke(main, words, env={"FIELDTALLY_DATA_DIR": str(data_dir)})

    return run


def refused(result, *said):
    assert result.exit_code == 2
    assert result.stdout == ""
    assert all(each in result.stderr for each in said), result.stderr


def test_the_list(run):
    result = run("rulebooks")
    assert result.exit_code == 0
    assert all(book_id in result.stdout for book_id in shipped())


def test_the_list_as_json(run):
    books = json.loads(run("rulebooks", "--json").stdout)
    assert {book["id"] for book in books} == set(shipped())
    assert all(set(book) == {"id", "title", "body", "edition", "status", "levels"} for book in books)


def test_one_rulebook_says_where_each_value_stands_and_to_check_it(run):
    said = run("rulebooks", "us-2025").stdout
    assert "check each value in the rulebook in force" in said
    for value in shipped()["us-2025"].level("novice").phases["cross_country"].values():
        assert f"[{value.grade}: {value.source}]" in said


def test_one_level_as_json(run):
    data = json.loads(run("rulebooks", "us-2025", "--level", "novice", "--json").stdout)
    assert [level["id"] for level in data["levels"]] == ["novice"]
    assert data["levels"][0]["phases"]["cross_country"]["fixed_height_cm"]["value"] == 90


def test_what_there_is_not(run):
    refused(run("rulebooks", "us-1066"), "no rulebook 'us-1066'", "us-2025")
    refused(run("rulebooks", "us-2025", "--level", "grand"), "no level 'grand'", "novice")
    refused(run("fit", "--rulebook", "us-1066", "--profile", "log"), "no rulebook", "us-2025")


def test_a_rulebook_of_ones_own(run, tmp_path):
    (tmp_path / "yard.toml").write_text(YARD, encoding="utf-8")
    added = run("rulebooks", "add", str(tmp_path / "yard.toml"), "--json")
    assert json.loads(added.stdout)["file"] == str(tmp_path / "rulebooks" / "yard.toml")
    assert "yard" in run("rulebooks").stdout
    found = json.loads(run("fit", "--rulebook", "yard", "--profile", "log", "--height", "60", "--json").stdout)
    assert found["lowest_admitting"] == "low"


def test_a_bad_rulebook_is_refused_by_file_key_and_reason(run, tmp_path):
    (tmp_path / "yard.toml").write_text(YARD.replace("= 60", "= 0.6"), encoding="utf-8")
    key = "levels.low.cross_country.fixed_height_cm.value"
    refused(run("rulebooks", "add", str(tmp_path / "yard.toml")), "yard.toml", key, "0.6 cm cannot be", "write 60")
    assert not (tmp_path / "rulebooks").exists()
    refused(run("rulebooks", "add", str(tmp_path / "nothing.toml")), "nothing.toml", "cannot be read")


def test_a_data_folder_that_cannot_be_written(run, tmp_path):
    (tmp_path / "yard.toml").write_text(YARD, encoding="utf-8")
    refused(run("rulebooks", "add", str(tmp_path / "yard.toml"), data_dir=tmp_path / "yard.toml"),
            "cannot be used", "FIELDTALLY_DATA_DIR")  # fmt: skip


def test_a_kept_file_that_went_bad_does_not_stand_in_the_way(run, tmp_path):
    (tmp_path / "rulebooks").mkdir()
    (tmp_path / "rulebooks" / "old.toml").write_text("id = 1\n", encoding="utf-8")
    result = run("rulebooks")
    assert result.exit_code == 0 and "us-2025" in result.stdout
    assert "old.toml is passed over" in result.stderr


def test_a_setting_that_cannot_be(run):
    result = CliRunner().invoke(main, ["rulebooks"], env={"FIELDTALLY_PORT": "many"})
    refused(result, "FIELDTALLY_PORT")


def test_fit_in_words(run):
    said = run(*TABLE).stdout
    assert said.startswith("Novice is the lowest level that admits it.\nBase spread 140 cm (4'7\") is 20 cm over")
    assert "Check it in the rulebook in force." in said


def test_fit_as_json(run):
    found = json.loads(run(*TABLE, "--json").stdout)
    assert found["fence"] == {"profile": "table", "asks": [], "elements": [], "height_cm": 88.9,
                              "spread_top_cm": 91.44, "spread_base_cm": 140}  # fmt: skip
    assert (found["rulebook_id"], found["lowest_admitting"]) == ("us-2025", "novice")
    assert found["binding"]["dimension"] == "spread_base_cm" and found["binding"]["margin_cm"] == -20


def test_the_readmes_fit_says_what_is_missing(run):
    """README: `fieldtally fit --rulebook us-2025 --profile table --height 2ft11`."""
    said = run(*TABLE[:7]).stdout
    assert said.startswith("Not decided. Nothing measured is too big for Novice, but: top spread not measured")


def test_fit_cautions(run):
    said = run("fit", "--rulebook", "us-2025", "--profile", "table", "--height", "100", "--base", "2m").stdout
    assert "Straight fences with a spread of 2 m or more" in said


@pytest.mark.parametrize("option, text, said", [
    ("--height", "0.9", "height: 0.9 cm is outside 1 to 250 cm"),
    ("--height", "tall", "height: “tall” is not a length"),
    ("--without-height", "10 m", "without-height: 1000 cm is outside 1 to 900 cm"),
    ("--base", "1,200", "base: “1,200” can be read in two ways"),
])  # fmt: skip
def test_lengths_that_cannot_be(run, option, text, said):
    refused(run("fit", "--rulebook", "us-2025", "--profile", "log", option, text), said)


def test_an_unknown_profile(run):
    refused(run("fit", "--rulebook", "us-2025", "--profile", "castle"), "castle")


def test_neither_command_loads_a_web_server():
    code = (
        "import sys\nfrom click.testing import CliRunner\nfrom fieldtally.cli import main\n"
        "for words in (['rulebooks'], ['fit', '--rulebook', 'us-2025', '--profile', 'log', '--height', '90']):\n"
        "    assert CliRunner().invoke(main, words).exit_code == 0\n"
        "assert not {'flask', 'waitress', 'numpy'} & set(sys.modules), sorted(sys.modules)\n"
    )
    subprocess.run([sys.executable, "-c", code], check=True, env={"PYTHONPATH": ":".join(sys.path)})
