"""All attempts of one horse in columns, sorted by day, outing and fence: indexed once, read per requirement."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date
from operator import itemgetter

import numpy as np

from fieldtally.book import words
from fieldtally.readiness.fence_asks import ASK_BIT
from fieldtally.readiness.shapes import SIDES, Shapes, ShapeTable

CLEAR, STOP, FALL, OTHER = range(4)
RESULT = dict.fromkeys(words.OUTCOMES, OTHER) | dict.fromkeys(words.STOPS, STOP) | dict.fromkeys(words.FALLS, FALL)
RESULT["clear"] = CLEAR
ATTITUDE = {None: 0} | {attitude: place for place, attitude in enumerate(words.ATTITUDES, start=1)}

of_body = itemgetter(
    "outing_id", "fence_id", "element", "height_cm", "outcome", "attitude", "sequence_id", "presentation"
)
of_presentation = itemgetter(*SIDES)


@dataclass(frozen=True)
class Attempts:
    """One row per attempt, and one per combination met as a whole.

    `records` holds the record behind each row (the first of a combination's); `day` is the outing's date
    as an ordinal; `group` numbers one fence element in one outing; `place` numbers the field.
    """

    records: list
    outing_ids: tuple[str, ...]
    outing: np.ndarray
    day: np.ndarray
    place: np.ndarray
    group: np.ndarray
    shape: np.ndarray
    result: np.ndarray
    attitude: np.ndarray
    shapes: ShapeTable
    rows_by_ask: dict[str, np.ndarray]


class Rows:
    """Collects rows; what repeats (outings, shapes, groups) is looked up, not worked out again."""

    def __init__(self, outings: dict, fences: dict) -> None:
        self.outings, self.fences = outings, fences
        self.shapes = Shapes()
        self.seen: dict[tuple, int] = {}
        self.groups: dict[tuple, int] = {}
        self.records: list = []
        self.rows: list[tuple] = []
        self.sequences: dict[tuple, list] = {}

    def add(self, record) -> None:
        outing_id, fence_id, element, height_cm, outcome, attitude, sequence_id, presentation = of_body(record.body)
        place = self.outings.get(outing_id)
        fence = self.fences.get(fence_id)
        if place is None or fence is None:
            return
        key = (fence_id, element, height_cm, of_presentation(presentation))
        shape = self.seen.get(key)
        if shape is None:
            shape = self.seen[key] = self.shapes.add(fence_id, fence, element, height_cm, key[3])
        self.append(record, place, (outing_id, fence_id, element), shape, RESULT[outcome], ATTITUDE[attitude])
        if fence["elements"]:
            self.sequences.setdefault((outing_id, fence_id, sequence_id or record.record_id), []).append(record)

    def append(self, record, place: tuple, group_key: tuple, shape: int, result: int, attitude: int) -> None:
        group = self.groups.setdefault(group_key, len(self.groups))
        self.records.append(record)
        self.rows.append((*place, group, shape, result, attitude))

    def add_combination(self, outing_id: str, fence_id: str, records: list) -> None:
        """A combination is clear when every element of it was met and clear; a fall or stop anywhere in it
        is one of the whole. An attempt that names no element stands for the whole fence."""
        fence = self.fences[fence_id]
        whole = any(record.body["element"] is None for record in records)
        met = len(fence["elements"]) if whole else len({record.body["element"] for record in records})
        result = worst_result(RESULT[record.body["outcome"]] for record in records)
        if met < 2 and result == CLEAR:
            return
        elements = len(fence["elements"]) if result != CLEAR else met
        key = (fence_id, elements)
        shape = self.seen.get(key)
        if shape is None:
            shape = self.seen[key] = self.shapes.add_combination(fence_id, fence, elements)
        self.append(records[0], self.outings[outing_id], (outing_id, fence_id, "whole"), shape, result, 0)


def worst_result(results: Iterable[int]) -> int:
    order = {CLEAR: 0, OTHER: 1, STOP: 2, FALL: 3}
    return max(results, key=order.__getitem__)


def outing_rows(outings: dict, horse_id: str, as_of: date) -> tuple[dict, tuple[str, ...]]:
    """Of each outing with this horse up to `as_of`: (its number, its day, its field's number)."""
    last = as_of.isoformat()
    mine = [
        (r.body["date"], key) for key, r in outings.items() if r.body["horse_id"] == horse_id and r.body["date"] <= last
    ]
    mine.sort()
    fields: dict = {}
    rows = {}
    for number, (day, key) in enumerate(mine):
        place = fields.setdefault(outings[key].body["field_id"], len(fields))
        rows[key] = (number, date.fromisoformat(day).toordinal(), place)
    return rows, tuple(key for _, key in mine)


def index_attempts(attempts: Iterable, outings: dict, fences: dict, horse_id: str, as_of: date) -> Attempts:
    """Columns of every attempt with `horse_id` up to and with the day `as_of`. An attempt whose outing or
    fence was taken back is left out."""
    places, outing_ids = outing_rows(outings, horse_id, as_of)
    rows = Rows(places, {key: record.body for key, record in fences.items()})
    for record in attempts:
        rows.add(record)
    for (outing_id, fence_id, _), records in rows.sequences.items():
        rows.add_combination(outing_id, fence_id, records)
    return in_columns(rows, outing_ids)


def in_columns(rows: Rows, outing_ids: tuple[str, ...]) -> Attempts:
    table = np.array(rows.rows, dtype=np.int64).reshape(len(rows.rows), 7)
    order = np.lexsort((table[:, 3], table[:, 0]))
    outing, day, place, group, shape, result, attitude = table[order].T.copy()
    shapes = rows.shapes.freeze()
    asks = shapes.asks[shape] if len(shape) else shape
    by_ask = {ask: np.flatnonzero(asks & bit) for ask, bit in ASK_BIT.items()}
    records = [rows.records[row] for row in order.tolist()]
    return Attempts(records, outing_ids, outing, day, place, group, shape, result, attitude, shapes, by_ask)
