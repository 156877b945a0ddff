"""Writes fixtures/contract/correction.json: corrections of the ladder of fit_ladder.toml, each with its trouble, and
what the ladder then states, worked by hand. Nothing here calls correction.

Run: python tests/trade/make_correction_vectors.py
"""

import json
from pathlib import Path

TARGET = Path(__file__).parents[2] / "fixtures" / "contract" / "correction.json"
NEW = "2027, article 5"


def body(quantity, value, level="low", phase="cross_country", rulebook="vector-ladder", article="article 5"):
    return {"rulebook_id": rulebook, "level_id": level, "phase": phase, "quantity": quantity, "value": value,
            "edition": "2027", "article": article}  # fmt: skip


def states(quantity, value, unit="cm", level="low", phase="cross_country", source=NEW, grade="corrected"):
    stated = None if value is None else {"value": value, "unit": unit, "source": source, "grade": grade}
    return {"level_id": level, "phase": phase, "quantity": quantity, "stated": stated}


OLD = {"source": "from memory", "grade": "from_memory"}


def case(name, *corrections, states):
    """`corrections`: (body, trouble or None), oldest first."""
    bodies, troubles = zip(*corrections, strict=True)
    return {"name": name, "corrections": list(bodies), "troubles": list(troubles), "states": states}


CASES = [
    case("a value takes the old one's place, at its level only", (body("drop_cm", 105), None),
         states=[states("drop_cm", 105), states("drop_cm", 120, level="middle", **OLD)]),
    case("a value that was not stated is added, in its unit", (body("speed_mpm", 400), None),
         (body("efforts_max", 18), None),
         states=[states("speed_mpm", 400, "m/min"), states("efforts_max", 18, "count")]),
    case("a value is taken away", (body("drop_cm", None), None), states=[states("drop_cm", None)]),
    case("the later one counts", (body("drop_cm", 105), None), (body("drop_cm", 110, article="page 9"), None),
         states=[states("drop_cm", 110, source="2027, page 9")]),
    case("who may enter, and what makes a result count", (body("horse_age_min_years", 5, phase="entry"), None),
         (body("cross_country_seconds_over_max", 75, phase="qualifying_result"), None),
         states=[states("horse_age_min_years", 5, "years", phase="entry"),
                 states("cross_country_seconds_over_max", 75, "s", phase="qualifying_result")]),
    case("another rulebook's", (body("drop_cm", 105, rulebook="gb-2024"), "other_rulebook"),
         states=[states("drop_cm", 100, **OLD)]),
    case("a level that is not there", (body("drop_cm", 105, level="grand"), "no_level"),
         states=[states("drop_cm", 100, **OLD)]),
    case("a quantity that is not there", (body("spread_cm", 105), "no_quantity"), states=[states("spread_cm", None)]),
    case("a quantity of another phase", (body("oxer_spread_cm", 105), "no_quantity"),
         states=[states("oxer_spread_cm", None), states("oxer_spread_cm", 100, phase="show_jumping", **OLD)]),
    case("metres for centimetres", (body("drop_cm", 1.05), "out_of_range"), states=[states("drop_cm", 100, **OLD)]),
    case("millimetres for centimetres", (body("fixed_height_cm", 850), "out_of_range"),
         states=[states("fixed_height_cm", 80, **OLD)]),
    case("exactly the least and the most that can be meant", (body("fixed_height_cm", 30), None),
         (body("brush_height_cm", 180), None),
         states=[states("fixed_height_cm", 30), states("brush_height_cm", 180)]),
    case("half an effort", (body("efforts_max", 12.5), "not_whole"), states=[states("efforts_max", None)]),
    case("one that cannot be stands in nobody's way", (body("drop_cm", 105), None),
         (body("drop_cm", 9), "out_of_range"), states=[states("drop_cm", 105)]),
]  # fmt: skip


if __name__ == "__main__":
    TARGET.write_text(json.dumps(CASES, ensure_ascii=False, indent=1) + "\n", encoding="utf-8")
