"""From which day and until which day a result counts towards an entry."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date, timedelta

from fieldtally.trade.entry_rules import Need
from fieldtally.trade.rulebook import Rulebook

LONG_FORMAT = "_l"  # how every body that has long formats ends their level's id


@dataclass(frozen=True)
class Window:
    """Both days included. `until` None: the rulebook states no end."""

    first: date
    until: date | None

    def holds(self, day: date) -> bool:
        return self.first <= day and (self.until is None or day <= self.until)


def years_later(day: date, years: float) -> date:
    """The same day `years` whole years on; 28 February for a 29th that is not there."""
    try:
        return day.replace(year=day.year + int(years))
    except ValueError:
        return day.replace(year=day.year + int(years), day=28)


def number(rulebook: Rulebook, quantity: str) -> float | None:
    found = rulebook.validity.get(quantity)
    return None if found is None else found.value


def lead_days(rulebook: Rulebook, level_id: str) -> float:
    """Days a result must lie before the cross-country day; longer after a long format where stated."""
    own = number(rulebook, "lead_days_long_format") if level_id.endswith(LONG_FORMAT) else None
    return own if own is not None else number(rulebook, "lead_days") or 0


def window(body: Mapping, need: Need, rulebook: Rulebook) -> Window:
    """When the result `body` counts towards `need`: after the lead time, up to its lapse."""
    day = date.fromisoformat(body["date"])
    first = day + timedelta(days=lead_days(rulebook, body["level_id"]))
    if need.within_days is not None:
        return Window(first, day + timedelta(days=need.within_days))
    years = number(rulebook, "validity_years")
    return Window(first, None if years is None else years_later(day, years))
