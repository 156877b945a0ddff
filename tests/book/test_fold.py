"""The fold, against vectors worked out by hand (the client runs the same file) and against its own laws."""

import json
import random
from dataclasses import asdict, replace
from itertools import count
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from fieldtally.book.entry import Entry
from fieldtally.book.fold import fold, fold_record, living

CASES = json.loads(Path(__file__, "../../../fixtures/contract/fold.json").resolve().read_text())["cases"]


def entry(wire: dict) -> Entry:
    named = {name: wire[name] for name in ("id", "record_id", "kind", "kind_version", "body", "local_date")}
    return Entry(
        **named,
        supersedes=tuple(wire["supersedes"]),
        recorded_at_ms=0,
        utc_offset_min=0,
        number=wire["number"],
        author=wire["author"],
    )


def shown(records: dict) -> dict:
    plain = json.loads(json.dumps({record_id: asdict(record) for record_id, record in records.items()}))
    for record_id, record in plain.items():
        assert record.pop("record_id") == record_id
        del record["first"]  # the server's alone: see below
    return plain


@pytest.mark.parametrize("case", CASES, ids=[case["name"] for case in CASES])
def test_vectors(case):
    entries = [entry(wire) for wire in case["entries"]]
    for seed in range(8):
        assert shown(fold(entries)) == case["records"]
        random.Random(seed).shuffle(entries)
    assert shown(fold(entries[::-1])) == case["records"]


def test_there_are_enough_vectors():
    assert len(CASES) >= 20
    assert len({case["name"] for case in CASES}) == len(CASES)


def a_field(name: str, notes: str | None) -> dict:
    return {"name": name, "notes": notes}


bodies = st.none() | st.builds(a_field, st.sampled_from("ABC"), st.none() | st.sampled_from("xyz"))


@st.composite
def histories(draw) -> list[Entry]:
    """One record edited by devices that know only some of its past, the newest not numbered yet."""
    made, numbers = [], count(1)
    for place in range(draw(st.integers(1, 9))):
        known = draw(st.lists(st.sampled_from(made), unique_by=lambda old: old.id, max_size=3)) if made else []
        numbered = draw(st.integers(0, 3)) > 0
        made.append(
            Entry(
                f"{draw(st.integers(0, 99)):02d}-{place}", "r", tuple(old.id for old in known), "field", 1,
                draw(bodies), 0, 0, f"2026-05-{place + 1:02d}", number=next(numbers) if numbered else None,
                author=draw(st.sampled_from(["ann", "bea"])),
            )
        )  # fmt: skip
    return made


@given(histories(), st.randoms(use_true_random=False))
@settings(max_examples=400)
def test_arrival_order_does_not_matter(history, dice):
    expected = fold(history)
    dice.shuffle(history)
    assert fold(history) == expected


@given(histories())
def test_settling_with_any_side_ends_the_fork(history):
    record = fold(history)["r"]
    if record.fork is None:
        return
    for side in record.fork.sides:
        settled = Entry("zz", "r", record.heads, "field", 1, side.body, 0, 0, "2026-06-01", number=99)
        after = fold([*history, settled])["r"]
        assert (after.fork, after.body, after.heads) == (None, side.body, ("zz",))


@given(histories())
def test_a_fork_has_sides_that_differ_and_counts_the_highest_number(history):
    record = fold(history)["r"]
    if record.fork is None:
        return
    bodies = [side.body for side in record.fork.sides]
    assert len(bodies) >= 2 and all(bodies.count(body) == 1 for body in bodies)
    assert set(side.entry_id for side in record.fork.sides) <= set(record.heads)
    numbers = [record.heads.index(side.entry_id) for side in record.fork.sides]
    assert numbers == sorted(numbers)
    if len(record.heads) == 2:
        assert record.body == bodies[-1]


@given(histories())
def test_what_one_device_changed_alone_is_never_lost(history):
    """The value of each field comes from a head or from an ancestor, never out of thin air."""
    record = fold(history)["r"]
    if record.body is None:
        return
    for name, value in record.body.items():
        assert value in [each.body[name] for each in history if each.body is not None]


def test_a_long_record_with_two_heads_costs_little():
    """A thousand edits of one record: quadratic work would show here as minutes."""
    chain = [Entry("0000", "r", (), "field", 1, a_field("A", None), 0, 0, "2026-05-01", number=1)]
    for number in range(2, 20_000):
        body = a_field("A", str(number))
        chain.append(
            Entry(f"{number:04d}", "r", (chain[-1].id,), "field", 1, body, 0, 0, "2026-05-01", number=number)
        )
    fork = Entry("other", "r", (chain[-2].id,), "field", 1, a_field("B", "19998"), 0, 0, "2026", number=20_000)
    assert fold([*chain, fork])["r"].body == a_field("B", "19999")


def test_living_leaves_out_what_was_taken_back():
    back = Entry("b", "r", ("a",), "field", 1, None, 0, 0, "2026-05-01", number=2)
    kept = Entry("c", "s", (), "field", 1, a_field("A", None), 0, 0, "2026-05-01", number=3)
    assert list(living(fold([back, kept]))) == ["s"]


def test_when_a_record_was_first_written_down_outlasts_its_edits():
    first = replace(entry(CASES[0]["entries"][0]), id="b", recorded_at_ms=1_000, number=7)
    edited = replace(first, id="a", supersedes=("b",), recorded_at_ms=9_000, number=8)
    taken_back = replace(edited, id="c", supersedes=("a",), recorded_at_ms=9_500, number=9, body=None)
    assert [fold_record(each).first for each in ([first], [edited, first], [taken_back, edited, first])] == [
        (1_000, "b")
    ] * 3
