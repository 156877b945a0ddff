"""Reasons and needs of a cross-country finding, in a rider's words."""

from fieldtally.readiness.finding import Reason
from fieldtally.readiness.judge import Missing, Setback, Verdict
from fieldtally.readiness.plain import day_words, in_words, iso, listed, many, many_in_words, percent, sentence
from fieldtally.readiness.selection import Selection
from fieldtally.readiness.tally import Tally

MANY = 8  # from here on the exact number says less than that it takes several outings


def counted(tally: Tally) -> Reason:
    values = {"clear": tally.clear, "attempts": tally.count, "outings": tally.outings, "fields": tally.fields}
    where = f"in {many(tally.outings, 'outing')} at {many(tally.fields, 'field')}"
    text = f"{tally.clear} clear of {many(tally.count, 'attempt')}"
    text += f", {where}; last met on {day_words(tally.last_day)}." if tally.clear else "."
    return Reason("counted", values, text)


def untried() -> Reason:
    return Reason("untried", {}, "Not met yet in this way at this level's size.")


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
        f"So far the chance of a clear first time could still be as low as {percent(low)}; "
        f"the bar asks for {percent(bound)}."
    )
    return Reason("unsure", {"lower_bound": round(low, 3), "bound": bound}, text)


def faded(tally: Tally) -> Reason:
    return Reason("faded", {"last_date": iso(tally.last_day)},
                  f"It was shown, but evidence fades and the last of it is from "
                  f"{day_words(tally.last_day)}.")  # fmt: skip


def still_needed(missing: Missing, begun: bool) -> tuple[Reason, ...]:
    """“Two more clear, in another outing, at another field.” Nothing where nothing is missing."""
    return () if missing.nothing else (Reason("more_clear", vars(missing), sentence(clear_words(missing, begun))),)


def to_rebuild(setback: Setback, missing: Missing) -> tuple[Reason, ...]:
    """What puts the setback right, and then what is still missing before it is shown."""
    first_step = setback.missing
    found = [Reason("rebuild", vars(first_step), f"To rebuild it: {clear_words(first_step, begun=True)}.")]
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


def how_worked_out(title: str, tally: Tally, verdict: Verdict, numbers: dict[str, float]) -> str:
    """One paragraph with the rider's own numbers."""
    words = weighed_up if tally.count else guessed
    return f"{title}: {words(tally, verdict, numbers)}"


def weighed_up(tally: Tally, verdict: Verdict, numbers: dict[str, float]) -> str:
    found = verdict.estimate
    return (
        f"{clear_of(tally)} in the last {numbers['window_days']:.0f} days. Older ones count less (half after "
        f"{numbers['half_life_days']:.0f} days) and repeats of one fence in one outing share a weight, so together "
        f"they weigh as {tally.clear_weight:.1f} clear out of {tally.weight:.1f} fresh, separate attempts. "
        f"{others_count(tally, verdict)} So the chance of a clear first time is put at "
        f"{found.alpha:.1f} out of {found.alpha + found.beta:.1f}, which is {percent(found.mean)}; with "
        f"{percent(found.confidence)} certainty it is {percent(found.lower_bound)} or more. The bar asks for at "
        f"least {percent(numbers['bound'])}, and for {asked(numbers)}."
    )


def guessed(tally: Tally, verdict: Verdict, numbers: dict[str, float]) -> str:
    found = verdict.estimate
    return (
        f"no attempt in the last {numbers['window_days']:.0f} days counts here. {others_count(tally, verdict)} From "
        f"them alone one would guess that the chance of a clear first time is {percent(found.mean)}, but a guess "
        f"shows nothing: the bar asks for {asked(numbers)}, and for a chance of at least {percent(numbers['bound'])} "
        f"with {percent(found.confidence)} certainty."
    )


def clear_of(tally: Tally) -> str:
    """“3 of 7 attempts were clear”."""
    return f"{tally.clear} of {many(tally.count, 'attempt')} {'was' if tally.count == 1 else 'were'} clear"


def others_count(tally: Tally, verdict: Verdict) -> str:
    """The prior, in words: what it weighs and how much of that is clear."""
    found = verdict.estimate
    weight, clear = found.alpha + found.beta - tally.weight, found.alpha - tally.clear_weight
    return (
        f"The other questions of this level, and the usual clear rate while little is known of them, count as "
        f"{weight:.0f} more, {clear:.1f} of them clear."
    )


def asked(numbers: dict[str, float]) -> str:
    """“3 clear, in 2 outings at 1 field”."""
    return (
        f"{numbers['clear']:.0f} clear, in {many(int(numbers['outings']), 'outing')} "
        f"at {many(int(numbers['fields']), 'field')}"
    )
