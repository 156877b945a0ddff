"""What must be said beside a standing, whatever it counts."""

from collections.abc import Sequence

from fieldtally.readiness.context import Weighing
from fieldtally.readiness.finding import Finding
from fieldtally.readiness.recent_fall import fell_lately
from fieldtally.readiness.weigh_word import held_elsewhere, hold_in_force

ALWAYS = (
    "This counts what was written down; it does not decide. Riding across country can hurt you and your "
    "horse: the rulebook in force, your coach, doctors and vets have the last word."
)
FALL = (
    "There is a fall in this evidence. After any knock to the head stop riding and see a doctor before you "
    "ride again; have a vet look at a horse that fell."
)
CLEAN_SHEET = "A clean sheet is no proof: pairs without an earlier refusal fall too."


def cautions(findings: Sequence[Finding], weighing: Weighing) -> list[str]:
    """What overrides the counts comes first: the coach's holds, entry rules that are not met, a fall."""
    found = [*holds(weighing), *rules_not_met(findings), *after_a_fall(findings, weighing), ALWAYS]
    if all(each.shown for each in findings if each.requirement.required):
        found.append(CLEAN_SHEET)
    return found


def holds(weighing: Weighing) -> list[str]:
    here = hold_in_force(weighing)
    on_this = [f"Your coach has put this level on hold: {here.body['reason']}"] if here else []
    return on_this + [
        f"Your coach has put another level on hold: {level.name}. {word.body['reason']}"
        for level, word in held_elsewhere(weighing)
    ]


def after_a_fall(findings: Sequence[Finding], weighing: Weighing) -> list[str]:
    fell = fell_lately(weighing.book) or any(reason.code == "fall" for each in findings for reason in each.reasons)
    return [FALL] if fell else []


def rules_not_met(findings: Sequence[Finding]) -> list[str]:
    return [
        f"An entry rule of this level is not met: {need.text}"
        for each in findings
        if each.requirement.weigh == "eligibility" and each.state == "on_hold"
        for need in [need for need in each.needs if need.code == "rule_not_met"][:1]
    ]
