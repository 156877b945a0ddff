"""Everything the weighing of one level for one horse may look at."""

from dataclasses import dataclass
from datetime import date

from fieldtally.readiness.attempts import Attempts
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

    @property
    def today(self) -> int:
        return self.as_of.toordinal()

    def since(self, kind: str, window_days: float) -> list:
        """Records of a kind dated within the window, oldest first."""
        first = self.today - window_days
        return [each for each in self.by_kind.get(kind, ()) if self.day(each) >= first]

    def day(self, record) -> int:
        return date.fromisoformat(self.date_of(record)).toordinal()

    def date_of(self, record) -> str:
        """The civil day the record speaks of: its own date, else its outing's, else when it was written."""
        own = record.body.get("date")
        outing = self.outings.get(record.body.get("outing_id"))
        return own or (outing.body["date"] if outing else record.local_date)


@dataclass(frozen=True)
class Weighing:
    """One level of one rulebook, for one horse's book."""

    book: Book
    rulebook: Rulebook
    level: Level
    below: Level | None
