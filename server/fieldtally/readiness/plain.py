"""Small pieces of plain English: numbers in words, dates, plurals."""

from datetime import date

SMALL = ("no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve")
MONTHS = (
    "January", "February", "March", "April", "May", "June", "July",
    "August", "September", "October", "November", "December",
)  # fmt: skip


def in_words(count: int) -> str:
    return SMALL[count] if 0 <= count < len(SMALL) else str(count)


def many(count: int, one: str, more: str | None = None) -> str:
    """“1 outing”, “3 outings”."""
    return f"{count} {one if count == 1 else more or one + 's'}"


def were(count: int) -> str:
    """“1 was”, “3 were”."""
    return f"{count} was" if count == 1 else f"{count} were"


def many_in_words(count: int, one: str, more: str | None = None) -> str:
    """“one outing”, “three outings”."""
    return f"{in_words(count)} {one if count == 1 else more or one + 's'}"


def times_in_words(count: int) -> str:
    """“once”, “twice”, “three times”."""
    return {1: "once", 2: "twice"}.get(count) or f"{in_words(count)} times"


def out_of_ten(chance: float) -> str:
    """“about seven”, “fewer than one”, “nearly all”."""
    count = int(10 * chance + 0.5)
    return {0: "fewer than one", 10: "nearly all"}.get(count) or f"about {in_words(count)}"


def sentence(text: str) -> str:
    """Begins with a capital and ends with a full stop."""
    text = text[0].upper() + text[1:]
    return text if text.endswith((".", "!", "?")) else text + "."


def day_words(day: date | int) -> str:
    day = date.fromordinal(day) if isinstance(day, int) else day
    return f"{day.day} {MONTHS[day.month - 1]} {day.year}"


def iso(day: int | None) -> str | None:
    return None if day is None else date.fromordinal(day).isoformat()


def percent(share: float) -> str:
    """“62 %”, rounded to the nearest whole per cent, halves up."""
    return f"{int(share * 100 + 0.5)} %"


def chance(share: float) -> int:
    """A chance that was estimated, as a whole per cent: never 0 or 100, for nothing written down proves either."""
    return min(99, max(1, int(share * 100 + 0.5)))


def span(days: float) -> str:
    """“year”, “two years”, “180 days”: as in “in the last …”."""
    return {365: "year", 730: "two years"}.get(int(days)) or many(int(days), "day")


def listed(parts: list[str]) -> str:
    """“a, b and c”."""
    return parts[0] if len(parts) == 1 else f"{', '.join(parts[:-1])} and {parts[-1]}"
