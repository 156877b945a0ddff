"""What a typical course of the level might bring, from the evidence: chances and intervals, never a promise.

Below a stated minimum of evidence it keeps silent and says why.
"""

from collections.abc import Mapping, Sequence

import numpy as np
from scipy.special import betaincinv, betaln

from fieldtally.readiness.attempts import FALL
from fieldtally.readiness.bar import Bars
from fieldtally.readiness.believed import believed
from fieldtally.readiness.context import Weighing
from fieldtally.readiness.finding import Finding, Reason
from fieldtally.readiness.forecast_worked_out import forecast_worked_out
from fieldtally.readiness.other_phases import clock, dressage, show_jumping
from fieldtally.readiness.plain import many, out_of_ten, percent
from fieldtally.readiness.pool import Pool
from fieldtally.readiness.second_presentation import second_clear
from fieldtally.readiness.stops import ELIMINATED, Rules, penalties, stopped_efforts
from fieldtally.readiness.typical_course import efforts_of, length_m_of, mix

WINDOW_DAYS = 365
LOW, HIGH = 0.1, 0.9

Asked = tuple[int, float, float]
"""How many efforts of the course ask one question, and the Beta of its chance of clear."""


def forecast(findings: Sequence[Finding], weighing: Weighing, bars: Bars) -> dict:
    """The level's forecast, or why there is none: `spoken` says which."""
    numbers = bars.forecast_numbers
    silence = too_little(findings, weighing, numbers)
    if silence:
        return {"spoken": False, "text": silence.text, "silence": silence.to_json()}
    course, together = course_of(findings, weighing, bars)
    second = second_clear(*weighing.book.second_presentations, numbers)
    fall = chance_of_fall(weighing, sum(efforts for efforts, _, _ in course), numbers)
    costs = penalties(stopped_efforts(course), second, rules_of(weighing, numbers), fall)
    phases = {
        "dressage": dressage(weighing, WINDOW_DAYS),
        "show_jumping": show_jumping(weighing, WINDOW_DAYS, numbers),
        "time": clock(weighing, WINDOW_DAYS, numbers),
    }
    return spoken(course, costs, second, fall, phases, weighing, numbers, together)


def too_little(findings: Sequence[Finding], weighing: Weighing, numbers: Mapping[str, float]) -> Reason | None:
    asked = [each for each in findings if each.requirement.condition and each.requirement.required]
    met = sum(each.numbers["attempts"] > 0 for each in asked)
    least = int(np.ceil(numbers["least_share_met"] * len(asked)))
    if met < least:
        return Reason(
            "forecast_few_met",
            {"met": met, "asked": len(asked), "least": least},
            f"Not enough evidence: {met} of {many(len(asked), 'question')} of this level met lately, a forecast needs "
            f"{least}.",
        )
    weight, least = weighing.pool.weight, numbers["least_weight"]
    if weight < least:
        return Reason(
            "forecast_few_attempts",
            {"weight": round(weight, 1), "least": least},
            f"Not enough evidence: what was met weighs as {weight:.1f} fresh attempts, a forecast needs {least:.0f}.",
        )
    return None


def course_of(findings: Sequence[Finding], weighing: Weighing, bars: Bars) -> tuple[list[Asked], Pool]:
    """(efforts, alpha, beta) of each question of the typical course, and what the attempts behind them add up to."""
    asked = [each.requirement for each in findings if each.requirement.condition]
    efforts = mix([each.id for each in asked], efforts_of(weighing.level, bars.forecast_numbers), bars.course)
    counted = [(weighing.counted[each.id].faded, each.numbers) for each in asked]
    found, together = believed(counted, bars.forecast_numbers)
    course = [(efforts[each.id], one.alpha, one.beta) for each, one in zip(asked, found, strict=True)]
    return [each for each in course if each[0]], together


def chance_of_fall(weighing: Weighing, efforts: int, numbers: Mapping[str, float]) -> float:
    """Published falls per start, moved by the pair's own falls; per effort, then over the course."""
    per_effort = 1 - (1 - numbers["falls_per_start"]) ** (1 / efforts)
    attempts = weighing.book.attempts
    single = attempts.parts.elements[attempts.part] == 0
    falls = int((attempts.result[single] == FALL).sum())
    weight = numbers["falls_weight_efforts"]
    return 1 - (1 - (per_effort * weight + falls) / (weight + int(single.sum()))) ** efforts


