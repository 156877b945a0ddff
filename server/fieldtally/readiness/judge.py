"""From counted attempts to a state: shown, building, untried, shaky, gone stale or on hold.

Order of the rules, first that fits: a fall not yet rebuilt holds; no attempt is untried; a stop not yet
put right is shaky; the bar met is shown; met but for the fading of time is gone stale; more gone wrong than
right is shaky; the rest is building.
"""

import math
from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np

from fieldtally.readiness.attempts import CLEAR, FALL
from fieldtally.readiness.estimate import JEFFREYS, Estimate, Prior, clear_still_needed, estimate
from fieldtally.readiness.tally import Tally


@dataclass(frozen=True)
class Missing:
    """What would meet the bar: so many more clear, in so many further outings, at so many further fields."""

    clear: int = 0
    outings: int = 0
    fields: int = 0

    @property
    def nothing(self) -> bool:
        return not (self.clear or self.outings or self.fields)


@dataclass(frozen=True)
class Setback:
    """A stop or fall not yet put right: its day, what has been clear since, and what is asked. After a
    single stop what was clear later that day counts too; after a fall or a bad day only later days do."""

    kind: str
    day: int
    clear: int
    outings: int
    asked_clear: int
    asked_outings: int

    @property
    def missing(self) -> Missing:
        return Missing(max(0, self.asked_clear - self.clear), max(0, self.asked_outings - self.outings))


@dataclass(frozen=True)
class Verdict:
    state: str
    estimate: Estimate
    missing: Missing
    setback: Setback | None


def fall(tally: Tally, numbers: Mapping[str, float]) -> Setback | None:
    """The last fall, while it is not rebuilt."""
    return rebuilding("fall", tally, tally.last_day_where(tally.results == FALL), numbers)


def stop(tally: Tally, numbers: Mapping[str, float]) -> Setback | None:
    """The last bad day, else the last stop or other fault, while it is not put right."""
    faults = (tally.results != CLEAR) & (tally.results != FALL)
    bad = rebuilding("bad_day", tally, last_bad_day(tally, faults, numbers["bad_day_stops"]), numbers)
    return bad or last_stop(tally, faults, numbers)


def last_stop(tally: Tally, faults: np.ndarray, numbers: Mapping[str, float]) -> Setback | None:
    if not faults.any():
        return None
    since = tally.clear_since_last(faults)
    return unless_rebuilt("stop", tally.last_day_where(faults), since, numbers)


def last_bad_day(tally: Tally, faults: np.ndarray, at_least: float) -> int | None:
    """The last day on which so many attempts went wrong."""
    days = tally.days[faults]
    behind = int(at_least) - 1
    bad = days[behind:][days[behind:] == days[: len(days) - behind]]
    return int(bad[-1]) if len(bad) else None


def rebuilding(kind: str, tally: Tally, day: int | None, numbers: Mapping[str, float]) -> Setback | None:
    """A fall or a bad day: only later days put it right."""
    return None if day is None else unless_rebuilt(kind, day, tally.clear_on_later_days(day), numbers)


def unless_rebuilt(kind: str, day: int, since: tuple[int, int], numbers: Mapping[str, float]) -> Setback | None:
    suffix = "" if kind == "stop" else f"_{kind}"
    asked = int(numbers[f"rebuild_clear{suffix}"]), int(numbers[f"rebuild_outings{suffix}"])
    found = Setback(kind, day, *since, *asked)
    return None if found.missing.nothing else found


def missing(tally: Tally, numbers: Mapping[str, float], prior: Prior) -> Missing:
    """Counted with each further clear attempt at full weight, as on another day or at another fence."""
    weights = tally.clear_weight, tally.weight
    for_bound = clear_still_needed(*weights, numbers["bound"], numbers["confidence"], prior)
    outings = max(0, int(numbers["outings"]) - tally.outings)
    fields = max(0, int(numbers["fields"]) - tally.fields)
    for_freshness = math.ceil(numbers["fresh_weight"] - tally.clear_weight)
    clear = max(0, int(numbers["clear"]) - tally.clear, for_bound, for_freshness, outings, fields)
    return Missing(clear, outings, fields)


def judge(faded: Tally, unfaded: Tally, numbers: Mapping[str, float], prior: Prior = JEFFREYS) -> Verdict:
    """`faded` counts the window with fading weights; `unfaded` everything ever, at full weight. A fall
    holds however long ago it was, until it is rebuilt; a stop ends with the window."""
    found = estimate(faded.clear_weight, faded.weight, numbers["confidence"], prior)
    lacking = missing(faded, numbers, prior)
    fallen = fall(unfaded, numbers) if unfaded.falls else None
    if fallen:
        return Verdict("on_hold", found, worse(lacking, fallen.missing), fallen)
    if not unfaded.count:
        return Verdict("untried", found, lacking, None)
    stopped = stop(faded, numbers) if faded.clear < faded.count else None
    if stopped:
        return Verdict("shaky", found, worse(lacking, stopped.missing), stopped)
    return Verdict(without_setback(faded, unfaded, lacking, numbers, prior), found, lacking, None)


def without_setback(faded: Tally, unfaded: Tally, lacking: Missing, numbers: Mapping[str, float], prior: Prior) -> str:
    if lacking.nothing:
        return "shown"
    if missing(unfaded, numbers, prior).nothing:
        return "gone_stale"
    return "shaky" if more_wrong_than_right(faded) else "building"


def more_wrong_than_right(tally: Tally) -> bool:
    return tally.count > 0 and tally.clear_weight < tally.weight / 2


def worse(one: Missing, other: Missing) -> Missing:
    return Missing(max(one.clear, other.clear), max(one.outings, other.outings), max(one.fields, other.fields))
