"""How long the standings of one pair take, all levels, and how that grows with the number of attempts.

    python tests/bench/standing.py [--quick] [--json OUT]

Target: 20,000 attempts, every level of the rulebook, at most 50 ms on an idle machine. After a push of one record
only what it touches is worked out: that is timed beside it, for an attempt, a timed canter, a new outing with ten
attempts, a new fence, and a fence measured anew.
"""

import argparse
import json
import random
import sys
import time
from dataclasses import replace
from datetime import date, timedelta
from pathlib import Path
from uuid import UUID

sys.path[:0] = [str(Path(__file__).parents[1]), str(Path(__file__).parents[2] / "server")]

from fieldtally.book.entry import Entry  # noqa: E402
from fieldtally.book.fold import fold, living  # noqa: E402
from fieldtally.book.growing import Growing  # noqa: E402
from fieldtally.book.kinds import KINDS  # noqa: E402
from fieldtally.book.words import ATTITUDES, COMPANIES, GROUNDS, PROFILES, WAYS  # noqa: E402
from fieldtally.readiness.bar import shipped_bars  # noqa: E402
from fieldtally.readiness.plan import with_plans  # noqa: E402
from fieldtally.readiness.renew import Change, renew  # noqa: E402
from fieldtally.readiness.standing import compute_standings  # noqa: E402
from fieldtally.trade.rulebook import shipped  # noqa: E402

RULEBOOK = "us-2025"
FIELDS, FENCES_PER_FIELD, ATTEMPTS_PER_OUTING = 4, 30, 40
TARGET_MS = 50
PUSHES = 9


class Season:
    """A made-up logbook of one horse with so many attempts, as entries read from their stored text."""

    def __init__(self, attempts: int, seed: int = 1) -> None:
        self.random = random.Random(seed)
        self.entries: list[Entry] = []
        self.day = date(2024, 1, 1)
        self.horse = self.add("horse", {"name": "Made Up", "rulebook_id": RULEBOOK, "present_level_id": "novice"})
        self.fields = [self.field() for _ in range(FIELDS)]
        while attempts > 0:
            attempts -= self.outing(min(attempts, ATTEMPTS_PER_OUTING))
        self.records = living(fold(self.entries))

    def add(self, kind: str, body: dict) -> str:
        key = self.new_id()
        stored = json.loads(json.dumps(KINDS[kind].schema().load(body)))
        number, day = len(self.entries) + 1, self.day.isoformat()
        self.entries.append(
            Entry(key, key, (), kind, KINDS[kind].version, stored, 0, 0, day, number=number, author="rider")
        )
        return key

    def field(self) -> tuple[str, list[tuple[str, list[str]]]]:
        field_id = self.add("field", {"name": "Field"})
        return field_id, [self.fence(field_id, number) for number in range(FENCES_PER_FIELD)]

    def fence(self, field_id: str, number: int) -> tuple[str, list[str]]:
        size = self.random.choice((75, 88, 98, 104, 108))
        sizes = {"height_cm": size, "brush_height_cm": size + 18, "spread_top_cm": size, "drop_cm": size,
                 "spread_without_height_cm": 2 * size}  # fmt: skip
        letters = "AB" if number % 6 == 0 else ""
        elements = [sizes | {"letter": letter, "profile": self.random.choice(PROFILES)} for letter in letters]
        body = {"field_id": field_id, "label": str(number), "elements": elements}
        return self.add("fence", body | sizes | {"profile": self.random.choice(PROFILES)}), list(letters)

    def pushes(self) -> dict:
        """What a push may bring, by a name for it."""
        return {
            "attempt": self.one_more_attempt, "canter": self.one_more_canter, "day": lambda: self.outing(10),
            "fence": lambda: self.fence(self.fields[0][0], 0), "measuring": self.measured_anew,
        }  # fmt: skip

    def one_more_attempt(self) -> None:
        fence_id, letters = self.random.choice(self.fields[0][1])
        self.attempt(self.last("outing"), fence_id, (letters or [None])[0], self.new_id())

    def one_more_canter(self) -> None:
        self.add("timed_canter", {"outing_id": self.last("outing"), "distance_m": 400, "measured_by": "wheel",
                                  "elapsed_ms": 68_000, "target_speed_mpm": 350})  # fmt: skip

    def measured_anew(self) -> None:
        """A fence that was met in every season is a little higher than it was thought to be."""
        old = next(each for each in reversed(self.entries) if each.record_id == self.fields[0][1][1][0])
        body, number = old.body | {"height_cm": old.body["height_cm"] + 1}, len(self.entries) + 1
        self.entries.append(replace(old, id=self.new_id(), supersedes=(old.id,), body=body, number=number))

    def last(self, kind: str) -> str:
        return next(each.record_id for each in reversed(self.entries) if each.kind == kind)

    def new_id(self) -> str:
        return str(UUID(int=self.random.getrandbits(128)))

    def outing(self, attempts: int) -> int:
        self.day += timedelta(days=2)
        field_id, fences = self.random.choice(self.fields)
        outing_id = self.add("outing", {
            "horse_id": self.horse, "field_id": field_id, "date": self.day.isoformat(), "rider_confidence": 4,
            "activity": "cross_country_school", "minutes_in_saddle": 60})  # fmt: skip
        made = 0
        while made < attempts:
            fence_id, letters = self.random.choice(fences)
            sequence = self.new_id()
            for letter in letters or [None]:
                self.attempt(outing_id, fence_id, letter, sequence)
                made += 1
        return made

    def attempt(self, outing_id: str, fence_id: str, letter: str | None, sequence: str) -> None:
        pick = self.random.choice
        presentation = {"ground": pick(GROUNDS), "way": pick(WAYS), "company": pick(COMPANIES), "pace": "canter"}
        self.add("attempt", {
            "outing_id": outing_id, "fence_id": fence_id, "element": letter, "sequence_id": sequence,
            "outcome": "refusal" if self.random.random() < 0.03 else "clear",
            "presentation": presentation, "attitude": pick(ATTITUDES)})  # fmt: skip


