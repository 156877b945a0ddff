"""The shipped bars: complete, sourced, and asking more as a ladder rises."""

import pytest

from fieldtally.book import words
from fieldtally.book.words import ASKS
from fieldtally.readiness.bar import shipped_bars
from fieldtally.readiness.limits import height_class_cm
from fieldtally.readiness.shapes import BITS
from fieldtally.readiness.weighing import WAYS_OF_WEIGHING
from fieldtally.trade.rulebook import shipped
from readiness.made_up import Logbook, rulebook

BARS = shipped_bars()
LADDERS = sorted(shipped())
CURRENT = [key for key in LADDERS if shipped()[key].status == "current"]
EVERY_QUESTION = {each.id for each in BARS.common if each.condition}


def height_of(rulebook_id: str, level) -> float:
    """The fixed height in cm that the bar takes the level to have."""
    return BARS.ladder(rulebook_id).heights.get(level.id) or height_class_cm(shipped()[rulebook_id], level)


def asked_of(rulebook_id: str) -> dict[str, set[str]]:
    return {level.id: {each.id for each in bar.requirements} for level, bar in BARS.every_level(shipped()[rulebook_id])}


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
    asked: set[str] = set()
    for questions in asked_of(rulebook_id).values():
        assert asked <= questions and {"fixed", "word", "results"} <= questions
        asked = questions


@pytest.mark.parametrize("rulebook_id", CURRENT)
def test_every_current_national_ladder_has_a_file_of_its_own(rulebook_id):
    assert BARS.ladder(rulebook_id).prefixes


def test_the_ladder_asks_what_the_rulebook_introduces_from_that_level_on():
    asks = asked_of("us-2025")
    # corners are not allowed at the lowest level; bounce distances may appear at preliminary (USEA refreshers)
    assert (
        "corner" not in asks["beginner_novice"] and "bounce" not in asks["training"] and "bounce" in asks["preliminary"]
    )
    # a drop, a double and a simple obstacle out of water come at novice (USEF Appendix 1 as restated by a club)
    assert {"drop_ground", "combination_two", "water_out"} <= asks["novice"] - asks["beginner_novice"]


def test_every_way_of_asking_named_in_the_design_is_a_requirement():
    questions = {(each.condition.ask, each.condition.presentation, each.condition.elements)
                 for each in BARS.common if each.condition}  # fmt: skip
    alone = {"fixed", "brush", "narrow", "corner", "angled_line", "bending_line", "airy_rail"}
    manners = {
        ("wide_table", (("pace", ("canter", "gallop")),)),
        *(("ditch", (("company", (company,)),)) for company in words.COMPANIES),
        *(("ditch", (("ground", (ground,)),)) for ground in ("uphill", "downhill")),
        *(("bank", (("way", (way,)),)) for way in ("up", "down")),
        *(("drop", (("landing", (landing,)),)) for landing in words.LANDINGS),
        *(("water", (("way", (way,)),)) for way in ("in", "through", "out")),
    }
    assert {(ask, (), 0) for ask in alone} | {(*each, 0) for each in manners} <= questions
    assert {("combination", (), elements) for elements in (2, 3)} <= questions
    assert {each.weigh for each in BARS.common} == set(WAYS_OF_WEIGHING)


@pytest.mark.parametrize("rulebook_id", [key for key in CURRENT if height_of(key, shipped()[key].levels[-1]) >= 110])
def test_the_highest_levels_ask_every_question(rulebook_id):
    *_, highest = asked_of(rulebook_id).values()
    assert highest >= EVERY_QUESTION


@pytest.mark.parametrize("rulebook_id", LADDERS)
def test_no_question_is_asked_below_the_level_at_which_the_rulebook_introduces_it_in_any_presentation(rulebook_id):
    book = shipped()[rulebook_id]
    named = {ask.word: level.order for level in reversed(book.levels) for ask in level.asks if not ask.presentation}
    for level, bar in BARS.every_level(book):
        for requirement in bar.requirements:
            if requirement.condition:
                assert level.order >= named.get(requirement.condition.ask, 0), (level.id, requirement.id)


