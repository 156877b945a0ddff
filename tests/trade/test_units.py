"""Lengths, distances, times and speeds: read as typed, shown as meant, refused in words."""

import json
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fieldtally.trade import units
from fieldtally.trade.bad_input import BadInput

VECTORS = json.loads((Path(__file__).parents[2] / "fixtures/contract/units.json").read_text(encoding="utf-8"))
READERS = {name: getattr(units, name) for name in ("length_cm", "distance_m", "time_ms", "speed_mpm")}
SHOWN = {"feet": units.show_feet, "cm": units.show_cm, "metres": units.show_metres, "time": units.show_time}
LENGTHS = st.floats(10, 900)


@pytest.mark.parametrize("vector", VECTORS, ids=lambda vector: str(list(vector["input"].values())))
def test_vector(vector):
    given_, expected = vector["input"], vector["expected"]
    if "show" in given_:
        assert SHOWN[given_["show"]](given_["value"]) == expected["text"]
    elif "refused" in expected:
        with pytest.raises(BadInput) as refusal:
            READERS[given_["read"]](given_["text"])
        assert refusal.value.field == expected["refused"]
        assert refusal.value.message and refusal.value.fix
    else:
        assert READERS[given_["read"]](given_["text"]) == pytest.approx(expected["value"], abs=1e-9)


@given(st.integers(1, 390))
def test_whole_inches_come_back_exactly(inches):
    """1 in = 2.54 cm exactly (international yard and pound agreement, 1959)."""
    cm = units.rounded(inches * 2.54, 2)
    assert units.length_cm(units.show_feet(cm)) == cm


@given(LENGTHS)
def test_feet_come_back_within_half_an_inch(cm):
    assert abs(units.length_cm(units.show_feet(cm)) - cm) <= 1.27 + 0.01


@given(LENGTHS)
def test_metric_comes_back_within_what_is_shown(cm):
    assert abs(units.length_cm(units.show_cm(cm)) - cm) <= 0.05 + 1e-9
    assert abs(units.length_cm(units.show_metres(cm)) - cm) <= 0.5 + 1e-9


@given(LENGTHS)
def test_showing_what_was_read_changes_nothing(cm):
    for show in (units.show_feet, units.show_cm, units.show_metres):
        assert show(units.length_cm(show(cm))) == show(cm)


@given(st.integers(50, 3_600_000))
def test_times_come_back_within_a_twentieth_of_a_second(ms):
    assert abs(units.time_ms(units.show_time(ms)) - ms) <= 50


@given(st.integers(1, 12), st.integers(0, 11), st.sampled_from(["{}'{}\"", "{}ft{}", "{} ft {} in", "{}’ {}”"]))
def test_every_way_of_writing_feet_and_inches(feet, inches, form):
    assert units.length_cm(form.format(feet, inches)) == units.rounded((12 * feet + inches) * 2.54, 2)


@given(st.integers(1, 1000), st.sampled_from([".", ","]))
def test_a_comma_is_a_point(cm, mark):
    metres = f"{cm // 100}{mark}{cm % 100:02d} m"
    assert units.length_cm(metres) == cm


@given(st.text(max_size=60), st.sampled_from(sorted(READERS)))
def test_anything_typed_is_read_or_refused_in_words(text, reader):
    try:
        value = READERS[reader](text, "the field")
    except BadInput as refusal:
        assert refusal.field == "the field" and refusal.message and refusal.fix
    else:
        assert value > 0


@given(st.text(alphabet="0123456789.,:'\"½ ftinmcsk/h", max_size=45), st.sampled_from(sorted(READERS)))
def test_near_misses_too(text, reader):
    test_anything_typed_is_read_or_refused_in_words.hypothesis.inner_test(text, reader)


@pytest.mark.parametrize("text, half_step", [
    ("2'11\"", 1.27), ("35 in", 1.27), ("2'11.5\"", 0.127), ("90 cm", 0.5), ("0.90 m", 0.5), ("0.9 m", 5),
    ("1m10", 0.5),
])  # fmt: skip
def test_half_the_step_in_which_a_length_was_written(text, half_step):
    assert units.rounding_cm(text) == pytest.approx(half_step)


def test_bounds_are_the_callers():
    with pytest.raises(BadInput, match="outside 1 to 250 cm"):
        units.length_cm("3 m", "height", most=250)
