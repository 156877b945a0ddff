"""Everything the weighing of one level for one horse may look at."""

from bisect import bisect_left
from dataclasses import dataclass, field
from datetime import date

from fieldtally.readiness.attempts import Attempts
from fieldtally.readiness.once import once
from fieldtally.readiness.pool import Pool
from fieldtally.readiness.second_presentation import again
from fieldtally.readiness.selection import Selection
from fieldtally.readiness.tally import Tally
from fieldtally.trade.rulebook import Level, Rulebook


@dataclass(frozen=True)
class Dated:
    """Records of one kind, oldest first, with the civil day of each."""

    days: list[str]
    records: list

    def since(self, first: str) -> list:
        return self.records[bisect_left(self.days, first) :]


NONE = Dated([], [])


@dataclass(frozen=True)
class Book:
    """One horse's records up to the as-of day, by kind, oldest first, and its attempts in columns; and the
    outings and results of the rider on any horse."""

    horse_id: str
    horse: dict
    as_of: date
    attempts: Attempts
    outings: dict
    fences: dict
    by_kind: dict[str, Dated]
    of_rider: dict[str, Dated]

    @once
    def second_presentations(self) -> tuple[int, int]:
        """(clear, stopped) presentations after a stop, over all fences."""
        return again(self.attempts)

    @once
    def today(self) -> int:
        return self.as_of.toordinal()

    def all(self, kind: str) -> list:
        return self.by_kind.get(kind, NONE).records

    def since(self, kind: str, window_days: float) -> list:
        """Records of a kind dated within the window, oldest first."""
        return self.by_kind.get(kind, NONE).since(self.first_day(window_days))

    def rider_since(self, kind: str, window_days: float) -> list:
        """The same on any horse of the logbook."""
        return self.of_rider.get(kind, NONE).since(self.first_day(window_days))

    def first_day(self, window_days: float) -> str:
        return date.fromordinal(self.today - int(window_days)).isoformat()

    def date_of(self, record) -> str:
        """The civil day the record speaks of: its own date, else its outing's, else when it was written."""
        own = record.body.get("date")
        outing = self.outings.get(record.body.get("outing_id"))
        return own or (outing.body["date"] if outing else record.local_date)


@dataclass(frozen=True)
class Counted:
    """The attempts that speak for one requirement: selected, and tallied fading and not."""

    selection: Selection
    faded: Tally
    unfaded: Tally


@dataclass(frozen=True)
class Weighing:
    """One level of one rulebook, for one horse's book. `counted` holds the attempts by requirement, `pool` what
    they add up to over all cross-country questions."""

    book: Book
    rulebook: Rulebook
    level: Level
    below: Level | None
    counted: dict[str, Counted] = field(default_factory=dict)
    pool: Pool = Pool()
