"""Reasons and needs of a cross-country finding, in a rider's words."""

from fieldtally.readiness.finding import Reason
from fieldtally.readiness.judge import Missing, Setback, Verdict
from fieldtally.readiness.plain import (
    chance,
    day_words,
    in_words,
    iso,
    listed,
    many,
    many_in_words,
    percent,
    sentence,
)  # fmt: skip
from fieldtally.readiness.selection import Selection
from fieldtally.readiness.tally import Tally

MANY = 8  # from here on the exact number says less than that it takes several outings


def counted(tally: Tally) -> Reason:
    values = {"clear": tally.clear, "attempts": tally.count, "outings": tally.outings, "fields": tally.fields}
    where = f"in {many(tally.outings, 'outing')} at {many(tally.fields, 'field')}"
    text = f"{tally.clear} clear of {many(tally.count, 'attempt')}"
    text += f", {where}; last met on {day_words(tally.last_day)}." if tally.clear else "."
    return Reason("counted", values, text)


def untried(in_a_manner: bool, sized: bool) -> Reason:
    if in_a_manner:
        return UNTRIED_SO_AT_SIZE if sized else UNTRIED_SO
    return UNTRIED_AT_SIZE if sized else UNTRIED_YET


UNTRIED_SO_AT_SIZE = Reason("untried_so_at_size", {}, "Not met yet in this way at this level's size.")
UNTRIED_SO = Reason("untried_so", {}, "Not met yet in this way.")
UNTRIED_AT_SIZE = Reason("untried_at_size", {}, "Not met yet at this level's size.")
UNTRIED_YET = Reason("untried_yet", {}, "Not met yet.")


def long_ago(tally: Tally) -> Reason:
    text = f"Last met on {day_words(tally.last_day)}: too long ago to count."
    return Reason("long_ago", {"last_date": iso(tally.last_day)}, text)


def smaller(selection: Selection) -> Reason:
    count = len(selection.smaller)
    text = f"{many(count, 'attempt')} at a smaller fence: it counts from {selection.least_cm:.0f} cm."
    return Reason("smaller", {"attempts": count, "least_cm": round(selection.least_cm, 1)}, text)


def unmeasured(selection: Selection, labels: list[str]) -> Reason:
    count = len(selection.unmeasured)
    text = f"{many(count, 'attempt')} cannot count for size until somebody measures {listed(labels)}."
    return Reason("unmeasured", {"attempts": count, "fences": labels}, text)


def more_wrong(tally: Tally) -> Reason:
    """Said where nothing else would tell a rider why as many clear as not is called shaky."""
    values = {"wrong": tally.count - tally.clear, "clear": tally.clear}
    return Reason("more_wrong", values, "What went wrong weighs more here than what was clear: a fence met for the "
                  "first time is the harder one, and clear after a stop is a second try.")  # fmt: skip


def own_size(least_cm: float) -> Reason:
    text = f"The rulebook here states no limit for this; the bar counts it from {least_cm:.0f} cm."
    return Reason("own_size", {"least_cm": round(least_cm, 1)}, text)


def any_size() -> Reason:
    return Reason("any_size", {}, "The rulebook here states no limit for this, so a fence of any size counts.")


def fell(setback: Setback) -> Reason:
    text = f"A fall on {day_words(setback.day)}. Nothing else outweighs it until it is rebuilt: {since(setback)}"
    return Reason("fall", setback_values(setback), text)


def stopped(setback: Setback) -> Reason:
    times = "More than once wrong" if setback.kind == "bad_day" else "Went wrong"
    return Reason(setback.kind, setback_values(setback), f"{times} on {day_words(setback.day)}: {since(setback)}")


def since(setback: Setback) -> str:
    """“one clear since, of the two asked for”, “none clear on a later day yet; it takes four, in two outings”."""
    if setback.kind == "stop":
        return f"{none_or(setback.clear)} clear since, of the {in_words(setback.asked_clear)} asked for."
    takes = f"it takes {in_words(setback.asked_clear)}, in {many_in_words(setback.asked_outings, 'later outing')}"
    done = "none clear on a later day yet" if not setback.clear else f"{in_words(setback.clear)} clear on later days"
    return f"{done}; {takes}."


def none_or(count: int) -> str:
    return in_words(count) if count else "none"


def setback_values(setback: Setback) -> dict:
    return {"date": iso(setback.day), "clear_since": setback.clear, "outings_since": setback.outings,
            "asked_clear": setback.asked_clear, "asked_outings": setback.asked_outings}  # fmt: skip


def unsure(verdict: Verdict, bound: float) -> Reason:
    low = verdict.estimate.lower_bound
    text = (
        f"So far the chance of a clear first time could still be as low as {chance(low)} %; "
        f"the bar asks for {percent(bound)}."
    )
    return Reason("unsure", {"lower_bound": round(low, 3), "bound": bound}, text)


def faded(tally: Tally) -> Reason:
    text = "There is enough of it, but it is too old: evidence fades, and the last of it is from "
    return Reason("faded", {"last_date": iso(tally.last_day)}, f"{text}{day_words(tally.last_day)}.")


def still_needed(missing: Missing, begun: bool) -> tuple[Reason, ...]:
    """“Two more clear, in another outing, at another field.” Nothing where nothing is missing."""
    return () if missing.nothing else (Reason("more_clear", vars(missing), sentence(clear_words(missing, begun))),)


def to_rebuild(setback: Setback, missing: Missing) -> tuple[Reason, ...]:
    """What puts the setback right, and then what is still missing before it is shown."""
    first_step = setback.missing
    text = sentence(f"{clear_words(first_step, begun=True)}, to rebuild it")
    found = [Reason("rebuild", vars(first_step), text)]
    left = missing.clear - first_step.clear
    if left > 0:
        text = f"Then {clear_words(Missing(left, 0, missing.fields), begun=True)}, before it counts as shown."
        found.append(Reason("more_clear", {"clear": left, "fields": missing.fields}, text))
    return tuple(found)


def clear_words(missing: Missing, begun: bool) -> str:
    clear = "more clear" if begun else "clear"
    if missing.clear > MANY:
        return f"about {missing.clear} {clear}, spread over several outings"
    where = further if begun else first
    of_places = where(missing.outings, "outing") + where(missing.fields, "field", "at")
    return f"{in_words(max(1, missing.clear))} {clear}{of_places}"


def first(count: int, thing: str, preposition: str = "in") -> str:
    """“, in two outings”; nothing where one will do, for it needs no saying."""
    return f", {preposition} {many_in_words(count, thing)}" if count > 1 else ""


def further(count: int, thing: str, preposition: str = "in") -> str:
    """“, in another outing”, “, in two further outings”, or nothing."""
    if count == 0:
        return ""
    return f", {preposition} another {thing}" if count == 1 else f", {preposition} {in_words(count)} further {thing}s"
