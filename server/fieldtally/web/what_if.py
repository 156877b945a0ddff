"""Questions about one horse at one level: what if, and what to do on the next outing. Nothing is stored."""

from datetime import date

from flask import Blueprint, jsonify
from marshmallow import RAISE, Schema, ValidationError, fields, validate

from fieldtally.book.bodies.said import BarChange
from fieldtally.book.fields import CivilDate, Number, RecordId, Text
from fieldtally.book.trouble import first_trouble
from fieldtally.readiness.bar import shipped_bars
from fieldtally.readiness.bar_range import trouble_with
from fieldtally.readiness.plan import plans_for
from fieldtally.readiness.what_if import Case, More, Question, what_if
from fieldtally.store import feed
from fieldtally.web.access import member
from fieldtally.web.errors import problem
from fieldtally.web.json_body import json_body
from fieldtally.web.recompute import records_now, rulebooks_for, today_in
from fieldtally.web.standing import latest_today

bp = Blueprint("what_if", __name__, url_prefix="/api/logbooks/<logbook_id>/horses/<horse_id>/levels/<level_id>")

MOST_SUPPOSED = 20


class Strict(Schema):
    class Meta:
        unknown = RAISE


class MoreClear(Strict):
    requirement_id = Text(120, 1, required=True)
    clear = Number(1, 50, "clear attempts", whole=True, required=True)
    outings = Number(1, 20, "outings", whole=True, load_default=1)


class Asked(Strict):
    """`as_of`: a day; `without_outings`: outings to leave out; `more`: further clear attempts; `bar_changes`:
    changes of the bar that nobody has saved."""

    as_of = CivilDate(load_default=None, allow_none=True)
    without_outings = fields.List(RecordId(), load_default=list, validate=validate.Length(max=MOST_SUPPOSED))
    more = fields.List(fields.Nested(MoreClear), load_default=list, validate=validate.Length(max=MOST_SUPPOSED))
    bar_changes = fields.List(fields.Nested(BarChange), load_default=list, validate=validate.Length(max=MOST_SUPPOSED))


@bp.post("/what-if")
def suppose(logbook_id: str, horse_id: str, level_id: str):
    """The standing as it is and as it would be, with the findings that differ."""
    member(logbook_id)
    asked = read_question()
    case = case_of(logbook_id, horse_id, level_id)
    refuse_bad_changes(case, asked["bar_changes"])
    question = Question(
        frozenset(known_outings(case, asked["without_outings"])),
        tuple(More(**more) for more in asked["more"]),
        tuple(asked["bar_changes"]),
        day_asked(asked["as_of"]),
    )
    try:
        return jsonify(what_if(case, question).to_json())
    except KeyError as missing:
        problem(
            400,
            "unknown_requirement",
            f"This level's bar has no requirement {missing}.",
            field="more",
            fix="Name a requirement of this level.",
        )


@bp.get("/plans")
def plans(logbook_id: str, horse_id: str, level_id: str):
    """An outing planned for every field of the logbook that has fences."""
    member(logbook_id)
    case = case_of(logbook_id, horse_id, level_id)
    return jsonify(plans=plans_for(case.standing(case.records)))


def read_question() -> dict:
    try:
        return Asked().load(json_body())
    except ValidationError as error:
        wrong = first_trouble(error.messages)
        problem(400, wrong.code, wrong.message, field=wrong.path, fix=wrong.fix)


def refuse_bad_changes(case: Case, changes: list[dict]) -> None:
    """A change that this level's bar has no such number for, or that turns one beyond sense, is not worked out."""
    bar = case.bars.bar(case.rulebook, case.rulebook.level(case.level_id))
    numbers = {each.id: each.numbers for each in bar.requirements}
    for place, change in enumerate(changes):
        wrong = wrong_with(change, numbers, case)
        if wrong:
            name, code, message, fix = wrong
            problem(400, code, message, field=f"bar_changes.{place}.{name}", fix=fix)


def wrong_with(change: dict, numbers: dict, case: Case) -> tuple[str, str, str, str] | None:
    """Which field, code, message and fix; None where nothing is."""
    quantity, value = change["quantity"], change["value"]
    for name, ours in (("rulebook_id", case.rulebook.id), ("level_id", case.level_id)):
        if change[name] != ours:
            return name, "other_level", f"This is about {ours}, not {change[name]}.", f"Send {ours}."
    if change["requirement_id"] not in numbers:
        message = f"This level's bar has no requirement {change['requirement_id']}."
        return "requirement_id", "unknown_requirement", message, "Name a requirement of this level."
    known = numbers[change["requirement_id"]]
    if quantity != "dropped" and quantity not in known:
        return "quantity", "unknown_quantity", f"It has no number {quantity}.", f"Name one of: {', '.join(known)}."
    wrong = trouble_with(quantity, value) if value is not None else None
    return ("value", *wrong) if wrong else None


def day_asked(as_of: str | None) -> date | None:
    """A day up to today wherever that begins first: nobody knows what will have been ridden."""
    if as_of is None:
        return None
    day = date.fromisoformat(as_of)
    if day > latest_today():
        problem(400, "out_of_range", "That day has not come yet.", field="as_of", fix="Ask for today or before.")
    return day


def known_outings(case: Case, ids: list[str]) -> list[str]:
    for place, outing_id in enumerate(ids):
        outing = case.records.get(outing_id)
        if outing is None or outing.kind != "outing" or outing.body["horse_id"] != case.horse_id:
            message, fix = "This horse has no such outing.", "Name one of its outings."
            problem(400, "unknown_outing", message, field=f"without_outings.{place}", fix=fix)
    return ids


def case_of(logbook_id: str, horse_id: str, level_id: str) -> Case:
    """The horse at the level as the logbook stands, or 404 `not_found`."""
    book = feed.head(logbook_id)
    records = records_now(logbook_id, book)
    horse = records.get(horse_id)
    rulebook = rulebooks_for(records).get(horse.body["rulebook_id"]) if horse and horse.kind == "horse" else None
    if rulebook is None or level_id not in {level.id for level in rulebook.levels}:
        problem(404, "not_found", "There is no such horse, or no such level in its rulebook.", field="level_id")
    return Case(records, rulebook, shipped_bars(), today_in(book), book.last_number, horse_id, level_id)
