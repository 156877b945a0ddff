"""What jumping penalties are made of, in both jumping phases: faults in, scored lines out."""

from collections import Counter
from collections.abc import Callable, Iterable
from dataclasses import dataclass

from fieldtally.trade.bad_input import BadInput

STOPS = ("refusal", "run_out", "circle")
FALLS = ("rider_fall", "rider_fall_on_feet", "horse_fall")
ANYWHERE = (*FALLS, "dangerous_riding")  # may happen between fences: need name no obstacle
NAMES = {
    "refusal": "refusal", "run_out": "run-out", "circle": "circle", "knockdown": "knockdown",
    "rider_fall": "rider fall", "rider_fall_on_feet": "rider fall, landing on the feet",
    "horse_fall": "horse fall", "missed_flag": "missed flag", "frangible": "frangible device activated",
    "dangerous_riding": "dangerous riding", "missed_obstacle": "missed obstacle",
}  # fmt: skip
ORDINALS = ("", "first", "second", "third", "fourth", "fifth", "sixth")


@dataclass(frozen=True)
class Fault:
    """One fault, in the order it happened. A combination fence is one obstacle: its elements share the
    obstacle's id, and `element` (A, B, C) says which of them it was."""

    obstacle: str
    kind: str
    element: str | None = None


@dataclass(frozen=True)
class Ruling:
    """What one fault costs. `penalties` None: none are given, because it eliminates or because the
    rulebook does not state them (`stated` False)."""

    penalties: float | None
    eliminates: bool
    reason: str
    stated: bool = True


@dataclass(frozen=True)
class FaultLine:
    """One fault with its ruling, and the how-manieth of its family it was, here and on the course.
    Both ordinals are 0 for a fault after elimination, which counts no more."""

    obstacle: str
    element: str | None
    kind: str
    ordinal_at_obstacle: int
    ordinal_on_course: int
    penalties: float | None
    eliminates: bool
    stated: bool
    reason: str


@dataclass(frozen=True)
class JumpScore:
    """`complete` is False where the rulebook leaves something unstated that these faults turn on."""

    penalties: float
    eliminated: bool
    complete: bool
    reason: str
    lines: tuple[FaultLine, ...]


# (fault, ordinal at its obstacle, ordinal on the course, penalties so far) -> what it costs
Rule = Callable[[Fault, int, int, float], Ruling]


def family(kind: str) -> str:
    """Faults that are counted together: all stops, all falls of the rider, else each kind alone."""
    return "stop" if kind in STOPS else "rider_fall" if kind.startswith("rider_fall") else kind


def ordinal(place: int) -> str:
    return ORDINALS[place] if place < len(ORDINALS) else f"{place}th"


def not_stated(what: str) -> Ruling:
    return Ruling(None, False, f"{what}: not stated in this rulebook, so not counted", stated=False)


def out(what: str) -> Ruling:
    return Ruling(None, True, f"{what}: eliminated")


def flat(kind: str, penalties: float | None) -> Ruling:
    """A fault that costs the same each time."""
    return not_stated(NAMES[kind]) if penalties is None else Ruling(penalties, False, NAMES[kind])


def step(what: str, penalties: tuple[float | None, ...], place: int) -> Ruling:
    """A fault whose `place`-th costs the `place`-th of `penalties`."""
    cost = penalties[place - 1] if place <= len(penalties) else None
    return not_stated(what) if cost is None else Ruling(cost, False, what)


def counted(kind: str, place: int, penalties: float | None, limit: float | None) -> Ruling:
    """A fault that costs the same each time, until its `limit`-th eliminates."""
    return out(f"{ordinal(place)} {NAMES[kind]}") if reached(place, limit) else flat(kind, penalties)


def reached(count: float, limit: float | None) -> bool:
    return limit is not None and count >= limit


def check(index: int, fault: Fault, kinds: tuple[str, ...]) -> None:
    """BadInput where this phase does not know the kind, or a fence is needed and not named."""
    if fault.kind not in kinds:
        raise BadInput(f"faults[{index}].kind", f"“{fault.kind}” is not known here.",
                       f"Use one of: {', '.join(kinds)}.")  # fmt: skip
    if not fault.obstacle and fault.kind not in ANYWHERE:
        raise BadInput(f"faults[{index}].obstacle", "This fault has no fence.", "Give the fence's number.")


def score_in_order(faults: Iterable[Fault], kinds: tuple[str, ...], rule: Rule) -> JumpScore:
    """Apply `rule` to each fault in the order they happened, up to the one that eliminates."""
    seen: Counter = Counter()
    lines: list[FaultLine] = []
    total, over = 0.0, False
    for index, fault in enumerate(faults):
        check(index, fault, kinds)
        if over:
            lines.append(after_elimination(fault))
            continue
        here, on_course = (fault.obstacle, family(fault.kind)), family(fault.kind)
        seen.update((here, on_course))
        ruling = rule(fault, seen[here], seen[on_course], total)
        lines.append(scored(fault, seen[here], seen[on_course], ruling))
        total, over = total + (ruling.penalties or 0), ruling.eliminates
    return summed(lines)


def scored(fault: Fault, here: int, on_course: int, ruling: Ruling) -> FaultLine:
    return FaultLine(fault.obstacle, fault.element, fault.kind, here, on_course,
                     ruling.penalties, ruling.eliminates, ruling.stated, ruling.reason)  # fmt: skip


def after_elimination(fault: Fault) -> FaultLine:
    return scored(fault, 0, 0, Ruling(None, False, "after elimination: not counted"))


def summed(lines: list[FaultLine]) -> JumpScore:
    """Add up the lines; elimination is told in the words of the line that brought it."""
    fatal = next((line.reason for line in lines if line.eliminates), None)
    total = round(sum(line.penalties for line in lines if line.penalties), 2)
    complete = all(line.stated for line in lines)
    reason = fatal or (f"{total:g} penalties" if total or not complete else "clear")
    return JumpScore(total, fatal is not None, complete, reason, tuple(lines))
