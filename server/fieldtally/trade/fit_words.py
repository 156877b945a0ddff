"""A fence's fit in plain words, for the command line and reports."""

from fieldtally.trade.fit import NOT_MEASURED, NOT_STATED, Check, Fit, LevelFit
from fieldtally.trade.stated import CORRECTED, FROM_MEMORY, GOVERNING_BODY
from fieldtally.trade.units import show_cm, show_feet

DIMENSIONS = {
    "height_cm": "height",
    "brush_height_cm": "brush height",
    "spread_top_cm": "top spread",
    "spread_base_cm": "base spread",
    "spread_without_height_cm": "spread without height",
    "drop_cm": "drop",
    "water_depth_cm": "water depth",
}
ASKS = {"wide_table": "wide table", "angled_line": "angled line", "bending_line": "bending line",
        "airy_rail": "airy rail", "show_jump": "show jump"}  # fmt: skip
SURE = {
    GOVERNING_BODY: "from the governing body",
    CORRECTED: "corrected in this logbook",
    FROM_MEMORY: "from memory",
}


def both_units(cm: float) -> str:
    return f"{show_cm(cm)} ({show_feet(cm)})"


def named(check: Check) -> str:
    what = "step" if check.limit == "step_height_cm" else DIMENSIONS[check.dimension]
    return f"{what} of {check.part}" if check.part else what


def room(check: Check) -> str:
    """`height 88.9 cm (2'11") is 8.9 cm over the limit of 80 cm (2'7")`."""
    over = check.margin_cm < 0
    gap = show_cm(max(abs(check.margin_cm), 0.1))  # a hair over is over, never "0 cm over"
    where = f"{gap} over" if over else f"{gap} under" if check.margin_cm else "exactly at"
    return f"{named(check)} {both_units(check.measured_cm)} is {where} the limit of {both_units(check.limit_cm)}"


def undecided(level: LevelFit) -> str:
    """`top spread not measured; base spread not stated in this rulebook`."""
    said = {NOT_MEASURED: "not measured", NOT_STATED: "not stated in this rulebook"}
    return "; ".join(f"{named(check)} {said[check.verdict]}" for check in level.checks if check.verdict in said)


def verdict(level: LevelFit) -> str:
    if level.verdict == NOT_MEASURED and not level.checks:
        return "nothing was measured"
    tight = level.binding
    return "; ".join(filter(None, (room(tight) if tight else "", undecided(level))))


def headline(found: Fit) -> str:
    if found.lowest_admitting is not None and found.lowest_admitting == found.lowest_possible:
        return f"{found.at(found.lowest_admitting).level_name} is the lowest level that admits it."
    if found.lowest_possible is not None:
        level = found.at(found.lowest_possible)
        return f"Not decided. Nothing measured is too big for {level.level_name}, but: {undecided(level)}."
    if found.binding is not None:
        return "Too big for every level of this rulebook."
    return "Not decided: nothing that was measured can be compared with this rulebook."


def why(found: Fit) -> str:
    """What decides it, and how sure the limit is."""
    if found.binding is None:
        return ""
    sure = SURE.get(found.binding.grade, "from a secondary source")
    said = room(found.binding)
    return f"{said[0].upper()}{said[1:]}, {sure}. Check it in the rulebook in force."


def later(found: Fit) -> str:
    """Asks that come only at a higher level than the one the fence's size fits."""
    level_id = found.lowest_admitting or found.lowest_possible
    asks = found.at(level_id).asks_later if level_id else {}
    names = {level.level_id: level.level_name for level in found.levels}
    said = ", ".join(f"{ASKS.get(ask, ask)} (from {names[where]})" for ask, where in asks.items())
    return f"It asks what comes later than {names[level_id]}: {said}." if said else ""


def in_words(found: Fit) -> str:
    width = max(len(level.level_name) for level in found.levels)
    table = (f"  {level.level_name:<{width}}  {level.verdict.replace('_', ' '):<12}  {verdict(level)}".rstrip()
             for level in found.levels)  # fmt: skip
    return "\n".join([*filter(None, (headline(found), why(found), later(found))), "", *table])
