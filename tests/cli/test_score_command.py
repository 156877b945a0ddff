"""`fieldtally score xc|sj|dressage|total`, as typed."""

import json

import pytest
from click.testing import CliRunner

from fieldtally.cli import main

NOVICE = ("--rulebook", "us-2014", "--level", "novice")


def run(*arguments):
    return CliRunner().invoke(main, ["score", *arguments])


def data(*arguments):
    result = run(*arguments, "--json")
    assert result.exit_code == 0, result.stderr
    return json.loads(result.stdout)


def test_cross_country_faults_and_time():
    found = data("xc", *NOVICE, "--fault", "9A:refusal", "--fault", "9B:run-out", "--fault", "horse-fall",
                 "--length", "1800m", "--speed", "360", "--time", "5:11")  # fmt: skip
    assert [(line["obstacle"], line["element"], line["penalties"]) for line in found["jumping"]["lines"]] == [
        ("9", "A", 20), ("9", "B", 40), ("", None, None)]  # fmt: skip
    assert found["jumping"]["eliminated"]
    assert (found["time"]["recorded_s"], found["time"]["penalties"]) == (311, 4.4)
    assert all(rule["source"] for rule in found["rules"])


def test_cross_country_in_words():
    lines = run("xc", *NOVICE, "--fault", "4:refusal", "--fault", "dangerous-riding").stdout.splitlines()
    assert lines[0].startswith("Novice, ")
    assert lines[1] == "   4    20  first stop at fence 4"
    assert lines[-1] == "The rulebook in force and the officials decide."


def test_a_clear_round_in_words():
    assert "Jumping: clear" in run("xc", *NOVICE).stdout


def test_show_jumping():
    found = data("sj", *NOVICE, "--fault", "3:knockdown", "--length", "350m", "--speed", "320", "--time", "70.5s")
    assert found["time"]["reason"].startswith("5 s over the time allowed")  # 350 m at 320: 65.6, brought to 66
    assert len(found["jumping"]["lines"]) == 1


@pytest.mark.parametrize("marks", [("130/200",), ("6.5x20",), ("60/100", "70/100")])
def test_dressage(marks):
    found = data("dressage", *NOVICE, *(part for each in marks for part in ("--marks", each)))
    assert (found["percent"], found["penalties"]) == (65, 35)


def test_total_of_one_pair():
    assert run("total", "--dressage", "32.1", "--cross-country-time", "4.4").stdout == "36.5\n"
    assert data("total", "--dressage", "32.1") == {"total": 32.1}


RESULTS = "pair,dressage,show_jumping_jumping,status\na,40,,\nb,30,0,completed\nc,26,4,\nd,25,,eliminated\n"


def test_places_from_a_file(tmp_path):
    file = tmp_path / "results.csv"
    file.write_text(RESULTS, encoding="utf-8")
    assert [(row["pair"], row["place"], row["total"]) for row in data("total", str(file))] == [
        ("b", 1, 30), ("c", 1, 30), ("a", 3, 40), ("d", None, None)]  # fmt: skip
    text = run("total", str(file)).stdout.splitlines()
    assert text[0].startswith("  1       30  b  (place shared")
    assert text[3] == "  -           d  (eliminated)"


def test_places_from_json(tmp_path):
    file = tmp_path / "results.json"
    file.write_text('[{"pair": "a", "dressage": 30}, {"dressage": 29.5}]', encoding="utf-8")
    assert [(row["pair"], row["place"]) for row in data("total", str(file))] == [("2", 1), ("a", 2)]


@pytest.mark.parametrize("wrong, words", [
    (("xc",), "name the rulebook"),
    (("xc", *NOVICE, "--fault", "4:knockdown"), "faults[0].kind: "),
    (("xc", *NOVICE, "--fault", "refusal"), "faults[0].obstacle: "),
    (("xc", *NOVICE, "--time", "5:00"), "length: "),
    (("xc", *NOVICE, "--time", "5:00", "--length", "1800"), "speed: The level allows 350 to 400"),
    (("xc", *NOVICE, "--time", "0", "--length", "1800", "--speed", "360"), "time: "),
    (("dressage", *NOVICE, "--marks", "good"), "marks: "),
    (("dressage", *NOVICE, "--marks", "1/2/3"), "marks: "),
    (("dressage", *NOVICE, "--marks", "11"), "marks[0].mark: "),
    (("dressage", *NOVICE, "--marks", "nan/200"), "marks: "),
    (("dressage", *NOVICE, "--marks", "201/200"), "marks: "),
    (("total", "--dressage", "-1"), "dressage: "),
    (("total", "--dressage", "nan"), "dressage: "),
    (("total", "nowhere.csv"), "nowhere.csv: "),
])  # fmt: skip
def test_a_mistake_is_answered_on_stderr_with_status_2(wrong, words):
    result = run(*wrong)
    assert (result.exit_code, result.stdout) == (2, "")
    assert result.stderr.startswith(f"fieldtally: {words}") and len(result.stderr.splitlines()) == 2


@pytest.mark.parametrize("name, content, words", [
    ("a.csv", "pair,faults\na,3\n", "results[0].faults"),
    ("a.csv", "pair,dressage\na,many\n", "results[0].dressage"),
    ("a.csv", "pair,dressage\na,3,4\n", "row 2"),
    ("a.csv", 'pair,dressage\na,"3\n', "not CSV"),
    ("a.csv", "pair,status\na,lost\n", "status"),
    ("a.json", "{}", "not a list"),
    ("a.json", "[1]", "not a list"),
    ("a.json", "[", "not JSON"),
])  # fmt: skip
def test_a_file_that_cannot_be_read(tmp_path, name, content, words):
    file = tmp_path / name
    file.write_text(content, encoding="utf-8")
    result = run("total", str(file))
    assert result.exit_code == 2 and words in result.stderr


def test_a_file_that_is_no_text(tmp_path):
    file = tmp_path / "a.csv"
    file.write_bytes(b"\xff\xfe\x00")
    assert "not UTF-8" in run("total", str(file)).stderr
