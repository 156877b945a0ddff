"""Inviting somebody into a logbook. Whoever has the code may read whose logbook it opens and take it up, with
the account they have or with a new one: no account is made here without an invitation."""

from flask import Blueprint, jsonify
from flask_login import current_user
from marshmallow import RAISE, Schema, ValidationError

from fieldtally.book.fields import Choice
from fieldtally.book.instant import show_instant
from fieldtally.book.trouble import first_trouble
from fieldtally.store import invitations
from fieldtally.store.accounts import add_account
from fieldtally.store.db import writing
from fieldtally.store.models import Account, Invitation
from fieldtally.web.access import rider, signed_in
from fieldtally.web.auth import LONGEST_TEXT, begin, session_data
from fieldtally.web.errors import problem
from fieldtally.web.json_body import small_json_body, text_in
from fieldtally.web.limits import few_wrong_codes

bp = Blueprint("invitations", __name__, url_prefix="/api")

HELPERS = ("coach", "scribe", "reader")
MOST_OPEN = 20


class Question(Schema):
    class Meta:
        unknown = RAISE

    role = Choice(HELPERS, required=True)


@bp.get("/logbooks/<logbook_id>/invitations")
def every_open_one(logbook_id: str):
    """The invitations that can still be taken up; never their codes."""
    rider(logbook_id)
    return jsonify(invitations=[shown(one) for one in invitations.open_invitations(logbook_id)])


@bp.post("/logbooks/<logbook_id>/invitations")
def invite(logbook_id: str):
    """Makes an invitation. Its code is told this once."""
    who = rider(logbook_id)
    role = asked_role()
    if len(invitations.open_invitations(logbook_id)) >= MOST_OPEN:
        fix = "Withdraw one that is not needed any more."
        problem(409, "too_many_invitations", f"{MOST_OPEN} invitations are open already.", fix=fix)
    code, made = invitations.invite(logbook_id, who.account_id, role)
    return jsonify(shown(made) | {"code": code})


@bp.delete("/logbooks/<logbook_id>/invitations/<invitation_id>")
def withdraw(logbook_id: str, invitation_id: str):
    """Withdraws an invitation that nobody took up yet."""
    rider(logbook_id)
    if not invitations.withdraw(logbook_id, invitation_id):
        problem(404, "not_found", "This invitation is not open any more.")
    return "", 204


@bp.get("/invitations/<code>")
@few_wrong_codes
def offered(code: str):
    """What a code invites to."""
    offer = open_offer(code)
    return jsonify(
        title=offer.logbook.title, inviter=offer.inviter, role=offer.invitation.role,
        expires_at=show_instant(offer.invitation.expires_at_ms),
    )  # fmt: skip


@bp.post("/invitations/<code>")
@few_wrong_codes
def take_up(code: str):
    """Joins by the code: as whoever is signed in, else with a new account made of name and password."""
    offer = open_offer(code)
    body = small_json_body()
    if current_user.is_authenticated:
        account = signed_in()
        if invitations.is_rider_of(account.id, offer.logbook.id):
            problem(409, "own_logbook", "This is your own logbook.", fix="Hand the invitation to somebody else.")
        if not invitations.take_up(code, account):
            gone()
    else:
        account = new_member(code, body)
        begin(account, text_in(body, "device_label", LONGEST_TEXT, ""))
    return session_data()


def new_member(code: str, body: dict) -> Account:
    """A new account that has joined; none is left behind if somebody was quicker with the code."""
    with writing():
        account = add_account(body.get("sign_in_name"), body.get("display_name"), body.get("password"))
        if not invitations.take_up(code, account):
            gone()
    return account


def open_offer(code: str) -> invitations.Offer:
    return invitations.offer_of(code) or gone()


def gone() -> None:
    fix = "Ask the rider for a new one: each is good for one person and for seven days."
    problem(404, "no_invitation", "This invitation is used, withdrawn or out of date.", fix=fix)


def asked_role() -> str:
    try:
        return Question().load(small_json_body())["role"]
    except ValidationError as wrong:
        found = first_trouble(wrong.messages)
        problem(400, found.code, found.message, field=found.path, fix=found.fix)


def shown(one: Invitation) -> dict:
    return {"id": one.id, "role": one.role, "expires_at": show_instant(one.expires_at_ms)}
