"""An ordered list for the next outing at a chosen field: warm up below the level, work on the few things that
move the standing most, end on a good one; and what to leave alone, and when to stop.

How many at most, and in which order, is common practice, no source.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from fieldtally.readiness.cautions import after_a_fall, holds
from fieldtally.readiness.plain import many_in_words, sentence
from fieldtally.readiness.plan_steps import Step, end_on, warm_up, work_and_rest
from fieldtally.readiness.standing import Standing
from fieldtally.readiness.weigh_word import hold_over

STOP_WHEN = (
    "Stop a question at the second stop: go back to something easy, end well, and come back another day.",
    "Stop for the day after any fall, and after a knock to the head do not ride again before a doctor has seen you.",
    "Stop while both of you still enjoy it: a tired horse stops at fences it knows.",
)


@dataclass(frozen=True)
class Plan:
    field_id: str | None
    steps: tuple[Step, ...]
    leave_alone: tuple[dict, ...]
    text: str
    cautions: tuple[str, ...] = ()

    def to_json(self) -> dict:
        return {
            "field_id": self.field_id, "steps": [step.to_json() for step in self.steps],
            "leave_alone": list(self.leave_alone), "stop_when": list(STOP_WHEN), "text": self.text,
            "cautions": list(self.cautions),
        }  # fmt: skip


def plan_outing(standing: Standing, field_id: str | None) -> Plan:
    """The plan for one outing at a field. Empty, with the reason, while the coach holds the level or a lower one."""
    held = hold_over(standing.weighing)
    if held:
        return Plan(field_id, (), (), held_words(standing, *held))
    above, fall = holds(standing.weighing), after_a_fall(standing.findings, standing.weighing)
    return replace(ordered(standing, field_id), cautions=(*above, *fall))


def ordered(standing: Standing, field_id: str | None) -> Plan:
    fences = here(standing, field_id)
    if not fences:
        return Plan(field_id, (), (), "No fence is listed at this field yet.")
    work, left = work_and_rest(standing, fences)
    if not work:
        return Plan(field_id, (), tuple(left), "Nothing open can be worked on here." if left else NOTHING_OPEN)
    steps = (*warm_up(standing, fences), *work, *end_on(standing, fences, {step.fence_id for step in work}))
    return Plan(field_id, steps, tuple(left), sentence(f"{many_in_words(len(work), 'question')} to work on here"))


NOTHING_OPEN = "Every question over fences is shown at this level: nothing here needs work."


def held_words(standing: Standing, level, word) -> str:
    if level.id == standing.weighing.level.id:
        return f"No plan while your coach holds this level: {word.body['reason']}"
    return f"No plan while your coach holds a lower level: {level.name}. {word.body['reason']}"


def with_plans(standings: Sequence[Standing]) -> list[dict]:
    """One horse's standings as JSON, lowest level first; the level it is at and the next carry their plans."""
    present = next((place for place, each in enumerate(standings) if each.is_present_level), 0)
    near = (present, present + 1)
    return [
        each.to_json() | {"plans": plans_for(each) if place in near else []} for place, each in enumerate(standings)
    ]


def plans_for(standing: Standing) -> list[dict]:
    """One plan for each field that has fences, as JSON, in the order of the fields' ids."""
    fields = {record.body["field_id"] for record in standing.weighing.book.fences.values()} - {None}
    return [plan_outing(standing, field_id).to_json() for field_id in sorted(fields)]


def here(standing: Standing, field_id: str | None) -> dict:
    fences = standing.weighing.book.fences
    return {key: record for key, record in fences.items() if record.body["field_id"] == field_id}
