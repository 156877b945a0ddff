"""Speeds and uncertainties against published numbers and the `uncertainties` package."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from uncertainties import ufloat

from fieldtally.trade.lateness import lateness
from fieldtally.trade.pace import difference_u, speed
from fieldtally.trade.propagation import quotient_u, rectangular_u

DISTANCES, TIMES_S = st.floats(10, 10_000), st.floats(5, 7200)


def test_gum_example_h2_impedance_is_a_quotient_with_correlation():
    """JCGM 100:2008, example H.2, tables H.2 to H.4 (figures from memory): V = 4.9990 V, u = 0.0032 V;
    I = 19.6610 mA, u = 0.0095 mA; r(V, I) = -0.36. Printed result: Z = 254.260 ohm, u = 0.236 ohm."""
    volts, amperes = 4.9990, 19.6610e-3
    impedance = volts / amperes
    assert impedance == pytest.approx(254.260, abs=5e-4)
    assert quotient_u(impedance, 0.0032 / volts, 0.0095e-3 / amperes, -0.36) == pytest.approx(0.236, abs=1e-3)


def test_gum_resolution_of_a_display():
    """JCGM 100:2008, F.2.2.1 (from memory): u = 0.29 dx for a display's step dx."""
    assert rectangular_u(1) == pytest.approx(0.29, abs=0.005)


@given(DISTANCES, TIMES_S, st.floats(0.001, 0.05))
def test_speed_as_the_uncertainties_package_has_it(distance_m, elapsed_s, relative):
    pace = speed(distance_m, elapsed_s * 1000, distance_u_m=relative * distance_m)
    reference = 60 * ufloat(distance_m, relative * distance_m) / ufloat(elapsed_s, 0.10)
    assert pace.speed_mpm == pytest.approx(reference.nominal_value, rel=1e-12)
    assert pace.speed_u_mpm == pytest.approx(reference.std_dev, rel=1e-9)


@given(DISTANCES, TIMES_S, st.floats(200, 700))
def test_lateness_as_the_uncertainties_package_has_it(distance_m, elapsed_s, target):
    late = lateness(speed(distance_m, elapsed_s * 1000), target)
    d, t = ufloat(distance_m, 0.01 * distance_m), ufloat(elapsed_s, 0.10)
    seconds, metres = t - 60 * d / target, target * t / 60 - d
    assert late.seconds_late == pytest.approx(seconds.nominal_value, rel=1e-9, abs=1e-9)
    assert late.seconds_late_u == pytest.approx(seconds.std_dev, rel=1e-9)
    assert late.metres_late == pytest.approx(metres.nominal_value, rel=1e-9, abs=1e-9)
    assert late.metres_late_u == pytest.approx(metres.std_dev, rel=1e-9)


@given(DISTANCES, TIMES_S, TIMES_S)
def test_difference_on_one_track_as_the_uncertainties_package_has_it(distance_m, one_s, other_s):
    found = difference_u(speed(distance_m, one_s * 1000), speed(distance_m, other_s * 1000), same_track=True)
    d = ufloat(distance_m, 0.01 * distance_m)  # one variable in both speeds: fully correlated
    reference = 60 * d / ufloat(one_s, 0.10) - 60 * d / ufloat(other_s, 0.10)
    assert found == pytest.approx(reference.std_dev, rel=1e-6)


# Seconds per 100 m and per 400 m at each speed: check-values.csv, rule set "calc" (arithmetic), as printed.
SECONDS_PER = {300: (20.0, 80.0), 320: (18.75, 75.0), 325: (18.46, 73.85), 350: (17.14, 68.57),
               400: (15.0, 60.0), 420: (14.29, 57.14), 435: (13.79, 55.17), 450: (13.33, 53.33),
               470: (12.77, 51.06), 475: (12.63, 50.53), 490: (12.24, 48.98), 500: (12.0, 48.0),
               520: (11.54, 46.15), 550: (10.91, 43.64), 570: (10.53, 42.11)}  # fmt: skip


@pytest.mark.parametrize("mpm, per_100_and_400", SECONDS_PER.items())
def test_seconds_per_stretch(mpm, per_100_and_400):
    for distance_m, seconds in zip((100, 400), per_100_and_400, strict=True):
        assert lateness(speed(distance_m, 60_000), mpm).target_s == pytest.approx(seconds, abs=0.005)


# Effect of each error in m/min at a distance in m and a speed in m/min: SD of hand timing 0.10 s (Faux and
# Godolphin, Am. J. Phys. 87(2):110, 2019) and 1 % of the wheel, as worked out from them by hand.
EFFECTS = [(100, 350, 2.1, 3.5), (200, 400, 1.3, 4.0), (400, 400, 0.7, 4.0), (400, 470, 0.9, 4.7)]


@pytest.mark.parametrize("distance_m, mpm, timing, wheel", EFFECTS)
def test_effect_of_hand_timing_and_wheel(distance_m, mpm, timing, wheel):
    elapsed_ms = 60_000 * distance_m / mpm
    printed = pytest.approx(timing, abs=0.07)  # the printed figures keep one decimal, some rounded up
    assert speed(distance_m, elapsed_ms, distance_u_m=0).speed_u_mpm == printed
    assert speed(distance_m, elapsed_ms, timing_sd_s=0).speed_u_mpm == pytest.approx(wheel, abs=0.05)


@pytest.mark.parametrize("elapsed_s, per_cent", [(12, 0.8), (30, 0.33), (60, 0.17)])
def test_relative_error_of_a_hand_timed_run(elapsed_s, per_cent):
    """SD 0.10 s of a start-stop pair (Faux and Godolphin 2019) as a share of the run's time."""
    pace = speed(400, elapsed_s * 1000, distance_u_m=0)
    assert 100 * pace.speed_u_mpm / pace.speed_mpm == pytest.approx(per_cent, abs=0.04)


def test_two_runs_closer_than_two_deviations_of_their_difference():
    """2·√2·0.10 s = 0.28 s, from the same published deviation."""
    pace = speed(400, 60_000, distance_u_m=0)
    in_seconds = difference_u(pace, pace, same_track=True) / pace.speed_mpm * pace.elapsed_s
    assert 2 * in_seconds == pytest.approx(0.28, abs=0.005)
    assert in_seconds == pytest.approx(math.sqrt(2) * 0.10)
