"""Writes fixtures/contract/fit.json: the ladder of fit_ladder.toml as JSON, fences with their fit worked by hand
from it, and fences with the cautions that the study gives them. Nothing here calls fit or fence_cautions.

Run: python tests/trade/make_fit_vectors.py
"""

import json
from pathlib import Path

from fieldtally.trade.rulebook import load_file

FOLDER = Path(__file__).parents[2] / "fixtures" / "contract"
LEVELS = ("low", "middle", "between", "high")
NEITHER = {"asks_later": {}, "asks_not_stated": []}


def fence(profile, *asks, elements=(), **measured):
    return {"profile": profile, "asks": list(asks), "elements": list(elements), **measured}


def part(letter, profile, *asks, **measured):
    return {"letter": letter, "profile": profile, "asks": list(asks), **measured}


def bound(dimension, margin_cm, part="", limit=None):
    return {"part": part, "dimension": dimension, "limit": limit or dimension, "margin_cm": margin_cm}


FIXED = "fixed_height_cm"


def case(name, body, verdicts, admitting, possible, binding, margins=None, later=None, unknown=()):
    """`margins`: level -> (limit, part) -> room in cm. `later`: level -> ask -> level that introduces it."""
    return {"name": name, "fence": body, "expected": {
        "verdicts": dict(zip(LEVELS, verdicts.split(), strict=True)),
        "lowest_admitting": admitting, "lowest_possible": possible, "binding": binding,
        "margins": margins or {}, "asks_later": later or {}, "asks_not_stated": list(unknown),
    }}  # fmt: skip


