"""Eight writers and a reader at full speed (and a hundred at once): nothing is missed, nothing fails.

The fault to catch: numbers handed out before they are committed, so that a reader passes 101 while 100 is
still on its way and never comes back for it; and "database is locked" on SQLite.
"""

from concurrent.futures import ThreadPoolExecutor, as_completed
from threading import Event, Thread

from sqlalchemy import func, select

from fieldtally.store import feed
from fieldtally.store.db import db
from fieldtally.store.models import Entry
from support.riders import wire

WRITERS, PUSHES = 8, 25


def push_all(app, stable, batches: list[list[dict]]) -> list[tuple[str, int]]:
    """Push the batches one after the other, each twice now and then, as after a lost reply."""
    said = []
    with app.app_context():
        for place, batch in enumerate(batches):
            said += [(a.result, a.number) for a in stable.push(*batch).answers]
            if place % 5 == 0:
                assert {a.result for a in stable.push(*batch).answers} == {"already"}
        db.session.remove()
    return said


class Reader(Thread):
    """Follows the feed by its cursor while others write, as a coach's phone would."""

    def __init__(self, app, logbook: str) -> None:
        super().__init__()
        self.app, self.logbook = app, logbook
        self.seen: list[int] = []
        self.writers_done = Event()
        self.error: Exception | None = None

    def run(self) -> None:
        try:
            with self.app.app_context():
                while not self.writers_done.is_set() or self.behind():
                    self.pull()
        except Exception as error:
            self.error = error

    def pull(self) -> None:
        page = feed.page(self.logbook, self.seen[-1] if self.seen else 0, 7)
        self.seen += [entry["number"] for entry in page.entries]
        self.last = page.last_number
        db.session.remove()

    def behind(self) -> bool:
        self.pull()
        return len(self.seen) < self.last


def test_eight_writers_and_a_reader(store, stable):
    reader = Reader(store, stable.logbook)
    reader.start()
    work = [[[wire() for _ in range(6)] for _ in range(PUSHES)] for _ in range(WRITERS)]
    with ThreadPoolExecutor(WRITERS) as pool:
        said = [f.result() for f in as_completed([pool.submit(push_all, store, stable, b) for b in work])]
    reader.writers_done.set()
    reader.join(60)

    total = WRITERS * PUSHES * 6
    results = [result for each in said for result, _ in each]
    numbers = sorted(number for each in said for _, number in each)
    assert reader.error is None
    assert results == ["accepted"] * total
    assert numbers == list(range(1, total + 1))
    assert reader.seen == numbers


def test_a_hundred_pushes_at_once(store, stable):
    batches = [[wire() for _ in range(3)] for _ in range(100)]
    with ThreadPoolExecutor(14) as pool:  # the pool of connections holds 15
        for done in [pool.submit(push_all, store, stable, [batch]) for batch in batches]:
            assert {result for result, _ in done.result()} == {"accepted"}
    assert feed.page(stable.logbook, 299).last_number == 300


def test_two_tabs_push_the_same_at_once(store, stable):
    """Whoever comes second is told `already`; there is one row each."""
    batch = [wire() for _ in range(50)]
    for _ in range(3):
        with ThreadPoolExecutor(4) as pool:
            answers = [pool.submit(push_quietly, store, stable, batch) for _ in range(4)]
            assert len({tuple(a.result()) for a in answers}) == 1
    assert db.session.scalar(select(func.count()).select_from(Entry)) == 50


def push_quietly(app, stable, batch: list[dict]) -> list[int]:
    with app.app_context():
        numbers = [answer.number for answer in stable.push(*batch).answers]
        db.session.remove()
    return numbers
