"""Readiness' estimate against outside sources: scipy, statsmodels, and tables and examples in print."""

import pytest
from scipy.stats import beta
from statsmodels.stats.proportion import proportion_confint

from fieldtally.readiness.estimate import JEFFREYS, Prior, clear_still_needed, estimate

COUNTS = [(0, 1), (1, 1), (3, 3), (4, 5), (9, 10), (17, 20), (0, 10), (250, 263)]


@pytest.mark.parametrize(("clear", "attempts"), COUNTS)
def test_the_lower_bound_is_scipys_beta_quantile(clear, attempts):
    found = estimate(clear, attempts, confidence=0.8)
    assert found.lower_bound == pytest.approx(beta.ppf(0.2, clear + 0.5, attempts - clear + 0.5), rel=1e-9)
    assert found.mean == pytest.approx(beta.mean(clear + 0.5, attempts - clear + 0.5), rel=1e-12)


@pytest.mark.parametrize(("clear", "attempts"), [each for each in COUNTS if 0 < each[0] < each[1]])
def test_the_jeffreys_interval_is_the_one_of_statsmodels(clear, attempts):
    low, high = proportion_confint(clear, attempts, alpha=0.05, method="jeffreys")
    assert estimate(clear, attempts, confidence=0.975).lower_bound == pytest.approx(low, rel=1e-9)
    assert estimate(clear, attempts, confidence=0.025).lower_bound == pytest.approx(high, rel=1e-9)


# Documentation of the R package RSurveillance 0.2.1, binom.jeffreys, example output as printed there: x of n and the
# limits of the 95 % Jeffreys interval.
JEFFREYS_PRINTED = [
    (25, 200, 0.08462743, 0.176126),
    (10, 200, 0.02599340, 0.08687509),
    (50, 200, 0.19387268, 0.31330266),
    (90, 200, 0.38218245, 0.51925306),
]


@pytest.mark.parametrize(("clear", "attempts", "low", "high"), JEFFREYS_PRINTED)
def test_jeffreys_intervals_as_an_r_package_prints_them(clear, attempts, low, high):
    assert estimate(clear, attempts, confidence=0.975).lower_bound == pytest.approx(low, abs=1e-8)
    assert estimate(clear, attempts, confidence=0.025).lower_bound == pytest.approx(high, abs=5e-7)


# L. Brown, T. Cai, A. DasGupta, Statistical Science 16(2), 2001, table of 95 % limits for n = 7, from memory; only
# the rows in which their modified interval is Jeffreys' own.
@pytest.mark.parametrize(("clear", "low", "high"), [(2, 0.065, 0.648), (3, 0.139, 0.766)])
def test_jeffreys_intervals_of_the_published_table(clear, low, high):
    assert estimate(clear, 7, confidence=0.975).lower_bound == pytest.approx(low, abs=5e-4)
    assert estimate(clear, 7, confidence=0.025).lower_bound == pytest.approx(high, abs=6e-4)


@pytest.mark.parametrize(("clear", "attempts"), [each for each in COUNTS if each[0] > 0])
def test_the_exact_interval_of_clopper_and_pearson_is_a_beta_quantile_too(clear, attempts):
    """Clopper-Pearson's lower limit is the quantile of Beta(x, n - x + 1): the same function with the prior
    Beta(0, 1) (C. Clopper, E. Pearson, Biometrika 26, 1934)."""
    low, _ = proportion_confint(clear, attempts, alpha=0.05, method="beta")
    assert estimate(clear, attempts, 0.975, Prior(0, 1)).lower_bound == pytest.approx(low, rel=1e-9)


# NIST/SEMATECH e-Handbook of Statistical Methods, 7.2.4.1 "Confidence intervals": 4 defectives out of 20
# (p = 0.20), exact two-sided 90 % limits 0.071354 and 0.401029. From memory.
def test_the_worked_example_of_the_nist_handbook():
    exact_low = estimate(4, 20, 0.95, Prior(0, 1)).lower_bound
    exact_high = estimate(4, 20, 0.05, Prior(1, 0)).lower_bound
    assert exact_low == pytest.approx(0.071354, abs=2e-6)
    assert exact_high == pytest.approx(0.401029, abs=2e-6)


# R's own manual, ?binom.test, after W. Conover, Practical Nonparametric Statistics (1971): of Mendel's 925 plants 682
# were giants; its 95 % interval after Clopper and Pearson prints as 0.7076683 0.7654066 (output from memory).
def test_mendels_plants_as_r_prints_them():
    assert estimate(682, 925, 0.975, Prior(0, 1)).lower_bound == pytest.approx(0.7076683, abs=5e-8)
    assert estimate(682, 925, 0.025, Prior(1, 0)).lower_bound == pytest.approx(0.7654066, abs=5e-8)


# Rule of three (J. Hanley, A. Lippman-Hand, "If nothing goes wrong, is everything all right?", JAMA 249(13),
# 1983): with no event in n trials the upper 95 % limit of its chance is 1 - 0.05^(1/n), about 3/n.
@pytest.mark.parametrize("attempts", [10, 30, 100])
def test_nothing_went_wrong_is_no_proof(attempts):
    lowest_clear = estimate(attempts, attempts, 0.95, Prior(0, 1)).lower_bound
    assert 1 - lowest_clear == pytest.approx(1 - 0.05 ** (1 / attempts), rel=1e-9)
    assert 1 - lowest_clear == pytest.approx(3 / attempts, rel=0.15)


# Percentage points of the F distribution (Fisher and Yates; printed in every statistics book; from memory): the 95 %
# point of F(2, 10) is 4.10 and of F(10, 2) is 19.40. Beta quantiles follow from them: x = a F / (a F + b), F(2a, 2b).
@pytest.mark.parametrize(("a", "b", "point"), [(1, 5, 4.10), (5, 1, 19.40), (5, 5, 2.98), (2, 4, 3.84)])
def test_beta_quantiles_follow_from_a_printed_f_table(a, b, point):
    expected = a * point / (a * point + b)
    assert estimate(0, 0, 0.05, Prior(a, b)).lower_bound == pytest.approx(expected, abs=5e-4)


def test_how_many_more_is_the_least_number_that_reaches_the_bound():
    for clear, attempts in COUNTS[:6]:
        more = clear_still_needed(clear, attempts, 0.79)
        assert estimate(clear + more, attempts + more).lower_bound >= 0.79
        assert more == 0 or estimate(clear + more - 1, attempts + more - 1).lower_bound < 0.79


def test_before_any_attempt_jeffreys_knows_nothing():
    assert estimate(0, 0, 0.5, JEFFREYS).lower_bound == pytest.approx(0.5)
