"""Checks across the values of one file: ladders that never fall, pairs in order, both units agreeing.

Each check yields (key, reason, fix) for what it finds wrong; keys read `levels.novice.cross_country.drop_cm`.
"""

from collections.abc import Iterator

from fieldtally.trade.bad_input import BadInput
from fieldtally.trade.quantities import BY_PHASE
from fieldtally.trade.units import length_cm, rounding_cm

Fault = tuple[str, str, str]

# the first is never greater than the second, within one level
PAIRS = {
    "cross_country": (
        ("fixed_height_cm", "brush_height_cm"),
        ("spread_top_cm", "spread_base_cm"),
        ("efforts_min", "efforts_max"),
        ("obstacles_min", "obstacles_max"),
        ("length_min_m", "length_max_m"),
        ("speed_min_mpm", "speed_max_mpm"),
        ("speed_max_mpm", "too_fast_speed_mpm"),
        ("refusal_first_penalties", "refusal_second_penalties"),
        ("stops_at_one_obstacle_that_eliminate", "stops_on_course_that_eliminate"),
    ),
    "show_jumping": (
        ("height_cm", "raised_height_cm"),
        ("oxer_spread_cm", "triple_bar_spread_cm"),
        ("efforts_min", "efforts_max"),
        ("obstacles_min", "obstacles_max"),
        ("combinations_min", "combinations_max"),
    ),
    "dressage": (("error_first_marks", "error_second_marks"),),
}


def key_of(level: dict, phase: str, quantity: str) -> str:
    return f"levels.{level['id']}.{phase}.{quantity}"


def number(level: dict, phase: str, quantity: str) -> float | None:
    return level[phase][quantity]["value"] if quantity in level[phase] else None


def falling(levels: list[dict]) -> Iterator[Fault]:
    """Values that are lower at a higher level."""
    for phase, known in BY_PHASE.items():
        for quantity in (name for name, each in known.items() if each.rises):
            stated = [level for level in levels if quantity in level[phase]]
            for below, above in zip(stated, stated[1:], strict=False):
                low, high = number(below, phase, quantity), number(above, phase, quantity)
                if high < low:
                    yield (
                        key_of(above, phase, quantity),
                        f"{high:g} at {above['name']} is below {low:g} at {below['name']}.",
                        "Levels go from low to high: check both values and the order of the levels.",
                    )


def top_speed(level: dict) -> float | None:
    one = number(level, "cross_country", "speed_mpm")
    return number(level, "cross_country", "speed_max_mpm") if one is None else one


def slowing(levels: list[dict]) -> Iterator[Fault]:
    """Top speeds that fall, whether stated as one speed or as a range."""
    stated = [level for level in levels if top_speed(level) is not None]
    for below, above in zip(stated, stated[1:], strict=False):
        if top_speed(above) < top_speed(below):
            yield (
                key_of(above, "cross_country", "speed"),
                f"{top_speed(above):g} m/min at {above['name']} is below {top_speed(below):g} at {below['name']}.",
                "Check both speeds and the order of the levels.",
            )


def crossed(levels: list[dict]) -> Iterator[Fault]:
    """Pairs the wrong way round: a least above a most, a fixed height above the brush height."""
    for level in levels:
        for phase, pairs in PAIRS.items():
            for low, high in pairs:
                small, great = number(level, phase, low), number(level, phase, high)
                if small is not None and great is not None and small > great:
                    yield key_of(level, phase, low), f"{small:g} is above {high} {great:g}.", "Check both values."


def units_apart(levels: list[dict]) -> Iterator[Fault]:
    """Lengths whose source prints other units that do not come to the same, within their rounding."""
    for level in levels:
        for phase, known in BY_PHASE.items():
            for quantity, table in level[phase].items():
                if known[quantity].unit == "cm":
                    yield from text_apart(key_of(level, phase, quantity), table)


def text_apart(key: str, table: dict) -> Iterator[Fault]:
    for text in table.get("stated", ()):
        try:
            apart = abs(length_cm(text) - table["value"])
        except BadInput as refusal:
            yield f"{key}.stated", refusal.message, refusal.fix
            continue
        if apart > rounding_cm(text) + 0.5:
            yield (
                f"{key}.stated",
                f"{text} is {length_cm(text):g} cm, not {table['value']:g} cm: {apart:.1f} cm apart.",
                "Rounding explains half the step it is written in and half a cm: check which of them is right.",
            )


def twice(levels: list[dict]) -> Iterator[Fault]:
    seen = set()
    for level in levels:
        if level["id"] in seen:
            yield f"levels.{level['id']}.id", "two levels have this id.", "Give each level its own id."
        seen.add(level["id"])


def nowhere(levels: list[dict]) -> Iterator[Fault]:
    """Entry rules that ask for results at a level the file does not have."""
    known = {level["id"] for level in levels}
    for level in levels:
        for place, rule in enumerate(level["eligibility"]):
            options = [*(rule.get("options") or [rule["needs"]]), [rule[w] for w in ("waived_by",) if w in rule]]
            for need in (need for option in options for need in option if need["at"] not in known):
                yield (
                    f"levels.{level['id']}.eligibility[{place}].at",
                    f"there is no level {need['at']!r} in this file.",
                    f"Use one of: {', '.join(level['id'] for level in levels)}.",
                )


def faults(levels: list[dict]) -> Iterator[Fault]:
    for check in (twice, crossed, falling, slowing, units_apart, nowhere):
        yield from check(levels)
