"""What must be said beside a standing, whatever it counts."""

from collections.abc import Sequence

from fieldtally.readiness.context import Weighing
from fieldtally.readiness.finding import Finding
from fieldtally.readiness.weigh_word import hold_in_force

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
    found = [ALWAYS]
    hold = hold_in_force(weighing)
    if hold:
        found.insert(0, f"Your coach has put this level on hold: {hold.body['reason']}")
    if any(each.state == "on_hold" and any(reason.code == "fall" for reason in each.reasons) for each in findings):
        found.append(FALL)
    if all(each.shown for each in findings if each.requirement.required):
        found.append(CLEAN_SHEET)
    return found
