"""`fieldtally standing`: what a pair has shown for a level, from an exported file or from this server's logbook."""

import json
from collections.abc import Mapping
from dataclasses import replace
from datetime import date
from pathlib import Path

import click

from fieldtally.book.entry import Entry, check
from fieldtally.book.fold import Record, fold, living
from fieldtally.cli.books import rulebooks_here
from fieldtally.cli.output import answer, complain, json_option
from fieldtally.readiness.bar import shipped_bars
from fieldtally.readiness.finding import Finding
from fieldtally.readiness.plan import with_plans
from fieldtally.readiness.standing import Standing, compute_standings
from fieldtally.trade.rulebook import Rulebook, with_corrections

STATES = {
    "shown": "shown", "building": "building", "untried": "untried", "shaky": "shaky", "gone_stale": "gone stale",
    "on_hold": "on hold",
}  # fmt: skip


@click.command()
@click.option(
    "--export", "file", type=click.Path(path_type=Path, dir_okay=False), help="A file of `fieldtally export`."
)
@click.option("--logbook", "rider", metavar="RIDER", help="Instead of a file: whose logbook on this server.")
@click.option("--horse", "horse", required=True, help="Its name.")
@click.option("--level", "level_id", help="One level by its id; else every level, in short.")
@click.option("--as-of", "as_of", metavar="DAY", help="Any day up to today, such as 2026-05-03.")
@json_option
def standing(
    file: Path | None, rider: str | None, horse: str, level_id: str | None, as_of: str | None, as_json: bool
) -> None:
    """What a horse and rider have shown for a level, with the reasons."""
    if (file is None) == (rider is None):
        complain("name one source.", "Give --export FILE, or --logbook RIDER on the server's own machine.")
    records = records_of(file) if file else records_here(rider)
    every = standings(records, horse_id(records, horse), day(as_of))
    found = of_level(every, level_id)
    data = [each for each in with_plans(every) if level_id in (None, each["level_id"])]
    answer(data, as_json, lambda: in_words(found, whole=level_id is not None))


def records_of(file: Path) -> dict[str, Record]:
    """The living records of an export. Entries this release cannot read are passed over, as on the server."""
    try:
        whole = json.loads(file.read_text(encoding="utf-8"))
    except OSError as wrong:
        complain(f"{file} cannot be read: {wrong.strerror}.")
    except ValueError:
        complain(f"{file} is not JSON.", "Make one with `fieldtally export`.")
    if not isinstance(whole, dict) or "fieldtally_export" not in whole or not isinstance(whole.get("entries"), list):
        complain(f"{file} is not an exported logbook.", "Make one with `fieldtally export`.")
    return living(fold(entry for raw in whole["entries"] if (entry := entry_of(raw))))


def entry_of(raw: Mapping) -> Entry | None:
    """The entry with the number and author that the server gave it."""
    found = check(raw)
    if not isinstance(found, Entry):
        return None
    return replace(found, number=raw.get("number"), author=raw.get("author"))


def records_here(rider: str) -> dict[str, Record]:
    from fieldtally.cli.opening import opened
    from fieldtally.cli.people import book_of
    from fieldtally.store.feed import every_entry

    with opened():
        return living(fold(every_entry(book_of(rider).id)))


def horse_id(records: Mapping[str, Record], name: str) -> str:
    horses = {key: record.body["name"] for key, record in records.items() if record.kind == "horse"}
    named = [key for key, each in horses.items() if each.casefold() == name.casefold()]
    if len(named) == 1:
        return named[0]
    if named:
        complain(f"there are {len(named)} horses named “{name}”.", "Rename one of them.")
    complain(f"there is no horse named “{name}”.", f"There are: {', '.join(sorted(horses.values())) or 'none'}.")


def day(text: str | None) -> date:
    try:
        return date.today() if text is None else date.fromisoformat(text)
    except ValueError:
        complain(f"as-of: “{text}” is not a date.", "Write it as year-month-day, such as 2026-05-03.")


def standings(records: Mapping[str, Record], horse: str, as_of: date) -> list[Standing]:
    number = max((record.number or 0 for record in records.values()), default=0)
    found = compute_standings(records, rulebooks(records), shipped_bars(), as_of, number, horse)
    if not found:
        complain("this horse has no rulebook.", "Choose one for it in the app, or see `fieldtally rulebooks`.")
    return found


def rulebooks(records: Mapping[str, Record]) -> dict[str, Rulebook]:
    corrections = sorted(
        (record for record in records.values() if record.kind == "rulebook_value"),
        key=lambda record: (record.number or 0, record.record_id),
    )
    bodies = [record.body for record in corrections]
    return {key: with_corrections(book, bodies) for key, book in rulebooks_here().items()}


def of_level(found: list[Standing], level_id: str | None) -> list[Standing]:
    chosen = [each for each in found if level_id in (None, each.weighing.level.id)]
    if not chosen:
        complain(
            f"there is no level {level_id!r}.", f"There are: {', '.join(each.weighing.level.id for each in found)}."
        )
    return chosen


def in_words(found: list[Standing], whole: bool) -> str:
    return "\n\n".join(level_words(each, whole) for each in found)


def level_words(each: Standing, whole: bool) -> str:
    shape = each.to_json()
    head = f"{shape['level_name']}, as of {shape['as_of']}\n{shape['summary']['sentence']}"
    if not whole:
        return head
    lines = [line for finding in each.findings for line in finding_lines(finding)]
    return "\n".join([head, "", *lines, "", shape["forecast"]["text"], "", *shape["cautions"]])


def finding_lines(finding: Finding) -> list[str]:
    optional = "" if finding.requirement.required else " (not required)"
    said = [f"    {reason.text}" for reason in (*finding.reasons, *finding.needs)]
    return [f"[{STATES[finding.state]}] {finding.requirement.title}{optional}", *said]
