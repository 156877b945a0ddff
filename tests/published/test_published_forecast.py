"""The forecast's arithmetic against brute force, reference libraries and published rates."""

from itertools import product
from math import comb, log, prod

import numpy as np
import pytest
from scipy.stats import betabinom, binom

from bench.coverage import LEVEL, Truth, written
from fieldtally.readiness.bar import shipped_bars
from fieldtally.readiness.forecast import chance_of_fall
from fieldtally.readiness.limits import level_speed_mpm
from fieldtally.readiness.stops import beta_binomial, poisson_binomial, stopped_efforts
from fieldtally.readiness.typical_course import efforts_of
from readiness.made_up import Logbook

CHANCES = [0.02, 0.05, 0.11, 0.3, 0.45, 0.5, 0.9]


def by_brute_force(chances):
    found = [0.0] * (len(chances) + 1)
    for happened in product((0, 1), repeat=len(chances)):
        found[sum(happened)] += prod(p if yes else 1 - p for p, yes in zip(chances, happened, strict=True))
    return found


def test_poisson_binomial_is_the_sum_over_all_outcomes():
    assert poisson_binomial(CHANCES) == pytest.approx(by_brute_force(CHANCES), abs=1e-15)


# README of the Python package fast-poibin (2023), as printed there: three events of 0.1, 0.2 and 0.2.
def test_poisson_binomial_as_a_python_package_prints_it():
    assert poisson_binomial([0.1, 0.2, 0.2]) == pytest.approx([0.576, 0.352, 0.068, 0.004], abs=1e-12)


# Vignette "Exact Procedures" of the R package PoissonBinomial (method of W. Biscarri, S. Zhao, R. Brunner,
# Computational Statistics and Data Analysis, 2018): ten chances, R's runif(10) after set.seed(1), each so many
# times, sample(1:10, 10, TRUE), worked out anew from R's published generator; and the chances of 0, 1, 30 to 38, 60
# and 61 events as printed there.
SEEDED = [0.2655086631421, 0.372123899636790, 0.572853363351896, 0.908207789994776, 0.201681931037456,
          0.898389684967697, 0.944675268605351, 0.660797792486846, 0.629114043898880, 0.0617862704675645]  # fmt: skip
TIMES = [3, 1, 5, 5, 10, 6, 10, 7, 9, 5]
PRINTED = {0: 3.574462e-35, 1: 1.120280e-32, 30: 1.824629e-02, 31: 3.307754e-02, 32: 5.396724e-02, 33: 7.921491e-02,
           34: 1.045505e-01, 35: 1.239854e-01, 36: 1.319896e-01, 37: 1.259938e-01, 38: 1.077029e-01,
           60: 9.411166e-19, 61: 6.727527e-21}  # fmt: skip


def test_poisson_binomial_as_an_r_package_prints_it():
    found = poisson_binomial([each for each, times in zip(SEEDED, TIMES, strict=True) for _ in range(times)])
    assert len(found) == 62
    for events, printed in PRINTED.items():
        assert found[events] == pytest.approx(printed, rel=5e-7)


def test_equal_chances_make_it_binomial():
    assert poisson_binomial([0.3] * 12) == pytest.approx(binom.pmf(np.arange(13), 12, 0.3), abs=1e-14)


# Y. Wang, "On the number of successes in independent trials", Statistica Sinica 3 (1993): mean Σp, variance
# Σp(1 - p), and the characteristic-function form of M. Fernández and S. Williams, "Closed-form expression for the
# Poisson-binomial probability density function", IEEE Trans. Aerospace 46(2) (2010), equation as published:
# P(k) = 1/(n+1) Σ_l C^(-lk) Π_m (1 + (C^l - 1) p_m), C = exp(2πi/(n+1)).
def test_poisson_binomial_is_the_published_closed_form():
    n, p = len(CHANCES), np.array(CHANCES)
    root = np.exp(2j * np.pi * np.arange(n + 1) / (n + 1))
    inner = np.array([np.prod(1 + (each - 1) * p) for each in root])
    closed = [float((root**-k * inner).sum().real) / (n + 1) for k in range(n + 1)]
    found = poisson_binomial(CHANCES)
    assert found == pytest.approx(closed, abs=1e-14)
    k = np.arange(n + 1)
    assert (found * k).sum() == pytest.approx(p.sum())
    assert (found * k**2).sum() - p.sum() ** 2 == pytest.approx((p * (1 - p)).sum())


# Le Cam's theorem (L. Le Cam, Pacific J. Math. 10, 1960): the distance to Poisson(Σp) is at most 2 Σp².
def test_many_small_chances_are_nearly_poisson():
    chances = np.full(40, 0.02)
    k = np.arange(41)
    poisson = np.exp(-0.8) * 0.8**k / np.array([float(np.prod(np.arange(1, each + 1))) for each in k])
    assert np.abs(poisson_binomial(chances) - poisson).sum() <= 2 * (chances**2).sum()


