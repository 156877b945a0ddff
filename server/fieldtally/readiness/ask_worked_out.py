"""How a cross-country finding is worked out: one paragraph for a rider, with her own numbers in it."""

from collections.abc import Mapping

from fieldtally.readiness.finding import Reason
from fieldtally.readiness.judge import Verdict
from fieldtally.readiness.plain import chance, many, percent, span
from fieldtally.readiness.tally import Tally

Numbers = Mapping[str, float]


def ask_worked_out(title: str, tally: Tally, verdict: Verdict, numbers: Numbers) -> tuple[Reason, ...]:
    others = of_others(tally, verdict, numbers)
    if not tally.count:
        return nothing_counts(title, numbers), others, only_a_guess(verdict), bar_asks(numbers, verdict)
    return weighed(title, tally, numbers), others, put_together(verdict), bar_asks(numbers, verdict)


def nothing_counts(title: str, numbers: Numbers) -> Reason:
    text = f"{title}: no attempt in the last {span(numbers['window_days'])} counts here."
    return Reason("worked_none", {"days": numbers["window_days"]}, text)


def weighed(title: str, tally: Tally, numbers: Numbers) -> Reason:
    values = {
        "clear": tally.clear, "attempts": tally.count, "days": numbers["window_days"],
        "half_life": numbers["half_life_days"], "weight": round(tally.weight, 1),
        "clear_weight": round(tally.clear_weight, 1),
    }  # fmt: skip
    text = (
        f"{title}: {tally.clear} of {many(tally.count, 'attempt')} {'was' if tally.clear == 1 else 'were'} clear in "
        f"the last {span(numbers['window_days'])}. An attempt counts less the older it is (half after "
        f"{numbers['half_life_days']:.0f} days), and so does a repeat of one fence in one outing: together they count "
        f"as {tally.weight:.1f} fresh attempts at separate fences, {tally.clear_weight:.1f} of them clear."
    )
    return Reason("worked_weighed", values, text)


def of_others(tally: Tally, verdict: Verdict, numbers: Numbers) -> Reason:
    """The prior, in words: what it weighs and how much of that is clear."""
    found = verdict.estimate
    weight, clear = found.alpha + found.beta - tally.weight, found.alpha - tally.clear_weight
    values = {"weight": round(weight, 1), "clear": round(clear, 1)}
    if not numbers["pool_strength"]:
        text = f"So that one attempt alone proves nothing, {weight:.0f} more is added, {clear:.1f} of it clear."
        return Reason("worked_alone", values, text)
    values["usual"] = round(100 * numbers["pool_mean"])
    text = (
        f"How you do at this level's other questions says something too, or, while little is known of them, the usual "
        f"clear rate of {percent(numbers['pool_mean'])}: that counts as {weight:.0f} more, {clear:.1f} of them clear."
    )
    return Reason("worked_others", values, text)


def put_together(verdict: Verdict) -> Reason:
    """Both figures never 100 %; what luck leaves is at most the chance itself, though a skewed posterior puts its
    quantile above its mean."""
    found = verdict.estimate
    low = min(found.lower_bound, found.mean)
    values = {
        "clear": round(found.alpha, 1), "of": round(found.alpha + found.beta, 1), "chance": chance(found.mean),
        "low": chance(low), "sure": round(100 * found.confidence),
    }  # fmt: skip
    text = (
        f"That makes {found.alpha:.1f} clear out of {found.alpha + found.beta:.1f}, a chance of {chance(found.mean)} % "
        f"of a clear first time. Some of it may be luck: allowing for that, the chance is {chance(low)} % or more "
        f"({percent(found.confidence)} sure)."
    )
    return Reason("worked_chance", values, text)


def only_a_guess(verdict: Verdict) -> Reason:
    guess = chance(verdict.estimate.mean)
    text = f"From that alone one would guess a chance of {guess} % of a clear first time, but a guess shows nothing."
    return Reason("worked_guess", {"chance": guess}, text)


def bar_asks(numbers: Numbers, verdict: Verdict) -> Reason:
    values = {name: int(numbers[name]) for name in ("clear", "outings", "fields")}
    values |= {"bound": numbers["bound"], "sure": round(100 * verdict.estimate.confidence)}
    text = (
        f"The bar asks for {values['clear']} clear, in {many(values['outings'], 'outing')} at "
        f"{many(values['fields'], 'field')}, and for a chance of {percent(numbers['bound'])} or more when luck is "
        f"allowed for ({values['sure']} % sure)."
    )
    return Reason("worked_bar", values, text)