CASES = [
    case("exactly at the limit fits", fence("wall", height_cm=80), "admitted admitted admitted admitted",
         "low", "low", bound("height_cm", 0, limit=FIXED),
         {"low": {FIXED: 0}, "middle": {FIXED: 10}, "between": {FIXED: 15}, "high": {FIXED: 20}}),
    case("a hundredth over does not", fence("wall", height_cm=80.01), "too_big admitted admitted admitted",
         "middle", "middle", bound("height_cm", -0.01, limit=FIXED), {"low": {FIXED: -0.01}, "middle": {FIXED: 9.99}}),
    case("two feet eleven", fence("log", height_cm=88.9), "too_big admitted admitted admitted",
         "middle", "middle", bound("height_cm", -8.9, limit=FIXED), {"middle": {FIXED: 1.1}}),
    case("too high for every level", fence("wall", height_cm=101), "too_big too_big too_big too_big",
         None, None, bound("height_cm", -1, limit=FIXED), {"high": {FIXED: -1}}),
    case("nothing measured", fence("wall"), "not_measured not_measured not_measured not_measured", None, None, None),
    case("a table measured in height only", fence("table", height_cm=85),
         "too_big not_measured not_stated not_measured", None, "middle", bound("height_cm", -5, limit=FIXED)),
    case("a table is held to its base", fence("table", height_cm=79, spread_top_cm=88, spread_base_cm=140),
         "too_big admitted not_stated admitted", "middle", "middle", bound("spread_base_cm", -20),
         {"low": {"spread_top_cm": 2, "spread_base_cm": -20, FIXED: 1},
          "middle": {"spread_top_cm": 22, "spread_base_cm": 10, FIXED: 11}}),
    case("a table is held to its top", fence("table", height_cm=79, spread_top_cm=111, spread_base_cm=120),
         "too_big too_big not_stated admitted", "high", "between", bound("spread_top_cm", -1),
         {"middle": {"spread_top_cm": -1, "spread_base_cm": 30, FIXED: 11}}),
    case("brush counts to the brush limit, its fixed part to the fixed limit",
         fence("brush", height_cm=79, brush_height_cm=100), "admitted admitted not_stated admitted",
         "low", "low", bound("brush_height_cm", 0), {"low": {FIXED: 1, "brush_height_cm": 0}}, unknown=["brush"]),
    case("brush whose fixed part is too high", fence("brush", height_cm=82, brush_height_cm=99),
         "too_big admitted not_stated admitted", "middle", "middle", bound("height_cm", -2, limit=FIXED),
         {"low": {FIXED: -2, "brush_height_cm": 1}}, unknown=["brush"]),
    case("brush without its fixed part", fence("brush", brush_height_cm=95),
         "not_measured not_measured not_measured not_measured", None, "low", bound("brush_height_cm", 5),
         unknown=["brush"]),
    case("a drop", fence("drop", drop_cm=110), "too_big admitted not_stated admitted", "middle", "middle",
         bound("drop_cm", -10), {"low": {"drop_cm": -10}, "middle": {"drop_cm": 10}}, unknown=["drop"]),
    case("a fence with a drop behind it", fence("log", "fixed", "drop", height_cm=75, drop_cm=130),
         "too_big too_big not_stated admitted", "high", "between", bound("drop_cm", -10), unknown=["drop"]),
    case("a ditch, held to the narrower of two limits", fence("ditch", spread_without_height_cm=230),
         "too_big too_big not_stated too_big", None, None,
         bound("spread_without_height_cm", -10, limit="ditch_width_cm"),
         {"middle": {"spread_without_height_cm": -30}, "high": {"spread_without_height_cm": 10, "ditch_width_cm": -10}},
         unknown=["ditch"]),
    case("open water is no ditch", fence("water", spread_without_height_cm=230),
         "too_big too_big not_stated admitted", "high", "high", bound("spread_without_height_cm", -30),
         {"high": {"spread_without_height_cm": 10}}, unknown=["water"]),
    case("water depth where it is stated", fence("water", water_depth_cm=32), "not_stated too_big not_stated admitted",
         "high", "high", bound("water_depth_cm", -2), unknown=["water"]),
    case("a step out of water has a limit of its own", fence("step", "bank", "water", height_cm=55),
         "too_big admitted admitted admitted", "middle", "middle", bound("height_cm", -5, limit="step_height_cm"),
         {"low": {FIXED: 25, "step_height_cm": -5}}, unknown=["bank", "water"]),
    case("a step on dry land has not", fence("step", height_cm=55), "admitted admitted admitted admitted",
         "low", "low", bound("height_cm", 25, limit=FIXED), unknown=["bank"]),
    case("what it asks comes later", fence("corner", height_cm=78, spread_top_cm=80),
         "admitted admitted not_stated admitted", "low", "low", bound("height_cm", 2, limit=FIXED),
         later={"low": {"corner": "high"}, "middle": {"corner": "high"}, "between": {"corner": "high"}, "high": {}}),
    case("ticked asks are used instead of the profile's", fence("wall", "narrow", height_cm=78),
         "admitted admitted admitted admitted", "low", "low", bound("height_cm", 2, limit=FIXED), unknown=["narrow"]),
    case("each element by itself",
         fence("rail", elements=[part("A", "log", height_cm=78), part("B", "table", height_cm=70, spread_top_cm=80,
                                                                    spread_base_cm=130)]),
         "too_big admitted not_stated admitted", "middle", "middle", bound("spread_base_cm", -10, part="B"),
         later={"low": {"combination": "middle"}, "middle": {}, "between": {}, "high": {}}),
    case("an element that was not measured",
         fence("rail", elements=[part("A", "log", height_cm=78), part("B", "log")]),
         "not_measured not_measured not_measured not_measured", None, "low",
         bound("height_cm", 2, part="A", limit=FIXED)),
    case("one element alone is no combination", fence("rail", elements=[part("A", "log", height_cm=78)]),
         "admitted admitted admitted admitted", "low", "low", bound("height_cm", 2, part="A", limit=FIXED),
         later={"low": {}}),
    case("a show-jumping oxer", fence("oxer", "show_jump", height_cm=90, spread_top_cm=105),
         "too_big admitted not_stated admitted", "middle", "middle", bound("height_cm", -5),
         {"low": {"height_cm": -5, "oxer_spread_cm": -5}, "middle": {"height_cm": 5, "oxer_spread_cm": 5}},
         unknown=["show_jump"]),
    case("a show-jumping triple bar", fence("triple_bar", "show_jump", height_cm=80, spread_base_cm=125),
         "not_stated admitted not_stated admitted", "middle", "low", bound("height_cm", 5), unknown=["show_jump"]),
    case("a cross pole is a show jump", fence("cross_pole", height_cm=60), "admitted admitted not_stated admitted",
         "low", "low", bound("height_cm", 25), unknown=["show_jump"]),
]  # fmt: skip


# Equine Veterinary Journal 38(2):158-163, 2006: straight fences with a spread of 2 m or more, drop landings, water
# and angled fences went with more falls of horses
CAUTIONS = [
    (fence("table", height_cm=100, spread_base_cm=200), ["wide_spread"]),
    (fence("table", height_cm=100, spread_base_cm=199.9), []),
    (fence("oxer", height_cm=100, spread_top_cm=205, spread_base_cm=None), ["wide_spread"]),
    (fence("corner", height_cm=100, spread_top_cm=210), []),
    (fence("log", "fixed", "angled_line", height_cm=90), ["angled"]),
    (fence("log", "fixed", height_cm=90, drop_cm=40), ["drop_landing"]),
    (fence("ditch", spread_without_height_cm=250), []),
    (fence("water"), ["water"]),
    (fence("rail", elements=[part("A", "log"), part("B", "drop"), part("C", "drop", "drop", "water")]),
     ["drop_landing", "water"]),
]  # fmt: skip


def main() -> None:
    ladder = load_file(FOLDER / "fit_ladder.toml").to_json()
    cautions = [{"fence": body, "codes": codes} for body, codes in CAUTIONS]
    text = json.dumps({"rulebook": ladder, "cases": CASES, "cautions": cautions}, ensure_ascii=False, indent=1)
    (FOLDER / "fit.json").write_text(text + "\n", encoding="utf-8")


if __name__ == "__main__":
    main()
