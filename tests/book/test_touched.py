"""Which horses a change touches: none too few, or a standing on the phone would be wrong."""

from fieldtally.book.entry import Entry, check
from fieldtally.book.touched import touched_horses
from support.bodies import LEAST
from support.riders import edit, wire


def entry(kind: str, body: dict | None, record_id: str, **changes) -> Entry:
    made = check(wire(kind, body, record_id=record_id, **changes))
    assert isinstance(made, Entry), made
    return made


A, B, OUT_A, OUT_B, OUT_MOVED, X = (f"00000000-0000-4000-8000-00000000000{n}" for n in range(6))


def outing(record_id: str, horse_id: str) -> Entry:
    return entry("outing", LEAST["outing"] | {"horse_id": horse_id}, record_id)


def history_of(*entries: Entry) -> dict[str, list[Entry]]:
    history: dict[str, list[Entry]] = {}
    for each in entries:
        history.setdefault(each.record_id, []).append(each)
    return history


OUTINGS = (outing(OUT_A, A), outing(OUT_B, B))


def touched(*changed: Entry) -> set[str] | None:
    return touched_horses(changed, history_of(*OUTINGS, *changed))


def of_outing(kind: str, outing_id: str) -> Entry:
    return entry(kind, LEAST[kind] | {"outing_id": outing_id}, X)


def test_what_names_a_horse():
    assert touched(entry("horse", LEAST["horse"], A)) == {A}
    for kind in ("flatwork_test", "jumping_round", "word"):
        assert touched(entry(kind, LEAST[kind] | {"horse_id": B}, X)) == {B}


def test_what_happened_in_an_outing():
    for kind in ("attempt", "timed_canter", "interval_set"):
        assert touched(of_outing(kind, OUT_A)) == {A}


def test_moving_an_attempt_touches_both_horses():
    assert touched(of_outing("attempt", OUT_A), of_outing("attempt", OUT_B)) == {A, B}


def test_taking_back_touches_the_horse_it_was_about():
    made = of_outing("attempt", OUT_A)
    back = check(edit(made.content(), None))
    assert touched_horses([back], history_of(*OUTINGS, made, back)) == {A}


def test_what_counts_for_all():
    """An outing and a result count for the rider, on whichever horse: hours, horses ridden, entry rules."""
    for kind in ("fence", "track", "rulebook_value", "bar_change", "outing", "event_result"):
        assert touched(entry(kind, LEAST[kind], X)) is None


def test_what_is_no_evidence_touches_none():
    for kind in ("field", "note", "remark"):
        assert touched(entry(kind, LEAST[kind], X)) == set()


def test_an_outing_that_has_not_come_yet():
    """Its attempts touch nothing until it does; then it touches every horse itself."""
    assert touched(of_outing("attempt", OUT_MOVED)) == set()
    assert touched(of_outing("attempt", OUT_MOVED), outing(OUT_MOVED, B)) is None