@pytest.mark.parametrize(("efforts", "alpha", "beta"), [(1, 3.0, 0.5), (6, 20.0, 1.5), (9, 0.5, 0.5)])
def test_beta_binomial_is_scipys(efforts, alpha, beta):
    expected = betabinom.pmf(np.arange(efforts + 1), efforts, beta, alpha)
    assert beta_binomial(efforts, alpha, beta) == pytest.approx(expected, rel=1e-10)


# Polya's urn: with Beta(1, 1) every number of stops is equally likely (Laplace, 1774).
def test_knowing_nothing_every_number_of_stops_is_as_likely():
    assert beta_binomial(7, 1, 1) == pytest.approx([1 / 8] * 8)


# Laplace's rule of succession: after n clear of n the next is clear with (n + 1) / (n + 2), prior Beta(1, 1).
def test_laplaces_rule_of_succession():
    assert stopped_efforts([(1, 5 + 1, 1)])[0] == pytest.approx(6 / 7)


def test_certain_chances_make_the_course_binomial():
    large = 1e9
    found = stopped_efforts([(4, 0.9 * large, 0.1 * large), (3, 0.9 * large, 0.1 * large)])
    assert found[2] == pytest.approx(comb(7, 2) * 0.1**2 * 0.9**5, rel=1e-4)


# Falls: 643 in 27,176 starts in Ireland 2011-14, 1 in 42 (J. Hum. Sport Exerc. 12(2), 2017); 96 in 2,002 starts
# in a British sample 2003-12 (trade press).
def test_the_base_rate_of_falls_lies_between_the_published_ones():
    assumed = shipped_bars().forecast_numbers["falls_per_start"]
    assert assumed == pytest.approx(643 / 27_176, abs=5e-5)
    assert 1 / assumed == pytest.approx(42, abs=0.5)
    assert assumed <= 96 / 2_002


@pytest.mark.parametrize("efforts", [1, 14, 18, 40])
def test_a_pair_without_a_record_falls_at_the_published_rate_however_long_the_course(efforts):
    found = chance_of_fall(Logbook().standing().weighing, efforts, shipped_bars().forecast_numbers)
    assert found == pytest.approx(643 / 27_176, abs=5e-5)


def test_a_fall_of_its_own_moves_a_pair_towards_the_higher_published_rate_and_clear_attempts_away():
    numbers, lower, higher = shipped_bars().forecast_numbers, 643 / 27_176, 96 / 2_002
    fallen, clear = with_attempts("rider_fall", 1), with_attempts("clear", 200)
    assert (lower + higher) / 2 < chance_of_fall(fallen, 18, numbers) < higher
    assert lower / 2 < chance_of_fall(clear, 18, numbers) < lower


def with_attempts(outcome: str, times: int):
    logbook = Logbook()
    outing, fence = logbook.outing(), logbook.fence()
    logbook.attempt(outing, fence, outcome, times)
    return logbook.standing().weighing


# Clear rounds: 76,883 of 107,348 starts in international events 2008-18, 71.6 % ("Factors associated with safe
# completion of FEI eventing cross-country (2008-2018)", Equine Veterinary Journal, 2023, doi 10.1111/evj.14002, counts
# as the trade press gives them); courses of one and two stars had 25 to 30 efforts (fei-2018 here: "table").
CLEAR_STARTS, STARTS, INTERNATIONAL_EFFORTS = 76_883, 107_348, 27


def test_a_logbook_like_a_published_starters_is_forecast_clear_as_often_as_they_were():
    """Each question clear as often as makes the published share; a season written down, and the real forecast of it."""
    unfallen = 1 - 643 / 27_176
    chance = (CLEAR_STARTS / STARTS / unfallen) ** (1 / INTERNATIONAL_EFFORTS)
    said = [forecast_of_a_season(chance, seed) for seed in range(24)]
    efforts = said[0]["efforts"]
    published = unfallen * chance**efforts
    assert np.mean([each["clear_chance"] for each in said]) == pytest.approx(published, abs=0.05)
    held = [each["clear_low"] <= published <= each["clear_high"] for each in said]
    assert np.mean(held) >= 0.75  # 80 % is what the interval says
    assert 0.7 < published < 0.9


def forecast_of_a_season(chance: float, seed: int) -> dict:
    random, logbook = np.random.default_rng((5, seed)), Logbook()
    empty = logbook.standing(LEVEL)
    asked = {each.requirement.id: each.requirement for each in empty.findings if each.requirement.condition}
    target_mpm = level_speed_mpm(empty.weighing.level)
    truth = Truth(dict.fromkeys(asked, log(chance / (1 - chance))), (66, 2), 0.1, (target_mpm, 5))
    written(truth, asked, logbook, target_mpm, random)
    found = logbook.standing(LEVEL).forecast
    return found | {"efforts": efforts_of(empty.weighing.level, shipped_bars().forecast_numbers)}
