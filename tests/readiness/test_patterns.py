"""Where stops gather."""

import pytest
from scipy.stats import binomtest

from readiness.made_up import Logbook


def cautions(stops_left, stops_right, clear_each):
    logbook = Logbook()
    fence = logbook.fence(height_cm=90)
    outing = logbook.outing(3)
    for rein, stops in (("left", stops_left), ("right", stops_right)):
        logbook.attempt(outing, fence, "run_out", stops, presentation={"rein": rein})
        logbook.attempt(outing, fence, "clear", clear_each, presentation={"rein": rein})
    return [each for each in logbook.standing().to_json()["cautions"] if each.startswith("A pattern")]


def test_stops_that_gather_on_one_rein_are_said():
    assert cautions(0, 6, 20) == [
        "A pattern: six of six stops came on the right rein, where 57 % of the attempts were."
    ]


@pytest.mark.parametrize(("left", "right"), [(0, 3), (3, 3), (2, 4)])
def test_few_or_scattered_stops_are_no_pattern(left, right):
    assert cautions(left, right, 20) == []


def test_the_threshold_is_the_one_sided_binomial_test_of_scipy():
    # 6 of 7 stops on the right, 26 of 47 attempts: p = 0.106, no pattern; 7 of 7: p = 0.019
    assert binomtest(6, 7, 26 / 47, alternative="greater").pvalue > 0.05
    assert cautions(1, 6, 20) == []
    assert binomtest(7, 7, 27 / 47, alternative="greater").pvalue < 0.05
    assert len(cautions(0, 7, 20)) == 1
