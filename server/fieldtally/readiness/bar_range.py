"""How far each number of a bar can be turned: beyond these no computation means anything.

A change is refused before it is saved (`trouble_with`); one that came by another way, or was saved by an older
release with wider limits, counts as the nearest that means something (`within`).
"""

SHARES = (
    "bound", "confidence", "pool_mean", "size_fraction", "target_fraction", "willing_fraction", "falling_fraction",
    "height_fraction", "repeat_discount",
)  # fmt: skip
SHARE = (0.01, 0.99)
RANGES: dict[str, tuple[float, float]] = dict.fromkeys(SHARES, SHARE) | {
    "size_fraction": (0.01, 1.2),
    "target_fraction": (0.01, 1.2),
    "height_fraction": (0.01, 1.5),
    "repeat_discount": (0.0, 1.0),
    "half_life_days": (1, 36_500),
    "window_days": (1, 36_500),
    "valid_days": (1, 3_650),
    "pool_strength": (0, 100),
    "pool_stand_in": (0.1, 100),
    "fresh_weight": (0, 50),
    "clear": (1, 50),
    "bad_day_stops": (2, 50),
    "last_canters": (2, 100),
    "last_attempts": (1, 1_000),
    "lately": (1, 500),
    "percent": (0, 100),
    "worst_percent": (0, 100),
    "height_above_cm": (-50, 50),
    "mean": (1, 5),
    "worst": (1, 5),
    "low_mark": (0, 10),
    # these count outings, tests and the like from the last one back: none at all is no number of them
    **dict.fromkeys(("tests", "canters", "rounds", "results", "sets"), (1, 100)),
    "outings": (1, 200),
    "attempts": (1, 1_000),
    **dict.fromkeys(("fields", "venues", "horses", "low_mark_times", "combinations", "knockdowns"), (0, 50)),
    "rebuild_clear": (0, 50), "rebuild_clear_bad_day": (0, 50), "rebuild_clear_fall": (0, 50),
    "rebuild_outings": (0, 50), "rebuild_outings_bad_day": (0, 50), "rebuild_outings_fall": (0, 50),
    "bias_mpm": (0, 200),
    "spread_mpm": (0, 200),
    "spread_percent": (0, 100),
    "dressage_penalties": (0, 100),
    "show_jumping_penalties": (0, 100),
    "minute": (0, 60),
    "above_resting_bpm": (0, 200),
    "least_cm": (1, 250),
    "dropped": (0, 1),
}  # fmt: skip
COUNT = (0, 1_000)
# what may have decimals beside the shares; everything else is counted
MEASURED = (
    "pool_strength", "pool_stand_in", "fresh_weight", "percent", "worst_percent", "spread_percent", "height_above_cm",
    "mean", "worst", "low_mark", "bias_mpm", "spread_mpm", "hours", "minute", "above_resting_bpm", "seconds_over",
    "least_cm", "dressage_penalties", "show_jumping_penalties",
)  # fmt: skip


def range_of(quantity: str) -> tuple[float, float]:
    """The least and the most that a quantity can be turned to."""
    return RANGES.get(quantity, COUNT)


def is_whole(quantity: str) -> bool:
    return quantity not in SHARES and quantity not in MEASURED


def within(quantity: str, value: float) -> float:
    """The value, or the nearest that this quantity can be turned to."""
    least, most = range_of(quantity)
    return min(max(value, least), most)


def trouble_with(quantity: str, value: float) -> tuple[str, str, str] | None:
    """Code, message and fix for a value that this quantity cannot be turned to."""
    least, most = range_of(quantity)
    if not least <= value <= most:
        allowed = f"{least:g} to {most:g}"
        return "out_of_range", f"{value:g} is outside {allowed}.", f"Write a number from {allowed}."
    if is_whole(quantity) and value != int(value):
        return "not_whole", f"{value:g} is not a whole number.", f"Round it, to {round(value)}."
    return None
