"""The shipped bars: complete, sourced, and asking more as a ladder rises."""

import pytest

from fieldtally.book.words import ASKS
from fieldtally.readiness.bar import shipped_bars
from fieldtally.readiness.shapes import BITS
from fieldtally.readiness.weighing import WAYS_OF_WEIGHING
from fieldtally.trade.rulebook import shipped

BARS = shipped_bars()
LADDERS = sorted(shipped())


@pytest.mark.parametrize("requirement", BARS.common, ids=lambda each: each.id)
def test_every_number_says_where_it_comes_from(requirement):
    assert requirement.source and requirement.weigh in WAYS_OF_WEIGHING
    numbers = set(requirement.numbers) - {"over_fences"}  # which canters, not how many
    assert numbers == set(requirement.number_sources) & numbers
    assert all(requirement.number_sources[name] for name in numbers)


@pytest.mark.parametrize("requirement", [each for each in BARS.common if each.condition], ids=lambda each: each.id)
def test_every_question_is_made_of_known_words(requirement):
    condition = requirement.condition
    assert condition.ask in ASKS
    assert all(value in BITS[side] for side, values in condition.presentation for value in values)


@pytest.mark.parametrize("rulebook_id", LADDERS)
def test_every_level_of_every_ladder_has_a_bar_and_never_asks_less_than_the_level_below(rulebook_id):
    rulebook = shipped()[rulebook_id]
    asked: set[str] = set()
    for level in rulebook.levels:
        questions = {each.id for each in BARS.bar(rulebook, level).requirements}
        assert asked <= questions and {"fixed", "word", "results"} <= questions
        asked = questions


@pytest.mark.parametrize("rulebook_id", [key for key in LADDERS if shipped()[key].status == "current"])
def test_every_current_national_ladder_has_a_file_of_its_own(rulebook_id):
    assert BARS.ladder(rulebook_id).prefixes


def test_the_ladder_asks_what_the_rulebook_introduces_from_that_level_on():
    us = shipped()["us-2025"]
    asks = {level.id: {each.id for each in BARS.bar(us, level).requirements} for level in us.levels}
    # corners are not allowed at the lowest level; bounce distances may appear at preliminary (USEA refreshers)
    assert (
        "corner" not in asks["beginner_novice"] and "bounce" not in asks["training"] and "bounce" in asks["preliminary"]
    )
    # a drop, a double and a simple obstacle out of water come at novice (USEF Appendix 1 as restated by a club)
    assert {"drop_ground", "combination_two", "water_out"} <= asks["novice"] - asks["beginner_novice"]
