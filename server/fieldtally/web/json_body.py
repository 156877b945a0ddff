"""The JSON object a request carries, or a refusal in words."""

import json

from flask import request

from fieldtally.web.errors import problem

FIX = "Send one JSON object in UTF-8."


def json_body() -> dict:
    """The request's body: 415 `not_json` for another type, 400 `bad_json` for what cannot be read."""
    if not request.is_json:
        problem(415, "not_json", "This server reads JSON only.", fix="Send Content-Type: application/json.")
    try:
        body = json.loads(request.get_data(cache=False))
    except (ValueError, RecursionError):  # RecursionError: brackets nested beyond all sense
        problem(400, "bad_json", "This is not JSON that can be read.", fix=FIX)
    if not isinstance(body, dict):
        problem(400, "bad_json", "A JSON object was expected.", fix=FIX)
    return body
