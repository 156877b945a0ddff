"""docs/rulebooks.md against the code: its examples load, every quantity and every rulebook is named."""

import re
from pathlib import Path

import pytest

from fieldtally.trade import quantities
from fieldtally.trade.rulebook import load_file, shipped
from fieldtally.trade.rulebook_schema import ABOUT
from fieldtally.trade.stated import CORRECTED, GRADES

PAGE = (Path(__file__).parents[2] / "docs" / "rulebooks.md").read_text(encoding="utf-8")
EXAMPLES = re.findall(r"```toml\n(.*?)```", PAGE, re.DOTALL)
KNOWN = (*quantities.BY_PHASE.values(), quantities.ENTRY, quantities.QUALIFYING_RESULT, quantities.VALIDITY,
         quantities.SAFETY)  # fmt: skip


@pytest.mark.parametrize("place", range(len(EXAMPLES)))
def test_an_example_is_a_rulebook(place, tmp_path):
    (tmp_path / "example.toml").write_text(EXAMPLES[place], encoding="utf-8")
    assert load_file(tmp_path / "example.toml").levels


def test_the_second_example_does_what_it_says(tmp_path):
    (tmp_path / "example.toml").write_text(EXAMPLES[1], encoding="utf-8")
    book = load_file(tmp_path / "example.toml")
    assert book.level("novice").value("cross_country", "drop_cm") == 125
    assert book.level("novice").stated("cross_country", "too_fast_speed_mpm") is None
    assert book.level("novice_plus").order == book.level("novice").order + 1


def test_there_are_two_examples():
    assert len(EXAMPLES) == 2


def test_every_quantity_is_named():
    listed = set(re.findall(r"`(\w+)`", PAGE.partition("### Quantities")[2].partition("## Not found")[0]))
    assert listed == {name for known in KNOWN for name in known}


def test_every_rulebook_is_named():
    table = PAGE.partition("## What is shipped")[2].partition("##")[0]
    assert set(re.findall(r"^\| `([\w-]+)`", table, re.MULTILINE)) == set(shipped())


def test_every_grade_and_subject_is_named():
    assert all(f"`{grade}`" in PAGE for grade in (*GRADES, CORRECTED))
    assert f"# about: {', '.join(ABOUT[:-1])} or {ABOUT[-1]}" in PAGE
