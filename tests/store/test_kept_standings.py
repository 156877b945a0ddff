"""Kept standings are handed out only while they hold, whatever order computations end in."""

from dataclasses import replace

import pytest
from sqlalchemy import select

from fieldtally.store import standings
from fieldtally.store.db import db
from fieldtally.store.models import Standing
from fieldtally.store.standings import Basis

BASIS = Basis("2026-05-03", 10, "bars of May")
A, B, C = ("horse-a", "horse-b", "horse-c")


def said(word: str) -> list[dict]:
    return [{"level_id": "novice", "says": word, "logbook_number": 0}]


@pytest.fixture
def book(stable):
    return stable.logbook


def read(book: str, basis: Basis = BASIS) -> dict[str, str] | None:
    db.session.expire_all()
    found = standings.kept(book, basis)
    return found and {horse: rows[0]["says"] for horse, rows in found.items() if rows}


def test_what_was_kept_is_read(book):
    standings.keep(book, BASIS, {A: said("a"), B: said("b")})
    assert read(book) == {A: "a", B: "b"}
    assert standings.kept(book, BASIS)[A][0]["logbook_number"] == 10


@pytest.mark.parametrize("change", [{"as_of": "2026-05-04"}, {"bar_digest": "bars of June"}, {"number": 11}])
def test_it_ends_with_the_day_the_bars_or_new_evidence(book, change):
    standings.keep(book, BASIS, {A: said("a")})
    assert read(book, replace(BASIS, **change)) is None
    assert read(book, replace(BASIS, number=9)) == {A: "a"}


def test_nothing_kept_is_not_the_same_as_no_horses(book):
    assert standings.kept(book, BASIS) is None
    assert standings.holding_up_to(book, BASIS) is None


def test_a_touched_horse_is_renewed_and_the_others_go_on(book):
    standings.keep(book, BASIS, {A: said("a"), B: said("b")})
    later = replace(BASIS, number=12)
    standings.keep(book, later, {A: said("a2")}, since=standings.holding_up_to(book, BASIS))
    assert read(book, later) == {A: "a2", B: "b"}
    assert standings.kept(book, later)[B][0]["logbook_number"] == 12


def test_a_horse_taken_back_is_forgotten(book):
    standings.keep(book, BASIS, {A: said("a"), B: said("b")})
    later = replace(BASIS, number=12)
    standings.keep(book, later, {B: None}, since=10)
    assert read(book, later) == {A: "a"}


def test_computing_everything_forgets_what_is_gone(book):
    standings.keep(book, BASIS, {A: said("a"), B: said("b")})
    later = replace(BASIS, number=12)
    standings.keep(book, later, {A: said("a2")})
    assert read(book, later) == {A: "a2"}


def test_a_slower_computation_of_older_entries_loses(book):
    """Two pushes computed side by side; the earlier one ends last. Nothing of the later is undone."""
    standings.keep(book, BASIS, {A: said("a")})
    later = replace(BASIS, number=13)
    standings.keep(book, later, {A: said("a13"), B: said("b13")}, since=10)
    standings.keep(book, replace(BASIS, number=12), {A: said("a12")}, since=10)
    standings.keep(book, replace(BASIS, number=12), {A: said("a12")})
    assert read(book, later) == {A: "a13", B: "b13"}


def test_after_a_failed_computation_nothing_old_passes_for_new(book):
    """Entry 11 brought horse B, and computing failed; entry 12 touches A. B's absence must not go unseen."""
    standings.keep(book, BASIS, {A: said("a")})
    later = replace(BASIS, number=12)
    assert read(book, replace(BASIS, number=11)) is None
    assert standings.holding_up_to(book, later) == 10  # so whoever computes next looks at 11 too
    standings.keep(book, later, {A: said("a12"), B: said("b12")}, since=10)
    assert read(book, later) == {A: "a12", B: "b12"}


def test_logbooks_do_not_mix(book, stable):
    standings.keep(book, BASIS, {A: said("a")})
    standings.keep(stable.other_logbook, BASIS, {C: said("c")})
    assert read(book) == {A: "a"}
    assert db.session.scalars(select(Standing.horse_id).where(Standing.logbook_id == book)).all() == [A]
