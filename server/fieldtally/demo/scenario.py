"""Reads an invented season from fixtures/riders into the entries its people would have written.

Pure: a file and a day go in, people and entries come out. Days are counted back from that day.
"""

import tomllib
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import UTC, date, datetime, timedelta
from pathlib import Path

from fieldtally.book.instant import parse_instant
from fieldtally.book.kinds import KINDS
from fieldtally.demo.ids import entry_id, record_id
from fieldtally.demo.measured import measured, trace_of
from fieldtally.demo.notation import read_attempt

MORNING_H = 10
BETWEEN_ENTRIES_S = 100


@dataclass(frozen=True)
class Person:
    sign_in_name: str
    display_name: str
    role: str


@dataclass(frozen=True)
class Written:
    """One entry of the scenario: who wrote it (a role) and the envelope as it goes over the wire."""

    role: str
    entry: dict


@dataclass(frozen=True)
class Scenario:
    people: tuple[Person, ...]
    entries: tuple[Written, ...]

    @property
    def rider(self) -> Person:
        return self.people[0]


def scenario_files() -> list[Path]:
    """The seasons: inside the installed package, or in fixtures/ of a working copy."""
    here = Path(__file__).parent
    folder = here / "riders" if (here / "riders").is_dir() else here.parents[2] / "fixtures" / "riders"
    return sorted(folder.glob("*.toml"))


def read_scenario(path: Path, today: date) -> Scenario:
    """Every person and entry of one season file, oldest entry first, as of `today`."""
    season = tomllib.loads(path.read_text(encoding="utf-8"))
    people = [Person(**season["rider"], role="rider"), *(Person(**helper) for helper in season["helpers"])]
    entries = sorted(Writer(season, today).write(), key=lambda written: written.entry["recorded_at"])
    return Scenario(tuple(people), tuple(entries))


