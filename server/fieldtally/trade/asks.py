"""What a fence asks by the way it is built, and which of its measurements decide whether it fits a level."""

# The same closed lists as book/words.py, which a test keeps equal: the book builds on the trade, not the
# other way round.
ASKS = (
    "fixed", "brush", "wide_table", "ditch", "bank", "drop", "water", "combination",
    "narrow", "corner", "angled_line", "bending_line", "bounce", "airy_rail", "show_jump",
)  # fmt: skip
PRESENTATION = {
    "rein": ("left", "right", "straight"),
    "ground": ("level", "uphill", "downhill"),
    "way": ("up", "down", "in", "through", "out"),
    "landing": ("ground", "water"),
    "company": ("alone", "fence_before", "fence_after", "inside_combination"),
    "pace": ("trot", "canter", "gallop"),
}

# profile -> (what it asks where nobody ticked anything, the dimensions that must be measured)
PROFILES = {
    "vertical": (("fixed",), ("height_cm",)),
    "oxer": (("fixed",), ("height_cm", "spread_top_cm")),
    "triple_bar": (("fixed",), ("height_cm", "spread_base_cm")),
    "ramp": (("fixed",), ("height_cm", "spread_base_cm")),
    "table": (("fixed", "wide_table"), ("height_cm", "spread_top_cm", "spread_base_cm")),
    "log": (("fixed",), ("height_cm",)),
    "wall": (("fixed",), ("height_cm",)),
    "palisade": (("fixed",), ("height_cm",)),
    "rail": (("fixed", "airy_rail"), ("height_cm",)),
    "roofed": (("fixed",), ("height_cm", "spread_base_cm")),
    "brush": (("brush",), ("height_cm", "brush_height_cm")),
    "bullfinch": (("brush",), ("height_cm", "brush_height_cm")),
    "corner": (("fixed", "corner"), ("height_cm", "spread_top_cm")),
    "narrow": (("fixed", "narrow"), ("height_cm",)),
    "chevron": (("fixed", "narrow"), ("height_cm",)),
    "keyhole": (("fixed",), ("height_cm",)),
    "trakehner": (("fixed", "ditch"), ("height_cm",)),
    "ditch": (("ditch",), ("spread_without_height_cm",)),
    "ditch_and_brush": (("brush", "ditch"), ("height_cm", "brush_height_cm")),
    "step": (("bank",), ("height_cm",)),
    "bank": (("bank",), ("height_cm",)),
    "drop": (("drop",), ("drop_cm",)),
    "water": (("water",), ()),
    "sunken_road": (("bank", "drop"), ("drop_cm",)),
    "coffin": (("fixed", "ditch"), ("height_cm",)),
    "cross_pole": (("show_jump",), ("height_cm",)),
}


def asks_of(part: dict) -> tuple[str, ...]:
    """What a fence or element asks: what was ticked, or what its profile asks by its nature."""
    return tuple(part.get("asks") or PROFILES[part["profile"]][0])


def needed_dimensions(part: dict) -> tuple[str, ...]:
    return PROFILES[part["profile"]][1]
