"""The vectors of interval steps and recovery that the phone runs too, and that the files are what was written."""

import json

import make_conditioning_vectors
import make_recovery_vectors
import pytest

from fieldtally.trade.bad_input import BadInput
from fieldtally.trade.conditioning import course_minutes, interval_steps, steps_for
from fieldtally.trade.recovery import AFTER_WORK, NEXT_SET, Check, next_set, recovery
from fieldtally.trade.rulebook import Level, Value


def read(module):
    return json.loads(module.TARGET.read_text(encoding="utf-8"))


@pytest.mark.parametrize("module", [make_conditioning_vectors, make_recovery_vectors])
def test_the_file_is_what_was_written(module):
    assert module.TARGET.read_text(encoding="utf-8") == module.text()


def level_of(stated):
    values = {name: Value(name, number, "", "an invented rulebook", "secondary") for name, number in stated.items()}
    return Level("low", "Low", 1, {"cross_country": values})


def plain(steps):
    names = ("canters", "work_min", "walk_min")
    return [{**{name: getattr(step, name) for name in names}, "speed_mpm": list(step.speed_mpm)} for step in steps]


def steps_of(asked):
    if "level" in asked:
        level = level_of(asked["level"])
        return {"course_min": course_minutes(level), "steps": plain(steps_for(level))}
    try:
        return {"steps": plain(interval_steps(**asked))}
    except BadInput as refusal:
        return {"refused": refusal.field}


@pytest.mark.parametrize("vector", read(make_conditioning_vectors), ids=lambda v: json.dumps(v["input"]))
def test_steps(vector):
    assert steps_of(vector["input"]) == vector["expected"]


def test_gates():
    gates = [[gate.id, gate.what, gate.minute, gate.most, gate.under] for gate in (*NEXT_SET, *AFTER_WORK)]
    assert gates == read(make_recovery_vectors)["gates"]


def answer_of(asked):
    if "next" in asked:
        found = next_set(asked["heart_rate_bpm"], asked["respiration_bpm"])
        return {"state": found.state, "answers": [each.state for each in found.answers]}
    try:
        checks = [Check(*check) for check in asked["checks"]]
        found = recovery(checks, asked["resting_heart_rate_bpm"], asked["resting_respiration_bpm"], asked["rigorous"])
    except BadInput as refusal:
        return {"refused": refusal.field}
    answers = {each.gate.id: [each.state, each.minute, each.rate] for each in found.answers}
    return {"state": found.state, "answers": answers}


@pytest.mark.parametrize("vector", read(make_recovery_vectors)["vectors"], ids=lambda v: v["why"])
def test_recovery(vector):
    assert answer_of(vector["input"]) == vector["expected"]
