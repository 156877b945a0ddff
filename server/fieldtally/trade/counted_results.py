"""Which event results count towards one need of an entry rule, and which might.

Within a rule a result is used once for each kind of result asked: of "four qualifying at Training and one at
Modified" the one is not among the four, but of "three completed, two of them qualifying" the two are.
"""

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass
from datetime import date

from fieldtally.trade.entry_rules import CROSS_COUNTRY_CLEAR, QUALIFYING, Need
from fieldtally.trade.qualifying import CANNOT_TELL, COUNTS, verdict
from fieldtally.trade.rulebook import Level, Rulebook
from fieldtally.trade.validity import window


@dataclass(frozen=True)
class CountedResult:
    """A result that counts, or might (`reasons` then say what is missing). `counts_until` None: no end."""

    date: str
    event: str
    level_id: str
    counts_until: date | None
    reasons: tuple[str, ...] = ()


@dataclass(frozen=True)
class Tally:
    """What one need has: results that count, newest first, and results that might."""

    need: Need
    counted: tuple[CountedResult, ...]
    possible: tuple[CountedResult, ...]

    @property
    def have(self) -> int:
        return min(len(self.counted), self.need.count)

    @property
    def short(self) -> int:
        return self.need.count - self.have

    @property
    def state(self) -> str:
        if not self.short:
            return "met"
        return "not_known" if self.short <= len(self.possible) else "not_met"

    @property
    def met_until(self) -> date | None:
        """The last day on which enough of the counted results still count; None: no end, or not met."""
        if self.short:
            return None
        days = sorted((each.counts_until or date.max for each in self.counted), reverse=True)
        last = days[self.need.count - 1]
        return None if last == date.max else last


def level_of(body: Mapping, rulebook: Rulebook, editions: Collection[str]) -> Level | None:
    """The rulebook's level a result was ridden at; None where it belongs to another body's ladder."""
    if body.get("rulebook_id") not in (None, rulebook.id, *editions):
        return None
    return next((level for level in rulebook.levels if level.id == body["level_id"]), None)


def high_enough(level: Level, need: Need, rulebook: Rulebook) -> bool:
    if level.id == need.at:
        return True
    return need.or_higher and level.order > rulebook.level(need.at).order


def looked_at(
    need: Need, results: Sequence[Mapping], rulebook: Rulebook, on: date, editions: Collection[str] = ()
) -> list[tuple[Mapping, str, CountedResult]]:
    """(result, verdict, as counted) of every result at the need's level whose window holds `on`, newest first."""
    found = []
    for body in sorted(results, key=lambda each: each["date"], reverse=True):
        level, span = level_of(body, rulebook, editions), window(body, need, rulebook)
        if level is None or not high_enough(level, need, rulebook) or not span.holds(on):
            continue
        said = verdict(body, level, need)
        found.append((body, said.state, CountedResult(body["date"], body["event"], level.id, span.until, said.reasons)))
    return found


def tally(
    needs: Sequence[Need], results: Sequence[Mapping], rulebook: Rulebook, on: date, editions: Collection[str] = ()
) -> list[Tally]:
    """Each need with its results, the need of the highest level served first; no result serves two needs of
    one kind."""
    served, spent = [], set()
    for need in sorted(needs, key=lambda each: -rulebook.level(each.at).order):
        there = looked_at(need, results, rulebook, on, editions)
        free = [row for row in there if (id(row[0]), need.result) not in spent]
        sure = [row for row in free if row[1] == COUNTS]
        spent |= {(id(row[0]), need.result) for row in sure[: need.count]}
        maybe = tuple(row[2] for row in free if row[1] == CANNOT_TELL)
        served.append(Tally(need, tuple(row[2] for row in sure), maybe))
    return served


KINDS = {QUALIFYING: "qualifying result", CROSS_COUNTRY_CLEAR: "clear cross-country round"}


def need_words(need: Need, count: int, rulebook: Rulebook) -> str:
    """“2 more qualifying results at Training or higher”, for a count still missing."""
    kind = KINDS.get(need.result, "completed event") + ("" if count == 1 else "s")
    higher = " or higher" if need.or_higher else ""
    return f"{count} more {kind} at {rulebook.level(need.at).name}{higher}"
