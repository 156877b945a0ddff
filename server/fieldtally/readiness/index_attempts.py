"""Reads a horse's attempts into columns."""

from collections.abc import Iterable
from dataclasses import dataclass, field
from datetime import date
from operator import itemgetter

import numpy as np

from fieldtally.readiness.attempts import ATTITUDE, RESULT, Attempts
from fieldtally.readiness.fence_asks import ASK_BIT
from fieldtally.readiness.met_whole import SEVERITY, Whole, met_whole
from fieldtally.readiness.numbering import Numbering
from fieldtally.readiness.outings_of_horse import Outings, outings_of
from fieldtally.readiness.shapes import SIDES, PartList, freeze_manners

NOBODY_SAID = (None,) * len(SIDES)
# an outcome for each result, by the result's number
OUTCOME_OF = [next(outcome for outcome in RESULT if RESULT[outcome] == result) for result in range(len(SEVERITY))]

of_attempt = itemgetter(
    "outing_id", "fence_id", "element", "height_cm", "outcome", "attitude", "presentation", "sequence_id"
)
of_presentation = itemgetter(*SIDES)


@dataclass
class Met:
    """One entry per attempt, in the order they came in: its record, its sequence id, and the numbers of its
    outing, of its part (fence, element, height) and of its manner (outcome, attitude, presentation). What
    repeats is numbered, and worked out once for all its numbers."""

    outings: Numbering = field(default_factory=Numbering)
    parts: Numbering = field(default_factory=Numbering)
    manners: Numbering = field(default_factory=Numbering)
    records: list = field(default_factory=list)
    sequence: list[str | None] = field(default_factory=list)
    outing: list[int] = field(default_factory=list)
    part: list[int] = field(default_factory=list)
    manner: list[int] = field(default_factory=list)
    seen: dict[tuple, int] = field(default_factory=dict)

    def add_all(self, attempts: Iterable, outings: Iterable[str], fences: dict) -> None:
        """The longest loop of a standing: one look at each attempt, and nothing that could be done later. An
        attempt whose outing or fence was taken back is left out. Equal presentations are mostly one and the
        same (book.upcast): by its identity its numbers are found without reading it again."""
        parts, manners, part, manner = self.parts, self.manners, self.part.append, self.manner.append
        records, numbers, sequences = self.records.append, self.outing.append, self.sequence.append
        seen, number_of = self.seen, {outing_id: self.outings[outing_id] for outing_id in outings}
        for record in attempts:
            outing_id, fence_id, element, height_cm, outcome, attitude, presentation, sequence = of_attempt(record.body)
            number = number_of.get(outing_id)
            if number is not None and fence_id in fences:
                records(record)
                sequences(sequence)
                numbers(number)
                part(parts[fence_id, element, height_cm])
                said = outcome, attitude, id(presentation)
                place = seen.get(said)
                if place is None:
                    place = seen[said] = manners[outcome, attitude, *of_presentation(presentation)]
                manner(place)


@dataclass(frozen=True)
class Columns:
    """Rows of attempts and of whole combinations, not sorted yet."""

    source: np.ndarray
    outing: np.ndarray
    part: np.ndarray
    manner: np.ndarray

    def each(self) -> tuple[np.ndarray, ...]:
        return self.source, self.outing, self.part, self.manner

    def at(self, rows: np.ndarray) -> "Columns":
        return Columns(*(column[rows] for column in self.each()))


def index_attempts(attempts: Iterable, outings: dict, fences: dict, horse_id: str, as_of: date) -> Attempts:
    """Columns of every attempt with `horse_id` up to and with the day `as_of`, in the order of their numbers: the
    same whatever order they are given in. Those of a day have no other."""
    return index_more(Met(), sorted(attempts, key=came_in), outings, fences, horse_id, as_of)


def came_in(record) -> int:
    """Its number; 0 for what is only supposed, which has none."""
    return record.number or 0


def index_more(met: Met, attempts: Iterable, outings: dict, fences: dict, horse_id: str, as_of: date) -> Attempts:
    """The same where some were read before into `met`, and these are new. The outings and fences of the former
    must be there still; others may have come."""
    mine = outings_of(outings, horse_id, as_of)
    met.add_all(attempts, mine.number, fences)
    part_list = PartList()
    for fence_id, element, height_cm in met.parts:
        part_list.add(fence_id, fences[fence_id].body, element, height_cm)
    each = in_numbers(met.part), in_numbers(met.manner)
    single = Columns(np.arange(len(met.outing)), outing_column(met, mine), *each)
    return in_order(with_combinations(single, met, fences, part_list), met, part_list, mine)


