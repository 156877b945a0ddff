"""How far each number of a bar can be turned: beyond these no computation means anything."""

SHARES = (
    "bound", "confidence", "pool_mean", "size_fraction", "target_fraction", "willing_fraction", "falling_fraction",
    "height_fraction",
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
}  # fmt: skip
COUNT = (0, 1_000)
# numbers that count outings, tests and the like from the last one back: none at all is no number of them
AT_LEAST_ONE = ("tests", "outings", "attempts", "canters", "rounds", "results", "sets")


def within(quantity: str, value: float) -> float:
    """The value, or the nearest that this quantity can be turned to."""
    least, most = RANGES.get(quantity, COUNT)
    if quantity in AT_LEAST_ONE:
        least = 1
    return min(max(value, least), most)
