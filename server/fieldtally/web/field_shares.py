"""Handing a field to another logbook by a code that somebody reads out or sends. What goes over is the field, its
fences and its tracks: no horse, no outing, no attempt; and whoever takes it gets a copy, never a look inside."""

import json

from flask import Blueprint, jsonify, request
from marshmallow import ValidationError

from fieldtally.book.bodies.shared_field import SharedField, name_of
from fieldtally.book.instant import show_instant
from fieldtally.book.trouble import first_trouble
from fieldtally.store import field_shares
from fieldtally.store.models import FieldShare
from fieldtally.web.access import Member, member, signed_in
from fieldtally.web.errors import problem
from fieldtally.web.json_body import json_body, small_json_body, text_in
from fieldtally.web.limits import few_wrong_codes

bp = Blueprint("field_shares", __name__, url_prefix="/api")

MOST_OPEN = 20
MOST_BYTES = 512 * 1024
LONGEST_CODE = 40


@bp.get("/logbooks/<logbook_id>/field-shares")
def every_open_one(logbook_id: str):
    """The fields of this logbook that a code still opens; never the codes."""
    who_shares(logbook_id)
    return jsonify(field_shares=[shown(one) for one in field_shares.open_shares(logbook_id)])


@bp.post("/logbooks/<logbook_id>/field-shares")
def share(logbook_id: str):
    """Keeps a field for whoever has the code, which is told this once."""
    who = who_shares(logbook_id)
    request.max_content_length = MOST_BYTES
    shared = json_body()
    check(shared)
    if len(field_shares.open_shares(logbook_id)) >= MOST_OPEN:
        fix = "Withdraw one that is not needed any more."
        problem(409, "too_many_shares", f"{MOST_OPEN} fields are shared by a code already.", fix=fix)
    code, made = field_shares.share(logbook_id, who.account_id, name_of(shared), json.dumps(shared))
    return jsonify(shown(made) | {"code": code})


@bp.delete("/logbooks/<logbook_id>/field-shares/<share_id>")
def withdraw(logbook_id: str, share_id: str):
    """Ends a code at once."""
    who_shares(logbook_id)
    if not field_shares.withdraw(logbook_id, share_id):
        problem(404, "not_found", "This code opens nothing any more.")
    return "", 204


@bp.post("/field-shares")
@few_wrong_codes
def take():
    """The field a code opens, for anybody with an account here; counts as one use of the code."""
    signed_in()
    text = field_shares.take(text_in(small_json_body(), "code", LONGEST_CODE))
    if text is None:
        fix = "Check each sign, or ask for a new one: a code is good for seven days and twenty uses."
        problem(404, "no_share", "This code opens nothing.", field="code", fix=fix)
    return jsonify(json.loads(text))


def who_shares(logbook_id: str) -> Member:
    who = member(logbook_id)
    if who.role not in ("rider", "coach"):
        problem(403, "may_not_share", "Only the rider and the coach hand a field on by a code.", fix="Ask one of them.")
    return who


def check(shared: dict) -> None:
    try:
        SharedField().load(shared)
    except ValidationError as wrong:
        found = first_trouble(wrong.messages)
        problem(400, found.code, found.message, field=found.path, fix=found.fix)


def shown(one: FieldShare) -> dict:
    return {"id": one.id, "name": one.name, "expires_at": show_instant(one.expires_at_ms), "uses_left": one.uses_left}
