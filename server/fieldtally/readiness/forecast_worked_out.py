"""How a forecast is worked out: one paragraph for a rider, with her own numbers in it."""

from fieldtally.readiness.finding import Reason
from fieldtally.readiness.plain import percent
from fieldtally.readiness.pool import Pool


def forecast_worked_out(found: dict, together: Pool) -> tuple[Reason, ...]:
    """`found` is the forecast as it is sent, `together` what its attempts add up to."""
    total = () if found["total"] is None else (of_total(found["total"]),)
    return of_course(found), of_chances(together), multiplied(found), after_a_stop(found), of_falls(), *total


def of_course(found: dict) -> Reason:
    efforts = found["efforts"]
    text = f"A typical course is taken as {efforts} efforts, shared out over the questions of this level."
    return Reason("worked_course", {"efforts": efforts}, text)


def of_chances(together: Pool) -> Reason:
    values = {"clear": round(together.clear_weight), "weight": round(together.weight)}
    text = (
        f"For each question your attempts give a chance of clear, with its doubt: together {values['clear']} clear "
        f"out of {values['weight']} fresh attempts (repeats of a fence on one day count for more here than in the "
        "findings)."
    )
    return Reason("worked_chances", values, text)


def multiplied(found: dict) -> Reason:
    chance, low, high = found["clear_chance"], found["clear_low"], found["clear_high"]
    text = (
        f"Multiplied over the course that is {percent(chance)}; these attempts leave open {percent(low)} to "
        f"{percent(high)}."
    )
    return Reason("worked_multiplied", {"chance": whole(chance), "low": whole(low), "high": whole(high)}, text)


def after_a_stop(found: dict) -> Reason:
    second = found["second_clear_chance"]
    text = f"After a stop the next presentation is taken as clear in {percent(second)}."
    return Reason("worked_second", {"second": whole(second)}, text)


def of_falls() -> Reason:
    return Reason("worked_falls", {}, "Falls are counted at the published rate of one in 42 starts, moved by your own.")


def of_total(total: dict) -> Reason:
    text = (
        "The total is that of completed courses: to the jumping penalties across country comes what your last tests, "
        f"rounds and canters say of the other phases. Four times in five it should lie between {total['low']} and "
        f"{total['high']}."
    )
    return Reason("worked_total", {"low": total["low"], "high": total["high"]}, text)


def whole(share: float) -> int:
    """Per cent, halves up, as `percent` says it."""
    return int(100 * share + 0.5)
