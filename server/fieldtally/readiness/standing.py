"""All findings of one pair for one level, as of a day and a version of the logbook."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from datetime import date

from fieldtally.readiness.bar import Bar, Bars
from fieldtally.readiness.book_of_horse import Sorted, book_of_horse, sort_records
from fieldtally.readiness.cautions import cautions
from fieldtally.readiness.context import Weighing
from fieldtally.readiness.count import weighing_of
from fieldtally.readiness.finding import Finding
from fieldtally.readiness.forecast import forecast
from fieldtally.readiness.next_steps import next_steps
from fieldtally.readiness.summary import summary
from fieldtally.readiness.weigh_word import hold_over
from fieldtally.readiness.weighing import weigh
from fieldtally.trade.rulebook import Rulebook

PRESENT_LEVEL = "present_level"


@dataclass(frozen=True)
class Standing:
    logbook_number: int
    weighing: Weighing
    level_order: int
    findings: tuple[Finding, ...]
    forecast: dict | None = None

    @property
    def is_present_level(self) -> bool:
        return self.weighing.book.horse["present_level_id"] == self.weighing.level.id

    def to_json(self) -> dict:
        """The shape that is sent, kept and shown; docs/protocol.md describes it."""
        return {
            "logbook_number": self.logbook_number,
            "horse_id": self.weighing.book.horse_id,
            "rulebook_id": self.weighing.rulebook.id,
            "level_id": self.weighing.level.id,
            "level_name": self.weighing.level.name,
            "level_order": self.level_order,
            "is_present_level": self.is_present_level,
            "as_of": self.weighing.book.as_of.isoformat(),
            "summary": summary(self.findings),
            "findings": [finding.to_json() for finding in self.findings],
            "held": hold_over(self.weighing) is not None,
            "next": next_steps(self.findings, self.weighing),
            "forecast": self.forecast,
            "cautions": cautions(self.findings, self.weighing),
        }


def compute_standings(
    records: Mapping,
    rulebooks: Mapping[str, Rulebook],
    bars: Bars,
    as_of: date,
    logbook_number: int,
    horse_id: str | None = None,
) -> list[Standing]:
    """Standings of every horse (or of one) for every level of the horse's rulebook.

    `records` maps record id to the folded record. A horse without a rulebook, or with one that is not
    among `rulebooks`, has no standing. The same input always gives the same answer.
    """
    kept = sort_records(records)
    horses = kept.of("horse") if horse_id is None else {horse_id: kept.of("horse").get(horse_id)}
    return [
        standing
        for each, horse in sorted(horses.items())
        if horse is not None and horse.body["rulebook_id"] in rulebooks
        for standing in beside_present_level(
            standings_of(kept, each, rulebooks[horse.body["rulebook_id"]], bars, as_of, logbook_number)
        )
    ]


def beside_present_level(standings: Iterable[Standing]) -> list[Standing]:
    """Every other level's forecast that speaks also says what the same arithmetic gives at the present level."""
    found = list(standings)
    present = next((each for each in found if each.is_present_level and each.forecast["spoken"]), None)
    if present is None:
        return found
    beside = {"level_id": present.weighing.level.id, "level_name": present.weighing.level.name} | {
        key: present.forecast[key]
        for key in ("clear_chance", "clear_low", "clear_high", "elimination_chance", "jumping_penalties", "total")
    }
    return [
        replace(each, forecast=each.forecast | {PRESENT_LEVEL: beside})
        if each.forecast["spoken"] and not each.is_present_level
        else each
        for each in found
    ]


def standings_of(kept: Sorted, horse_id: str, rulebook: Rulebook, bars: Bars, as_of: date, logbook_number: int):
    book = book_of_horse(kept, horse_id, as_of)
    changes = kept.all("bar_change")
    for order, (level, bar) in enumerate(bars.every_level(rulebook, changes)):
        yield standing_at(weighing_of(book, rulebook, level, bar.requirements), order, bar, bars, logbook_number)


def standing_at(weighing: Weighing, order: int, bar: Bar, bars: Bars, logbook_number: int) -> Standing:
    findings = tuple(weigh(requirement, weighing) for requirement in bar.requirements)
    return Standing(logbook_number, weighing, order, findings, forecast(findings, weighing, bars))
