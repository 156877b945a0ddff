"""A logbook as a whole: opening one of one's own, and taking one away."""

from flask import Blueprint, Response, stream_with_context

from fieldtally.reports.whole_logbook import whole_logbook
from fieldtally.store.memberships import open_logbook, own_logbook
from fieldtally.store.whole import heading, held_texts, media_files, wire_entries
from fieldtally.web.access import member, signed_in
from fieldtally.web.auth import session_data
from fieldtally.web.errors import problem

bp = Blueprint("logbooks", __name__, url_prefix="/api/logbooks")


@bp.post("")
def open_own():
    """Opens a logbook whose rider is whoever asks; each account has at most one."""
    account = signed_in()
    if own_logbook(account):
        problem(409, "has_logbook", "You have a logbook of your own already.", fix="Use that one.")
    open_logbook(account)
    return session_data()


@bp.get("/<logbook_id>/export")
def export(logbook_id: str):
    """Every entry, photo and voice note, for any member: whoever may read a logbook may keep a copy of it."""
    member(logbook_id)
    about = heading(logbook_id)
    pieces = whole_logbook(about.to_json(), wire_entries(about), held_texts(logbook_id), media_files(logbook_id))
    response = Response(stream_with_context(pieces), content_type="application/json")
    response.headers["Content-Disposition"] = 'attachment; filename="fieldtally-logbook.json"'
    return response
