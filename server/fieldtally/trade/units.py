"""Lengths, distances, times and speeds as people type them: read once, at the edge, or refused in words.

Lengths become cm rounded to 0.01, distances m, times whole ms, speeds m/min. An inch is 2.54 cm, a foot
30.48 cm, a yard 0.9144 m exactly (international yard and pound agreement, 1959). Every refusal is a
`BadInput` naming the field, what is wrong and how to write it. The client reads the same vectors
(fixtures/contract/units.json).
"""

import math
import re

from fieldtally.trade.bad_input import BadInput

CM_PER_INCH, CM_PER_FOOT = 2.54, 30.48
LEAST_CM, MOST_CM = 1, 1000
LONGEST = 40  # characters; no measure takes more

NUMBER = r"(\d+(?:[.,]\d*)?|[.,]\d+)"
FEET = re.compile(rf"{NUMBER}(?:'|ft|feet|foot)(?:{NUMBER}(?:\"|in|inch|inches)?)?", re.ASCII)
INCHES = re.compile(rf"{NUMBER}(?:\"|in|inch|inches)", re.ASCII)
METRIC = re.compile(rf"{NUMBER}(mm|cm|m)?", re.ASCII)
METRES_AND_CM = re.compile(r"(\d)m(\d\d)(?:cm)?", re.ASCII)  # 1m10
DISTANCE = re.compile(rf"{NUMBER}(m|km|yd|yards|ft|feet)?", re.ASCII)
SECONDS = re.compile(rf"{NUMBER}(?:s|sec|seconds)?", re.ASCII)
CLOCK = re.compile(r"(\d+):([0-5]\d(?:[.,]\d*)?)", re.ASCII)
MINUTES = re.compile(rf"(\d+)min(?:{NUMBER}(?:s|sec)?)?", re.ASCII)
SPEED = re.compile(rf"{NUMBER}(m/min|mpm|m/s|km/h|kph)?", re.ASCII)

CM_IN = {"mm": 0.1, "cm": 1.0, "m": 100.0, None: 1.0}
METRES_IN = {"m": 1.0, "km": 1000.0, "yd": 0.9144, "yards": 0.9144, "ft": 0.3048, "feet": 0.3048, None: 1.0}
MPM_IN = {"m/min": 1.0, "mpm": 1.0, "m/s": 60.0, "km/h": 1000 / 60, "kph": 1000 / 60, None: 1.0}

# what phones and keyboards make of feet, inches and halves
SPELLINGS = {"’": "'", "‘": "'", "′": "'", "`": "'", "”": '"', "“": '"', "″": '"', "''": '"',
             "½": ".5", "¼": ".25", "¾": ".75"}  # fmt: skip


def tidy(text: str, field: str = "length") -> str:
    """Lower case, one spelling of each mark, no spaces."""
    if len(text) > LONGEST:
        raise BadInput(field, f"{len(text)} characters are too many for one measure.", "Write it as 90 cm or 2'11\".")
    plain = "".join(text.split()).lower()
    for seen, meant in SPELLINGS.items():
        plain = plain.replace(seen, meant)
    return plain


def number_in(digits: str, field: str) -> float:
    """A number with a decimal point or comma; `1,850` is refused, for it can be read as either."""
    if re.fullmatch(r"\d+,\d{3}", digits):
        raise BadInput(field, f"“{digits}” can be read in two ways.", "Write 1850 or 1.85, without the comma.")
    return float(digits.replace(",", "."))


def rounded(value: float, places: int) -> float:
    """To `places` decimals, halves up; the client rounds by the same two operations."""
    scale = 10**places
    return math.floor(value * scale + 0.5) / scale


def within(field: str, value: float, least: float, most: float, unit: str, places: int, fix: str) -> float:
    """`value` rounded to `places`, or BadInput where it is outside `least` to `most`."""
    if not least <= value <= most:
        raise BadInput(field, f"{value:g} {unit} is outside {least:g} to {most:g} {unit}.", fix)
    return rounded(value, places)


def feet_cm(found: re.Match, field: str) -> float:
    feet, inches = number_in(found[1], field), number_in(found[2] or "0", field)
    if inches >= 12 or (found[2] and feet != int(feet)):
        raise BadInput(field, f"{found[0]} is not feet and inches.", "Inches go from 0 to 11: write it as 2'11\".")
    return feet * CM_PER_FOOT + inches * CM_PER_INCH


