"""All attempts of one horse in columns, sorted by day, outing and fence: indexed once, read per requirement."""

from collections.abc import Iterable
from dataclasses import dataclass, field
from datetime import date
from itertools import chain
from operator import itemgetter

import numpy as np

from fieldtally.book import words
from fieldtally.readiness.fence_asks import ASK_BIT
from fieldtally.readiness.shapes import SIDES, Manners, PartList, Parts, freeze_manners
from fieldtally.readiness.weight import recency

CLEAR, STOP, FALL, OTHER = range(4)
RESULT = dict.fromkeys(words.OUTCOMES, OTHER) | dict.fromkeys(words.STOPS, STOP) | dict.fromkeys(words.FALLS, FALL)
RESULT["clear"] = CLEAR
SEVERITY = {CLEAR: 0, OTHER: 1, STOP: 2, FALL: 3}
ATTITUDE = {None: 0} | {attitude: place for place, attitude in enumerate(words.ATTITUDES, start=1)}
NOWHERE = (-1, False)
NOBODY_SAID = (None,) * len(SIDES)

of_part = itemgetter("fence_id", "element", "height_cm")
of_manner = itemgetter("outcome", "attitude")
of_presentation = itemgetter(*SIDES)


@dataclass(frozen=True)
class Outings:
    """Outings of one horse, oldest first: `number` by id, day as an ordinal, and a number for the field."""

    number: dict[str, int]
    day: np.ndarray
    place: np.ndarray


@dataclass(frozen=True)
class Attempts:
    """One row per attempt, and one per combination met as a whole.

    `records` holds the record behind each row (the first of a combination's); `day` is the outing's date
    as an ordinal; `group` numbers one fence element in one outing; `place` numbers the field.
    """

    records: list
    outing: np.ndarray
    day: np.ndarray
    place: np.ndarray
    group: np.ndarray
    part: np.ndarray
    manner: np.ndarray
    result: np.ndarray
    attitude: np.ndarray
    parts: Parts
    manners: Manners
    rows_by_ask: dict[str, np.ndarray]
    faded: dict[tuple[int, float], np.ndarray] = field(default_factory=dict)

    def fades(self, today: int, half_life_days: float) -> np.ndarray:
        """What is left of each row's weight on the ordinal `today`, worked out once for all requirements."""
        key = (today, half_life_days)
        if key not in self.faded:
            self.faded[key] = recency(today - self.day, half_life_days)
        return self.faded[key]

    def label(self, row: int) -> str:
        return self.parts.labels[self.part[row]]

    def fence_id(self, row: int) -> str:
        return self.parts.fence_ids[self.part[row]]


