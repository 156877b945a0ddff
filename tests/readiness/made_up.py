"""A made-up logbook and a made-up rulebook for the tests of readiness."""

from dataclasses import dataclass, field
from datetime import date, timedelta
from uuid import UUID

from fieldtally.book.fold import Record
from fieldtally.book.kinds import KINDS
from fieldtally.readiness.bar import shipped_bars
from fieldtally.readiness.standing import Standing, compute_standings
from fieldtally.trade.rulebook import Level, Rulebook
from fieldtally.trade.stated import Value

TODAY = date(2026, 6, 1)
HEIGHTS = {"lowest": 80, "second": 90, "third": 100, "fourth": 110}


def level(name: str, order: int, height_cm: float, without: tuple[str, ...] = ()) -> Level:
    cross_country = {
        "fixed_height_cm": height_cm, "brush_height_cm": height_cm + 20, "spread_top_cm": height_cm + 10,
        "spread_without_height_cm": 120 + 40 * order, "drop_cm": height_cm + 20,
        "speed_max_mpm": 350 + 50 * order, "efforts_min": 14, "efforts_max": 18 + 2 * order,
        "length_min_m": 1600, "length_max_m": 2000,
        "stops_on_course_that_eliminate": 4, "stops_at_one_obstacle_that_eliminate": 3,
        "refusal_first_penalties": 20, "refusal_second_penalties": 40, "time_penalties_per_second": 0.4,
    }  # fmt: skip
    phases = {"cross_country": cross_country, "show_jumping": {"height_cm": height_cm, "knockdown_penalties": 4}}
    stated = {
        phase: {
            key: Value(key, value, "", "made up", "secondary") for key, value in values.items() if key not in without
        }
        for phase, values in phases.items()
    }
    return Level(name, name.title(), order, stated)


def rulebook(rulebook_id: str = "xx-2026", without: tuple[str, ...] = ()) -> Rulebook:
    levels = tuple(level(name, order, height, without) for order, (name, height) in enumerate(HEIGHTS.items()))
    return Rulebook(rulebook_id, "Made up", "Nobody", "2026", "current", levels)


@dataclass
class Logbook:
    """Builds folded records; every body goes through its schema, as on the server."""

    records: dict[str, Record] = field(default_factory=dict)
    horse: str = ""
    book: Rulebook = field(default_factory=rulebook)

    def __post_init__(self) -> None:
        self.horse = self.add("horse", name="Made Up", rulebook_id=self.book.id, present_level_id="lowest")

    def add(self, kind: str, on: date = TODAY, author: str = "rider", **body) -> str:
        key = str(UUID(int=len(self.records) + 1))
        loaded = KINDS[kind].schema().load(body)
        number = len(self.records) + 1
        self.records[key] = Record(key, kind, loaded, on.isoformat(), number, author, (key,), first=(number, key))
        return key

    def fence(self, label: str = "1 Log", profile: str = "log", **body) -> str:
        return self.add("fence", label=label, profile=profile, **body)

    def outing(self, days_ago: int = 1, field_id: str | None = None, activity="cross_country_school", **body) -> str:
        day = TODAY - timedelta(days=days_ago)
        return self.add(
            "outing", day, horse_id=self.horse, date=day.isoformat(), activity=activity, field_id=field_id, **body
        )

    def attempt(self, outing: str, fence: str, outcome: str = "clear", times: int = 1, **body) -> list[str]:
        presentation = body.pop("presentation", {})
        return [
            self.add("attempt", outing_id=outing, fence_id=fence, outcome=outcome, presentation=presentation, **body)
            for _ in range(times)
        ]

    def standing(self, level_id: str = "second", as_of: date = TODAY) -> Standing:
        found = compute_standings(self.records, {self.book.id: self.book}, shipped_bars(), as_of, 1, self.horse)
        return next(each for each in found if each.weighing.level.id == level_id)

    def finding(self, requirement_id: str, level_id: str = "second", as_of: date = TODAY) -> dict:
        findings = self.standing(level_id, as_of).to_json()["findings"]
        return next(each for each in findings if each["requirement_id"] == requirement_id)
