"""An ordered list for the next outing at a chosen field: warm up below the level, work on the few things that
move the standing most, end on a good one; and what to leave alone, and when to stop.

How many at most, and in which order, is common practice, no source.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from fieldtally.readiness.fences_here import asks_it, fits, height_cm, in_order, too_large
from fieldtally.readiness.finding import Finding
from fieldtally.readiness.limits import fence_limit
from fieldtally.readiness.met_as import IN_WORDS
from fieldtally.readiness.plain import many_in_words, times_in_words
from fieldtally.readiness.standing import Standing
from fieldtally.readiness.weigh_word import hold_in_force

MOST_QUESTIONS = 4
MOST_TIMES = 2  # a third time over the same fence on the same day teaches little: its weight says so
WARM_UP_FENCES = 2
WARM_UP_BELOW = 0.9  # of the level's height
ORDER = ("shaky", "gone_stale", "building", "untried")

# a question that wants another one first
AFTER = {
    "ditch_fence_before": "ditch_alone", "ditch_fence_after": "ditch_alone", "ditch_inside": "ditch_fence_before",
    "drop_water": "drop_ground", "combination_three": "combination_two", "bounce": "combination_two",
    "corner": "narrow", "bank_down": "bank_up", "bank_up_large": "bank_up",
    "bank_down_large": "bank_down", "water_in": "water_through",
}  # fmt: skip

STOP_WHEN = (
    "Stop a question at the second stop: go back to something easy, end well, and come back another day.",
    "Stop for the day after any fall, and after a knock to the head do not ride again before a doctor has seen you.",
    "Stop while both of you still enjoy it: a tired horse stops at fences it knows.",
)


@dataclass(frozen=True)
class Step:
    part: str
    fence_id: str
    label: str
    times: int
    text: str
    requirement_id: str | None = None
    presentation: tuple[tuple[str, str], ...] = ()

    def to_json(self) -> dict:
        return vars(self) | {"presentation": dict(self.presentation)}


@dataclass(frozen=True)
class Plan:
    field_id: str | None
    steps: tuple[Step, ...]
    leave_alone: tuple[dict, ...]
    text: str

    def to_json(self) -> dict:
        return {
            "field_id": self.field_id, "steps": [step.to_json() for step in self.steps],
            "leave_alone": list(self.leave_alone), "stop_when": list(STOP_WHEN), "text": self.text,
        }  # fmt: skip


def plan_outing(standing: Standing, field_id: str | None) -> Plan:
    """The plan for one outing at a field. Empty, with the reason, while the coach holds the level."""
    hold = hold_in_force(standing.weighing)
    if hold:
        return Plan(field_id, (), (), f"No plan while your coach holds this level: {hold.body['reason']}")
    fences = here(standing, field_id)
    if not fences:
        return Plan(field_id, (), (), "No fence is listed at this field yet.")
    work, left = chosen(standing, fences)
    steps = (*warm_up(standing, fences), *work, *end_on(standing, fences))
    text = f"{many_in_words(len(work), 'question')} to work on here." if work else "Nothing open can be worked on here."
    return Plan(field_id, steps, tuple(left), text[0].upper() + text[1:])


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


def warm_up(standing: Standing, fences: dict) -> list[Step]:
    limit = fence_limit(standing.weighing.level, "height_cm")
    low = [
        key
        for key, record in fences.items()
        if height_cm(record.body) is not None
        and not record.body["elements"]
        and (limit is None or height_cm(record.body) <= limit * WARM_UP_BELOW)
        and not too_large(record.body, standing.weighing.level)
    ]
    low.sort(key=lambda key: (height_cm(fences[key].body), key))
    return [
        Step("warm_up", key, fences[key].body["label"], 1, f"Warm up over {fences[key].body['label']}.")
        for key in low[:WARM_UP_FENCES]
    ]


def chosen(standing: Standing, fences: dict) -> tuple[list[Step], list[dict]]:
    """Work on at most MOST_QUESTIONS, nearest to being put right first; the rest is left alone, with why."""
    shown = {each.requirement.id for each in standing.findings if each.shown}
    asked = {each.requirement.id for each in standing.findings}
    steps: list[Step] = []
    left: list[dict] = []
    for finding in open_questions(standing.findings):
        reason = why_not(finding, shown, asked, fences, standing)
        if reason is None and len(steps) >= MOST_QUESTIONS:
            reason = "Enough for one day: another time."
        if reason is None:
            steps.append(work_on(finding, fences, standing))
        else:
            left.append({"requirement_id": finding.requirement.id, "title": finding.requirement.title, "text": reason})
    return steps, left


def open_questions(findings: Sequence[Finding]) -> list[Finding]:
    held = [each for each in findings if each.requirement.condition and each.state == "on_hold"]
    ordered = [each for each in findings if each.requirement.condition and each.state in ORDER]
    return sorted(ordered, key=lambda each: ORDER.index(each.state)) + held


def why_not(finding: Finding, shown: set, asked: set, fences: dict, standing: Standing) -> str | None:
    if finding.state == "on_hold":
        return "On hold after a fall: rebuild it with your coach there."
    first = AFTER.get(finding.requirement.id)
    if first in asked and first not in shown:
        title = next(each.requirement.title for each in standing.findings if each.requirement.id == first)
        return f"First {title[0].lower()}{title[1:]}."
    there = [key for key, record in fences.items() if asks_it(finding.requirement, record.body)]
    if not there:
        return "No fence here asks it."
    if not any(fits(finding.requirement, fences[key].body, standing.weighing.level) for key in there):
        return "What asks it here is too small, too large or not measured."
    return None


def work_on(finding: Finding, fences: dict, standing: Standing) -> Step:
    requirement = finding.requirement
    suitable = [key for key, record in fences.items() if fits(requirement, record.body, standing.weighing.level)]
    fence_id = in_order(fences, suitable)[0]
    wanted = finding.needs[0].values.get("clear") or 1
    times = max(1, min(MOST_TIMES, wanted))
    presentation = tuple((side, values[0]) for side, values in requirement.condition.presentation)
    label = fences[fence_id].body["label"]
    text = f"{requirement.title}: {label}, {times_in_words(times)}{met_as(presentation)}."
    return Step("work", fence_id, label, times, text, requirement.id, presentation)


def met_as(presentation: tuple[tuple[str, str], ...]) -> str:
    return "".join(f", {IN_WORDS[each]}" for each in presentation)


def end_on(standing: Standing, fences: dict) -> list[Step]:
    """A fence of a question that is shown already, the surest first."""
    sure = [each for each in standing.findings if each.shown and each.requirement.condition]
    sure.sort(key=lambda each: -(each.numbers["lower_bound"] or 0))
    for finding in sure:
        suitable = [key for key, rec in fences.items() if fits(finding.requirement, rec.body, standing.weighing.level)]
        if suitable:
            fence_id = in_order(fences, suitable)[0]
            label = fences[fence_id].body["label"]
            return [Step("end_on", fence_id, label, 1, f"End on a good one: {label}.", finding.requirement.id)]
    return []