@pytest.mark.parametrize("rulebook_id", LADDERS)
def test_a_larger_step_is_never_asked_before_the_smaller_one_and_is_larger(rulebook_id):
    steps = {each.id: each.larger_than for each in BARS.common if each.larger_than}
    assert set(steps) == {"bank_up_large", "bank_down_large"}
    for level, bar in BARS.every_level(shipped()[rulebook_id]):
        by_id = {each.id: each for each in bar.requirements}
        for larger in set(steps) & set(by_id):
            smaller = by_id[steps[larger]]
            assert smaller.condition == by_id[larger].condition
            assert smaller.numbers["size_fraction"] < by_id[larger].numbers["size_fraction"] < 1
        if height_of(rulebook_id, level) < 100:
            assert not set(steps) & set(by_id)


def test_a_small_bank_speaks_for_the_small_step_only_and_a_large_one_for_both():
    logbook = Logbook()
    small, large = (
        logbook.fence(label, "bank", asks=["bank"], height_cm=height) for label, height in (("S", 55), ("L", 85))
    )
    for days_ago, fence in ((9, small), (7, small), (5, large)):
        logbook.attempt(logbook.outing(days_ago), fence, presentation={"way": "up"})
    found = {each: logbook.finding(each, "third")["numbers"] for each in ("bank_up", "bank_up_large")}
    assert found["bank_up"]["attempts"] == 3
    assert (found["bank_up_large"]["attempts"], found["bank_up_large"]["smaller_attempts"]) == (1, 2)


@pytest.mark.parametrize("without", [(), ("drop_cm",)], ids=["limit stated", "no limit stated"])
def test_a_large_bank_is_one_by_size_whether_or_not_the_rulebook_states_a_limit(without):
    logbook = Logbook(book=rulebook(without=without))
    small, large, unmeasured = (
        logbook.fence(f"{each}", "bank", asks=["bank"], drop_cm=each) for each in (60, 120, None)
    )
    for days_ago, fence in enumerate((small, large, large, unmeasured), 3):
        logbook.attempt(logbook.outing(days_ago), fence, presentation={"way": "down"})
    found = logbook.finding("bank_down_large", "fourth")
    numbers = found["numbers"]
    assert [numbers[each] for each in ("attempts", "smaller_attempts", "unmeasured_attempts")] == [2, 1, 1]
    assert (numbers["least_cm"], numbers["limit_cm"]) == ((98, None) if without else (0.7 * 130, 130))
    assert ("own_size" in {each["code"] for each in found["reasons"]}) == bool(without)
    assert "any_size" not in {each["code"] for each in found["reasons"]}


def test_a_requirement_says_who_says_from_which_level_on_it_is_asked():
    us, gb = (
        {each.id: each.source for each in BARS.bar(shipped()[key], shipped()[key].level(level)).requirements}
        for key, level in (("us-2025", "training"), ("gb-2024", "be90"))
    )
    assert us["bank_down"].endswith("asked from Training on (USEA rule refresher, 2022-06-28 (USEF Appendix 1))")
    assert us["combination_three"].split("; ")[-1].startswith("asked from 100 cm on (USEF Appendix 1")
    assert gb["bank_up"].split("; ")[-1].startswith("asked from 90 cm on (the national body's website")
    assert us["water_through"].startswith("inviting water crossing") and "asked from" not in gb["ditch_alone"]


@pytest.mark.parametrize("ladder", BARS.ladders, ids=lambda each: each.prefixes[0])
def test_every_ladder_says_where_its_differences_come_from_and_names_what_there_is(ladder):
    assert ladder.source
    assert set(ladder.introduced) | set(ladder.numbers) <= {each.id for each in BARS.common}
    books = [book for key, book in shipped().items() if key.split("-")[0] in ladder.prefixes]
    levels = {level.id for book in books for level in book.levels}
    assert set(ladder.heights) | set(ladder.levels) <= levels


def test_a_typical_course_is_made_of_questions_that_the_bar_asks():
    assert set(BARS.course) <= EVERY_QUESTION
    assert all(share > 0 for share in BARS.course.values())
