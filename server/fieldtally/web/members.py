"""Who is in a logbook: everybody in it may know, its rider decides, and whoever wants to may leave."""

from flask import Blueprint, jsonify

from fieldtally.store.memberships import end_membership, members_of
from fieldtally.web.access import member, rider
from fieldtally.web.errors import problem

bp = Blueprint("members", __name__, url_prefix="/api/logbooks")


@bp.get("/<logbook_id>/members")
def everybody(logbook_id: str):
    """Everybody in the logbook and their role."""
    member(logbook_id)
    return jsonify(members=[
        {"account_id": account.id, "display_name": account.display_name, "role": role}
        for account, role in members_of(logbook_id)
    ])  # fmt: skip


@bp.delete("/<logbook_id>/members/<account_id>")
def end(logbook_id: str, account_id: str):
    """Ends what somebody is in the logbook; what they wrote stays. A helper may end their own place only."""
    who = member(logbook_id)
    if account_id != who.account_id:
        rider(logbook_id)
    elif who.role == "rider":
        fix = "Delete your account instead, if you want the logbook gone."
        problem(409, "rider_stays", "A logbook cannot be without its rider.", fix=fix)
    if not end_membership(logbook_id, account_id):
        problem(404, "not_found", "That person is not in this logbook.")
    return "", 204
