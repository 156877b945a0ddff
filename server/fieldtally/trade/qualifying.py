"""Whether one event result counts as a qualifying one, by what its rulebook states for its level.

Three answers, not two: it counts, it does not, or it cannot be told because a figure was not entered or the
rulebook's own definition is not stated. Nothing missing is ever taken for zero.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from fieldtally.trade.entry_rules import COMPLETED, CROSS_COUNTRY_CLEAR, Need
from fieldtally.trade.rulebook import Level

COUNTS, DOES_NOT, CANNOT_TELL = "counts", "does_not", "cannot_tell"
HIGHEST_FORGIVEN = 15.0  # where a rulebook forgives a device or a flag and does not state what either costs


@dataclass(frozen=True)
class Verdict:
    """`state` is counts, does_not or cannot_tell; `reasons` say in words what stands in the way."""

    state: str
    reasons: tuple[str, ...] = ()


@dataclass(frozen=True)
class Limit:
    """One figure of a result against the most it may be. `figure` None: not entered."""

    name: str
    figure: float | None
    most: float | None

    def failure(self) -> str | None:
        if self.most is None or self.figure is None or self.figure <= self.most:
            return None
        return f"{self.name} {self.figure:g}, at most {self.most:g} may be"

    def gap(self) -> str | None:
        return f"{self.name} not entered" if self.most is not None and self.figure is None else None


def forgiven(body: Mapping, level: Level) -> float:
    """Cross-country penalties that frangible devices and flags may carry without voiding the result.

    The entry says how many there were, not which: the dearer of the two is forgiven for each.
    """
    allowed = number(level, "frangible_or_flag_allowed") or 0
    each = [level.value("cross_country", name) for name in ("frangible_penalties", "missed_flag_penalties")]
    dearest = max((cost for cost in each if cost is not None), default=HIGHEST_FORGIVEN)
    return dearest * min(allowed, body.get("frangible_or_flag") or 0)


def number(level: Level, quantity: str) -> float | None:
    found = level.qualifying_result.get(quantity)
    return None if found is None else found.value


def time_limit(body: Mapping, level: Level) -> Limit:
    """Rulebooks state time in seconds, in penalties or as both; the figure that was entered is used."""
    over, penalties = body.get("cross_country_seconds_over"), body.get("cross_country_time_penalties")
    most_s = number(level, "cross_country_seconds_over_max")
    most = number(level, "cross_country_time_penalties_max")
    if most_s is not None and (over is not None or most is None):
        return Limit("cross-country seconds over the optimum", over, most_s)
    return Limit("cross-country time penalties", penalties, most)


def limits(body: Mapping, level: Level) -> Iterator[Limit]:
    """Every figure the level's definition of a qualifying result looks at."""
    yield Limit("dressage penalties", body.get("dressage_penalties"), number(level, "dressage_penalties_max"))
    most = number(level, "cross_country_jump_penalties_max")
    yield Limit("cross-country jumping penalties", body.get("cross_country_jump_penalties"),
                None if most is None else most + forgiven(body, level))  # fmt: skip
    yield time_limit(body, level)
    yield Limit("show-jumping penalties", body.get("show_jumping_jump_penalties"),
                number(level, "show_jumping_penalties_max"))  # fmt: skip
    yield Limit("dangerous riding", int(bool(body.get("dangerous_riding"))), number(level, "dangerous_riding_allowed"))


def clear_limits(body: Mapping, need: Need) -> Iterator[Limit]:
    """A clear cross-country round, with no more show-jumping penalties than the need allows."""
    yield Limit("cross-country jumping penalties", body.get("cross_country_jump_penalties"), 0)
    yield Limit("show-jumping penalties", body.get("show_jumping_jump_penalties"), need.show_jumping_penalties_max)


def weighed(found: list[Limit]) -> Verdict:
    failures = tuple(text for limit in found if (text := limit.failure()))
    if failures:
        return Verdict(DOES_NOT, failures)
    gaps = tuple(text for limit in found if (text := limit.gap()))
    return Verdict(CANNOT_TELL, gaps) if gaps else Verdict(COUNTS)


def verdict(body: Mapping, level: Level, need: Need) -> Verdict:
    """Whether the event result `body`, ridden at `level`, is of the kind that `need` counts."""
    if body["status"] != "completed":
        return Verdict(DOES_NOT, (f"{body['status']}, not completed",))
    if need.result == COMPLETED:
        return Verdict(COUNTS)
    if need.result == CROSS_COUNTRY_CLEAR:
        return weighed(list(clear_limits(body, need)))
    if not level.qualifying_result:
        return Verdict(CANNOT_TELL, ("this rulebook does not state what a qualifying result is",))
    return weighed(list(limits(body, level)))
