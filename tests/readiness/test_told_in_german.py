"""Whatever a finding says has German words under its code and the names of its values."""

import json
from pathlib import Path

import pytest

from fieldtally.readiness.bar import shipped_bars
from fieldtally.readiness.standing import compute_standings
from fieldtally.trade.rulebook import shipped
from readiness.made_up import TODAY
from readiness.test_any_logbook import random_logbook

GERMAN = json.loads((Path(__file__).parents[2] / "webclient/src/words/de/told.json").read_text(encoding="utf-8"))
QUOTES_A_RULEBOOK = ("gate_", "rule_")  # said in the language of the rulebook


def key_of(code: str, values: dict) -> str:
    """As the client makes it: words/told.ts."""
    return ".".join(["told", code, *sorted(values)])


@pytest.mark.parametrize("seed", range(300, 330))
def test_every_reason_need_and_explanation_has_its_german_words(seed):
    found = compute_standings(random_logbook(seed).records, shipped(), shipped_bars(), TODAY, 1)
    said = {
        key_of(each["code"], each["values"])
        for standing in found
        for finding in standing.to_json()["findings"]
        for each in (*finding["reasons"], *finding["needs"], *finding["worked_out"])
        if not each["code"].startswith(QUOTES_A_RULEBOOK)
    }
    assert len(said) > 20
    assert [key for key in sorted(said) if key not in GERMAN] == []
