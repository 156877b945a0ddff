"""Weighs the sense of pace: timed canters ridden against the level's speed or faster.

Bias is the mean of speed less target, spread the standard deviation, both in m/min over the last canters;
the bias may be off by what the measuring itself cannot tell (two standard uncertainties).
"""

from fieldtally.readiness.context import Weighing
from fieldtally.readiness.finding import Finding, Reason
from fieldtally.readiness.limits import level_speed_mpm
from fieldtally.readiness.listed_records import records_behind
from fieldtally.readiness.plain import many, many_in_words, sentence, span
from fieldtally.readiness.requirement import Requirement
from fieldtally.trade.pace import TOLD_APART_FROM, Pace, speed
from fieldtally.trade.pace_sense import PaceSense, pace_sense
from fieldtally.trade.pace_words import speed_words

NO_SPEED = Reason(
    "no_speed", {}, "The rulebook here states no speed for this level. Enter it under “What each level asks”, and the "
    "pace is weighed against it.",
)  # fmt: skip


def pace_of(record) -> Pace:
    body = record.body
    return speed(body["distance_m"], body["elapsed_ms"], body["distance_u_m"], body["measured_by"])


def weigh_pace(requirement: Requirement, weighing: Weighing) -> Finding:
    numbers = requirement.numbers
    level_speed = level_speed_mpm(weighing.level)
    if level_speed is None:
        return Finding(requirement, "untried", (NO_SPEED,), worked_out=lambda: (NO_SPEED,))
    chosen = canters(requirement, weighing, level_speed)
    sense = pace_sense([(pace_of(each), each.body["target_speed_mpm"]) for each in chosen])
    outings = len({each.body["outing_id"] for each in chosen})
    needs = tuple(missing(len(chosen), outings, sense, numbers))
    return Finding(
        requirement,
        state(chosen, needs),
        (counted(sense, outings, level_speed),),
        needs,
        in_numbers(sense, outings, level_speed),
        lambda: explained(sense, numbers, level_speed),
        lambda: records_behind(weighing.book, chosen, target_label, lambda each: speed_words(pace_of(each))),
    )


def canters(requirement: Requirement, weighing: Weighing, level_speed: float) -> list:
    """The last canters ridden against this level's speed or faster, on the flat or over fences."""
    numbers = requirement.numbers
    least = level_speed * numbers["target_fraction"]
    chosen = [
        each
        for each in weighing.book.since("timed_canter", numbers["window_days"])
        if each.body["over_fences"] == bool(numbers["over_fences"]) and (each.body["target_speed_mpm"] or 0) >= least
    ]
    return chosen[-int(numbers["last_canters"]):]  # fmt: skip


def target_label(record) -> str:
    return f"{record.body['distance_m']:g} m at {record.body['target_speed_mpm']:g} m/min"


def state(chosen: list, needs: tuple[Reason, ...]) -> str:
    if not chosen:
        return "untried"
    codes = {need.code for need in needs}
    if not codes:
        return "shown"
    return "building" if "more_canters" in codes else "shaky"


def missing(canters: int, outings: int, sense: PaceSense | None, numbers: dict[str, float]):
    more = max(0, int(numbers["canters"]) - canters, int(numbers["outings"]) - outings)
    further = max(0, int(numbers["outings"]) - outings)
    if more:
        text = more_words(more, further) if canters else first_words(more, further)
        yield Reason("more_canters", {"canters": more, "outings": further}, sentence(text))
    if sense is None or sense.bias_u_mpm is None:
        return
    if abs(sense.bias_mpm) - TOLD_APART_FROM * sense.bias_u_mpm > numbers["bias_mpm"]:
        way = "slower" if sense.bias_mpm > 0 else "faster"
        text = f"Ride about {abs(sense.bias_mpm):.0f} m/min {way}."
        yield Reason("bias", {"bias_mpm": round(sense.bias_mpm, 1)}, text)
    if sense.spread_mpm > numbers["spread_mpm"]:
        differ = f"the canters differ by {sense.spread_mpm:.0f} m/min, {numbers['spread_mpm']:.0f} is asked"
        text = f"Find the same pace each time: {differ}."
        yield Reason("spread", {"spread_mpm": round(sense.spread_mpm, 1)}, text)


