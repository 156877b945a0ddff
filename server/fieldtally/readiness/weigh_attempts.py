"""Weighs a cross-country requirement: what a fence asks, met in a presentation, at the level's size."""

from datetime import date

from fieldtally.readiness import ask_words
from fieldtally.readiness.ask_worked_out import ask_worked_out
from fieldtally.readiness.behind import attempts_behind
from fieldtally.readiness.context import Weighing
from fieldtally.readiness.finding import Finding, Reason
from fieldtally.readiness.judge import Verdict, judge
from fieldtally.readiness.plain import many
from fieldtally.readiness.requirement import Requirement
from fieldtally.readiness.selection import Selection
from fieldtally.readiness.tally import Tally


def weigh_attempts(requirement: Requirement, weighing: Weighing) -> Finding:
    counted = weighing.counted[requirement.id]
    selection, faded, unfaded = counted.selection, counted.faded, counted.unfaded
    prior = weighing.pool.prior_without(faded, requirement.numbers)
    verdict = judge(faded, unfaded, requirement.numbers, prior)
    return Finding(
        requirement,
        verdict.state,
        tuple(reasons(requirement, selection, faded, unfaded, verdict)),
        needs(selection, verdict, faded),
        in_numbers(faded, verdict, selection),
        lambda: ask_worked_out(requirement.title, faded, verdict, requirement.numbers),
        lambda: attempts_behind(faded, unfaded),
    )


def reasons(requirement: Requirement, selection: Selection, faded: Tally, unfaded: Tally, verdict: Verdict):
    if verdict.setback:
        yield (ask_words.fell if verdict.setback.kind == "fall" else ask_words.stopped)(verdict.setback)
    if verdict.state == "gone_stale":
        yield ask_words.faded(unfaded)
    yield what_happened(faded, unfaded, selection, in_a_manner=bool(requirement.condition.presentation))
    if verdict.state == "shaky" and not verdict.setback:
        yield ask_words.more_wrong(faded)
    if faded.count and verdict.estimate.lower_bound < requirement.numbers["bound"]:
        yield ask_words.unsure(verdict, requirement.numbers["bound"])
    yield from size_reasons(requirement, selection, unfaded, verdict)


def what_happened(faded: Tally, unfaded: Tally, selection: Selection, in_a_manner: bool) -> Reason:
    if faded.count:
        return ask_words.counted(faded)
    return (
        ask_words.long_ago(unfaded) if unfaded.count else ask_words.untried(in_a_manner, selection.least_cm is not None)
    )


def size_reasons(requirement: Requirement, selection: Selection, unfaded: Tally, verdict: Verdict):
    if requirement.condition.size and selection.limit_cm is None:
        yield ask_words.any_size() if selection.least_cm is None else ask_words.own_size(selection.least_cm)
    if verdict.state == "shown":
        return
    if len(selection.smaller):
        yield ask_words.smaller(selection)
    if len(selection.unmeasured):
        yield ask_words.unmeasured(selection, unmeasured_fences(selection, unfaded.attempts))


def unmeasured_fences(selection: Selection, attempts) -> list[str]:
    return sorted({attempts.label(row) for row in selection.unmeasured.tolist()})[:3]


def needs(selection: Selection, verdict: Verdict, faded: Tally) -> tuple[Reason, ...]:
    if verdict.state == "shown":
        return ()
    if verdict.setback:
        found = ask_words.to_rebuild(verdict.setback, verdict.missing)
    else:
        found = ask_words.still_needed(verdict.missing, begun=faded.clear > 0)
    if len(selection.unmeasured):
        labels = unmeasured_fences(selection, faded.attempts)
        waiting = many(len(selection.unmeasured), "attempt waits", "attempts wait")
        text = f"Measure {ask_words.listed(labels)}: {waiting} for it."
        found += (Reason("measure", {"fences": labels, "attempts": len(selection.unmeasured)}, text),)
    return found


def in_numbers(faded: Tally, verdict: Verdict, selection: Selection) -> dict:
    last = faded.last_day
    return {
        "clear": faded.clear,
        "attempts": faded.count,
        "stops": faded.stops,
        "falls": faded.falls,
        "weight": round(faded.weight, 3),
        "clear_weight": round(faded.clear_weight, 3),
        "estimate": round(verdict.estimate.mean, 4) if faded.count else None,
        "lower_bound": round(verdict.estimate.lower_bound, 4) if faded.count else None,
        "outings": faded.outings,
        "fields": faded.fields,
        "last_date": date.fromordinal(last).isoformat() if last else None,
        "least_cm": selection.least_cm,
        "limit_cm": selection.limit_cm,
        "smaller_attempts": len(selection.smaller),
        "unmeasured_attempts": len(selection.unmeasured),
    }
