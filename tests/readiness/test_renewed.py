"""A push works out what it touches, and the result is the one that working out everything gives."""

import random
from dataclasses import replace
from types import SimpleNamespace

import pytest

from fieldtally.book import words
from fieldtally.readiness import renew as renewing
from fieldtally.readiness.bar import shipped_bars
from fieldtally.readiness.context import Book
from fieldtally.readiness.plan import with_plans
from fieldtally.readiness.reads import FOR_ALL, READS
from fieldtally.readiness.renew import Change, can_renew, renew
from fieldtally.readiness.standing import compute_standings
from fieldtally.readiness.weighing import WAYS_OF_WEIGHING, weigh
from readiness.made_up import TODAY
from readiness.test_any_logbook import random_day, random_logbook


def everything(logbook, number=7):
    return compute_standings(
        logbook.records, {logbook.book.id: logbook.book}, shipped_bars(), TODAY, number, logbook.horse
    )


def living(records, kind):
    return [key for key, each in records.items() if each.kind == kind and each.body is not None]


def random_push(logbook, pick) -> list[Change]:
    """A few records added, edited and taken back, of any kind that needs nothing else worked out anew."""
    before = dict(logbook.records)
    added(logbook, pick)
    for key in pick.sample(sorted(before), min(len(before), pick.randint(0, 3))):
        record = before[key]
        if record.kind not in FOR_ALL and record.body is not None:
            body = None if pick.random() < 0.5 else edited(record, pick)
            logbook.records[key] = replace(record, body=body, number=len(logbook.records) + 1)
    return [Change(before.get(key), each) for key, each in logbook.records.items() if before.get(key) is not each]


def added(logbook, pick):
    outings, fences = living(logbook.records, "outing"), living(logbook.records, "fence")
    if outings and fences and pick.random() < 0.8:
        for _ in range(pick.randint(1, 3)):
            outcome = pick.choice(words.OUTCOMES)
            logbook.attempt(pick.choice(outings), pick.choice(fences), outcome, element=pick.choice([None, "A", "B"]))
    if outings and fences and pick.random() < 0.3:
        random_day(logbook, pick, pick.choice(outings), fences, logbook.horse, TODAY.isoformat())


def edited(record, pick):
    return record.body | ({"outcome": pick.choice(words.OUTCOMES)} if record.kind == "attempt" else {})


@pytest.mark.parametrize("seed", range(300, 324))
def test_push_after_push_gives_what_working_out_everything_gives(seed):
    pick, logbook = random.Random(seed), random_logbook(seed)
    standings = everything(logbook)
    for number in range(8, 14):
        changes = random_push(logbook, pick)
        assert can_renew(standings, changes)
        standings = renew(standings, logbook.records, changes, shipped_bars(), number)
        assert with_plans(standings) == with_plans(everything(logbook, number))


def test_what_decides_how_others_are_read_is_not_renewed():
    logbook = random_logbook(1)
    fence = logbook.records[living(logbook.records, "fence")[0]]
    assert not can_renew(everything(logbook), [Change(fence, None)])
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
        assert noted <= READS[way] | FOR_ALL


def spying_on(attempts, noted):
    class Spy(SimpleNamespace):
        def __getattribute__(self, name):
            noted.add("attempt")
            return getattr(attempts, name)

    return Spy()
