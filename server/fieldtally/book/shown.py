"""Numbers as a person reads them in a message: 10,000 m, 0.5 s, 2:00:00."""

MINUTE_MS, LONGEST_CLOCK_MS = 60_000, 14 * 86_400_000
MOST_DIGITS = 1e15


def shown(value: float, unit: str) -> str:
    """`value` with its unit; a duration in ms as seconds, or from a minute on as h:mm:ss."""
    if unit == "ms" and abs(value) <= LONGEST_CLOCK_MS:
        return duration(value)
    return f"{plain(value, unit)} {unit}"


def between(least: float, most: float, unit: str) -> str:
    """“1 to 250 cm”, “0.5 s to 2:00:00”."""
    low = shown(least, unit) if unit == "ms" else plain(least, unit)
    return f"{low} to {shown(most, unit)}"


def plain(value: float, unit: str = "") -> str:
    """`value` with thousands apart and no exponent; years are not set apart."""
    if abs(value) >= MOST_DIGITS:
        return f"{value:.3g}"
    if unit == "year":
        return f"{value:g}"
    whole, _, part = f"{value:,.6f}".rstrip("0").partition(".")
    return f"{whole}.{part}" if part else whole


def duration(ms: float) -> str:
    """500 ms -> 0.5 s, 61,200 ms -> 0:01:01.2, 7,200,000 ms -> 2:00:00."""
    if abs(ms) < MINUTE_MS:
        return f"{plain(ms / 1000)} s"
    seconds = abs(ms) / 1000
    hours, minutes = int(seconds // 3600), int(seconds // 60) % 60
    rest = f"{seconds % 60:06.3f}".rstrip("0").rstrip(".")
    return f"{'-' if ms < 0 else ''}{hours}:{minutes:02d}:{rest}"
