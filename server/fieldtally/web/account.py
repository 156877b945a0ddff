"""One's own account: where it is signed in, a new password, the end of it."""

from flask import Blueprint, jsonify, session
from flask_login import current_user

from fieldtally.book.instant import show_instant
from fieldtally.store import sign_ins
from fieldtally.store.accounts import account_of, change_password, remove_account
from fieldtally.store.blobs import blobs
from fieldtally.store.models import Account
from fieldtally.web.access import signed_in
from fieldtally.web.auth import LONGEST_TEXT
from fieldtally.web.errors import problem
from fieldtally.web.json_body import small_json_body, text_in
from fieldtally.web.limits import few_wrong_passwords

bp = Blueprint("account", __name__, url_prefix="/api/account")


@bp.get("/sign-ins")
def where():
    """Every browser this account is signed in on."""
    account = signed_in()
    here = sign_ins.digest(current_user.token)
    return jsonify(sign_ins=[
        {
            "id": one.id, "label": one.label, "here": one.id == here,
            "signed_in_at": show_instant(one.signed_in_at_ms), "last_seen_at": show_instant(one.last_seen_at_ms),
        }
        for one in sign_ins.all_of(account.id)
    ])  # fmt: skip


@bp.delete("/sign-ins/<sign_in_id>")
def sign_out_there(sign_in_id: str):
    """Signs the account out on that browser. What it has not sent stays on it."""
    if not sign_ins.end_one(signed_in().id, sign_in_id):
        problem(404, "not_found", "You are not signed in there any more.")
    return "", 204


@bp.post("/password")
@few_wrong_passwords
def renew_password():
    """A new password; every other browser is signed out."""
    body = small_json_body()
    account = proven(body)
    change_password(account, body.get("new_password"), but_here=current_user.token)
    return "", 204


@bp.post("/end")
@few_wrong_passwords
def end():
    """Deletes the account and its own logbook with all that is in it, for everybody and for good."""
    account = proven(small_json_body())
    for logbook_id in remove_account(account):
        blobs().drop_logbook(logbook_id)
    session.clear()
    return "", 204


def proven(body: dict) -> Account:
    """The account that asks, once the password in `password` has shown that it is no borrowed phone."""
    account = signed_in()
    if account_of(account.sign_in_name, text_in(body, "password", LONGEST_TEXT)) is None:
        problem(401, "wrong_password", "This is not your password.", field="password", fix="Type it again.")
    return account
