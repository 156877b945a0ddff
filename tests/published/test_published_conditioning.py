"""Recovery gates and resting rates against the published figures; sources as in check-values.csv."""

import pytest

from fieldtally.trade.conditioning import WARM_UP_WALK_MIN, interval_steps
from fieldtally.trade.recovery import (
    AFTER_WORK,
    LIGHT_BY_MIN,
    NEXT_SET,
    OWN_NORMAL_WITHIN,
    RIGOROUS_BY_MIN,
    Check,
    recovery,
)

GATES = {gate.id: gate for gate in (*NEXT_SET, *AFTER_WORK)}


@pytest.mark.parametrize("gate, minute, most, source", [
    ("next_heart", 0, 120, "endurance notes of a combined-training talk, 1998"),
    ("next_respiration", 0, 80, "endurance notes of a combined-training talk, 1998"),
    ("heart_10", 10, 80, "endurance notes of a combined-training talk, 1998"),
    ("respiration_10", 10, 40, "endurance notes of a combined-training talk, 1998"),
    ("heart_2", 2, 100, "article of a feed-supplement company"),
    ("heart_10_fit", 10, 60, "article of a feed-supplement company"),
])  # fmt: skip
def test_gate(gate, minute, most, source):
    assert (GATES[gate].minute, GATES[gate].most, GATES[gate].source) == (minute, most, source)


def test_return_to_normal():
    """Provet, equine cardiology: within 15 % of normal 15 min after light work, 30 to 45 min after rigorous."""
    assert (OWN_NORMAL_WITHIN, LIGHT_BY_MIN, RIGOROUS_BY_MIN) == (0.15, 15, 45)


@pytest.mark.parametrize("heart, respiration", [(30, 12), (44, 20), (28, 8), (36, 8), (42, 12)])
def test_published_resting_rates_pass_every_gate(heart, respiration):
    """Clinic pages disagree (pulse 30-44, 28-44, 36-42; respiration 12-20, 8-16, 8-12); a horse at rest by any
    of them has recovered by all of them."""
    found = recovery([Check(2, heart, respiration), Check(45, heart, respiration)], heart, respiration)
    assert {each.state for each in found.answers} == {"passed"}


def test_still_puffing_after_ten_minutes_is_a_warning():
    """USCTA Book of Eventing 1987 (USEA 2015): still puffing 10 minutes later is a warning."""
    assert recovery([Check(10, None, 60)]).state == "slow"


def test_walk_first():
    """A site adapting the USCTA book: 15 minutes of walk before the work."""
    assert WARM_UP_WALK_MIN == 15


def test_structure_of_the_sets():
    """Riders' forum: usually three canters with walks between; the canter grows, the walk does not."""
    steps = interval_steps(6, 520)
    assert {step.canters for step in steps} == {3}
    assert [step.work_min for step in steps] == sorted({step.work_min for step in steps})
    assert all(later.walk_min <= earlier.walk_min for earlier, later in zip(steps, steps[1:], strict=False))
