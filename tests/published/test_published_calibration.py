"""Calibrations against the GUM's own worked example and the `uncertainties` package."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from uncertainties import ufloat

from fieldtally.trade.calibration import calibrate, mean_u, put_right

# JCGM 100:2008, 4.4.3, table 1: twenty readings of a temperature in °C (readings from memory; the printed
# results in the test below confirm them).
TABLE_1 = [96.90, 98.18, 98.25, 98.61, 99.03, 99.49, 99.56, 99.74, 99.89, 100.07,
           100.33, 100.42, 100.68, 100.95, 101.11, 101.20, 101.57, 101.84, 102.36, 102.72]  # fmt: skip


def test_gum_example_4_4_3_mean_of_twenty_readings():
    """Printed there: mean 100.145 °C, s = 1.489 °C, s/√20 = 0.333 °C."""
    mean, scatter, u = mean_u(TABLE_1)
    assert mean == pytest.approx(100.145, abs=5e-4)
    assert scatter == pytest.approx(1.489, abs=5e-4)
    assert u == pytest.approx(0.333, abs=5e-4)


# JCGM 100:2008, E.4.3, table E.1 (from memory): σ[s(q̄)]/σ(q̄) in per cent for n readings.
TABLE_E1 = {2: 76, 3: 52, 4: 42, 5: 36, 10: 24, 20: 16, 30: 13, 50: 10}


@pytest.mark.parametrize("n, per_cent", TABLE_E1.items())
def test_gum_table_e1_how_well_few_walks_tell_their_scatter(n, per_cent):
    """Why the page says that three walks know their own scatter to a half only: from the distribution of s,
    √(1 − c²)/c with c = √(2/(n−1)) Γ(n/2)/Γ((n−1)/2)."""
    c = math.sqrt(2 / (n - 1)) * math.exp(math.lgamma(n / 2) - math.lgamma((n - 1) / 2))
    assert 100 * math.sqrt(1 - c * c) / c == pytest.approx(per_cent, abs=0.75)


@given(
    st.floats(20, 200),
    st.lists(st.floats(45, 55), min_size=3, max_size=10),
    st.floats(0.001, 1),
    st.floats(0.001, 1),
    st.floats(10, 5000),
)
def test_a_reading_put_right_as_the_uncertainties_package_has_it(taped, walks, tape_u, step, reading):
    by = calibrate(taped, walks, tape_u, step)
    mean, scatter, type_a = mean_u(walks)
    step_u = step / math.sqrt(12)
    read = ufloat(mean, math.hypot(type_a, step_u))
    factor = ufloat(taped, tape_u) / read
    assert by.factor == pytest.approx(factor.nominal_value, rel=1e-12)
    assert by.factor_u == pytest.approx(factor.std_dev, rel=1e-9)
    right, reference = put_right(reading, by), factor * ufloat(reading, math.hypot(scatter / mean * reading, step_u))
    assert right.distance_m == pytest.approx(reference.nominal_value, rel=1e-12)
    assert right.distance_u_m == pytest.approx(reference.std_dev, rel=1e-9)
