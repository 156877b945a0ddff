"""The outings of one horse in columns, oldest first."""

from dataclasses import dataclass
from datetime import date

import numpy as np

from fieldtally.readiness.numbering import Numbering


@dataclass(frozen=True)
class Outings:
    """`number` by id, `day` as an ordinal, and in `place` a number for the field."""

    number: dict[str, int]
    day: np.ndarray
    place: np.ndarray


def outings_of(outings: dict, horse_id: str, as_of: date) -> Outings:
    last = as_of.isoformat()
    bodies = ((key, record.body) for key, record in outings.items())
    mine = sorted(
        (body["date"], key, body["field_id"])
        for key, body in bodies
        if body["horse_id"] == horse_id and body["date"] <= last
    )
    fields = Numbering()
    places = [fields[field] for _, _, field in mine]
    days = [date.fromisoformat(day).toordinal() for day, _, _ in mine]
    number = {key: place for place, (_, key, _) in enumerate(mine)}
    return Outings(number, np.array(days, dtype=np.int64), np.array(places, dtype=np.int64))