@dataclass
class Rows:
    """Collects rows; what repeats (parts, manners) is looked up, not worked out again."""

    outings: dict[str, int]
    fences: dict[str, dict]
    part_list: PartList = field(default_factory=PartList)
    parts: dict[tuple, tuple[int, bool]] = field(default_factory=dict)
    manners: dict[tuple, int] = field(default_factory=dict)
    records: list = field(default_factory=list)
    rows: list[tuple[int, int, int]] = field(default_factory=list)
    combinations: dict[tuple, tuple] = field(default_factory=dict)

    def add_all(self, attempts: Iterable) -> None:
        """The longest loop of a standing: one look at each attempt, and nothing that could be done later."""
        outings, parts, manners = self.outings, self.parts, self.manners
        records, rows = self.records, self.rows
        for record in attempts:
            body = record.body
            outing = outings.get(body["outing_id"])
            if outing is None:
                continue
            key = of_part(body)
            part = parts.get(key) or self.new_part(key)
            if part is NOWHERE:
                continue
            manner = of_manner(body) + of_presentation(body["presentation"])
            number = manners.get(manner)
            if number is None:
                number = manners[manner] = len(manners)
            rows.append((outing, part[0], number))
            records.append(record)
            if part[1]:
                self.remember((outing, key[0], body["sequence_id"] or record.record_id), record, manner[0], key[1])
        for (outing, fence_id, _), met in self.combinations.items():
            self.add_combination(outing, fence_id, *met)

    def new_part(self, key: tuple) -> tuple[int, bool]:
        """Where the part is listed, and whether it belongs to a combination."""
        fence = self.fences.get(key[0])
        found = NOWHERE if fence is None else (self.part_list.add(*key[:1], fence, *key[1:]), bool(fence["elements"]))
        self.parts[key] = found
        return found

    def remember(self, together: tuple, record, outcome: str, element: str | None) -> None:
        """What belongs to one presentation at a combination: its first record, all outcomes and elements."""
        met = self.combinations.get(together)
        if met is None:
            self.combinations[together] = record, [outcome], [element]
        else:
            met[1].append(outcome)
            met[2].append(element)

    def add_combination(self, outing: int, fence_id: str, record, outcomes: list[str], letters: list) -> None:
        """A combination is clear when every element met was clear, and two or more were; a fall or stop
        anywhere in it is one of the whole. An attempt that names no element stands for the whole fence."""
        fence = self.fences[fence_id]
        outcome = worst(outcomes)
        elements = len(fence["elements"]) if outcome != "clear" or None in letters else len(set(letters))
        if elements < 2:
            return
        key = (fence_id, elements)
        if key not in self.parts:
            self.parts[key] = self.part_list.add_combination(fence_id, fence, elements), True
        self.records.append(record)
        manner = self.manners.setdefault((outcome, None, *NOBODY_SAID), len(self.manners))
        self.rows.append((outing, self.parts[key][0], manner))


def worst(outcomes: list[str]) -> str:
    if outcomes.count("clear") == len(outcomes):
        return "clear"
    return max(outcomes, key=lambda each: SEVERITY[RESULT[each]])


def outings_of(outings: dict, horse_id: str, as_of: date) -> Outings:
    last = as_of.isoformat()
    bodies = ((key, record.body) for key, record in outings.items())
    mine = sorted(
        (body["date"], key, body["field_id"])
        for key, body in bodies
        if body["horse_id"] == horse_id and body["date"] <= last
    )
    fields: dict = {}
    places = [fields.setdefault(field, len(fields)) for _, _, field in mine]
    days = [date.fromisoformat(day).toordinal() for day, _, _ in mine]
    number = {key: place for place, (_, key, _) in enumerate(mine)}
    return Outings(number, np.array(days, dtype=np.int64), np.array(places, dtype=np.int64))


def index_attempts(attempts: Iterable, outings: dict, fences: dict, horse_id: str, as_of: date) -> Attempts:
    """Columns of every attempt with `horse_id` up to and with the day `as_of`. An attempt whose outing or
    fence was taken back is left out."""
    mine = outings_of(outings, horse_id, as_of)
    rows = Rows(mine.number, {key: record.body for key, record in fences.items()})
    rows.add_all(attempts)
    return in_columns(rows, mine)


def in_columns(rows: Rows, outings: Outings) -> Attempts:
    parts = rows.part_list.freeze()
    manners = freeze_manners([(RESULT[key[0]], ATTITUDE[key[1]], *key[2:]) for key in rows.manners])
    flat = np.fromiter(chain.from_iterable(rows.rows), dtype=np.int64, count=3 * len(rows.rows))
    outing, part, manner = flat.reshape(-1, 3).T
    group = outing * len(parts.spot) + parts.spot[part]
    order = np.argsort(group, kind="stable")
    outing, part, manner = outing[order], part[order], manner[order]
    asks = parts.asks[part]
    return Attempts(
        [rows.records[row] for row in order.tolist()],
        outing, outings.day[outing], outings.place[outing], group[order], part, manner,
        manners.result[manner], manners.attitude[manner], parts, manners,
        {ask: np.flatnonzero(asks & bit) for ask, bit in ASK_BIT.items()},
    )  # fmt: skip
