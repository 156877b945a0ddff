"""The steps of a plan: what to warm up over, which questions to work on over which fences, and what to end on.

No fence is used that is over the level's limit, that was not measured, or that asks a question on hold.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from fieldtally.readiness.fence_asks import ASK_BIT
from fieldtally.readiness.fences_here import all_asks_of, asks_at_all, fits, height_cm, in_order, too_large, unmeasured
from fieldtally.readiness.finding import Finding
from fieldtally.readiness.limits import fence_limit
from fieldtally.readiness.met_as import IN_WORDS
from fieldtally.readiness.plain import times_in_words
from fieldtally.readiness.plan_reasons import AFTER, waits_for, why_not
from fieldtally.readiness.recent_fall import asks_fallen_at
from fieldtally.readiness.standing import Standing

MOST_QUESTIONS = 4
MOST_TIMES = 2  # a third time over the same fence on the same day teaches little: its weight says so
WARM_UP_FENCES = 2
WARM_UP_BELOW = 0.9  # of the level's height
ORDER = ("shaky", "gone_stale", "building", "untried")

NOTHING_LOW = "Nothing measured here is well below this level: warm up over something small of your own first."
NOTHING_SURE = "Nothing here is shown yet: end on the easiest fence that went well today."
WHERE_IT_ALLOWS = "if the ground there allows it"


@dataclass(frozen=True)
class Step:
    """`fence_id` is null and `label` empty where no fence of the field will do."""

    part: str
    fence_id: str | None
    label: str
    times: int
    text: str
    requirement_id: str | None = None
    presentation: tuple[tuple[str, str], ...] = ()

    def to_json(self) -> dict:
        return vars(self) | {"presentation": dict(self.presentation)}


def asking(standing: Standing, fences: Mapping, states: Sequence[str]) -> frozenset[str]:
    """Fences that ask a question which is in one of these states, at a size that counts or that nobody knows; and
    those that ask what the pair fell at lately where this level has no question that would be on hold for it."""
    open_ = [each.requirement for each in standing.findings if each.requirement.condition and each.state in states]
    level, fallen_at = standing.weighing.level, fallen_at_elsewhere(standing)
    return frozenset(
        key
        for key, record in fences.items()
        if any(asks_at_all(each, record.body, level) for each in open_) or all_asks_of(record.body) & fallen_at
    )


def fallen_at_elsewhere(standing: Standing) -> int:
    asked = (each.requirement.condition for each in standing.findings if each.requirement.condition)
    return asks_fallen_at(standing.weighing.book) & ~sum({ASK_BIT[each.ask] for each in asked})


def warm_up(standing: Standing, fences: Mapping) -> list[Step]:
    """The lowest fences that ask nothing which is in trouble."""
    level = standing.weighing.level
    limit = fence_limit(level, "height_cm")
    in_trouble = asking(standing, fences, ("shaky", "on_hold"))
    low = [
        key
        for key, record in fences.items()
        if key not in in_trouble and is_low(record.body, limit) and not unmeasured(record.body, level)
        if not too_large(record.body, level)
    ]
    low.sort(key=lambda key: (height_cm(fences[key].body), key))
    labels = [(key, fences[key].body["label"]) for key in low[:WARM_UP_FENCES]]
    return [Step("warm_up", key, label, 1, f"Warm up over {label}.") for key, label in labels] or [
        Step("warm_up", None, "", 1, NOTHING_LOW)
    ]


def is_low(fence: Mapping, limit: float | None) -> bool:
    height = height_cm(fence)
    return height is not None and not fence["elements"] and (limit is None or height <= limit * WARM_UP_BELOW)


def work_and_rest(standing: Standing, fences: Mapping) -> tuple[list[Step], list[dict]]:
    """Work on at most MOST_QUESTIONS, nearest to being put right first; the rest is left alone, with why."""
    held = asking(standing, fences, ("on_hold",))
    steps: list[Step] = []
    left: list[dict] = []
    for finding in open_questions(standing.findings):
        reason = why_not(finding, standing, fences, held)
        if reason is None and len(steps) >= MOST_QUESTIONS:
            reason = "Enough for one day: another time."
        if reason is None:
            steps.append(work_on(finding, {key: each for key, each in fences.items() if key not in held}, standing))
        else:
            left.append(
                {"requirement_id": finding.requirement.id, "title": finding.requirement.title, "text": reason,
                 "first": waits_for(finding, standing)}
            )  # fmt: skip
    return steps, left


def open_questions(findings: Sequence[Finding]) -> list[Finding]:
    """In the order of ORDER, a question that another waits for as early as that one; what is on hold last."""
    held = [each for each in findings if each.requirement.condition and each.state == "on_hold"]
    open_ = [each for each in findings if each.requirement.condition and each.state in ORDER]
    return sorted(open_, key=lambda each: urgency(each, open_)) + held


def urgency(finding: Finding, open_: Sequence[Finding]) -> int:
    waiting = (urgency(each, open_) for each in open_ if AFTER.get(each.requirement.id) == finding.requirement.id)
    return min([ORDER.index(finding.state), *waiting])


def work_on(finding: Finding, fences: Mapping, standing: Standing) -> Step:
    requirement = finding.requirement
    fence_id = suitable(finding, fences, standing)[0]
    wanted = finding.needs[0].values.get("clear") or 1
    times = max(1, min(MOST_TIMES, wanted))
    presentation = tuple((side, values[0]) for side, values in requirement.condition.presentation)
    label = fences[fence_id].body["label"]
    text = f"{requirement.title}: {label}, {times_in_words(times)}{met_as(presentation)}."
    return Step("work", fence_id, label, times, text, requirement.id, presentation)


def suitable(finding: Finding, fences: Mapping, standing: Standing) -> list[str]:
    level = standing.weighing.level
    return in_order(fences, [key for key, rec in fences.items() if fits(finding.requirement, rec.body, level)])


def met_as(presentation: tuple[tuple[str, str], ...]) -> str:
    """“, uphill, if the ground there allows it”: how a fence lies nobody has written down."""
    ground = [WHERE_IT_ALLOWS] if any(side == "ground" for side, _ in presentation) else []
    return "".join(f", {each}" for each in [*(IN_WORDS[each] for each in presentation), *ground])


def end_on(standing: Standing, fences: Mapping, used: set[str | None]) -> list[Step]:
    """A fence of a question that is shown already and that asks nothing which is in trouble: one not used before,
    if there is one, and the surest question first."""
    in_trouble = asking(standing, fences, ("shaky", "on_hold"))
    good = {key: record for key, record in fences.items() if key not in in_trouble}
    sure = [each for each in standing.findings if each.shown and each.requirement.condition]
    sure.sort(key=lambda each: -(each.numbers["lower_bound"] or 0))
    found = [(each, key) for each in sure for key in suitable(each, good, standing)]
    if not found:
        return [Step("end_on", None, "", 1, NOTHING_SURE)]
    finding, fence_id = next((each for each in found if each[1] not in used), found[0])
    label = fences[fence_id].body["label"]
    return [Step("end_on", fence_id, label, 1, f"End on a good one: {label}.", finding.requirement.id)]
