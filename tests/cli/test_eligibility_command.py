"""`fieldtally eligibility`, as typed, from a file of results."""

import json

import pytest
from click.testing import CliRunner

from fieldtally.cli import main

HEADING = ("date,event,level_id,status,horse,dressage_penalties,cross_country_jump_penalties,"
           "cross_country_seconds_over,show_jumping_jump_penalties")  # fmt: skip
GOOD = "{date},Heathfold,training,completed,{horse},33,0,12,4"
ENTRY = ("--rulebook", "us-2023", "--level", "preliminary", "--on", "2024-06-01",
         "--horse-birth-year", "2015", "--rider-birth-year", "2000")  # fmt: skip


@pytest.fixture
def results(tmp_path):
    def write(*rows, name="results.csv"):
        file = tmp_path / name
        file.write_text("\n".join([HEADING, *rows]) + "\n", encoding="utf-8")
        return str(file)

    return write


def run(*arguments):
    return CliRunner().invoke(main, ["eligibility", *arguments])


def good(*dates, horse="Brindle"):
    return [GOOD.format(date=date, horse=horse) for date in dates]


def test_what_is_missing_is_said(results):
    text = run(results(*good("2024-05-01", "2024-04-01")), *ENTRY).stdout
    assert "Entering for 2024-06-01: Not met." in text
    assert "4 more qualifying results at Training or higher by the rider." in text


def test_enough_and_until_when(results):
    dates = ("2023-05-01", "2023-06-01", "2023-07-01", "2024-03-01", "2024-04-01", "2024-05-01")
    found = json.loads(run(results(*good(*dates)), *ENTRY, "--json").stdout)
    assert found["state"] == "met"
    assert {rule["who"]: rule["have"] for rule in found["rules"]}["rider"] == 6
    assert found["recency"]["until"] == "2024-07-24"  # 12 weeks after 2024-05-01
    assert found["until"] == "2024-07-24"


def test_the_horse_must_be_named_where_there_are_several(results):
    file = results(*good("2024-05-01"), *good("2024-04-01", horse="Teasel"))
    assert run(file, *ENTRY).stderr.startswith("fieldtally: horse: ")
    found = json.loads(run(file, *ENTRY, "--horse", "teasel", "--json").stdout)
    have = {rule["who"]: rule["have"] for rule in found["rules"]}
    assert (have["rider"], have["horse"]) == (2, 1)


def test_a_figure_left_empty_is_not_taken_for_zero(results):
    file = results("2024-05-01,Heathfold,training,completed,Brindle,,0,12,4")
    assert "dressage penalties not entered" in run(file, *ENTRY).stdout


def test_json_results(tmp_path):
    file = tmp_path / "results.json"
    file.write_text(json.dumps([{"date": "2024-05-01", "event": "Heathfold", "level_id": "training",
                                 "status": "completed", "horse": "Brindle"}]), encoding="utf-8")  # fmt: skip
    assert run(str(file), *ENTRY).exit_code == 0


@pytest.mark.parametrize("row, words", [
    ("2024-02-30,Heathfold,training,completed,Brindle,33,0,12,4", "results[0].date"),
    ("2024-05-01,Heathfold,training,finished,Brindle,33,0,12,4", "results[0].status"),
    ("2024-05-01,Heathfold,training,completed,Brindle,-3,0,12,4", "results[0].dressage_penalties"),
    ("2024-05-01,Heathfold,training,completed,Brindle,nan,0,12,4", "results[0].dressage_penalties"),
    ("2024-05-01,Heathfold,training,completed,Brindle,low,0,12,4", "results[0].dressage_penalties"),
    ("2024-05-01,Heathfold,,completed,Brindle,33,0,12,4", "results[0].level_id"),
])  # fmt: skip
def test_a_row_that_cannot_be(results, row, words):
    result = run(results(row), *ENTRY)
    assert (result.exit_code, result.stdout) == (2, "")
    assert words in result.stderr and len(result.stderr.splitlines()) == 2


def test_an_unknown_column(tmp_path):
    file = tmp_path / "r.json"
    file.write_text('[{"date": "2024-05-01", "event": "H", "level_id": "training", "status": "completed", "marks": 3}]',
                    encoding="utf-8")  # fmt: skip
    assert "results[0].marks: This field is not known here." in run(str(file), *ENTRY).stderr


@pytest.mark.parametrize("arguments, words", [
    ((), "name the rulebook"), (("--rulebook", "us-2023"), "name a level"),
    ((*ENTRY[:4], "--on", "yesterday"), "on: "),
])  # fmt: skip
def test_a_mistake_is_answered_on_stderr_with_status_2(results, arguments, words):
    result = run(results(*good("2024-05-01")), *arguments)
    assert result.exit_code == 2 and result.stderr.startswith(f"fieldtally: {words}")
