"""The one shape in which anything that fails is answered: {"error": {code, message, field, fix, details}}.

A room stops with `problem(…)`; whatever Flask or our own mistakes raise ends here too. No answer ever
carries a stack trace: the log has it, under the incident's number that the answer names.
"""

import secrets
from collections.abc import Sequence
from typing import NoReturn

from flask import Flask, Response, current_app, jsonify, request
from sqlalchemy.exc import OperationalError
from werkzeug.exceptions import HTTPException

from fieldtally.trade.bad_input import BadInput


class Problem(Exception):
    """A request that cannot be answered as asked, in words a person can act on."""

    def __init__(self, status: int, code: str, message: str, field: str | None, fix: str | None, details) -> None:
        super().__init__(f"{status} {code}: {message}")
        self.status, self.code, self.message = status, code, message
        self.field, self.fix, self.details = field, fix, list(details)


def problem(
    status: int, code: str, message: str, *, field: str | None = None, fix: str | None = None,
    details: Sequence[object] = (),
) -> NoReturn:  # fmt: skip
    """Stop here and answer with HTTP `status` and this error. Docs/errors.md lists every `code`."""
    raise Problem(status, code, message, field, fix, details)


# what the HTTP layer itself may find wrong: status -> (code, message, fix)
HTTP_PROBLEMS: dict[int, tuple[str, str, str | None]] = {
    400: ("bad_request", "This request cannot be read.", None),
    404: ("not_found", "There is nothing at this address.", None),
    405: ("wrong_method", "This address does not take this method.", None),
    413: ("too_large", "This is more than the server takes at once.", "Send it in smaller pieces."),
    415: ("not_json", "This server reads JSON only.", "Send Content-Type: application/json."),
    429: ("too_many", "That was tried too often.", "Wait as long as Retry-After says, then try again."),
    503: ("database_busy", "The database does not answer just now.", "Try again in a moment; keep what you have."),
}


# what whoever runs the server may want to see in the log: somebody tried what they may not
WATCHED = {"wrong_password", "not_yours", "wrong_logbook", "missing_header", "not_first", "not_the_rider"}


def error_body(code: str, message: str, field: str | None = None, fix: str | None = None, details=()) -> dict:
    return {"error": {"code": code, "message": message, "field": field, "fix": fix, "details": list(details)}}


def answer_problem(found: Problem) -> tuple[Response, int]:
    if found.code in WATCHED:  # never the name: people type their password there by mistake
        current_app.logger.warning("%s %r from %s: %s", request.method, request.path, request.remote_addr, found.code)
    return jsonify(error_body(found.code, found.message, found.field, found.fix, found.details)), found.status


def answer_bad_input(found: BadInput) -> tuple[Response, int]:
    return jsonify(error_body("bad_field", found.message, found.field, found.fix)), 400


def answer_http(found: HTTPException) -> Response | tuple[Response, int]:
    """Whatever Flask itself refuses, in our shape and with its own headers (Allow, Retry-After) kept."""
    status = found.code or 500
    if status < 400:
        return found.get_response()
    code, message, fix = HTTP_PROBLEMS.get(status, ("bad_request", "This request cannot be answered.", None))
    response = jsonify(error_body(code, message, fix=fix))
    kept = [(name, value) for name, value in found.get_headers() if name not in ("Content-Type", "Content-Length")]
    response.headers.extend(kept)
    return response, status


def answer_database(found: OperationalError) -> tuple[Response, int]:
    current_app.logger.error("the database does not answer: %s", found.orig)
    code, message, fix = HTTP_PROBLEMS[503]
    return jsonify(error_body(code, message, fix=fix)), 503


def answer_mistake(found: Exception) -> tuple[Response, int]:
    """A mistake of ours: the trace goes to the log under a number, the number to the user."""
    incident = secrets.token_hex(4)
    current_app.logger.error("incident %s", incident, exc_info=found)
    message = "The server made a mistake. Nothing you entered is lost."
    fix = f"Try again; if it stays, give whoever runs the server the number {incident}."
    return jsonify(error_body("server_mistake", message, fix=fix, details=[{"incident": incident}])), 500


def register(app: Flask) -> None:
    app.register_error_handler(Problem, answer_problem)
    app.register_error_handler(BadInput, answer_bad_input)
    app.register_error_handler(HTTPException, answer_http)
    app.register_error_handler(OperationalError, answer_database)
    app.register_error_handler(Exception, answer_mistake)
