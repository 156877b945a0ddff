"""The JSON object a request carries, and texts from it, or a refusal in words."""

import json

from flask import request

from fieldtally.trade.bad_input import BadInput
from fieldtally.web.errors import problem

FIX = "Send one JSON object in UTF-8."
SMALL_BYTES = 16 * 1024


def json_body() -> dict:
    """The request's body: 415 `not_json` for another type, 400 `bad_json` for what cannot be read."""
    if not request.is_json:
        problem(415, "not_json", "This server reads JSON only.", fix="Send Content-Type: application/json.")
    return read_object(request.get_data(cache=False))


def small_json_body() -> dict:
    """Like json_body for bodies of a few lines, 413 `too_large` above 16 KiB; may be asked for twice."""
    if not request.is_json:
        problem(415, "not_json", "This server reads JSON only.", fix="Send Content-Type: application/json.")
    request.max_content_length = SMALL_BYTES
    return read_object(request.get_data(cache=True))


def read_object(raw: bytes) -> dict:
    """`raw` as a JSON object, or 400 `bad_json`."""
    try:
        body = json.loads(raw)
    except (ValueError, RecursionError):  # RecursionError: brackets nested beyond all sense
        problem(400, "bad_json", "This is not JSON that can be read.", fix=FIX)
    if not isinstance(body, dict):
        problem(400, "bad_json", "A JSON object was expected.", fix=FIX)
    return body


def text_in(body: dict, field: str, longest: int, otherwise: str | None = None) -> str:
    """The text at `field`, at most `longest` characters; `otherwise` where it is absent, or BadInput."""
    text = body.get(field)
    if text is None and otherwise is not None:
        return otherwise
    if not isinstance(text, str) or len(text) > longest:
        raise BadInput(field, "This is missing or is no text.", f"Give a text of at most {longest} characters.")
    return text
