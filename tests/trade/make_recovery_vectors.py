"""Writes fixtures/contract/recovery.json, the recovery vectors that Python and TypeScript both run.

Every answer below was worked out by hand from the published gate named in docs/pace.md; nothing here calls
fieldtally. A gate is answered `passed`, `missed` or `not_measured` with the check that decided it:
a rate low enough by the gate's minute passes, one still too high at or after it misses.

Run: python tests/trade/make_recovery_vectors.py
"""

import json
from pathlib import Path

TARGET = Path(__file__).parents[2] / "fixtures" / "contract" / "recovery.json"

# id, what, by which minute, how much, whether it must be under that; the published figures
GATES = [
    ["next_heart", "heart_rate_bpm", 0, 120, True],
    ["next_respiration", "respiration_bpm", 0, 80, True],
    ["heart_2", "heart_rate_bpm", 2, 100, False],
    ["heart_10", "heart_rate_bpm", 10, 80, False],
    ["respiration_10", "respiration_bpm", 10, 40, False],
    ["heart_10_fit", "heart_rate_bpm", 10, 60, True],
]

NOT = ["not_measured", None, None]
UNASKED = {"heart_2": NOT, "heart_10": NOT, "respiration_10": NOT, "heart_10_fit": NOT}
HEART, BREATH = "own_heart_rate_bpm", "own_respiration_bpm"


def passed(minute, rate):
    return ["passed", minute, rate]


def missed(minute, rate):
    return ["missed", minute, rate]


def judged(why, state, checks, answers, heart=None, breath=None, rigorous=True):
    """`checks`: minute, heart rate, respiration. `heart`, `breath`: this horse's own at rest."""
    own = {**({HEART: NOT} if heart else {}), **({BREATH: NOT} if breath else {})}
    asked = {"checks": checks, "resting_heart_rate_bpm": heart, "resting_respiration_bpm": breath, "rigorous": rigorous}
    return {"why": why, "input": asked, "expected": {"state": state, "answers": {**own, **UNASKED, **answers}}}


def refused(why, field, checks, heart=None, breath=None):
    asked = {"checks": checks, "resting_heart_rate_bpm": heart, "resting_respiration_bpm": breath, "rigorous": True}
    return {"why": why, "input": asked, "expected": {"refused": field}}


def going_on(why, state, heart, breath, heart_answer, breath_answer):
    """Before the next canter. Only the states of the two gates are told."""
    asked = {"next": True, "heart_rate_bpm": heart, "respiration_bpm": breath}
    return {"why": why, "input": asked, "expected": {"state": state, "answers": [heart_answer, breath_answer]}}


