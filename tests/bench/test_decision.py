"""The decision benchmark itself, in small: it runs, repeats itself, and our rule lets fewer through than habit."""

import json
import subprocess
import sys
from pathlib import Path

import pytest

from bench.decision import DEFAULTS, OURS, false_complete, report, run, simulate
from bench.naive import RULES, first_complete
from bench.our_rule import Judge
from bench.pairs import ABOVE, OUTINGS, WORLDS, Season, better_for, course_clear, season, strong

WRITTEN = {
    "false_complete", "false_complete_best_naive", "outings_to_complete", "outings_best_naive", "brier",
    "brier_perfect", "n_pairs",
}  # fmt: skip


@pytest.fixture(scope="module")
def runs():
    return simulate(180, DEFAULTS)


def test_it_writes_what_it_promises(runs):
    found = report(runs)
    assert WRITTEN <= set(found) and json.loads(json.dumps(found)) == found
    assert set(found["worlds"]) == set(WORLDS) and found["n_pairs"] == 180


def test_quick_writes_the_same_numbers_in_another_process(tmp_path):
    target = tmp_path / "found.json"
    benchmark = Path(__file__).with_name("decision.py")
    command = [sys.executable, str(benchmark), "--quick", "--json", str(target)]
    subprocess.run(command, check=True, cwd=tmp_path, capture_output=True, timeout=600)
    written = json.loads(target.read_text(encoding="utf-8"))
    assert WRITTEN <= set(written) and written["n_pairs"] == 600
    assert written == report(simulate(600, DEFAULTS)) | {"numbers": DEFAULTS}


@pytest.mark.parametrize("clear_share", [0.5, 0.8, 0.9])
def test_pairs_can_be_drawn_to_be_clear_in_a_stated_share_of_courses(clear_share):
    better = better_for(clear_share)
    assert strong(better, 1001).mean() ** 18 == pytest.approx(clear_share, abs=1e-6)
    above = [each.before for seed in range(300) if (each := season("independent", seed, better)).is_above]
    assert len(above) > 100 and sum(map(course_clear, above)) / len(above) == pytest.approx(clear_share, abs=0.02)
    assert (strong(better).min() >= ABOVE) == (clear_share >= 0.5)


def test_fewer_pairs_below_the_bar_get_through_than_by_any_rule_of_thumb(runs):
    assert all(false_complete(runs, OURS) < false_complete(runs, rule) for rule in RULES)


def test_the_same_seed_is_the_same_pair():
    assert run("learning", DEFAULTS, 7) == run("learning", DEFAULTS, 7)


def test_a_faultless_season_is_complete_and_an_empty_one_never():
    one, rule = season("independent", 1), RULES["three clear in a row"]
    faultless = Season([[[1] for _ in outing] for outing in one.outcomes], one.truth, one.before)
    empty = Season([[[] for _ in outing] for outing in one.outcomes], one.truth, one.before)
    shown = [all(Judge(faultless).shown(outing)) for outing in range(OUTINGS)]
    assert shown == [False, False] + [True] * (OUTINGS - 2)  # three clear, in two outings and more
    assert not any(any(Judge(empty).shown(outing)) for outing in (0, OUTINGS - 1))
    assert first_complete(faultless, rule) == 3 and first_complete(empty, rule) is None
