"""Marshmallow fields that say what was wrong and how to mend it.

Every failure is a `ValidationError` whose message is a dict: `code`, `message`, `fix`. The path to the
field is marshmallow's own. Lengths are in cm, m or ms as the field's name says.
"""

import math
import re
from collections.abc import Iterable
from datetime import date

from marshmallow import ValidationError, fields

from fieldtally.book.shown import between, shown

UUID_PATTERN = re.compile(r"[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}")
DAY_PATTERN = re.compile(r"[0-9]{4}-[0-9]{2}-[0-9]{2}")
EARLIEST = date(1990, 1, 1)
LATEST = date(2199, 12, 31)


def fail(code: str, message: str, fix: str) -> ValidationError:
    return ValidationError([{"code": code, "message": message, "fix": fix}])


class Text(fields.Field):
    """Text as typed, at most `most` characters; lone surrogates and NUL are refused, for no database or
    screen can show them."""

    def __init__(self, most: int = 200, least: int = 0, **kwargs) -> None:
        self.most, self.least = most, least
        super().__init__(metadata={"most": most}, **kwargs)

    def _deserialize(self, value, attr, data, **kwargs):
        if not isinstance(value, str):
            raise fail("not_text", "This must be text.", "Send it as a JSON string.")
        if "\x00" in value or any("\ud800" <= c <= "\udfff" for c in value):
            raise fail("bad_text", "This text holds half a character that nothing can show.",
                       "Delete the broken character and type it again.")
        if len(value) > self.most:
            raise fail("too_long", f"This text has {len(value)} characters; {self.most} fit.",
                       f"Shorten it to {self.most} characters or split it into several notes.")
        if len(value.strip()) < self.least:
            raise fail("empty", "This must not be empty.", "Type a name.")
        return value


class Number(fields.Field):
    """A finite number within [least, most], both in `unit`. Whole numbers only when `whole`."""

    def __init__(self, least: float, most: float, unit: str, whole: bool = False, **kwargs) -> None:
        self.least, self.most, self.unit, self.whole = least, most, unit, whole
        super().__init__(metadata={"least": least, "most": most, "unit": unit, "whole": whole}, **kwargs)

    def _deserialize(self, value, attr, data, **kwargs):
        if isinstance(value, bool) or not isinstance(value, (int, float)):
            raise fail("not_a_number", "This must be a number.", f"Send a number in {self.unit}.")
        if isinstance(value, float) and not math.isfinite(value):
            raise fail("not_a_number", "This is not a finite number.", f"Send a number in {self.unit}.")
        if self.whole and value != int(value):
            raise fail("not_whole", f"{value} is not a whole number.", f"Round it to a whole {self.unit}.")
        if not self.least <= value <= self.most:
            allowed = between(self.least, self.most, self.unit)
            raise fail("out_of_range", f"{shown(value, self.unit)} is outside {allowed}.",
                       f"Enter a value from {allowed}.")
        return int(value) if self.whole else value


class Choice(fields.Field):
    """One word of a closed vocabulary."""

    def __init__(self, words: Iterable[str], **kwargs) -> None:
        self.words = tuple(words)
        super().__init__(metadata={"words": self.words}, **kwargs)

    def _deserialize(self, value, attr, data, **kwargs):
        if not isinstance(value, str) or value not in self.words:
            shown = str(value)[:40].encode("ascii", "replace").decode()
            raise fail("unknown_word", f"“{shown}” is not known here.", f"Use one of: {', '.join(self.words)}.")
        return value


class RecordId(fields.Field):
    """The id of another record of the same logbook: a lower-case UUID."""

    def _deserialize(self, value, attr, data, **kwargs):
        if not isinstance(value, str) or not UUID_PATTERN.fullmatch(value):
            raise fail("bad_id", "This is not a record's id.", "Send the id of a record as a lower-case UUID.")
        return value


class CivilDate(fields.Field):
    """A day in the field's own calendar, `YYYY-MM-DD`, kept as text: it never shifts with a time zone."""

    def _deserialize(self, value, attr, data, **kwargs):
        try:
            plain = isinstance(value, str) and DAY_PATTERN.fullmatch(value)  # fromisoformat reads weeks too
            day = date.fromisoformat(value) if plain else None
        except ValueError:
            day = None
        if day is None:
            raise fail("bad_date", "This is not a date.", "Write it as year-month-day, such as 2026-05-03.")
        if not EARLIEST <= day <= LATEST:
            raise fail("out_of_range", f"{value} is outside {EARLIEST} to {LATEST}.", "Check the year.")
        return value
