"""`fieldtally course`, as typed."""

import json

import pytest
from click.testing import CliRunner

from fieldtally.cli import main


def run(*arguments):
    return CliRunner().invoke(main, ["course", *arguments])


def test_a_card_without_a_rulebook():
    result = run("--length", "2.3km", "--speed", "600")
    assert result.exit_code == 0
    assert "Optimum time  3:50" in result.stdout
    assert "Time limit    not stated" in result.stdout


def test_a_card_by_a_rulebook_with_fences():
    result = run("--length", "1800m", "--speed", "360", "--rulebook", "us-2014", "--level", "novice",
                 "--fence", "1=120m", "--fence", "9AB=1080m", "--json")  # fmt: skip
    card = json.loads(result.stdout)
    assert (card["times"]["optimum_s"], card["times"]["fastest_s"], card["times"]["limit_s"]) == (300, 240, 600)
    assert [mark["clock_s"] for mark in card["fences"]] == [20, 180]
    assert card["title"].startswith("Novice, ")


def test_a_level_with_a_range_of_speeds_says_which_was_used():
    result = run("--length", "1800", "--rulebook", "us-2014", "--level", "novice")
    assert "The level allows 350 to 400 m/min; the fastest is used." in result.stdout


def test_rounding_is_the_callers():
    up, none = (json.loads(run("--length", "2000", "--speed", "520", "--rounding", how, "--json").stdout)
                for how in ("up", "none"))  # fmt: skip
    assert (up["times"]["optimum_s"], none["times"]["optimum_s"]) == (231, pytest.approx(230.769, abs=1e-3))


@pytest.mark.parametrize("wrong, words", [
    (("--length", "0", "--speed", "400"), "length: "),
    (("--length", "far", "--speed", "400"), "length: "),
    (("--length", "1800", "--speed", "-400"), "speed: "),
    (("--length", "1800"), "the speed is not known"),
    (("--length", "1800", "--level", "novice"), "a level needs its rulebook"),
    (("--length", "1800", "--rulebook", "us-1900"), "there is no rulebook"),
    (("--length", "1800", "--rulebook", "nowhere.toml"), "there is no file"),
    (("--length", "1800", "--rulebook", "us-2014"), "name a level"),
    (("--length", "1800", "--rulebook", "us-2014", "--level", "sky"), "us-2014 has no level"),
    (("--length", "1800", "--speed", "400", "--fence", "12"), "fence: "),
    (("--length", "1800", "--speed", "400", "--fence", "12=2000m"), "fences[0].distance_m: "),
    (("--length", "1800", "--speed", "400", "--rounding", "down"), "rounding: "),
])  # fmt: skip
def test_a_mistake_is_answered_on_stderr_with_status_2(wrong, words):
    result = run(*wrong)
    assert (result.exit_code, result.stdout) == (2, "")
    assert result.stderr.startswith(f"fieldtally: {words}") and len(result.stderr.splitlines()) == 2
