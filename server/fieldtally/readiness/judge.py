"""From counted attempts to a state: shown, building, untried, shaky, gone stale or on hold.

Order of the rules, first that fits: a fall not yet rebuilt holds; no attempt is untried; a stop not yet
put right is shaky; the bar met is shown; met but for the fading of time is gone stale; a chance that
stops have pulled below even is shaky; the rest is building.
"""

from dataclasses import dataclass

from fieldtally.readiness.attempts import FALL, OTHER, STOP
from fieldtally.readiness.estimate import Estimate, clear_still_needed, estimate
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
    """The last stop or fall of a kind not yet put right: its day, what has been clear on later days, and
    what is asked."""

    fall: bool
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


def setback(tally: Tally, numbers: dict[str, float], fall: bool) -> Setback | None:
    day = tally.last_day_of(FALL) if fall else tally.last_day_of(STOP, OTHER)
    if day is None:
        return None
    clear, outings = tally.clear_after(day)
    suffix = "_fall" if fall else ""
    asked = int(numbers["rebuild_clear" + suffix]), int(numbers["rebuild_outings" + suffix])
    found = Setback(fall, day, clear, outings, *asked)
    return None if found.missing.nothing else found


def missing(tally: Tally, numbers: dict[str, float]) -> Missing:
    """Counted with each further clear attempt at full weight, as on another day or at another fence."""
    for_bound = clear_still_needed(tally.clear_weight, tally.weight, numbers["bound"], numbers["confidence"])
    outings = max(0, int(numbers["outings"]) - tally.outings)
    fields = max(0, int(numbers["fields"]) - tally.fields)
    counted = int(numbers["clear"]) - tally.clear
    clear = max(0, counted, 50 if for_bound is None else for_bound, outings, fields)
    return Missing(clear, outings, fields)


def posterior(tally: Tally, numbers: dict[str, float]) -> Estimate:
    return estimate(tally.clear_weight, tally.weight, numbers["confidence"])


def judge(faded: Tally, unfaded: Tally, numbers: dict[str, float]) -> Verdict:
    """`faded` counts the window with fading weights; `unfaded` everything ever, at full weight. A fall
    holds however long ago it was, until it is rebuilt; a stop ends with the window."""
    found = posterior(faded, numbers)
    lacking = missing(faded, numbers)
    fallen = setback(unfaded, numbers, fall=True)
    if fallen:
        return Verdict("on_hold", found, worse(lacking, fallen.missing), fallen)
    if not unfaded.count:
        return Verdict("untried", found, lacking, None)
    stopped = setback(faded, numbers, fall=False)
    if stopped:
        return Verdict("shaky", found, worse(lacking, stopped.missing), stopped)
    return Verdict(without_setback(faded, unfaded, lacking, found, numbers), found, lacking, None)


def without_setback(faded: Tally, unfaded: Tally, lacking: Missing, found: Estimate, numbers: dict) -> str:
    if lacking.nothing:
        return "shown"
    if missing(unfaded, numbers).nothing:
        return "gone_stale"
    return "shaky" if faded.count and found.mean < 0.5 else "building"


def worse(one: Missing, other: Missing) -> Missing:
    return Missing(max(one.clear, other.clear), max(one.outings, other.outings), max(one.fields, other.fields))