def more_words(more: int, further: int) -> str:
    """“two more timed canters, one of them on another day”."""
    where = f", {many_in_words(further, 'of them on another day', 'of them on other days')}" if further else ""
    return f"{many_in_words(more, 'more timed canter')}{where}"


def first_words(more: int, days: int) -> str:
    """“four timed canters, on two days”."""
    where = f", on {many_in_words(days, 'day')}" if days > 1 else ""
    return f"{many_in_words(more, 'timed canter')}{where}"


def counted(sense: PaceSense | None, outings: int, level_speed: float) -> Reason:
    if sense is None:
        return Reason(
            "untried", {"speed_mpm": level_speed}, f"No timed canter against {level_speed:g} m/min or faster yet."
        )
    side = (
        "on target"
        if abs(sense.bias_mpm) < 0.5
        else f"{abs(sense.bias_mpm):.0f} m/min {'fast' if sense.bias_mpm > 0 else 'slow'}"
    )
    text = f"{many(sense.canters, 'canter')} in {many(outings, 'outing')}, on average {side}"
    text += "." if sense.spread_mpm is None else f", spread {sense.spread_mpm:.0f} m/min."
    return Reason("counted", {"canters": sense.canters, "bias_mpm": round(sense.bias_mpm, 1)}, text)


def in_numbers(sense: PaceSense | None, outings: int, level_speed: float) -> dict:
    found = {"speed_mpm": level_speed, "canters": 0, "outings": outings}
    if sense is None:
        return found
    return found | {
        "canters": sense.canters, "bias_mpm": sense.bias_mpm, "bias_u_mpm": sense.bias_u_mpm,
        "spread_mpm": sense.spread_mpm, "timing_mpm": sense.timing_mpm,
    }  # fmt: skip


def explained(sense: PaceSense | None, numbers: dict[str, float], level_speed: float) -> tuple[Reason, ...]:
    bar = bar_asks(numbers)
    if sense is None:
        return what_counts(numbers, level_speed), Reason("worked_no_canter", {}, "There is none yet."), bar
    if sense.bias_u_mpm is None:
        one = f"There is one, {off_target(sense)}; two are needed to compare."
        return what_counts(numbers, level_speed), Reason("worked_one_canter", {"bias_mpm": sense.bias_mpm}, one), bar
    return what_counts(numbers, level_speed), yours(sense), bar


def what_counts(numbers: dict[str, float], level_speed: float) -> Reason:
    values = {"speed_mpm": level_speed, "last": int(numbers["last_canters"]), "days": numbers["window_days"]}
    text = (
        f"This level's speed is taken as {level_speed:g} m/min, the fastest the rulebook states for it. Timed canters "
        f"of the last {span(numbers['window_days'])} with that target or a faster one count, the last {values['last']} "
        f"of them."
    )
    return Reason("worked_pace", values, text)


def yours(sense: PaceSense) -> Reason:
    values = {
        "canters": sense.canters, "bias_mpm": sense.bias_mpm, "bias_u_mpm": sense.bias_u_mpm,
        "spread_mpm": sense.spread_mpm, "timing_mpm": sense.timing_mpm,
    }  # fmt: skip
    text = (
        f"Your {sense.canters} were on average {off_target(sense)}, which measuring and watch leave open by "
        f"{sense.bias_u_mpm:.1f} either way. They typically lie within {sense.spread_mpm:.1f} m/min of that "
        f"average; hand and watch alone would make it {sense.timing_mpm:.1f}."
    )
    return Reason("worked_canters", values, text)


def off_target(sense: PaceSense) -> str:
    """“3.1 m/min slower than the target”."""
    if abs(sense.bias_mpm) < 0.05:
        return "on the target"
    return f"{abs(sense.bias_mpm):.1f} m/min {'faster' if sense.bias_mpm > 0 else 'slower'} than the target"


def bar_asks(numbers: dict[str, float]) -> Reason:
    names = ("canters", "outings", "bias_mpm", "spread_mpm")
    text = (
        f"The bar asks for {many(int(numbers['canters']), 'canter')} in {many(int(numbers['outings']), 'outing')}, on "
        f"average no more than {numbers['bias_mpm']:.0f} m/min off the target, beyond twice what the measuring leaves "
        f"open, and typically within {numbers['spread_mpm']:.0f} of their average."
    )
    return Reason("worked_pace_bar", {name: numbers[name] for name in names}, text)
