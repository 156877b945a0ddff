"""Published values that are checked by computing them with our functions, by the name in the `target` column."""

import math
import re

import pytest

from fieldtally.book.bodies.ridden import RecoveryCheck
from fieldtally.trade import conditioning, recovery
from fieldtally.trade.dressage_score import DressageRules, Sheet, dressage_score
from fieldtally.trade.fence_cautions import fence_cautions
from fieldtally.trade.optimum import recorded_s, time_at_speed_s
from fieldtally.trade.pace import HAND_TIMING_SD_S, speed
from fieldtally.trade.rulebook import shipped
from fieldtally.trade.strides import STRIDE_M, distance_for_m, related, strides
from fieldtally.trade.units import MPM_IN, distance_m

BOOKS = shipped()
GATES = {gate.id: gate for gate in (*recovery.NEXT_SET, *recovery.AFTER_WORK)}
ENDS = re.compile(r"(\d+)-(\d+)")


def ends(row):
    return [float(end) for end in ENDS.fullmatch(row["value"]).groups()]


def seconds_at_a_speed(row):
    """As printed, to two decimals; and the speed comes back from the time."""
    metres, mpm = map(float, re.fullmatch(r"seconds per (\d+) m at (\d+) m/min", row["quantity"]).groups())
    seconds = time_at_speed_s(metres, mpm, "none")
    assert seconds == pytest.approx(float(row["value"]), abs=0.005)
    assert speed(metres, seconds * 1000).speed_mpm == pytest.approx(mpm)


def hand_timing(row):
    assert HAND_TIMING_SD_S == float(row["value"])


def hand_timing_from_two_reactions(row):
    """A start and a stop are two reactions of SD 0.07 s: their difference has 0.10 s, the interval's own SD."""
    assert math.sqrt(2) * float(row["value"]) == pytest.approx(HAND_TIMING_SD_S, abs=0.005)


def hand_times_too_short(row):
    """The three numbers of that study belong together; our ± is that of a foreseen start and is smaller."""
    late, early, both = map(float, re.fullmatch(r"([\d.]+)\+([\d.]+)=([\d.]+)", row["expected"]).groups())
    assert late + early == pytest.approx(both)
    assert float(row["value"]) in (late, early, both)
    assert both > HAND_TIMING_SD_S


def metres_a_second(row):
    assert float(row["expected"]) * MPM_IN["m/s"] == pytest.approx(float(row["value"]))


def wide_spread_caution(row):
    table = {"profile": "table", "height_cm": 100, "spread_base_cm": 100 * float(row["value"])}
    assert [caution.code for caution in fence_cautions(table)] == ["wide_spread"]
    assert not fence_cautions(table | {"spread_base_cm": 100 * float(row["value"]) - 1})


def starters_per_fall(row):
    """643 falls in 27,176 starts are one in 42: the three numbers of that study belong together."""
    assert float(row["value"]) in (27176, 643, 42)
    assert round(27176 / 643) == 42


def resting_heart_rate(row):
    """A horse at rest by this source has recovered by every gate."""
    for rate in ends(row):
        answers = recovery.recovery([recovery.Check(2, rate, 12), recovery.Check(45, rate, 12)], rate, 12).answers
        assert {answer.state for answer in answers} == {"passed"}


def resting_respiration(row):
    for rate in ends(row):
        answers = recovery.recovery([recovery.Check(2, 36, rate), recovery.Check(45, 36, rate)], 36, rate).answers
        assert {answer.state for answer in answers} == {"passed"}


def recovery_gate(row):
    gate = GATES[row["expected"]]
    assert gate.most == float(row["value"].lstrip("<"))
    assert gate.grade == "secondary"
    assert gate.under == (row["value"].startswith("<") or "below" in row["quantity"])


def return_to_normal(row):
    latest = {"light": recovery.LIGHT_BY_MIN, "rigorous": recovery.RIGOROUS_BY_MIN}[row["expected"]]
    assert latest == float(row["value"].rpartition("-")[2])
    assert recovery.OWN_NORMAL_WITHIN == 0.15


def highest_heart_rate(row):
    assert not RecoveryCheck().validate({"minute": 0, "heart_rate_bpm": float(row["value"])})


def still_puffing(row):
    assert recovery.recovery([recovery.Check(float(row["value"]), None, 60)]).state == "slow"


def walk_first(row):
    assert conditioning.WARM_UP_WALK_MIN == float(row["value"])


def strides_in_a_distance(row):
    metres = distance_m(f"{row['value']} ft")
    if row["expected"] == "stride":
        assert metres == pytest.approx(STRIDE_M)
    else:
        assert strides(metres) == int(row["expected"])
        assert distance_for_m(int(row["expected"])) == pytest.approx(metres)


def related_distance(row):
    most = int(row["value"])
    assert related(distance_for_m(most - 1)) and not related(distance_for_m(most))


def recorded_time(row):
    assert recorded_s(float(row["expected"]) * 1000) == float(row["value"])


def optimum_time(row):
    metres, mpm = map(float, row["expected"].split())
    assert time_at_speed_s(metres, mpm) == float(row["value"])
    assert BOOKS["gb-2024"].level("be90").value("cross_country", "speed_mpm") == mpm


def marks_to_penalties(row):
    marks, most = map(float, row["expected"].split())
    assert dressage_score([Sheet(marks, most)], DressageRules()).penalties == float(row["value"])


def waiver(row):
    """Above ten is eleven."""
    waivers = [rule.waived_by for rule in BOOKS["us-2023"].level("preliminary").eligibility if rule.waived_by]
    assert [(need.at, need.or_higher, need.count) for need in waivers] == [("preliminary", True, int(row["value"]) + 1)]


def show_jumping_limit_of_a_clear(row):
    (rule,) = BOOKS["gb-2024"].level("be100").eligibility
    assert rule.options[0][0].show_jumping_penalties_max == float(row["value"])
    assert rule.grade == "governing_body"


def open_to(level, points):
    entry = {name: value.value for name, value in level.entry.items()}
    return entry.get("horse_points_min", 0) <= points <= entry.get("horse_points_max", points)


def classes_open_to_points(row):
    """National classes open to a horse at either end of the points named."""
    points, _, classes = row["expected"].partition(": ")
    national = [level for level in BOOKS["ie-2019"].levels if level.entry]
    for each in map(int, points.split()):
        assert [level.id for level in national if open_to(level, each)] == classes.split()


FUNCTIONS = {
    "seconds at a speed": seconds_at_a_speed,
    "hand timing": hand_timing,
    "hand timing from two reactions": hand_timing_from_two_reactions,
    "hand times too short": hand_times_too_short,
    "metres a second": metres_a_second,
    "wide spread caution": wide_spread_caution,
    "starters per fall": starters_per_fall,
    "resting heart rate": resting_heart_rate,
    "resting respiration": resting_respiration,
    "recovery gate": recovery_gate,
    "return to normal": return_to_normal,
    "highest heart rate fits the book": highest_heart_rate,
    "still puffing": still_puffing,
    "walk first": walk_first,
    "strides in a distance": strides_in_a_distance,
    "related distance": related_distance,
    "recorded time": recorded_time,
    "optimum time": optimum_time,
    "marks to penalties": marks_to_penalties,
    "waiver": waiver,
    "show-jumping limit of a clear": show_jumping_limit_of_a_clear,
    "classes open to points": classes_open_to_points,
}
