"""Standings as they go to a phone: what repeats from level to level is sent once for each horse.

An attempt stands behind a finding at every level whose size it has, and a bar is mostly the same all the way up.
So lines of evidence and bars go into a table each, and a finding names their places there. Levels more than
FAR_STEPS above the one the pair is at keep what they count and say, and leave out the lines and how it is worked
out: somebody who opens one of these asks for that horse in full.
"""

from collections.abc import Hashable, Mapping, Sequence
from dataclasses import dataclass, field
from json import dumps

FAR_STEPS = 2
HOW = ("explanation", "worked_out")


@dataclass
class Table:
    """Things by the place they were first put at, equal ones at one place."""

    places: dict[Hashable, int] = field(default_factory=dict)
    things: list[dict] = field(default_factory=list)

    def place(self, thing: dict, key: Hashable) -> int:
        """`key` is the same for equal things."""
        found = self.places.get(key)
        if found is None:
            found = self.places[key] = len(self.things)
            self.things.append(thing)
        return found


def packed(horses: Mapping[str, Sequence[dict]]) -> dict:
    """`horses` maps a horse's id to its standings as JSON, all levels. Nothing given is changed."""
    tables = {horse_id: (Table(), Table()) for horse_id in horses}
    return {
        "standings": [
            packed_standing(each, *tables[horse_id], is_far(each, standings))
            for horse_id, standings in horses.items()
            for each in standings
        ],
        "evidence": {horse_id: lines.things for horse_id, (lines, _) in tables.items()},
        "bars": {horse_id: bars.things for horse_id, (_, bars) in tables.items()},
    }


def is_far(standing: dict, standings: Sequence[dict]) -> bool:
    """Nothing is far of a pair whose present level nobody has said."""
    present = next((each["level_order"] for each in standings if each["is_present_level"]), None)
    return present is not None and standing["level_order"] > present + FAR_STEPS


def packed_standing(standing: dict, lines: Table, bars: Table, far: bool) -> dict:
    return standing | {"findings": [packed_finding(each, lines, bars, far) for each in standing["findings"]]}


def packed_finding(finding: dict, lines: Table, bars: Table, far: bool) -> dict:
    """`evidence` becomes [place, weight, place, weight, …], null where it is left out."""
    rest = {key: value for key, value in finding.items() if not (far and key in HOW)}
    evidence = None if far else [each for line in finding["evidence"] for each in packed_line(line, lines)]
    return rest | {"evidence": evidence, "bar": bars.place(finding["bar"], dumps(finding["bar"], sort_keys=True))}


def packed_line(line: dict, lines: Table) -> tuple[int, float | None]:
    told = {key: value for key, value in line.items() if key != "weight"}
    return lines.place(told, tuple(told.items())), line["weight"]