def rules_of(weighing: Weighing, numbers: Mapping[str, float]) -> Rules:
    stated = weighing.level.value
    return Rules(
        stated("cross_country", "refusal_first_penalties") or Rules.first_penalties,
        stated("cross_country", "refusal_second_penalties") or Rules.second_penalties,
        int(
            stated("cross_country", "stops_at_one_obstacle_that_eliminate")
            or numbers["default_stops_at_one_that_eliminate"]
        ),
        int(stated("cross_country", "stops_on_course_that_eliminate") or numbers["default_stops_that_eliminate"]),
    )


def spoken(
    course, costs, second, fall, phases, weighing: Weighing, numbers: Mapping[str, float], together: Pool
) -> dict:
    clear = float(costs.get(0.0, 0.0))
    low, high = clear_interval(course, fall)
    jumping = [
        {"penalties": cost, "chance": round(float(chance), 4)} for cost, chance in costs.items() if cost != ELIMINATED
    ]
    found = {
        "spoken": True,
        "efforts": sum(each[0] for each in course),
        "length_m": length_m_of(weighing.level, numbers),
        "clear_chance": round(clear, 4),
        "clear_low": round(low, 4),
        "clear_high": round(high, 4),
        "elimination_chance": round(float(costs[ELIMINATED]), 4),
        "second_clear_chance": round(second, 4),
        "jumping_penalties": jumping,
        "phases": {name: in_short(sample) for name, sample in phases.items()},
        "total": total_of(costs, phases),
    }
    worked_out = forecast_worked_out(found, together)
    return found | {
        "text": in_words(found),
        "explanation": " ".join(each.text for each in worked_out),
        "worked_out": [{"code": each.code, "values": each.values} for each in worked_out],
    }


def clear_interval(course, fall: float) -> tuple[float, float]:
    """80 % interval of the chance of a clear round, over what is believed of each question's chance.

    The product of the questions' chances has the moments E[Πpⁿ] and E[Πp²ⁿ], each a product of ratios
    B(α + n, β) / B(α, β); the interval is that of the Beta distribution with these two moments.
    """
    efforts, alpha, beta = (np.array(column, dtype=float) for column in zip(*course, strict=True))
    mean, square = (float(np.exp((betaln(alpha + k * efforts, beta) - betaln(alpha, beta)).sum())) for k in (1, 2))
    most = mean * (1 - mean)  # no distribution on 0 to 1 varies more; rounding may say so, or say nothing
    size = most / min(max(square - mean**2, 1e-9 * most), most / (1 + 1e-6)) - 1
    low, high = betaincinv(mean * size, (1 - mean) * size, (LOW, HIGH)) * (1 - fall)
    return float(low), float(high)


def in_short(sample: np.ndarray | None) -> dict | None:
    if sample is None:
        return None
    low, high = np.quantile(sample, (LOW, HIGH))
    return {"expected": round(float(sample.mean()), 1), "low": round(float(low), 1), "high": round(float(high), 1)}


def total_of(costs: dict[float, float], phases: dict) -> dict | None:
    """Expected total of a completed event with its 80 % interval; None unless all phases have evidence."""
    if any(sample is None for sample in phases.values()):
        return None
    random = np.random.default_rng(0)
    left = {cost: chance for cost, chance in costs.items() if cost != ELIMINATED}
    chances = np.array(list(left.values()))
    draws = 1000
    total = random.choice(np.array(list(left)), draws, p=chances / chances.sum())
    for sample in phases.values():
        total = total + random.choice(sample, draws)
    return in_short(total)


def in_words(found: dict) -> str:
    return (
        f"Of ten typical courses of this level {out_of_ten(found['clear_chance'])} might be clear across country "
        f"({percent(found['clear_low'])} to {percent(found['clear_high'])}) and "
        f"{out_of_ten(found['elimination_chance'])} might not be completed. This is arithmetic on what was written "
        "down, not a promise."
    )
