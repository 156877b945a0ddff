"""Which levels admit a fence: hand-worked vectors, and what must hold for every fence and every shipped ladder."""

import json
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fieldtally.trade import fit_words
from fieldtally.trade.asks import PROFILES
from fieldtally.trade.fence_cautions import fence_cautions
from fieldtally.trade.fit import ADMITTED, CROSS_COUNTRY_LIMITS, FITS, NOT_MEASURED, NOT_STATED, TOO_BIG, fit
from fieldtally.trade.rulebook import load_file, shipped

CONTRACT = Path(__file__).parents[2] / "fixtures" / "contract"
VECTORS = json.loads((CONTRACT / "fit.json").read_text(encoding="utf-8"))
LADDER = load_file(CONTRACT / "fit_ladder.toml")
BOOKS = shipped()


def test_the_vectors_hold_the_ladder_of_today():
    """Run tests/trade/make_fit_vectors.py after a change of the JSON's shape."""
    assert VECTORS["rulebook"] == json.loads(json.dumps(LADDER.to_json()))


@pytest.mark.parametrize("case", VECTORS["cases"], ids=lambda case: case["name"])
def test_vector(case):
    found, expected = fit(case["fence"], LADDER), case["expected"]
    assert {level.level_id: level.verdict for level in found.levels} == expected["verdicts"]
    assert (found.lowest_admitting, found.lowest_possible) == (
        expected["lowest_admitting"],
        expected["lowest_possible"],
    )
    data = found.to_json()
    binding = data["binding"] and {name: data["binding"][name] for name in ("part", "dimension", "limit", "margin_cm")}
    assert binding == expected["binding"]
    for level_id, margins in expected["margins"].items():
        compared = [check for check in found.at(level_id).checks if check.margin_cm is not None]
        assert {check.limit: check.margin_cm for check in compared} == margins
    for level_id, asks in expected["asks_later"].items():
        assert found.at(level_id).asks_later == asks
    assert list(found.asks_not_stated) == expected["asks_not_stated"]


measures = st.none() | st.floats(10, 400).map(lambda cm: round(cm, 1))
parts = st.fixed_dictionaries({"profile": st.sampled_from(sorted(PROFILES)), "asks": st.just([]),
                               **{name: measures for name in CROSS_COUNTRY_LIMITS}})  # fmt: skip
elements = st.lists(parts, max_size=3).map(
    lambda found: [{**each, "letter": letter} for each, letter in zip(found, "ABC", strict=False)]
)
fences = st.builds(lambda part, inside: {**part, "elements": inside}, parts, elements)
books = st.sampled_from(sorted(BOOKS)).map(BOOKS.__getitem__) | st.just(LADDER)


@given(fences, books)
def test_a_fence_that_fits_a_level_fits_every_higher_one(fence, book):
    """Wherever the higher level states the limits at all."""
    levels = fit(fence, book).levels
    fits = [place for place, level in enumerate(levels) if level.verdict == ADMITTED]
    for higher in levels[fits[0] if fits else len(levels) :]:
        assert higher.verdict in (ADMITTED, NOT_STATED)
        assert all(check.verdict in (FITS, NOT_STATED) for check in higher.checks)


@given(fences, books)
def test_every_single_comparison_only_gets_roomier(fence, book):
    rooms = {}
    for level in fit(fence, book).levels:
        for check in level.checks:
            if check.margin_cm is not None:
                key = (check.part, check.dimension, check.limit)
                assert check.margin_cm >= rooms.get(key, check.margin_cm)
                rooms[key] = check.margin_cm


@given(fences, books, st.sampled_from(sorted(CROSS_COUNTRY_LIMITS)), st.floats(0.1, 100))
def test_a_bigger_fence_is_never_admitted_lower(fence, book, dimension, more):
    order = {level.id: level.order for level in book.levels} | {None: 99}
    if fence[dimension] is not None:
        bigger = fence | {dimension: fence[dimension] + more}
        assert order[fit(bigger, book).lowest_admitting] >= order[fit(fence, book).lowest_admitting]


@given(fences, books)
def test_nothing_is_admitted_on_a_guess(fence, book):
    """An admitted level compared every measurement it looked at, and at least one."""
    for level in fit(fence, book).levels:
        verdicts = {check.verdict for check in level.checks}
        assert (level.verdict == ADMITTED) == (verdicts == {FITS})
        assert (level.verdict == TOO_BIG) == (TOO_BIG in verdicts)
        if level.verdict == NOT_MEASURED:
            assert not verdicts or NOT_MEASURED in verdicts


@given(fences, books)
def test_every_fit_can_be_said_and_sent(fence, book):
    found = fit(fence, book)
    said = fit_words.in_words(found)
    assert all(level.level_name in said for level in found.levels)
    assert "safe" not in said.lower()
    assert json.loads(json.dumps(found.to_json(), allow_nan=False))["rulebook_id"] == book.id


@pytest.mark.parametrize("profile", sorted(PROFILES))
def test_a_fence_of_every_profile_can_be_admitted(profile):
    """Measured small in all it needs, each kind of fence is admitted by the lowest level of a full ladder."""
    needed = PROFILES[profile][1]
    fence = {"profile": profile, **dict.fromkeys(needed, 40.0)}
    assert fit(fence, LADDER).lowest_admitting == {"triple_bar": "low"}.get(profile, "low" if needed else None)
    for missing in needed:
        assert fit({**fence, missing: None}, LADDER).at("low").verdict == NOT_MEASURED


def test_the_words_name_what_decides():
    found = fit({"profile": "table", "height_cm": 88.9, "spread_top_cm": 91.4, "spread_base_cm": 140}, BOOKS["us-2025"])
    assert fit_words.headline(found) == "Novice is the lowest level that admits it."
    assert fit_words.why(found) == (
        "Base spread 140 cm (4'7\") is 20 cm over the limit of 120 cm (3'11\"), from memory."
        " Check it in the rulebook in force."
    )


def test_a_hair_over_is_never_nothing_over():
    assert "is 0.1 cm over the limit" in fit_words.why(fit({"profile": "wall", "height_cm": 80.01}, LADDER))
    assert "is exactly at the limit" in fit_words.why(fit({"profile": "wall", "height_cm": 80}, LADDER))


@pytest.mark.parametrize("fence, begins", [
    ({"profile": "wall"}, "Not decided: nothing that was measured"),
    ({"profile": "wall", "height_cm": 300}, "Too big for every level"),
    ({"profile": "table", "height_cm": 70}, "Not decided. Nothing measured is too big for Beginner Novice, but: top"),
])  # fmt: skip
def test_headlines(fence, begins):
    assert fit_words.headline(fit(fence, BOOKS["us-2025"])).startswith(begins)


@pytest.mark.parametrize("case", VECTORS["cautions"], ids=lambda case: case["fence"]["profile"])
def test_cautions_are_those_of_the_study(case):
    """Equine Veterinary Journal 38(2):158-163, 2006: straight fences with a spread of 2 m or more, drop landings,
    water, and angled fences went with falls of horses."""
    assert [caution.code for caution in fence_cautions(case["fence"])] == case["codes"]
