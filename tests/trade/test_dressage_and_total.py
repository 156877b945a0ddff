"""trade.dressage_score and trade.total: marks to penalties, eras, sums and places."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fieldtally.trade.bad_input import BadInput
from fieldtally.trade.dressage_score import DressageRules, Sheet, better, dressage_score, sheet
from fieldtally.trade.total import TIE_NOTE, Result, places, total

US = DressageRules(2, 4, 3, percent_decimals=2)


def test_marks_with_coefficients():
    assert sheet([(7, 1), (6.5, 2), (8, 1)]) == Sheet(28, 40)


def test_errors_come_off_the_sum():
    assert dressage_score([Sheet(130, 200)], US, errors=1).percent == 64
    assert dressage_score([Sheet(130, 200)], US, errors=2).percent == 62
    third = dressage_score([Sheet(130, 200)], US, errors=3)
    assert (third.eliminated, third.percent, third.penalties) == (True, None, None)


def test_errors_never_take_a_sheet_below_zero():
    assert dressage_score([Sheet(1, 200)], US, errors=2).penalties == 100


def test_rounding_is_as_on_paper():
    assert dressage_score([Sheet(133.5, 200)], DressageRules(percent_decimals=1)).percent == 66.8  # 66.75
    assert dressage_score([Sheet(1, 3)], DressageRules()).percent == pytest.approx(100 / 3)


def test_two_judges_are_averaged():
    assert dressage_score([Sheet(130, 200), Sheet(140, 200)], US).percent == 67.5


def test_eras_are_not_compared():
    old = dressage_score([Sheet(77, 100)], DressageRules(penalty_coefficient=1.5))
    new = dressage_score([Sheet(70, 100)], DressageRules())
    with pytest.raises(BadInput, match="eras"):
        better(old, new)
    assert better(dressage_score([Sheet(71, 100)], DressageRules()), new)
    assert not better(dressage_score([Sheet(71, 100)], US, errors=3), new)


@pytest.mark.parametrize("call, field", [
    (lambda: sheet([]), "marks"),
    (lambda: sheet([(7, 1), (10.5, 1)]), "marks[1].mark"),
    (lambda: sheet([(-1, 1)]), "marks[0].mark"),
    (lambda: sheet([(math.nan, 1)]), "marks[0].mark"),
    (lambda: sheet([(7, 0)]), "marks[0].coefficient"),
    (lambda: dressage_score([], US), "sheets"),
    (lambda: dressage_score([Sheet(201, 200)], US), "marks"),
    (lambda: dressage_score([Sheet(0, 0)], US), "maximum"),
    (lambda: dressage_score([Sheet(130, 200)], US, errors=-1), "errors"),
    (lambda: dressage_score([Sheet(130, 200)], US, errors=0.5), "errors"),
    (lambda: dressage_score([Sheet(130, 200)], DressageRules(), errors=1), "errors"),
])  # fmt: skip
def test_sheets_that_cannot_be(call, field):
    with pytest.raises(BadInput) as refusal:
        call()
    assert refusal.value.field == field


@given(st.integers(0, 400), st.integers(0, 400), st.sampled_from([1.0, 1.5]))
def test_more_marks_are_never_more_penalties(one, other, coefficient):
    rules = DressageRules(percent_decimals=2, penalties_decimals=1, penalty_coefficient=coefficient)
    fewer, more = sorted((one / 2, other / 2))
    assert dressage_score([Sheet(more, 200)], rules).penalties <= dressage_score([Sheet(fewer, 200)], rules).penalties


def test_a_total_adds_as_decimals():
    assert total({"dressage": 32.1, "cross_country_time": 4.4, "show_jumping_jumping": 4}) == 40.5
    assert total({}) == 0


def test_places_with_a_tie_and_the_unplaced():
    results = [
        Result("a", {"dressage": 40}), Result("b", {"dressage": 30}),
        Result("c", {"dressage": 26, "show_jumping_jumping": 4}),
        Result("d", {"dressage": 25}, "eliminated"), Result("e", {"dressage": 20}, "hors_concours"),
    ]  # fmt: skip
    found = places(results)
    assert [(each.pair, each.place, each.total) for each in found] == [
        ("b", 1, 30), ("c", 1, 30), ("a", 3, 40), ("d", None, None), ("e", None, 20)]  # fmt: skip
    assert [each.note for each in found] == [TIE_NOTE, TIE_NOTE, "", "eliminated", "hors_concours"]


@pytest.mark.parametrize("result, field", [
    (Result("a", {"jumping": 4}), "jumping"), (Result("a", {"dressage": -1}), "dressage"),
    (Result("a", {"dressage": math.nan}), "dressage"), (Result("a", {}, "lost"), "status"),
])  # fmt: skip
def test_results_that_cannot_be(result, field):
    with pytest.raises(BadInput) as refusal:
        places([result])
    assert refusal.value.field == field


@given(st.lists(st.integers(0, 60), min_size=1, max_size=12))
def test_a_place_is_one_more_than_the_number_in_front(totals):
    found = places([Result(str(n), {"dressage": t}) for n, t in enumerate(totals)])
    assert sorted(totals) == [each.total for each in found]
    for each in found:
        assert each.place == 1 + sum(t < each.total for t in totals)
