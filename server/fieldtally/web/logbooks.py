"""A logbook as a whole: taking it away."""

from flask import Blueprint, Response, stream_with_context

from fieldtally.reports.whole_logbook import whole_logbook
from fieldtally.store.whole import heading, held_texts, wire_entries
from fieldtally.web.access import member

bp = Blueprint("logbooks", __name__, url_prefix="/api/logbooks")


@bp.get("/<logbook_id>/export")
def export(logbook_id: str):
    """Every entry, for any member: whoever may read a logbook may keep a copy of it."""
    member(logbook_id)
    about = heading(logbook_id)
    pieces = whole_logbook(about.to_json(), wire_entries(about), held_texts(logbook_id))
    response = Response(stream_with_context(pieces), content_type="application/json")
    response.headers["Content-Disposition"] = 'attachment; filename="fieldtally-logbook.json"'
    return response
