"""Weighs the sense of pace: timed canters ridden against the level's speed or faster.

Bias is the mean of speed less target, spread the standard deviation, both in m/min over the last canters;
the bias may be off by what the measuring itself cannot tell (two standard uncertainties).
"""

from fieldtally.readiness.context import Weighing
from fieldtally.readiness.finding import Finding, Reason
from fieldtally.readiness.limits import level_speed_mpm
from fieldtally.readiness.listed_records import records_behind
from fieldtally.readiness.plain import many, many_in_words, sentence
from fieldtally.readiness.requirement import Requirement
from fieldtally.trade.pace import TOLD_APART_FROM, Pace, speed
from fieldtally.trade.pace_sense import PaceSense, pace_sense
from fieldtally.trade.pace_words import speed_words


def pace_of(record) -> Pace:
    body = record.body
    return speed(body["distance_m"], body["elapsed_ms"], body["distance_u_m"], body["measured_by"])


def weigh_pace(requirement: Requirement, weighing: Weighing) -> Finding:
    numbers = requirement.numbers
    level_speed = level_speed_mpm(weighing.level)
    if level_speed is None:
        reason = Reason("no_speed", {}, "The rulebook here states no speed for this level; enter it to weigh the pace.")
        return Finding(requirement, "untried", (reason,), evidence=list)
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
        explained(sense, numbers, level_speed),
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
        where = f", {many_in_words(further, 'of them on another day', 'of them on other days')}" if further else ""
        text = f"{many_in_words(more, 'more timed canter')}{where}"
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


def explained(sense: PaceSense | None, numbers: dict[str, float], level_speed: float) -> str:
    start = (
        f"This level's speed is taken as {level_speed:g} m/min. Only canters ridden against it or faster count, "
        f"the last {numbers['last_canters']:.0f} of them. "
    )
    if sense is None or sense.bias_u_mpm is None:
        return start + "There are not yet two of them to compare."
    return start + (
        f"Your {sense.canters} were on average {sense.bias_mpm:+.1f} ± {sense.bias_u_mpm:.1f} m/min off the "
        f"target and differ "
        f"among themselves by {sense.spread_mpm:.1f} m/min, of which watch and hand alone make "
        f"{sense.timing_mpm:.1f}. "
        f"The bar allows {numbers['bias_mpm']:.0f} off the target, beyond what the measuring cannot tell, and a "
        f"spread of {numbers['spread_mpm']:.0f}."
    )
