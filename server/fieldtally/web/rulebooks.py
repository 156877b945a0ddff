"""The rulebooks this server knows: data of published documents, the same for everybody, so no sign-in."""

from hashlib import sha256

from flask import Blueprint, Response, current_app, request

from fieldtally.trade.rulebook import Rulebook
from fieldtally.web.errors import problem
from fieldtally.web.known_rulebooks import known_rulebooks

bp = Blueprint("rulebooks", __name__, url_prefix="/api/rulebooks")


@bp.get("")
def every():
    return unless_known([heading(rulebook) for rulebook in known_rulebooks().values()])


@bp.get("/<rulebook_id>")
def one(rulebook_id: str):
    rulebook = known_rulebooks().get(rulebook_id)
    if rulebook is None:
        problem(404, "not_found", "There is no such rulebook here.", fix="GET /api/rulebooks lists them.")
    return unless_known(rulebook.to_json())


def heading(rulebook: Rulebook) -> dict:
    return {
        "id": rulebook.id,
        "title": rulebook.title,
        "body": rulebook.body,
        "edition": rulebook.edition,
        "status": rulebook.status,
        "levels": [{"id": level.id, "name": level.name} for level in rulebook.levels],
    }


def unless_known(data: object) -> Response:
    """`data` as JSON, or 304 where the phone has the very same already."""
    response = Response(current_app.json.dumps(data), content_type="application/json")
    response.headers["Cache-Control"] = "no-cache"
    response.set_etag(sha256(response.get_data()).hexdigest()[:32])
    return response.make_conditional(request)
