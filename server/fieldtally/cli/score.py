"""`fieldtally score`: penalties of each phase by a rulebook's rules, and the total."""

import dataclasses
import re

import click

from fieldtally.cli import asked
from fieldtally.cli.event_file import read_rows, result
from fieldtally.cli.output import answer, complain, json_option
from fieldtally.trade import units
from fieldtally.trade.bad_input import BadInput
from fieldtally.trade.cross_country_score import CrossCountryRules, cross_country_score
from fieldtally.trade.dressage_score import DressageRules, Sheet, dressage_score, sheet
from fieldtally.trade.jump_faults import Fault, FaultLine, JumpScore
from fieldtally.trade.rulebook import Level, Value
from fieldtally.trade.score_rules import (
    course_speeds,
    cross_country_rules,
    dressage_rules,
    from_memory,
    show_jumping_rules,
    time_rules,
    used,
)
from fieldtally.trade.show_jumping_score import ShowJumpingRules, show_jumping_score
from fieldtally.trade.time_penalties import TimeRules, TimeScore, course_times, time_score
from fieldtally.trade.total import PARTS, Placing, places, total

CAUTION = "The rulebook in force and the officials decide."
ALLOWED = {"cross_country": "optimum time", "show_jumping": "time allowed"}
OBSTACLE = re.compile(r"(\d+)([A-F])", re.ASCII)


def fault(text: str) -> Fault:
    """`4:refusal`, `9B:run-out`, or without a fence `horse-fall`."""
    where, _, kind = text.rpartition(":")
    found = OBSTACLE.fullmatch(where.strip())
    obstacle, element = found.groups() if found else (where.strip(), None)
    return Fault(obstacle, kind.strip().replace("-", "_"), element)


def timed(level: Level, phase: str, length: str | None, speed: str | None, time: str | None) -> TimeScore | None:
    """The time score where a time was given; it needs the length, and a speed where the level has several."""
    if time is None:
        return None
    if length is None:
        raise BadInput("length", "The time needs the length of the course.", "Add --length, such as 1800m.")
    speeds = course_speeds(level, phase)
    if speed is None and (speeds is None or speeds[0] != speeds[1]):
        allowed = f"The level allows {speeds[0]:g} to {speeds[1]:g} m/min." if speeds else "The level states no speed."
        raise BadInput("speed", allowed, "Add the course's own with --speed.")
    rules = time_rules(level, phase)
    mpm = units.speed_mpm(speed, "speed") if speed is not None else speeds[0]
    times = course_times(units.distance_m(length, "length"), mpm, rules)
    return time_score(times, units.time_ms(time), rules, ALLOWED[phase])


def value_data(values: list[Value]) -> list[dict]:
    return [dataclasses.asdict(value) for value in values]


def memory_lines(values: list[Value]) -> list[str]:
    unread = [f"{value.quantity} {value.value:g}" for value in from_memory(values)]
    return [f"From memory, check: {', '.join(unread)}."] if unread else []


def fault_line(line: FaultLine) -> str:
    where = f"{line.obstacle}{line.element or ''}" or "-"
    cost = "E" if line.eliminates else "" if line.penalties is None else f"{line.penalties:g}"
    return f"{where:>4}  {cost:>4}  {line.reason}"


def jump_words(jump: JumpScore) -> str:
    return f"Jumping: {jump.reason}" + ("" if jump.complete else " (not complete: the rulebook leaves something open)")


def time_words(time: TimeScore) -> str:
    cost = "" if time.penalties is None else f"{time.penalties:g} penalties, "
    return f"Time: {cost}{time.reason}"


def phase_data(title: str, jump: JumpScore, time: TimeScore | None, values: list[Value]) -> dict:
    return {"rules_of": title, "jumping": dataclasses.asdict(jump),
            "time": None if time is None else dataclasses.asdict(time), "rules": value_data(values)}  # fmt: skip


def phase_text(title: str, jump: JumpScore, time: TimeScore | None, values: list[Value]) -> str:
    lines = [title, *map(fault_line, jump.lines), jump_words(jump), *([time_words(time)] if time else [])]
    return "\n".join([*lines, *memory_lines(values), CAUTION])


def needed(rulebook_id: str | None, level_id: str | None) -> tuple[str, Level]:
    found = asked.rulebook_and_level(rulebook_id, level_id)
    if found is None:
        complain("name the rulebook to score by.", "Add --rulebook and --level; `fieldtally rulebooks` lists them.")
    return asked.heading(found), found[1]


