"""Weighs flatwork: whole tests of the level, their percentage, its steadiness, and movements that score low."""

import statistics
from collections import Counter

from fieldtally.readiness.context import Weighing
from fieldtally.readiness.finding import Finding, Reason
from fieldtally.readiness.listed_records import records_behind
from fieldtally.readiness.plain import listed, many, many_in_words, sentence, span
from fieldtally.readiness.requirement import Requirement


def test_percent(body: dict) -> float:
    """Per cent as stated, else from the marks: 100 · Σ mark·coefficient / (10 · Σ coefficient)."""
    if body["percent"] is not None:
        return body["percent"]
    most = 10 * sum(mark["coefficient"] for mark in body["marks"])
    return 100 * sum(mark["mark"] * mark["coefficient"] for mark in body["marks"]) / most


def weigh_tests(requirement: Requirement, weighing: Weighing) -> Finding:
    numbers, book = requirement.numbers, weighing.book
    chosen = tests_of_level(weighing, numbers)
    percents = [test_percent(each.body) for each in chosen]
    needs = tuple(missing(percents, numbers))
    state = judged(percents, needs)
    return Finding(
        requirement, state, tuple(reasons(chosen, percents, numbers)), needs, in_numbers(percents),
        lambda: (explained(percents, numbers),),
        lambda: records_behind(
            book, chosen, lambda each: each.body["test"], lambda each: f"{test_percent(each.body):.1f} %"
        ),
    )  # fmt: skip


def tests_of_level(weighing: Weighing, numbers: dict[str, float]) -> list:
    """Tests of this level, or of a higher one in the same rulebook."""
    order = {level.id: place for place, level in enumerate(weighing.rulebook.levels)}
    least = order[weighing.level.id]
    return [
        each
        for each in weighing.book.since("flatwork_test", numbers["window_days"])
        if each.body["rulebook_id"] in (None, weighing.rulebook.id) and order.get(each.body["level_id"], -1) >= least
    ]


def judged(percents: list[float], needs: tuple[Reason, ...]) -> str:
    if not percents:
        return "untried"
    if not needs:
        return "shown"
    return "building" if needs[0].code == "more_tests" else "shaky"


def missing(percents: list[float], numbers: dict[str, float]):
    """The last tests asked for are judged: their mean, the worst of them, and their spread."""
    more = int(numbers["tests"]) - len(percents)
    if more > 0:
        yield Reason(
            "more_tests",
            {"tests": more},
            sentence(whole_tests(more, begun=bool(percents))),
        )
    if not percents:
        return
    last = percents[-int(numbers["tests"]):]  # fmt: skip
    if statistics.fmean(last) < numbers["percent"]:
        yield Reason(
            "percent",
            {"percent": numbers["percent"]},
            f"An average of {numbers['percent']:g} % or more over the last {many(len(last), 'test')}.",
        )
    if min(last) < numbers["worst_percent"]:
        yield Reason(
            "worst",
            {"percent": numbers["worst_percent"]},
            f"None of the last {many(len(last), 'test')} below {numbers['worst_percent']:g} %.",
        )
    if len(last) > 1 and statistics.stdev(last) > numbers["spread_percent"]:
        yield Reason(
            "spread", {"percent": numbers["spread_percent"]}, "Tests nearer to each other: steady before brilliant."
        )


def whole_tests(count: int, begun: bool) -> str:
    """“two more whole tests of this level”."""
    more = "more " if begun else ""
    return many_in_words(count, f"{more}whole test of this level", f"{more}whole tests of this level")


def reasons(chosen: list, percents: list[float], numbers: dict[str, float]):
    if not chosen:
        yield Reason("untried", {}, "No test of this level entered yet.")
        return
    text = (
        f"{many(len(percents), 'test')}, on average {statistics.fmean(percents):.1f} %, the last {percents[-1]:.1f} %."
    )
    yield Reason("counted", {"tests": len(percents), "percent": round(statistics.fmean(percents), 2)}, text)
    low = low_movements(chosen, numbers)
    if low:
        yield Reason(
            "low_movements", {"movements": low}, f"Again and again {numbers['low_mark']:g} or less for {listed(low)}."
        )


def low_movements(chosen: list, numbers: dict[str, float]) -> list[str]:
    """Movements marked at or below the low mark in several tests, most often first; three at most."""
    low = Counter(
        mark["movement"] for each in chosen for mark in each.body["marks"] if mark["mark"] <= numbers["low_mark"]
    )
    return [movement for movement, times in low.most_common(3) if times >= numbers["low_mark_times"]]


def in_numbers(percents: list[float]) -> dict:
    if not percents:
        return {"tests": 0}
    spread = statistics.stdev(percents) if len(percents) > 1 else None
    return {
        "tests": len(percents),
        "percent": statistics.fmean(percents),
        "worst_percent": min(percents),
        "spread_percent": spread,
    }


def explained(percents: list[float], numbers: dict[str, float]) -> Reason:
    limits = {name: numbers[name] for name in ("percent", "worst_percent", "spread_percent")}
    last = [f"{each:.1f}" for each in percents[-5:]]
    values = {"last": last, "tests": int(numbers["tests"]), "days": numbers["window_days"]} | limits
    mine = f"Yours: {listed([f'{each} %' for each in last])}" if percents else "You have none yet"
    text = (
        f"Tests of this level or a higher one in the last {span(numbers['window_days'])} count. {mine}. The last "
        f"{values['tests']} must average {numbers['percent']:g} % or more, with none below "
        f"{numbers['worst_percent']:g} %, and lie typically within "
        f"{numbers['spread_percent']:g} per cent of their average."
    )
    return Reason("worked_tests" if percents else "worked_tests_none", values, text)
