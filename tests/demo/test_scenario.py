"""The invented seasons are whole: every entry is one the server accepts, and loading them is repeatable."""

from datetime import date, timedelta

import pytest

from fieldtally.book.kinds import KINDS
from fieldtally.demo.notation import read_attempt
from fieldtally.demo.scenario import read_scenario, scenario_files

TODAY = date(2026, 6, 1)
FILES = scenario_files()


def test_there_is_a_season_to_show():
    assert {path.stem for path in FILES} >= {"wren", "maren"}


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)
def test_every_body_is_valid_and_written_by_a_role_that_may(path):
    for written in read_scenario(path, TODAY).entries:
        kind = KINDS[written.entry["kind"]]
        kind.schema().load(written.entry["body"])
        assert written.role in kind.writers


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)
def test_every_reference_leads_somewhere(path):
    entries = [written.entry for written in read_scenario(path, TODAY).entries]
    known = {entry["record_id"] for entry in entries}
    referred = {
        value
        for entry in entries
        for key, value in entry["body"].items()
        if key.endswith("_id") and key not in ("rulebook_id", "level_id", "present_level_id", "sequence_id")
    }
    assert referred <= known


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)
def test_loading_twice_gives_the_same_entries(path):
    assert read_scenario(path, TODAY) == read_scenario(path, TODAY)


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)
def test_ids_are_unique_and_days_move_with_the_day_of_loading(path):
    now, later = read_scenario(path, TODAY), read_scenario(path, TODAY + timedelta(days=10))
    ids = [written.entry["id"] for written in now.entries]
    assert len(set(ids)) == len(ids)
    moved = {
        date.fromisoformat(b.entry["local_date"]) - date.fromisoformat(a.entry["local_date"])
        for a, b in zip(now.entries, later.entries, strict=True)
    }
    assert moved == {timedelta(days=10)}


def test_short_hand_reads_every_aspect():
    attempt = read_attempt("double.B x2 refusal backed_off left downhill in water fence_before trot 85cm")
    assert (attempt.fence, attempt.element, attempt.times, attempt.height_cm) == ("double", "B", 2, 85)
    assert (attempt.outcome, attempt.attitude) == ("refusal", "backed_off")
    assert attempt.presentation == {
        "rein": "left", "ground": "downhill", "way": "in",
        "landing": "water", "company": "fence_before", "pace": "trot",
    }  # fmt: skip


def test_short_hand_names_a_word_it_does_not_know():
    with pytest.raises(ValueError, match="sideways"):
        read_attempt("log clear sideways")