VECTORS = [
    judged("all gates passed", "as_expected", [[2, 96, 60], [10, 56, 30]],
           {"heart_2": passed(2, 96), "heart_10": passed(10, 56), "respiration_10": passed(10, 30),
            "heart_10_fit": passed(10, 56)}),
    judged("the edges: at most 100, at most 80, at most 40 pass; 60 is not under 60", "as_expected",
           [[2, 100, 50], [10, 80, 40]],
           {"heart_2": passed(2, 100), "heart_10": passed(10, 80), "respiration_10": passed(10, 40),
            "heart_10_fit": missed(10, 80)}),
    judged("exactly 60 at 10 minutes misses the fit horse's gate only", "as_expected", [[10, 60, 30]],
           {"heart_10": passed(10, 60), "respiration_10": passed(10, 30), "heart_10_fit": missed(10, 60)}),
    judged("heart 81 at 10 minutes: slow", "slow", [[10, 81, 30]],
           {"heart_10": missed(10, 81), "respiration_10": passed(10, 30), "heart_10_fit": missed(10, 81)}),
    judged("breathing 41 at 10 minutes: slow", "slow", [[10, 58, 41]],
           {"heart_10": passed(10, 58), "respiration_10": missed(10, 41), "heart_10_fit": passed(10, 58)}),
    judged("still puffing after 10 minutes is a warning (USCTA Book of Eventing, 1987)", "slow", [[10, None, 60]],
           {"respiration_10": missed(10, 60)}),
    judged("101 at 2 minutes says not yet fit, not slow", "as_expected", [[2, 101, 60], [10, 72, 36]],
           {"heart_2": missed(2, 101), "heart_10": passed(10, 72), "respiration_10": passed(10, 36),
            "heart_10_fit": missed(10, 72)}),
    judged("only missing at 2 minutes: nothing that tells was measured", "not_known", [[2, 110, 60]],
           {"heart_2": missed(2, 110)}),
    judged("low enough early passes the later gates too", "as_expected", [[5, 58, 36]],
           {"heart_10": passed(5, 58), "respiration_10": passed(5, 36), "heart_10_fit": passed(5, 58)}),
    judged("low enough late tells nothing of the gate before", "not_known", [[20, 76, 30]],
           {"heart_10_fit": missed(20, 76)}),
    judged("too high late misses every gate before it", "slow", [[12, 104, 30]],
           {"heart_2": missed(12, 104), "heart_10": missed(12, 104), "heart_10_fit": missed(12, 104)}),
    judged("too high early, then nothing: not known", "not_known", [[5, 130, None]], {"heart_2": missed(5, 130)}),
    judged("taken in any order: judged by the minute", "as_expected", [[10, 56, 30], [2, 96, 60]],
           {"heart_2": passed(2, 96), "heart_10": passed(10, 56), "respiration_10": passed(10, 30),
            "heart_10_fit": passed(10, 56)}),
    judged("the latest good check by the minute is named", "as_expected", [[1, 98, None], [2, 92, None], [9, 70, None]],
           {"heart_2": passed(2, 92), "heart_10": passed(9, 70)}),
    judged("the first bad check from the minute on is named", "slow", [[10, 84, None], [12, 90, None]],
           {"heart_10": missed(10, 84), "heart_10_fit": missed(10, 84)}),
    judged("good at 10 and up again at 12: missed", "slow", [[10, 58, None], [12, 88, None]],
           {"heart_10": missed(12, 88), "heart_10_fit": missed(12, 88)}),
    judged("breathing faster than the heart beats: call the vet (from memory)", "call_vet", [[10, 60, 72]],
           {"heart_10": passed(10, 60), "respiration_10": missed(10, 72), "heart_10_fit": missed(10, 60)}),
    judged("it calls the vet at any minute, whatever came after", "call_vet", [[1, 90, 96], [10, 56, 30]],
           {"heart_2": passed(1, 90), "heart_10": passed(10, 56), "respiration_10": passed(10, 30),
            "heart_10_fit": passed(10, 56)}),
    judged("as fast as the heart is not faster", "as_expected", [[10, 40, 40]],
           {"heart_10": passed(10, 40), "respiration_10": passed(10, 40), "heart_10_fit": passed(10, 40)}),
    judged("the two at different minutes are not compared", "slow", [[9, 50, None], [10, None, 60]],
           {"heart_10": passed(9, 50), "respiration_10": missed(10, 60), "heart_10_fit": passed(9, 50)}),
    judged("own normals: 36 and 15 % are 41.4; 44 at 45 minutes is too much", "slow", [[10, 58, None], [45, 44, None]],
           {HEART: missed(45, 44), "heart_10": passed(10, 58), "heart_10_fit": passed(10, 58)}, heart=36),
    judged("own normals: 41 at 40 minutes is back", "as_expected", [[10, 58, None], [40, 41, None]],
           {HEART: passed(40, 41), "heart_10": passed(10, 58), "heart_10_fit": passed(10, 58)}, heart=36),
    judged("own normals at the edge: 40 and 15 % are 46", "as_expected", [[45, 46, None]],
           {HEART: passed(45, 46)}, heart=40),
    judged("own normals at the edge: 20 breaths and 15 % are 23", "as_expected", [[45, None, 23]],
           {BREATH: passed(45, 23)}, breath=20),
    judged("light work is given 15 minutes", "slow", [[15, 44, None]], {HEART: missed(15, 44)},
           heart=36, rigorous=False),
    judged("rigorous work at 15 minutes is not asked yet", "not_known", [[15, 44, None]], {}, heart=36),
    judged("breathing: 12 and 15 % are 13.8; 20 is too much", "slow", [[10, 58, 20], [45, 38, 20]],
           {HEART: passed(45, 38), BREATH: missed(45, 20), "heart_10": passed(10, 58), "respiration_10": passed(10, 20),
            "heart_10_fit": passed(10, 58)}, heart=36, breath=12),
    judged("half minutes count as they are", "as_expected", [[9.5, 79, 40]],
           {"heart_10": passed(9.5, 79), "respiration_10": passed(9.5, 40)}),
    going_on("under both: 118 and 78", "as_expected", 118, 78, "passed", "passed"),
    going_on("120 is not under 120", "slow", 120, 70, "missed", "passed"),
    going_on("80 is not under 80", "slow", 119, 80, "passed", "missed"),
    going_on("only one measured: not known", "not_known", 110, None, "passed", "not_measured"),
    going_on("only breathing measured: not known", "not_known", None, 60, "not_measured", "passed"),
    going_on("one measured and too high: wait", "slow", 130, None, "missed", "not_measured"),
    going_on("breathing over the heart: call the vet", "call_vet", 70, 79, "passed", "passed"),
    refused("nothing measured", "checks", []),
    refused("before the end of the work", "checks[0].minute", [[-1, 60, None]]),
    refused("a heart of zero", "checks[1].heart_rate_bpm", [[10, 60, None], [12, 0, None]]),
    refused("breathing below zero", "checks[0].respiration_bpm", [[10, 60, -4]]),
    refused("a resting heart of zero", "resting_heart_rate_bpm", [[10, 60, None]], heart=0),
    refused("resting breathing below zero", "resting_respiration_bpm", [[10, 60, None]], breath=-12),
]  # fmt: skip


def text():
    rows = ",\n".join("    " + json.dumps(vector) for vector in VECTORS)
    gates = ",\n".join("    " + json.dumps(gate) for gate in GATES)
    return f'{{\n  "gates": [\n{gates}\n  ],\n  "vectors": [\n{rows}\n  ]\n}}\n'


if __name__ == "__main__":
    TARGET.write_text(text(), encoding="utf-8")
