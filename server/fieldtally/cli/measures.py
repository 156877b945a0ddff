"""Distances, times and speeds as typed on a command line: read once, here, or refused in words."""

import re

from fieldtally.trade.bad_input import BadInput, above_zero

NUMBER = r"(\d+(?:\.\d*)?|\.\d+)"
DISTANCE = re.compile(rf"{NUMBER}\s*(m|km|yd|yards)?", re.ASCII)
METRES_IN = {"m": 1.0, "km": 1000.0, "yd": 0.9144, "yards": 0.9144}  # international yard, exact
SECONDS = re.compile(rf"{NUMBER}\s*(s|sec)?", re.ASCII)
MINUTES = re.compile(r"(\d+):([0-5]\d(?:\.\d*)?)", re.ASCII)
SPEED = re.compile(rf"{NUMBER}\s*(m/min|mpm)?", re.ASCII)


def distance_m(text: str, field: str = "distance") -> float:
    """Metres from `420m`, `420`, `0.42 km`, `460yd`."""
    found = DISTANCE.fullmatch(text.strip().lower())
    if not found:
        raise BadInput(field, f"“{text}” is not a distance.", "Write it as 420m, 0.42km or 460yd.")
    return above_zero(field, float(found[1]) * METRES_IN[found[2] or "m"], "m")


def resolution_ms(digits: str) -> float:
    """The step in ms in which a number of seconds was written: 1000 for 63, 100 for 63.2."""
    return 1000 / 10 ** len(digits.partition(".")[2])


def time_ms(text: str, field: str = "time") -> tuple[float, float]:
    """(milliseconds, step it was written in, ms) from `63.2s`, `63.2`, `1:03.2`."""
    trimmed = text.strip().lower()
    minutes, seconds = MINUTES.fullmatch(trimmed), SECONDS.fullmatch(trimmed)
    if minutes:
        value, digits = int(minutes[1]) * 60 + float(minutes[2]), minutes[2]
    elif seconds:
        value, digits = float(seconds[1]), seconds[1]
    else:
        raise BadInput(field, f"“{text}” is not a time.", "Write it as 63.2s or 1:03.2.")
    return above_zero(field, round(value * 1000, 6), "ms"), resolution_ms(digits)


def speed_mpm(text: str, field: str = "target") -> float:
    """Metres per minute from `420` or `420 m/min`."""
    found = SPEED.fullmatch(text.strip().lower())
    if not found:
        raise BadInput(field, f"“{text}” is not a speed.", "Write it in metres per minute, such as 420.")
    return above_zero(field, float(found[1]), "m/min")