def once(season: Season) -> tuple[float, float]:
    """(computing, writing out as JSON) in ms of processor time, so that other programs count less."""
    start = time.process_time()
    found = compute_standings(season.records, shipped(), shipped_bars(), season.day, 1, season.horse)
    computed = time.process_time()
    json.dumps([each.to_json() for each in found])
    return 1000 * (computed - start), 1000 * (time.process_time() - computed)


def after_push(season: Season, kind: str) -> tuple[float, float]:
    """ms of processor time for the standings after one push, as the server has it: the logbook open, the standings
    before at hand. (working out, writing out as JSON). The day of the standings is after the outings that come."""
    growing, today, length = Growing(), season.day + timedelta(days=2 * PUSHES), len(season.entries)
    growing.take(season.entries)
    standings = compute_standings(growing.records, shipped(), shipped_bars(), today, 1, season.horse)
    written(standings)
    times = []
    for _ in range(PUSHES):
        known = len(season.entries)
        season.pushes()[kind]()
        start = time.process_time()
        before = growing.take(season.entries[known:])
        changes = [Change(each, growing.records[record_id]) for record_id, each in before.items()]
        standings = renew(standings, growing.records, changes, shipped_bars(), growing.number)
        worked_out = time.process_time()
        written(standings)
        times.append((1000 * (worked_out - start), 1000 * (time.process_time() - worked_out)))
    del season.entries[length:]
    return median([each for each, _ in times]), median([each for _, each in times])


def written(standings: list) -> str:
    return json.dumps(with_plans(standings))


def median(values: list[float]) -> float:
    return round(sorted(values)[len(values) // 2], 2)


def yardstick() -> float:
    """ms of processor time for a million additions in Python: to compare runs on different machines. It does not
    show when other programs keep the memory busy, which slows the index most."""
    start = time.process_time()
    total = 0
    for number in range(1_000_000):
        total += number
    return round(1000 * (time.process_time() - start), 1)


def measure(attempts: int, times: int) -> dict:
    """The fastest of several: what the work itself takes, other programs aside."""
    season = Season(attempts)
    once(season)
    runs = [once(season) for _ in range(times)]
    return {
        "attempts": attempts,
        "compute_ms": round(min(each for each, _ in runs), 2),
        "compute_median_ms": round(sorted(each for each, _ in runs)[times // 2], 2),
        "json_ms": round(min(each for _, each in runs), 2),
    } | after_pushes(season)


def after_pushes(season: Season) -> dict:
    """Beside them what folding all entries takes, which a logbook kept open spares."""
    start = time.process_time()
    fold(season.entries)
    folded = time.process_time()
    found = {"fold_all_ms": round(1000 * (folded - start), 2)}
    for kind in season.pushes():
        found[f"after_{kind}_ms"], found[f"after_{kind}_json_ms"] = after_push(season, kind)
    return found


def growth(steps: list[dict]) -> list[dict]:
    """How many times longer for ten times the attempts."""
    return [
        {"from": low["attempts"], "to": high["attempts"], "times": round(high["compute_ms"] / low["compute_ms"], 2)}
        for low, high in zip(steps, steps[1:], strict=False)
    ]


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--quick", action="store_true")
    parser.add_argument("--json", type=Path)
    given = parser.parse_args()
    sizes = (200, 2_000, 20_000) if given.quick else (200, 2_000, 20_000, 200_000)
    steps = [measure(each, 5 if given.quick else 15) for each in sizes]
    levels = len(shipped()[RULEBOOK].levels)
    found = {"target_ms": TARGET_MS, "levels": levels, "yardstick_ms": yardstick(), "steps": steps}
    found["growth"] = growth(steps)
    print(json.dumps(found, indent=2))
    if given.json:
        given.json.write_text(json.dumps(found, indent=2), encoding="utf-8")


if __name__ == "__main__":
    main()