@click.group()
def score() -> None:
    """Penalties of a phase by a rulebook's rules, and the total of an event."""


def round_options(command):
    """The options both jumping phases share."""
    for option in reversed([
        asked.rulebook_option, asked.level_option,
        click.option("--fault", "faults", multiple=True, help="In order: 4:refusal, 9B:run-out, horse-fall."),
        click.option("--length", help="Of the course: 1800m. Needed with --time."),
        click.option("--speed", help="Of the course, in metres per minute."),
        click.option("--time", help="The round's time: 5:11 or 311s."),
        json_option,
    ]):  # fmt: skip
        command = option(command)
    return command


def show_round(phase: str, rules, scorer, rulebook_id, level_id, faults, length, speed, time, as_json) -> None:
    title, level = needed(rulebook_id, level_id)
    with asked.refused_in_words():
        jump = scorer([fault(each) for each in faults], rules(level))
        ride = timed(level, phase, length, speed, time)
    kind = CrossCountryRules if phase == "cross_country" else ShowJumpingRules
    values = used(level, phase, kind, TimeRules)
    answer(phase_data(title, jump, ride, values), as_json, lambda: phase_text(title, jump, ride, values))


@score.command()
@round_options
def xc(**typed) -> None:
    """Cross-country: jumping penalties fault by fault, and time."""
    show_round("cross_country", cross_country_rules, cross_country_score, **typed)


@score.command()
@round_options
def sj(**typed) -> None:
    """Show jumping: knockdowns, disobediences, falls, and time."""
    show_round("show_jumping", show_jumping_rules, show_jumping_score, **typed)


def typed_sheet(text: str) -> Sheet:
    """A judge's sum over the maximum, `130/200`, or single marks with coefficients, `7,6.5x2,8`."""
    try:
        if "/" in text:
            return Sheet(*(float(part) for part in text.split("/")))
        pairs = [each.split("x") for each in text.replace(" ", "").split(",")]
        return sheet([(float(mark), float(coefficient[0]) if coefficient else 1.0) for mark, *coefficient in pairs])
    except (ValueError, TypeError) as wrong:
        if isinstance(wrong, BadInput):
            raise
        raise BadInput("marks", f"“{text}” is not a sheet.", "Write it as 130/200, or as marks: 7,6.5x2,8.") from None


@score.command()
@asked.rulebook_option
@asked.level_option
@click.option("--marks", "sheets", multiple=True, required=True, help="A judge's 130/200, or marks: 7,6.5x2,8.")
@click.option("--errors", type=int, default=0, show_default=True, help="Errors of course.")
@json_option
def dressage(
    rulebook_id: str | None, level_id: str | None, sheets: tuple[str, ...], errors: int, as_json: bool
) -> None:
    """Dressage: marks to a percentage, and to penalties."""
    title, level = needed(rulebook_id, level_id)
    with asked.refused_in_words():
        found = dressage_score([typed_sheet(each) for each in sheets], dressage_rules(level), errors)
    values = used(level, "dressage", DressageRules)
    answer({"rules_of": title, **dataclasses.asdict(found), "rules": value_data(values)}, as_json,
           lambda: "\n".join([title, found.reason, *memory_lines(values), CAUTION]))  # fmt: skip


def part_options(command):
    for name in reversed(PARTS):
        command = click.option(f"--{name.replace('_', '-')}", name, type=float, help="Penalties.")(command)
    return command


def placing_line(row: Placing) -> str:
    place = "-" if row.place is None else str(row.place)
    own = "" if row.total is None else f"{row.total:g}"
    return f"{place:>3}  {own:>7}  {row.pair}" + (f"  ({row.note})" if row.note else "")


@score.command(name="total")
@click.argument("results", required=False, type=click.Path())
@part_options
@json_option
def total_command(results: str | None, as_json: bool, **parts: float | None) -> None:
    """The total of one pair from its parts, or the places of all pairs in RESULTS (CSV or JSON).

    RESULTS has a row for each pair: pair, status, and the parts, named as the options with underscores.
    """
    with asked.refused_in_words():
        if results is None:
            own = total({name: penalties for name, penalties in parts.items() if penalties is not None})
            answer({"total": own}, as_json, lambda: f"{own:g}")
        else:
            found = places([result(row, index) for index, row in enumerate(read_rows(results))])
            answer([dataclasses.asdict(row) for row in found], as_json,
                   lambda: "\n".join(placing_line(row) for row in found))  # fmt: skip
