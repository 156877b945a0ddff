"""Which levels admit a fence: every measurement against its own limit, nothing guessed.

A fixed part counts to the fixed limit and brush to the brush limit; the three spreads each to their own. Each
element of a combination is weighed by itself. A measurement that its kind of fence needs and that is missing is
"not measured"; a limit that the rulebook does not state is "not stated". The client runs the same vectors
(fixtures/contract/fit.json).
"""

from collections.abc import Iterator, Mapping
from dataclasses import asdict, dataclass

from fieldtally.trade.asks import asks_of, needed_dimensions
from fieldtally.trade.rulebook import Level, Rulebook
from fieldtally.trade.stated import Value
from fieldtally.trade.units import rounded

FITS, TOO_BIG, NOT_MEASURED, NOT_STATED, ADMITTED = "fits", "too_big", "not_measured", "not_stated", "admitted"

# measurement of a fence -> the limits it counts to, on cross-country
CROSS_COUNTRY_LIMITS = {
    "height_cm": ("fixed_height_cm",),
    "brush_height_cm": ("brush_height_cm",),
    "spread_top_cm": ("spread_top_cm",),
    "spread_base_cm": ("spread_base_cm",),
    "spread_without_height_cm": ("spread_without_height_cm",),
    "drop_cm": ("drop_cm",),
    "water_depth_cm": ("water_depth_cm",),
}
SHOW_JUMP_LIMITS = {"height_cm": ("height_cm",)}
SHOW_JUMP_SPREADS = {
    "oxer": {"spread_top_cm": ("oxer_spread_cm",)},
    "triple_bar": {"spread_base_cm": ("triple_bar_spread_cm",)},
}


@dataclass(frozen=True)
class Check:
    """One measurement against one limit of one level, in cm. `part` is the element's letter, or "" for the fence.

    `margin_cm` is the room left, below zero when too big; None where nothing could be compared.
    """

    part: str
    dimension: str
    limit: str
    measured_cm: float | None
    limit_cm: float | None
    margin_cm: float | None
    verdict: str
    grade: str | None
    source: str | None


@dataclass(frozen=True)
class LevelFit:
    """A fence at one level. `binding` is the check with the least room. `asks_later` maps each ask that comes
    only at a higher level to that level's id; it does not change the verdict."""

    level_id: str
    level_name: str
    verdict: str
    binding: Check | None
    checks: tuple[Check, ...]
    asks_later: Mapping[str, str]


@dataclass(frozen=True)
class Fit:
    """`lowest_admitting`: the lowest level where every measurement was compared and none is too big.
    `lowest_possible`: the lowest where something was compared and nothing is too big, though more may be missing.
    `binding` is what keeps the fence out of the level below; where nothing does, the check with the least room."""

    rulebook_id: str
    levels: tuple[LevelFit, ...]
    lowest_admitting: str | None
    lowest_possible: str | None
    binding: Check | None
    asks_not_stated: tuple[str, ...]

    def at(self, level_id: str) -> LevelFit:
        return next(level for level in self.levels if level.level_id == level_id)

    def to_json(self) -> dict:
        return asdict(self)


def limits_of(part: Mapping) -> tuple[str, Mapping[str, tuple[str, ...]]]:
    """The phase whose limits hold for this part, and which limits each measurement counts to."""
    if "show_jump" in asks_of(part):
        return "show_jumping", SHOW_JUMP_LIMITS | SHOW_JUMP_SPREADS.get(part["profile"], {})
    limits = dict(CROSS_COUNTRY_LIMITS)
    if "ditch" in asks_of(part):
        limits["spread_without_height_cm"] += ("ditch_width_cm",)
    if part["profile"] in ("step", "bank") and "water" in asks_of(part):
        limits["height_cm"] += ("step_height_cm",)
    return "cross_country", limits


def parts_of(fence: Mapping) -> Iterator[tuple[str, Mapping, tuple[str, ...]]]:
    """(letter or "", the part, what must be measured of it). The whole of a combination must measure nothing."""
    elements = fence.get("elements") or []
    yield "", fence, () if elements else needed_dimensions(fence)
    for element in elements:
        yield element["letter"], element, needed_dimensions(element)


