"""`fieldtally course`: the course card of a length at a speed."""

import dataclasses

import click

from fieldtally.cli import asked
from fieldtally.cli.output import answer, complain, json_option
from fieldtally.trade import units
from fieldtally.trade.bad_input import BadInput
from fieldtally.trade.course import card_text, course_card
from fieldtally.trade.optimum import DEFAULT_ROUNDING, ROUNDINGS
from fieldtally.trade.rulebook import Level
from fieldtally.trade.score_rules import course_speeds, from_memory, time_rules, used
from fieldtally.trade.time_penalties import TimeRules


def fence(text: str) -> tuple[str, float]:
    """(label, metres from the start) of `9AB=1080m`."""
    label, sign, distance = text.partition("=")
    if not label.strip() or not sign:
        raise BadInput("fence", f"“{text}” is not a fence with its distance.", "Write it as 9AB=1080m.")
    return label.strip(), units.distance_m(distance, f"fence {label.strip()}")


def speed_and_note(typed: str | None, level: Level | None) -> tuple[float, str]:
    """The speed of the course, and what to say where the level's fastest had to stand in for it."""
    if typed is not None:
        return units.speed_mpm(typed, "speed"), ""
    speeds = course_speeds(level) if level else None
    if speeds is None:
        complain("the speed is not known.", "Give it with --speed, in metres per minute.")
    slowest, fastest = speeds
    return fastest, "" if slowest == fastest else (
        f"The level allows {slowest:g} to {fastest:g} m/min; the fastest is used. Give the course's own with --speed.")


def memory_note(level: Level | None) -> str:
    unread = from_memory(used(level, "cross_country", TimeRules)) if level else []
    return f"From memory, check: {', '.join(value.quantity for value in unread)}." if unread else ""


@click.command()
@click.option("--length", required=True, help="The course: 2400m or 2.4km.")
@click.option("--speed", help="Its speed in metres per minute; default the level's.")
@asked.rulebook_option
@asked.level_option
@click.option("--fence", "fences", multiple=True, help="A fence and its distance from the start: 9AB=1080m. Repeat it.")
@click.option("--rounding", default=DEFAULT_ROUNDING, show_default=True, help=f"Of the times: {', '.join(ROUNDINGS)}.")
@json_option
def course(
    length: str, speed: str | None, rulebook_id: str | None, level_id: str | None,
    fences: tuple[str, ...], rounding: str, as_json: bool,
) -> None:  # fmt: skip
    """Optimum time, time limit, minute markers, and the clock at each fence."""
    found = asked.rulebook_and_level(rulebook_id, level_id)
    level = found and found[1]
    with asked.refused_in_words():
        mpm, note = speed_and_note(speed, level)
        rules = dataclasses.replace(time_rules(level, "cross_country") if level else TimeRules(), rounding=rounding)
        card = course_card(units.distance_m(length, "length"), mpm, rules, [fence(each) for each in fences])
    notes = [each for each in (note, memory_note(level)) if each]
    title = asked.heading(found) if found else "Course card"
    answer(dataclasses.asdict(card) | {"title": title, "notes": notes}, as_json,
           lambda: "\n".join([card_text(card, title), *notes]))  # fmt: skip
