"""`fieldtally pace`: a stopwatch time over a measured distance as speed, early or late."""

import dataclasses

import click

from fieldtally.cli import measures
from fieldtally.cli.output import answer, complain, json_option
from fieldtally.trade.bad_input import BadInput
from fieldtally.trade.lateness import Lateness, lateness
from fieldtally.trade.pace import RELATIVE_U, Pace, speed
from fieldtally.trade.pace_words import detail, headline


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
    try:
        elapsed_ms, step_ms = measures.time_ms(elapsed)
        error_m = None if distance_error is None else measures.distance_m(distance_error, "distance-error")
        found = speed(measures.distance_m(distance), elapsed_ms, error_m, measured_by, step_ms)
        late = None if target is None else lateness(found, measures.speed_mpm(target))
    except BadInput as refusal:
        complain(f"{refusal.field}: {refusal.message}", refusal.fix)
    answer(as_data(found, late), as_json, lambda: in_words(found, late))