def compare(part: str, dimension: str, limit: str, measured: float | None, value: Value | None) -> Check:
    margin = None if measured is None or value is None else rounded(value.value - measured, 2)
    if value is None:
        verdict = NOT_STATED
    elif margin is None:
        verdict = NOT_MEASURED
    else:
        verdict = FITS if margin >= 0 else TOO_BIG
    stated = (None, None, None) if value is None else (value.value, value.grade, value.source)
    return Check(part, dimension, limit, measured, stated[0], margin, verdict, *stated[1:])


def checks_at(fence: Mapping, level: Level) -> Iterator[Check]:
    """Every measurement made, and every one that is needed, against the level. A second limit that the rulebook
    does not state is passed over: the first one holds."""
    for letter, part, needed in parts_of(fence):
        phase, limits = limits_of(part)
        for dimension, names in limits.items():
            measured = part.get(dimension)
            if measured is None and dimension not in needed:
                continue
            for place, name in enumerate(names):
                value = level.stated(phase, name)
                if place == 0 or value is not None:
                    yield compare(letter, dimension, name, measured, value)


def verdict_of(checks: tuple[Check, ...]) -> str:
    verdicts = {check.verdict for check in checks}
    for verdict in (TOO_BIG, NOT_MEASURED, NOT_STATED):
        if verdict in verdicts:
            return verdict
    return ADMITTED if checks else NOT_MEASURED


def tightest(checks: tuple[Check, ...]) -> Check | None:
    compared = [check for check in checks if check.margin_cm is not None]
    return min(compared, key=lambda check: check.margin_cm, default=None)


def all_asks(fence: Mapping) -> tuple[str, ...]:
    """What the fence and its elements ask, each word once, in the order met."""
    elements = fence.get("elements") or []
    own = tuple(fence.get("asks") or ()) + ("combination",) * (len(elements) > 1) if elements else asks_of(fence)
    return tuple(dict.fromkeys([*own, *(ask for element in elements for ask in asks_of(element))]))


def introductions(rulebook: Rulebook) -> dict[str, Level]:
    """Ask -> the lowest level that introduces it."""
    first: dict[str, Level] = {}
    for level in rulebook.levels:
        for ask in level.asks:
            first.setdefault(ask.word, level)
    return first


def level_fit(fence: Mapping, level: Level, asks: tuple[str, ...], first: Mapping[str, Level]) -> LevelFit:
    checks = tuple(checks_at(fence, level))
    later = {ask: first[ask].id for ask in asks if ask in first and first[ask].order > level.order}
    return LevelFit(level.id, level.name, verdict_of(checks), tightest(checks), checks, later)


def compared(level: LevelFit) -> bool:
    return level.binding is not None


def first_open(levels: tuple[LevelFit, ...]) -> int:
    """The place above every level for which the fence is too big."""
    return max((place for place, level in enumerate(levels, 1) if level.verdict == TOO_BIG), default=0)


def binding(levels: tuple[LevelFit, ...], start: int, possible: LevelFit | None) -> Check | None:
    """What keeps the fence out of the level below; where nothing does, the least room at the lowest level."""
    return levels[start - 1].binding if start else possible.binding if possible else None


def fit(fence: Mapping, rulebook: Rulebook) -> Fit:
    """How a fence (a body as in book/kinds.py; keys may be absent) fits each level of a rulebook."""
    asks, first = all_asks(fence), introductions(rulebook)
    levels = tuple(level_fit(fence, level, asks, first) for level in rulebook.levels)
    start = first_open(levels)
    admitting = next((level for level in levels[start:] if level.verdict == ADMITTED), None)
    possible = next((level for level in levels[start:] if compared(level)), None)
    return Fit(
        rulebook.id,
        levels,
        admitting.level_id if admitting else None,
        possible.level_id if possible else None,
        binding(levels, start, possible),
        tuple(ask for ask in asks if ask not in first),
    )
