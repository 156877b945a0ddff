"""A push works out what it touches, and the result is the one that working out everything gives."""

import random
from dataclasses import replace
from types import SimpleNamespace

import pytest

from fieldtally.book.fold import Record
from fieldtally.readiness import renew as renewing
from fieldtally.readiness.bar import shipped_bars
from fieldtally.readiness.context import Book
from fieldtally.readiness.plan import with_plans
from fieldtally.readiness.reads import READS
from fieldtally.readiness.renew import Change, can_renew, renew
from fieldtally.readiness.standing import compute_standings
from fieldtally.readiness.weighing import WAYS_OF_WEIGHING, weigh
from readiness.made_up import TODAY, Logbook
from readiness.random_pushes import (
    changes_since,
    fence_fields,
    living,
    outing_fields,
    put,
    random_outing,
    random_push,
)
from readiness.test_any_logbook import random_day, random_fence, random_logbook


def everything(logbook, number=7):
    return compute_standings(
        logbook.records, {logbook.book.id: logbook.book}, shipped_bars(), TODAY, number, logbook.horse
    )


def renewed(standings, logbook, changes, number=8):
    """What a push gives, held against working out everything."""
    assert can_renew(standings, changes)
    found = renew(standings, logbook.records, changes, shipped_bars(), number)
    assert with_plans(found) == with_plans(everything(logbook, number))
    return found


@pytest.mark.parametrize("seed", range(300, 330))
def test_push_after_push_gives_what_working_out_everything_gives(seed):
    pick, logbook, said = random.Random(seed), random_logbook(seed), {}
    standings = everything(logbook)
    for number in range(8, 14):
        standings = renewed(standings, logbook, random_push(logbook, pick, said), number)


@pytest.mark.parametrize("seed", (341, 343))
@pytest.mark.parametrize("name", [*outing_fields(Logbook(), random.Random(0)), "taken back"])
def test_an_outing_edited_in_any_field(seed, name):
    pick, logbook = random.Random(seed), random_logbook(seed)
    outings = [*living(logbook.records, "outing"), random_outing(logbook, pick)]
    random_day(logbook, pick, outings[-1], living(logbook.records, "fence"), logbook.horse, TODAY.isoformat())
    standings = everything(logbook)
    for key in outings[-3:]:
        before, record = dict(logbook.records), logbook.records[key]
        put(logbook, record, None if name == "taken back" else record.body | {name: outing_fields(logbook, pick)[name]})
        standings = renewed(standings, logbook, changes_since(before, logbook))
        before = dict(logbook.records)
        put(logbook, record, record.body)
        standings = renewed(standings, logbook, changes_since(before, logbook))


@pytest.mark.parametrize("seed", range(350, 356))
def test_a_fence_measured_anew_taken_back_and_put_back(seed):
    pick, logbook = random.Random(seed), random_logbook(seed)
    standings = everything(logbook)
    for key in pick.sample(living(logbook.records, "fence"), 3):
        record = logbook.records[key]
        for body in (record.body | fence_fields(pick), None, record.body):
            before = dict(logbook.records)
            put(logbook, record, body)
            standings = renewed(standings, logbook, changes_since(before, logbook))


@pytest.mark.parametrize("seed", range(370, 376))
def test_attempts_that_came_before_their_outing_or_their_fence(seed):
    """A scribe's phone may send before the rider's."""
    pick, logbook = random.Random(seed), random_logbook(seed)
    outing, fence = random_outing(logbook, pick, horse_id=logbook.horse), random_fence(logbook, pick, [None])
    random_day(logbook, pick, outing, [fence, *living(logbook.records, "fence")], logbook.horse, TODAY.isoformat())
    later = {key: logbook.records.pop(key) for key in (outing, fence)}
    standings = everything(logbook)
    for key in pick.sample(sorted(later), 2):
        before = dict(logbook.records)
        logbook.records[key] = later[key]
        standings = renewed(standings, logbook, changes_since(before, logbook))


@pytest.mark.parametrize("days_ago", [0, 3, 400])
def test_a_day_in_the_field_reads_on_and_not_all_again(days_ago, monkeypatch):
    """A new outing with its attempts, also one told later from memory, in between the others."""
    logbook = random_logbook(302)
    fence, standings = logbook.fence(height_cm=95), everything(logbook)
    monkeypatch.setattr(renewing, "index_attempts", None)  # reading all attempts would fail
    before = dict(logbook.records)
    logbook.attempt(logbook.outing(days_ago, rider_confidence=4), fence, times=10)
    found = renew(standings, logbook.records, changes_since(before, logbook), shipped_bars(), 8)
    assert with_plans(found) == with_plans(everything(logbook, 8))


