"""Everything the weighing of one level for one horse may look at."""

from collections.abc import Iterable
from dataclasses import dataclass, field
from datetime import date

from fieldtally.readiness.attempts import Attempts
from fieldtally.readiness.pool import Pool
from fieldtally.readiness.selection import Selection
from fieldtally.readiness.tally import Tally
from fieldtally.trade.rulebook import Level, Rulebook


@dataclass(frozen=True)
class Book:
    """One horse's records up to the as-of day, by kind, oldest first, and its attempts in columns."""

    horse_id: str
    horse: dict
    as_of: date
    attempts: Attempts
    outings: dict
    fences: dict
    by_kind: dict[str, list]
    rider_outings: list
    rider_results: list

    @property
    def today(self) -> int:
        return self.as_of.toordinal()

    def since(self, kind: str, window_days: float) -> list:
        """Records of a kind dated within the window, oldest first."""
        return self.recent(self.by_kind.get(kind, ()), window_days)

    def recent(self, records: Iterable, window_days: float) -> list:
        first = date.fromordinal(self.today - int(window_days)).isoformat()
        return [each for each in records if self.date_of(each) >= first]

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