def length_in_cm(plain: str, field: str) -> float | None:
    """The length in cm, or None where `plain` has no form we know."""
    if found := METRES_AND_CM.fullmatch(plain):
        return int(found[1]) * 100 + int(found[2])
    if found := METRIC.fullmatch(plain):
        return number_in(found[1], field) * CM_IN[found[2]]
    if found := INCHES.fullmatch(plain):
        return number_in(found[1], field) * CM_PER_INCH
    if found := FEET.fullmatch(plain):
        return feet_cm(found, field)
    return None


def length_cm(text: str, field: str = "height", least: float = LEAST_CM, most: float = MOST_CM) -> float:
    """Centimetres from `2'11"`, `2ft11`, `2 ft 11 in`, `35in`, `0.90 m`, `0,90 m`, `1m10`, `90 cm`, `90`.

    A bare number is cm. `least` and `most` bound the answer in cm.
    """
    length = length_in_cm(tidy(text, field), field)
    if length is None:
        raise BadInput(field, f"“{text}” is not a length.", "Write it as 90 cm, 0.90 m or 2'11\".")
    return within(field, length, least, most, "cm", 2, "Write the unit with it: 90 cm, 0.90 m or 2'11\".")


def distance_m(text: str, field: str = "distance") -> float:
    """Metres from `420m`, `420`, `0.42 km`, `460yd`."""
    found = DISTANCE.fullmatch(tidy(text, field))
    if not found:
        raise BadInput(field, f"“{text}” is not a distance.", "Write it as 420m, 0.42km or 460yd.")
    metres = number_in(found[1], field) * METRES_IN[found[2]]
    return within(field, metres, 0.1, 100_000, "m", 4, "Write it as 420m, 0.42km or 460yd.")


def time_ms(text: str, field: str = "time") -> int:
    """Whole milliseconds from `63.2s`, `63.2`, `1:03.2`, `5:00`, `5 min`, `5 min 20 s`."""
    plain = tidy(text, field)
    if found := CLOCK.fullmatch(plain) or MINUTES.fullmatch(plain):
        seconds = int(found[1]) * 60 + number_in(found[2] or "0", field)
    elif found := SECONDS.fullmatch(plain):
        seconds = number_in(found[1], field)
    else:
        raise BadInput(field, f"“{text}” is not a time.", "Write it as 63.2s or 1:03.2.")
    return int(within(field, seconds * 1000, 1, 86_400_000, "ms", 0, "Write it as 63.2s or 1:03.2."))


def speed_mpm(text: str, field: str = "speed") -> float:
    """Metres per minute from `420`, `420 m/min`, `7 m/s`, `25 km/h`."""
    found = SPEED.fullmatch(tidy(text, field))
    if not found:
        raise BadInput(field, f"“{text}” is not a speed.", "Write it in metres per minute, such as 420.")
    speed = number_in(found[1], field) * MPM_IN[found[2]]
    return within(field, speed, 50, 1000, "m/min", 2, "Write it in metres per minute, such as 420.")


def rounding_cm(text: str) -> float:
    """Half the step in which a length was written: 1.27 cm for whole inches, 0.5 cm for 90 cm or 0.90 m."""
    plain = tidy(text)
    digits = re.findall(NUMBER, plain)[-1]
    decimals = len(digits.replace(",", ".").partition(".")[2])
    metric = METRIC.fullmatch(plain)
    unit = CM_IN[metric[2]] if metric else 1.0 if METRES_AND_CM.fullmatch(plain) else CM_PER_INCH
    return unit / 10**decimals / 2


def show_cm(cm: float) -> str:
    """`90 cm`, `88.9 cm`."""
    return f"{rounded(cm, 1):g} cm"


def show_metres(cm: float) -> str:
    """`0.90 m`: to the centimetre."""
    return f"{rounded(cm / 100, 2):.2f} m"


def show_feet(cm: float) -> str:
    """`2'11"`: to the nearest inch, half an inch up."""
    inches = int(rounded(cm / CM_PER_INCH, 0))
    return f"{inches // 12}'{inches % 12}\""


def show_time(ms: int) -> str:
    """`5:00`, `1:03.2`: minutes and seconds, tenths where there are any."""
    tenths = int(rounded(ms / 100, 0))
    minutes, rest = divmod(tenths, 600)
    seconds, tenth = divmod(rest, 10)
    return f"{minutes}:{seconds:02d}" + (f".{tenth}" if tenth else "")
