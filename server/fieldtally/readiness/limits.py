"""What a level limits: the few questions readiness asks of a rulebook.

A value the rulebook does not state is None, and nothing is guessed in its place.
"""

from fieldtally.trade.rulebook import Level, Rulebook

FENCE_DIMENSIONS = (
    "height_cm", "brush_height_cm", "spread_top_cm", "spread_base_cm",
    "spread_without_height_cm", "drop_cm", "water_depth_cm", "face_width_cm",
)  # fmt: skip


# A fence's dimension and the rulebook's quantities that limit it, the first stated one counts; where not
# named here the two have one name.
LIMITED_BY = {
    "height_cm": ("fixed_height_cm",),
    "spread_without_height_cm": ("spread_without_height_cm", "ditch_width_cm"),
}


def fence_limit(level: Level, dimension: str) -> float | None:
    """The greatest a cross-country fence may measure in `dimension`, in cm."""
    for quantity in LIMITED_BY.get(dimension, (dimension,)):
        found = level.value("cross_country", quantity)
        if found is not None:
            return found
    return None


def level_below(rulebook: Rulebook, level: Level) -> Level | None:
    levels = list(rulebook.levels)
    place = [each.id for each in levels].index(level.id)
    return levels[place - 1] if place else None


def height_class_cm(rulebook: Rulebook, level: Level) -> float:
    """The level's fixed height rounded to 5 cm: 79 cm and 80 cm are one class of level. Where it is not
    stated, that of the nearest level below with one; 0 where there is none."""
    heights = (fence_limit(each, "height_cm") for each in rulebook.levels if each.order <= level.order)
    stated = [height for height in heights if height is not None]
    return 5 * round(stated[-1] / 5) if stated else 0


def level_speed_mpm(level: Level) -> float | None:
    """The level's cross-country speed in m/min: its greatest where a range is stated."""
    return level.value("cross_country", "speed_max_mpm") or level.value("cross_country", "speed_mpm")


def show_jumping_height_cm(level: Level) -> float | None:
    return level.value("show_jumping", "height_cm")
