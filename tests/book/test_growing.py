"""Folding entry by entry comes to what folding all of them at once does."""

import random

import pytest

from fieldtally.book.entry import Entry
from fieldtally.book.fold import fold
from fieldtally.book.growing import Growing
from support.bodies import LEAST

KINDS_HERE = ("field", "note", "attempt")


def entries(pick: random.Random) -> list[Entry]:
    """Made, edited, taken back and put back, on phones that did not always know of each other."""
    made: list[Entry] = []
    for number in range(1, pick.randint(2, 60)):
        record_id = f"record-{pick.randint(0, 12)}"
        mine = [each for each in made if each.record_id == record_id]
        kind = mine[0].kind if mine else pick.choice(KINDS_HERE)
        known = tuple(each.id for each in pick.sample(mine, min(len(mine), pick.randint(0, 2))))
        body = None if mine and pick.random() < 0.25 else LEAST[kind] | words_of(kind, pick)
        made.append(Entry(f"entry-{number}", record_id, known, kind, 1, body, 0, 0, "2026-05-03", number=number))
    return made


def words_of(kind: str, pick: random.Random) -> dict:
    return {"outcome": pick.choice(("clear", "refusal"))} if kind == "attempt" else {}


@pytest.mark.parametrize("seed", range(60))
def test_entry_by_entry_is_all_at_once(seed):
    pick = random.Random(seed)
    all_of_them, growing, place = entries(pick), Growing(), 0
    while place < len(all_of_them):
        some = all_of_them[place : place + pick.randint(1, 9)]
        known = dict(growing.records)
        before = growing.take(some)
        assert before == {each.record_id: known.get(each.record_id) for each in some}
        place += len(some)
        now = fold(all_of_them[:place])
        assert growing.records == now and list(growing.records) == list(now)
        assert growing.number == some[-1].number
        since = pick.randint(0, place)
        assert growing.since(since) == all_of_them[since:place]


def test_nothing_taken_is_nothing():
    assert (Growing().number, Growing().take([]), Growing().since(0)) == (0, {}, [])
