"""docs/method.md says the numbers that the shipped bar uses."""

from pathlib import Path

import pytest

from fieldtally.readiness.bar import shipped_bars
from fieldtally.readiness.finding import STATES
from fieldtally.readiness.plain import percent

PAGE = " ".join((Path(__file__).parents[2] / "docs" / "method.md").read_text(encoding="utf-8").split())
NUMBERS = next(each.numbers for each in shipped_bars().common if each.id == "water_in")
FORECAST = shipped_bars().forecast_numbers


@pytest.mark.parametrize(
    "said",
    [
        f"half-life {NUMBERS['half_life_days']}",
        f"r = {NUMBERS['repeat_discount']}",
        f"q = {NUMBERS['confidence']:g}",
        f"strength s = {NUMBERS['pool_strength']}, m₀ = {NUMBERS['pool_mean']}, w₀ = {NUMBERS['pool_stand_in']}",
        f"at least {NUMBERS['clear']} clear, in {NUMBERS['outings']} outings",
        f"weighing at least {NUMBERS['fresh_weight']} fresh attempts",
        f"a lower bound of {percent(NUMBERS['bound'])}",
        f"r = {FORECAST['repeat_discount']}, w₀ = {FORECAST['pool_stand_in']}",
        f"{percent(FORECAST['least_share_met'])} of the questions met, {FORECAST['least_weight']} fresh",
    ],
)  # fmt: skip
def test_the_page_says(said):
    assert said in PAGE


@pytest.mark.parametrize("state", STATES)
def test_every_state_is_explained(state):
    assert f"| {state.replace('_', ' ')} |" in PAGE
