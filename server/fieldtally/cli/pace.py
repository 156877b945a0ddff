"""`fieldtally pace`: a stopwatch time over a measured distance as speed, early or late."""

import dataclasses
import re

import click

from fieldtally.cli.asked import refused_in_words
from fieldtally.cli.output import answer, json_option
from fieldtally.trade import units
from fieldtally.trade.lateness import Lateness, lateness
from fieldtally.trade.pace import RELATIVE_U, Pace, speed
from fieldtally.trade.pace_words import detail, headline


def resolution_ms(typed: str) -> float:
    """The step in ms in which a time was typed: 1000 for 63, 100 for 63.2, 10 for 1:03.25."""
    decimals = re.search(r"[.,](\d*)", typed)
    return 1000 / 10 ** len(decimals[1]) if decimals else 1000.0


def as_data(found: Pace, late: Lateness | None) -> dict:
    data = dataclasses.asdict(found) | {"headline": headline(found, late)}
    return data | ({"late": dataclasses.asdict(late) | {"verdict": late.verdict}} if late else {})


def in_words(found: Pace, late: Lateness | None) -> str:
    return headline(found, late) + (f"\n{detail(late)}" if late else "")


@click.command()
@click.option("--distance", required=True, help="Between the two flags: 420m, 0.42km, 460yd.")
@click.option("--time", "elapsed", required=True, help="Flag to flag: 63.2s or 1:03.2. Write the tenths.")
@click.option("--target", help="The speed to hold, in metres per minute.")
@click.option("--measured-by", default="wheel", show_default=True, help=f"How: {', '.join(RELATIVE_U)}.")
@click.option("--distance-error", help="Your own standard uncertainty of the distance: 2m.")
@json_option
def pace(
    distance: str, elapsed: str, target: str | None, measured_by: str, distance_error: str | None, as_json: bool
) -> None:
    """Speed over a measured stretch, with its uncertainty, early or late against a target.

    The ± is one standard uncertainty, from the distance's and from hand timing (0.10 s). Late is positive.
    """
    with refused_in_words():
        error_m = None if distance_error is None else units.distance_m(distance_error, "distance-error")
        metres, elapsed_ms = units.distance_m(distance), units.time_ms(elapsed)
        found = speed(metres, elapsed_ms, error_m, measured_by, resolution_ms(elapsed))
        late = None if target is None else lateness(found, units.speed_mpm(target, "target"))
    answer(as_data(found, late), as_json, lambda: in_words(found, late))
