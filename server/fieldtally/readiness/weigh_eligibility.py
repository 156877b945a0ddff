"""Weighs the rulebook's own entry rules. A rule that is not met stands above every count."""

from dataclasses import replace

from fieldtally.readiness.context import Weighing
from fieldtally.readiness.finding import Finding, Reason
from fieldtally.readiness.listed_records import records_behind
from fieldtally.readiness.plain import day_words, many
from fieldtally.readiness.requirement import Requirement
from fieldtally.trade.eligibility import Eligibility, eligibility, overall
from fieldtally.trade.entry_gates import Gate

CHECK = Reason("check_rulebook", {}, "Check the rulebook in force: what is written here may be out of date.")
STATE = {"met": "shown", "not_stated": "untried", "not_known": "building", "not_met": "on_hold"}
# what a logbook has no place for: the rider knows these herself
KNOWS_HERSELF = ("rider_age_min_years", "horse_points_min", "horse_points_max")
GATES = {
    "rider_age_min_years": "The rider turns {need:g} or more this year.",
    "horse_age_min_years": "The horse is {need:g} or older.",
    "horse_points_min": "The horse has {need:g} points or more.",
    "horse_points_max": "The horse has {need:g} points or fewer.",
}


def weigh_eligibility(requirement: Requirement, weighing: Weighing) -> Finding:
    book = weighing.book
    results = book.of_rider["event_result"].records
    found = eligibility(
        [each.body for each in results],
        weighing.rulebook,
        weighing.level.id,
        book.as_of,
        book.horse["birth_year"],
        horse_id=book.horse_id,
    )
    # what nobody has read cannot be shown, and cannot be asked for either
    asked = replace(requirement, required=False) if found.state == "not_stated" else requirement
    return Finding(
        asked,
        STATE[state_of(found)],
        (*reasons(found), CHECK),
        tuple(needs(found)),
        {"state": found.state, "rules": len(found.rules), "until": found.until.isoformat() if found.until else None},
        lambda: explained(found, len(results), weighing),
        lambda: records_behind(book, results, lambda each: each.body["event"], lambda each: each.body["status"]),
    )


def to_check(gate: Gate) -> bool:
    """Not known, and the logbook has no place for it."""
    return gate.state == "not_known" and gate.rule in KNOWS_HERSELF


def state_of(found: Eligibility) -> str:
    parts = [*(gate for gate in found.gates if not to_check(gate)), *found.rules]
    states = [each.state for each in parts] + ([found.recency.state] if found.recency else [])
    return overall(states) if found.state == "not_known" else found.state


def reasons(found: Eligibility) -> list[Reason]:
    if found.state == "not_stated":
        return [Reason("not_stated", {}, "No entry rule for this level is known here: nothing was weighed.")]
    of_gates = [Reason(f"gate_{each.state}", {"rule": each.rule}, gate_words(each)) for each in found.gates]
    of_rules = [
        Reason(f"rule_{each.state}", {"have": each.have, "need": each.need, "source": each.source}, each.text)
        for each in found.rules
    ]
    return of_gates + of_rules


def gate_words(gate: Gate) -> str:
    words = GATES[gate.rule].format(need=gate.need)
    if to_check(gate):
        return f"Check this yourself: {words[0].lower()}{words[1:]}"
    return words if gate.state == "met" else gate.missing


def needs(found: Eligibility):
    for each in (*found.gates, *found.rules, *((found.recency,) if found.recency else ())):
        if each.state in ("not_met", "not_known") and each.missing and getattr(each, "rule", None) not in KNOWS_HERSELF:
            yield Reason(f"rule_{each.state}", {"source": each.source}, each.missing)


def explained(found: Eligibility, results: int, weighing: Weighing) -> tuple[Reason, ...]:
    text = " ".join(found.cautions)
    cautions = (Reason("worked_caution", {"text": text}, text),) if text else ()
    values = {"rulebook": weighing.rulebook.title, "results": results, "date": found.on.isoformat()}
    if found.state == "not_stated":
        text = f"{values['rulebook']}: no entry rule for this level is known here, so nothing was weighed."
        return Reason("worked_no_rule", {"rulebook": values["rulebook"]}, text), *cautions
    text = (
        f"{values['rulebook']}: its entry rules for this level, weighed against {many(results, 'result')} of yours in "
        f"this logbook, on any horse, as of {day_words(found.on)}."
    )
    return Reason("worked_eligibility", values, text), *cautions
