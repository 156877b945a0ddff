"""`fieldtally eligibility`: what a rulebook still asks before a rider and horse may enter a level."""

from datetime import date

import click

from fieldtally.cli import asked
from fieldtally.cli.event_file import body, horse_id, read_rows
from fieldtally.cli.output import answer, complain, json_option
from fieldtally.trade.bad_input import BadInput
from fieldtally.trade.counted_results import CountedResult
from fieldtally.trade.eligibility import Eligibility
from fieldtally.trade.eligibility import eligibility as weigh
from fieldtally.trade.entry_rule_finding import RuleFinding

STATES = {
    "met": "Every rule stated here is met.",
    "not_met": "Not met.",
    "not_known": "Cannot be told from what was entered.",
    "not_stated": "This rulebook states no entry rule for the level here.",
}


def day(text: str | None) -> date:
    try:
        return date.today() if text is None else date.fromisoformat(text)
    except ValueError:
        raise BadInput("on", f"“{text}” is not a date.", "Write it as year-month-day, such as 2026-05-03.") from None


def mark(state: str) -> str:
    return f"[{state.replace('_', ' ')}]"


def counted_line(each: CountedResult) -> str:
    until = f", counts until {each.counts_until}" if each.counts_until else ""
    return f"    {each.date}  {each.event} ({each.level_id}){until}"


def rule_lines(rule: RuleFinding) -> list[str]:
    until = f", until {rule.met_until}" if rule.met_until else ""
    lines = [f"{mark(rule.state)} {rule.have} of {rule.need}{until}: {rule.text}"]
    return [*lines, *map(counted_line, rule.counted), *([f"    missing: {rule.missing}"] if rule.missing else [])]


def in_words(found: Eligibility, title: str) -> str:
    lines = [title, f"Entering for {found.on}: {STATES[found.state]}"]
    for gate in found.gates:
        lines.append(f"{mark(gate.state)} {gate.rule.replace('_', ' ')}: {gate.need:g}. {gate.missing}".rstrip())
    for rule in found.rules:
        lines += rule_lines(rule)
    if found.recency:
        within = f"one result within {found.recency.weeks:g} weeks when moving up."
        lines.append(f"{mark(found.recency.state)} {within} {found.recency.missing}".rstrip())
    if found.until:
        lines.append(f"All that is met stays met until {found.until}.")
    return "\n".join([*lines, *found.cautions])


def one_horse(bodies: list[dict], name: str | None) -> str | None:
    """The id of the horse entered; it must be named where the results are of several."""
    ids = {each["horse_id"] for each in bodies}
    if name is None and len(ids) > 1:
        raise BadInput("horse", "The results are of several horses.", "Name the one to be entered with --horse.")
    return horse_id(name) if name is not None else next(iter(ids), None)


@click.command()
@click.argument("results", type=click.Path())
@asked.rulebook_option
@asked.level_option
@click.option("--on", help="Day of the cross-country to enter for: 2026-05-03; default today.")
@click.option("--horse", help="The horse to be entered, as named in RESULTS.")
@click.option("--horse-birth-year", type=click.IntRange(1990, 2199), help="Year the horse was born.")
@click.option("--rider-birth-year", type=click.IntRange(1900, 2199), help="Year the rider was born.")
@click.option("--horse-points", type=float, help="The horse's points, where the rulebook grades by them.")
@click.option("--category", help="The rider's category, where the rulebook has them.")
@click.option("--edition", "editions", multiple=True, help="Another rulebook whose results count too. Repeat it.")
@json_option
def eligibility(results, rulebook_id, level_id, on, horse, horse_birth_year, rider_birth_year, horse_points, category,
                editions, as_json) -> None:  # fmt: skip
    """What a rulebook still asks before entering a level, from RESULTS (CSV or JSON).

    A row for each event: date, event, level_id, status, horse, and the penalties as in an event result of the
    logbook (dressage_penalties, cross_country_jump_penalties, cross_country_seconds_over, ...).
    """
    found = asked.rulebook_and_level(rulebook_id, level_id)
    if found is None:
        complain("name the rulebook and the level.", "Add --rulebook and --level; `fieldtally rulebooks` lists them.")
    book, level = found
    with asked.refused_in_words():
        bodies = [body(row, index) for index, row in enumerate(read_rows(results))]
        said = weigh(bodies, book, level.id, day(on), horse_birth_year, rider_birth_year,
                     horse_id=one_horse(bodies, horse), horse_points=horse_points, category=category,
                     editions=editions)  # fmt: skip
    title = asked.heading(found)
    answer({"rules_of": title, **said.to_json()}, as_json, lambda: in_words(said, title))