def outing_column(met: Met, outings: Outings) -> np.ndarray:
    """Where the outing of each attempt stands among all by day. One that no attempt is at may be gone."""
    stands = in_numbers([outings.number.get(outing_id, 0) for outing_id in met.outings])
    return stands[in_numbers(met.outing)]


def with_combinations(single: Columns, met: Met, fences: dict, part_list: PartList) -> Columns:
    listed = in_numbers([len(fences[fence_id].body["elements"]) for fence_id, _, _ in met.parts])
    at_combinations = np.flatnonzero(listed[single.part] > 0)
    if not len(at_combinations):
        return single
    whole = combinations_among(met, single.at(at_combinations), listed)
    first = single.at(at_combinations[whole.first])
    part, manner = parts_of(met, whole, first, fences, part_list), manners_of(met, whole)
    combined = Columns(first.source, first.outing, part, manner)
    return Columns(*(np.concatenate(both) for both in zip(single.each(), combined.each(), strict=True)))


def in_numbers(values: list[int]) -> np.ndarray:
    return np.array(values, dtype=np.int64)


def combinations_among(met: Met, rows: Columns, listed: np.ndarray) -> Whole:
    """Attempts at one fence with one sequence id in one outing are one presentation at it; without a sequence
    id each stands alone."""
    presentations, letters = Numbering(), Numbering({None: 0})
    sequences = [met.sequence[source] or met.records[source].record_id for source in rows.source.tolist()]
    keys = zip(rows.outing.tolist(), numbered_fences(met)[rows.part].tolist(), sequences, strict=True)
    letter_of = in_numbers([letters[element] for _, element, _ in met.parts])
    result_of = in_numbers([RESULT[outcome] for outcome, *_ in met.manners])
    presentation = in_numbers([presentations[key] for key in keys])
    return met_whole(presentation, letter_of[rows.part], result_of[rows.manner], listed[rows.part])


def numbered_fences(met: Met) -> np.ndarray:
    """A number of the fence by the number of the part."""
    numbers = Numbering()
    return in_numbers([numbers[fence_id] for fence_id, _, _ in met.parts])


def parts_of(met: Met, whole: Whole, first: Columns, fences: dict, part_list: PartList) -> np.ndarray:
    """The part that each combination is; those of one fence with as many elements are one."""
    before, numbers = len(part_list.rows), Numbering()
    fence_ids = list(dict.fromkeys(fence_id for fence_id, _, _ in met.parts))
    keys = zip(numbered_fences(met)[first.part].tolist(), whole.elements.tolist(), strict=True)
    found = in_numbers([numbers[key] for key in keys])
    for fence, count in numbers:
        part_list.add_combination(fence_ids[fence], fences[fence_ids[fence]].body, count)
    return before + found


def manners_of(met: Met, whole: Whole) -> np.ndarray:
    """Of a combination only the result is known: how it was met is said of its elements."""
    return in_numbers([met.manners[outcome, None, *NOBODY_SAID] for outcome in OUTCOME_OF])[whole.result]


def in_order(rows: Columns, met: Met, part_list: PartList, outings: Outings) -> Attempts:
    """Sorted by outing, then by fence element; those of one element in the order they came in."""
    parts = part_list.freeze()
    manners = freeze_manners([(RESULT[key[0]], ATTITUDE[key[1]], *key[2:]) for key in met.manners])
    group = rows.outing * len(parts.spot) + parts.spot[rows.part]
    order = np.argsort(group, kind="stable")
    outing, part, manner = rows.outing[order], rows.part[order], rows.manner[order]
    asks = parts.asks[part]
    return Attempts(
        met.records, rows.source[order],
        outing, outings.day[outing], outings.place[outing], group[order], part, manner,
        manners.result[manner], manners.attitude[manner], parts, manners,
        {ask: np.flatnonzero(asks & bit) for ask, bit in ASK_BIT.items()}, met,
    )  # fmt: skip
