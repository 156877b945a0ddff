"""Looks over a parsed JSON value before anything else touches it: is it small, shallow and clean enough to
be checked, kept and shown again? Works without recursion and stops at the first trouble, so that nothing a
stranger sends costs more than its limit."""

import math
from dataclasses import dataclass

MOST_BYTES = 64 * 1024
MOST_DEPTH = 16
MOST_WHOLE = 2**53 - 1  # the largest whole number that a browser keeps exactly


@dataclass(frozen=True)
class Trouble:
    """`path` leads to the value, its steps joined by dots; None: the value itself."""

    code: str
    path: str | None
    message: str
    fix: str


def find_trouble(value: object) -> Trouble | None:
    """The first reason why the value cannot be an entry, or None. Never raises."""
    spent, ahead = 0, [(value, "", 0)]
    while ahead:
        each, path, depth = ahead.pop()
        spent += _size(each)
        if spent > MOST_BYTES:
            return too_large(path.lstrip(".") if isinstance(each, str) else None)
        if (trouble := _unfit(each, path.lstrip("."), depth)) is not None:
            return trouble
        if isinstance(each, dict):
            ahead.extend((inner, f"{path}.{key}", depth + 1) for key, inner in each.items())
        elif isinstance(each, list):
            ahead.extend((inner, f"{path}.{place}", depth + 1) for place, inner in enumerate(each))
    return None


def too_large(path: str | None = None) -> Trouble:
    return Trouble("entry_too_large", path or None, f"One entry may take {MOST_BYTES // 1024} KiB.",
                   "Shorten its text or split it into several notes.")


def _size(value: object) -> int:
    """At most the bytes this value itself takes as compact JSON; what is inside a list or object counts 1."""
    if isinstance(value, str):
        return len(value) + 2
    if isinstance(value, dict):
        return 2 * len(value) + sum(len(key) for key in value if isinstance(key, str)) + 1
    return len(value) + 1 if isinstance(value, list) else 1


def _unfit(value: object, path: str, depth: int) -> Trouble | None:
    if depth > MOST_DEPTH:
        return Trouble("too_deep", None, "This entry is nested too deeply.", "Send the body as documented.")
    if isinstance(value, str):
        return None if _shown(value) else bad_text(path)
    if isinstance(value, dict):
        return None if all(isinstance(key, str) and _shown(key) for key in value) else bad_text(path)
    if value is None or isinstance(value, (bool, list)):
        return None
    return _unfit_number(value, path)


def _unfit_number(value: object, path: str) -> Trouble | None:
    if isinstance(value, int):
        return None if abs(value) <= MOST_WHOLE else _bad_number(path)
    if isinstance(value, float):
        return None if math.isfinite(value) else _bad_number(path)
    return Trouble("not_json", path or None, "This is not a JSON value.", "Send the entry as JSON.")


def _bad_number(path: str) -> Trouble:
    return Trouble("not_a_number", path or None, "This is not a finite number of ordinary size.",
                   "Enter the number again.")


def bad_text(path: str) -> Trouble:
    return Trouble("bad_text", path or None, "This text holds half a character that nothing can show.",
                   "Delete the broken character and type it again.")


def _shown(text: str) -> bool:
    return text.isascii() or not any("\ud800" <= character <= "\udfff" for character in text)
