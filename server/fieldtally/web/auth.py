"""Signing in and out, the very first account, and what a signed-in browser is told about itself."""

from flask import Blueprint, Flask, current_app, session
from flask_login import LoginManager, current_user, login_user

from fieldtally.settings import Settings
from fieldtally.store import sign_ins
from fieldtally.store.accounts import AccountsExist, account_of, add_first_account, any_account
from fieldtally.store.memberships import logbooks_of
from fieldtally.store.models import Account
from fieldtally.web.access import SignedIn
from fieldtally.web.errors import problem
from fieldtally.web.json_body import small_json_body, text_in
from fieldtally.web.limits import few_failures, few_failures_in_all
from fieldtally.web.version import PROTOCOL, VERSION

LONGEST_TEXT = 1000  # characters of a name or password that are looked at at all

bp = Blueprint("auth", __name__, url_prefix="/api")


@bp.get("/session")
def show():
    return session_data()


@bp.post("/session")
@few_failures
@few_failures_in_all
def sign_in():
    body = small_json_body()
    name, password = (text_in(body, field, LONGEST_TEXT) for field in ("sign_in_name", "password"))
    account = account_of(name, password)
    if account is None:
        fix = "Check both. A forgotten password is renewed by whoever runs this server."
        problem(401, "wrong_password", "Name and password do not belong together.", fix=fix)
    begin(account, text_in(body, "device_label", LONGEST_TEXT, ""))
    return session_data()


@bp.delete("/session")
def sign_out():
    if current_user.is_authenticated:
        sign_ins.end(current_user.token)
    session.clear()
    return "", 204


@bp.post("/first-account")
def first_account():
    if any_account():
        not_first()
    body = small_json_body()
    try:
        account = add_first_account(body.get("sign_in_name"), body.get("display_name"), body.get("password"))
    except AccountsExist:
        not_first()
    begin(account, text_in(body, "device_label", LONGEST_TEXT, ""))
    return session_data()


def not_first() -> None:
    fix = "Sign in, or ask whoever runs this server to add you."
    problem(403, "not_first", "This server has its first account already.", fix=fix)


def begin(account: Account, label: str) -> None:
    """Sign in on this browser. What an earlier cookie said is forgotten first."""
    if current_user.is_authenticated:
        sign_ins.end(current_user.token)
    session.clear()
    session.permanent = True
    sign_ins.forget_old(*lifetimes())
    login_user(SignedIn(account, sign_ins.begin(account, label)))


def lifetimes() -> tuple[int, int]:
    settings: Settings = current_app.config["SETTINGS"]
    return settings.session_days, settings.session_max_days


def session_data() -> dict:
    account = current_user.account if current_user.is_authenticated else None
    return {
        "account": account and {name: getattr(account, name) for name in ("id", "sign_in_name", "display_name")},
        "first_run": account is None and not any_account(),
        "version": VERSION,
        "protocol": PROTOCOL,
        "logbooks": account_logbooks(account) if account else [],
    }


def account_logbooks(account: Account) -> list[dict]:
    return [
        {
            "id": logbook.id,
            "title": logbook.title,
            "role": role,
            "log_id": logbook.log_id,
            "last_number": logbook.last_number,
        }
        for logbook, role in logbooks_of(account.id)
    ]


def load(token: str) -> SignedIn | None:
    """Who the cookie's secret signs in; None once that browser is signed out or its time is up."""
    found = sign_ins.find(token, *lifetimes())
    if found is None:
        return None
    account, sign_in_row = found
    sign_ins.seen(sign_in_row)
    return SignedIn(account, token)


def register(app: Flask) -> None:
    manager = LoginManager()
    manager.session_protection = None  # phones change address and browser version all the time
    manager.user_loader(load)
    app.login_manager = manager  # not init_app: it reads the cookie at every file of the shell, for a feature unused
    app.register_blueprint(bp)