class Writer:
    """Turns one season into entries; keeps the running clock of each day so that order is real."""

    def __init__(self, season: dict, today: date) -> None:
        self.season, self.today = season, today
        self.rider = season["rider"]["sign_in_name"]
        self.horses = {horse["key"]: horse for horse in season["horses"]}
        self.calibrations = {row["key"]: row for row in season.get("calibrations", [])}
        tracks = [track for field in season["fields"] for track in field.get("tracks", [])]
        self.tracks = {track["key"]: measured(track, self.calibrations) for track in tracks}
        self.seconds: dict[date, int] = {}

    def write(self) -> Iterator[Written]:
        yield from self.ground()
        for outing in self.season.get("outings", []):
            yield from self.outing(outing)
        for table, kind in (("tests", "flatwork_test"), ("rounds", "jumping_round"), ("events", "event_result")):
            for number, row in enumerate(self.season.get(table, [])):
                yield self.result(kind, f"{table}{number}", row)
        for number, row in enumerate(self.season.get("words", [])):
            yield self.word(f"word{number}", row)

    def id(self, kind: str, key: str) -> str:
        return record_id(self.rider, kind, key)

    def day(self, row: dict) -> date:
        return self.today - timedelta(days=row["days_ago"])

    def entry(self, kind: str, key: str, body: dict, day: date, role: str = "rider") -> Written:
        second = self.seconds[day] = self.seconds.get(day, 0) + BETWEEN_ENTRIES_S
        at = datetime(day.year, day.month, day.day, MORNING_H, tzinfo=UTC) + timedelta(seconds=second)
        return Written(role, {
            "id": entry_id(int(at.timestamp() * 1000), self.rider, kind, key),
            "record_id": self.id(kind, key),
            "supersedes": [],
            "kind": kind,
            "kind_version": KINDS[kind].version,
            "body": body,
            "recorded_at": at.isoformat(timespec="milliseconds").replace("+00:00", "Z"),
            "utc_offset_min": 0,
            "local_date": day.isoformat(),
            "clock": None,
        })  # fmt: skip

    def ground(self) -> Iterator[Written]:
        """Horses, instruments, fields, fences and tracks, all written on the first day of the season."""
        first = self.today - timedelta(days=1 + max(outing["days_ago"] for outing in self.season["outings"]))
        for row in self.season.get("calibrations", []):
            yield self.entry("calibration", row["key"], {**without(row, "key"), "date": first.isoformat()}, first)
        for horse in self.season["horses"]:
            yield self.entry("horse", horse["key"], without(horse, "key"), first)
        for field in self.season["fields"]:
            yield self.entry("field", field["key"], without(field, "key", "fences", "tracks"), first)
            for order, fence in enumerate(field.get("fences", [])):
                body = {**without(fence, "key"), "field_id": self.id("field", field["key"]), "order": order + 1}
                yield self.entry("fence", fence["key"], body, first)
            for track in field.get("tracks", []):
                yield self.entry("track", track["key"], self.track(track["key"], field["key"]), first)

    def track(self, key: str, field_key: str) -> dict:
        track = self.tracks[key]
        by = {"calibration_id": self.id("calibration", track["calibration"])} if "calibration" in track else {}
        return {**without(track, "key", "calibration"), **by, "field_id": self.id("field", field_key)}

    def outing(self, outing: dict) -> Iterator[Written]:
        day, key = self.day(outing), outing["key"]
        told = without(
            outing, "key", "horse", "field", "days_ago", "attempts", "canters", "trace", "sets", "note", "remark"
        )
        body = {
            **told,
            "horse_id": self.id("horse", outing["horse"]),
            "field_id": self.id("field", outing["field"]),
            "date": day.isoformat(),
            "closed": True,
        }
        yield self.entry("outing", key, body, day)
        yield from self.attempts(outing, day)
        for number, line in enumerate(outing.get("canters", [])):
            yield self.entry("timed_canter", f"{key}/canter{number}", self.canter(line, key), day)
        if "trace" in outing:
            yield self.trace(outing, day)
        for number, row in enumerate(outing.get("sets", [])):
            body = {**row, "outing_id": self.id("outing", key)}
            yield self.entry("interval_set", f"{key}/set{number}", body, day)
        if "note" in outing:
            yield self.entry("note", f"{key}/note", {"about_id": self.id("outing", key), "text": outing["note"]}, day)
        if "remark" in outing:
            body = {"about_id": self.id("outing", key), "text": outing["remark"]}
            yield self.entry("remark", f"{key}/remark", body, day, "coach")

    def attempts(self, outing: dict, day: date) -> Iterator[Written]:
        key, sequence = outing["key"], 0
        for number, line in enumerate(outing.get("attempts", [])):
            attempt = read_attempt(line)
            sequence += attempt.element == "A"
            for time in range(attempt.times):
                body = {
                    "outing_id": self.id("outing", key),
                    "fence_id": self.id("fence", attempt.fence),
                    "element": attempt.element,
                    "sequence_id": self.id("sequence", f"{key}/{sequence}") if attempt.element else None,
                    "outcome": attempt.outcome,
                    "attitude": attempt.attitude,
                    "height_cm": attempt.height_cm,
                    "presentation": attempt.presentation,
                }
                yield self.entry("attempt", f"{key}/{number}/{time}", body, day)

    def canter(self, line: str, outing_key: str) -> dict:
        """`"top 61.9s 400 15.6,31.0 over_fences"`: track, elapsed seconds, target in m/min, seconds at its flags."""
        key, elapsed, target, *rest = line.split()
        track = self.tracks[key]
        splits = [round(float(at) * 1000) for at in rest[0].split(",")] if rest and rest[0][0].isdigit() else []
        return {
            "outing_id": self.id("outing", outing_key),
            "track_id": self.id("track", key),
            "distance_m": track["distance_m"],
            "distance_u_m": track.get("distance_u_m"),
            "measured_by": track["measured_by"],
            "splits_ms": splits,
            "flags_m": track.get("flags_m", []) if splits else [],
            "elapsed_ms": round(float(elapsed.removesuffix("s")) * 1000),
            "target_speed_mpm": float(target),
            "over_fences": "over_fences" in rest,
        }

    def trace(self, outing: dict, day: date) -> Written:
        """What the phone recorded beside the outing's first canter."""
        key, line = outing["key"], outing["trace"]
        canter = self.canter(outing["canters"][0], key)
        entry = self.entry("trace", f"{key}/trace", {}, day)
        body = trace_of(line, canter, parse_instant(entry.entry["recorded_at"]))
        entry.entry["body"] = {**body, "canter_id": self.id("timed_canter", f"{key}/canter0")}
        return entry

    def result(self, kind: str, key: str, row: dict) -> Written:
        day, horse = self.day(row), self.horses[row["horse"]]
        told = without(row, "horse", "days_ago")
        body = {**told, "horse_id": self.id("horse", row["horse"]), "date": day.isoformat()}
        if "level_id" in body:
            body["rulebook_id"] = horse["rulebook_id"]
        return self.entry(kind, key, body, day)

    def word(self, key: str, row: dict) -> Written:
        day, horse = self.day(row), self.horses[row["horse"]]
        body = {
            **without(row, "horse", "days_ago", "expires_in_days"),
            "horse_id": self.id("horse", row["horse"]),
            "rulebook_id": horse["rulebook_id"],
            "expires_on": (day + timedelta(days=row["expires_in_days"])).isoformat(),
        }
        return self.entry("word", key, body, day, "coach")


def without(row: dict, *keys: str) -> dict:
    return {key: value for key, value in row.items() if key not in keys}
