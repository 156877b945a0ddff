"""The standings of a logbook's horses: what the board shows, and what the phone keeps for the field."""

from datetime import UTC, date, datetime, timedelta
from itertools import chain

from flask import Blueprint, Response, jsonify, request
from marshmallow import ValidationError

from fieldtally.book.fields import CivilDate
from fieldtally.readiness.packed import packed
from fieldtally.store.feed import UnknownLogbook
from fieldtally.web.access import member
from fieldtally.web.errors import problem
from fieldtally.web.recompute import Standings, bar_digest, standings_on, standings_today, where_today
from fieldtally.web.squeeze import squeezed

bp = Blueprint("standing", __name__, url_prefix="/api/logbooks")


@bp.get("/<logbook_id>/standings")
def every_horse(logbook_id: str):
    """All horses, all levels of their rulebooks, today; 304 where the phone has them, for which nothing is read but
    where the logbook stands. `packed=1` sends what repeats from level to level once (readiness.packed)."""
    member(logbook_id)
    try:
        tag = tag_of(*where_today(logbook_id))
        if request.if_none_match.contains_weak(tag):
            return tagged(Response(status=304), tag)
        return answer(standings_today(logbook_id), in_packs=request.args.get("packed") == "1")
    except UnknownLogbook:
        problem(404, "not_found", "This logbook is no longer here.", fix="Ask its rider.")


@bp.get("/<logbook_id>/horses/<horse_id>/standings")
def one_horse(logbook_id: str, horse_id: str):
    """One horse, all levels, on any day up to today."""
    member(logbook_id)
    try:
        found = standings_on(logbook_id, horse_id, asked_day())
    except UnknownLogbook:
        found = None
    if found is None:
        problem(404, "not_found", "There is no such horse in this logbook.", field="horse_id")
    return answer(found)


def answer(found: Standings, in_packs: bool = False) -> Response:
    told = packed(found.horses) if in_packs else {"standings": list(chain.from_iterable(found.horses.values()))}
    response = jsonify(log_id=found.log_id, as_of=found.as_of, logbook_number=found.logbook_number, **told)
    tag = tag_of(found.log_id, found.logbook_number, found.as_of)
    return tagged(squeezed(response), tag).make_conditional(request)


def tag_of(log_id: str, logbook_number: int, as_of: str) -> str:
    """The same standings have the same tag, and others another."""
    return f"{log_id}-{logbook_number}-{as_of}-{bar_digest()[:12]}"


def tagged(response: Response, tag: str) -> Response:
    response.vary.add("Accept-Encoding")
    response.headers["Cache-Control"] = "private, no-cache"
    response.set_etag(tag, weak=True)  # weak: the same standings whether or not they were compressed
    return response


def latest_today() -> date:
    """Today where the day begins first."""
    return (datetime.now(UTC) + timedelta(hours=14)).date()


def asked_day() -> date:
    """The day that `as_of` asks for, today by UTC without it. Where the day begins first it is today too."""
    text = request.args.get("as_of")
    if text is None:
        return datetime.now(UTC).date()
    try:
        day = date.fromisoformat(CivilDate().deserialize(text))
    except ValidationError as error:
        wrong = error.messages[0]
        problem(400, wrong["code"], wrong["message"], field="as_of", fix=wrong["fix"])
    if day > latest_today():
        problem(400, "out_of_range", "That day has not come yet.", field="as_of", fix="Ask for today or before.")
    return day
