"""How well an instrument measures: what it read along a stretch that was taped."""

from marshmallow import fields

from fieldtally.book import words
from fieldtally.book.bodies.body import Body, optional
from fieldtally.book.fields import Choice, CivilDate, Number, Text, fail

FEWEST_WALKS, MOST_WALKS = 3, 10


def enough_walks(walked_m: list[float]) -> None:
    """Fewer than three walks say too little of how they scatter."""
    if not FEWEST_WALKS <= len(walked_m) <= MOST_WALKS:
        raise fail("out_of_range", f"{len(walked_m)} walks are outside {FEWEST_WALKS} to {MOST_WALKS}.",
                   f"Walk the taped stretch {FEWEST_WALKS} to {MOST_WALKS} times.")


class Calibration(Body):
    """An instrument walked several times along a taped stretch.

    `walked_m` is what it read each time, in its own metres; of paces, one counts as one metre. The factor
    (taped / mean read) and its uncertainty are worked out from these by trade/calibration.py, never stored.
    `taped_u_m`: standard uncertainty of the taped stretch; null means the one assumed for a tape.
    `reading_step_m`: the smallest step the instrument shows.
    """

    instrument = Text(120, 1, required=True)
    measured_by = Choice(words.MEASURED_BY, required=True)
    taped_distance_m = Number(10, 1000, "m", required=True)
    taped_u_m = optional(Number, 0, 10, "m")
    walked_m = fields.List(Number(1, 10_000, "m"), required=True, validate=enough_walks)
    reading_step_m = Number(0, 10, "m", load_default=0.1)
    date = CivilDate(required=True)
    note = optional(Text, 2000)