@pytest.mark.parametrize("said", [{"rider_confidence": 2}, {"minutes_in_saddle": 45}, {"notes": "Wet"}, None])
def test_what_nobody_refers_to_counts_nothing_again(said):
    """What a rider says of an outing afterwards leaves its attempts as they were; so does an outing without any."""
    logbook = random_logbook(302)
    outing = logbook.outing(2)
    logbook.attempt(outing, logbook.fence(height_cm=95), times=4)
    standings, before = everything(logbook), dict(logbook.records)
    if said is None:
        logbook.outing(1)
    else:
        put(logbook, logbook.records[outing], logbook.records[outing].body | said)
    found = renewed(standings, logbook, changes_since(before, logbook))
    pairs = [pair for was, now in zip(standings, found, strict=True)
             for pair in zip(was.findings, now.findings, strict=True)]  # fmt: skip
    assert {now.requirement.weigh for was, now in pairs if now is not was} <= {
        "breadth", "confidence", "hours", "rides", "horses"}  # fmt: skip


def test_the_horse_itself_and_the_rules_have_everything_worked_out_anew():
    logbook = random_logbook(1)
    horses = living(logbook.records, "horse")
    other = next(key for key in horses if key != logbook.horse)
    bar = Record("b", "bar_change", {}, "2026-06-01", 1, "coach", ("b",))
    standings = everything(logbook)
    assert not can_renew(standings, [Change(logbook.records[logbook.horse], logbook.records[logbook.horse])])
    assert not can_renew(standings, [Change(None, bar)])
    assert can_renew(standings, [Change(logbook.records[other], logbook.records[other])])
    assert not can_renew([], [])


def test_an_attempt_counts_again_only_what_it_asks(monkeypatch):
    logbook = random_logbook(301)
    fence = logbook.fence("Ditch", profile="ditch", asks=["ditch"])
    outing = logbook.outing(3)
    standings = everything(logbook)
    new = logbook.attempt(outing, fence)[0]
    counted = []
    real = renewing.weighing_of

    def spy(book, rulebook, level, requirements, still):
        counted.extend(each.id for each in requirements if each.condition and each.id not in still)
        return real(book, rulebook, level, requirements, still)

    monkeypatch.setattr(renewing, "weighing_of", spy)
    found = renew(standings, logbook.records, [Change(None, logbook.records[new])], shipped_bars(), 8)
    assert counted and all(each.startswith("ditch") for each in counted)
    kept = [new is old for before, now in zip(standings, found, strict=True)
            for old, new in zip(before.findings, now.findings, strict=True) if not old.requirement.condition
            and old.requirement.weigh != "attitude"]  # fmt: skip
    assert kept and all(kept)


class Watched(dict):
    """A book's records by kind, noting which kinds are asked for."""

    def __init__(self, given, noted):
        super().__init__(given)
        self.noted = noted

    def get(self, kind, default=None):
        self.noted.add(kind)
        return super().get(kind, default)

    def __getitem__(self, kind):
        self.noted.add(kind)
        return super().__getitem__(kind)


@pytest.mark.parametrize("way", WAYS_OF_WEIGHING)
@pytest.mark.parametrize("seed", range(300, 304))
def test_a_way_of_weighing_reads_what_it_is_listed_with(way, seed):
    for standing in everything(random_logbook(seed)):
        weighing, noted = standing.weighing, set()
        book = weighing.book
        watched = Book(book.horse_id, book.horse, book.as_of, spying_on(book.attempts, noted), book.outings,
                       book.fences, Watched(book.by_kind, noted), Watched(book.of_rider, noted))  # fmt: skip
        for finding in standing.findings:
            if finding.requirement.weigh == way:
                weigh(finding.requirement, replace(weighing, book=watched)).to_json()
        assert noted <= READS[way]


def spying_on(attempts, noted):
    class Spy(SimpleNamespace):
        def __getattribute__(self, name):
            noted.add("attempt")
            return getattr(attempts, name)

    return Spy()
