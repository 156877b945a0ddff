"""How often something may be tried. Failed sign-ins are counted by address and name together, and by
address alone; never by name alone, or a stranger could lock somebody out by failing on purpose."""

import ipaddress
import time

from flask import Flask, Response, current_app, jsonify, request
from flask_limiter import Limiter, RateLimitExceeded
from flask_login import current_user

from fieldtally.settings import Settings
from fieldtally.store.names import sign_in_key
from fieldtally.trade.bad_input import BadInput
from fieldtally.web.errors import HTTP_PROBLEMS, error_body
from fieldtally.web.json_body import small_json_body

ONE_HOME_BITS = 64  # an IPv6 household has this prefix and every address below it


def address() -> str:
    """The true peer's address (the listener has believed or dropped proxy headers already)."""
    peer = request.remote_addr or "unknown"
    try:
        found = ipaddress.ip_address(peer)
    except ValueError:
        return peer
    return peer if found.version == 4 else str(ipaddress.ip_network((peer, ONE_HOME_BITS), strict=False))


def asker() -> str:
    return current_user.account.id if current_user.is_authenticated else address()


def address_and_name() -> str:
    try:
        name = sign_in_key(str(small_json_body().get("sign_in_name")))
    except BadInput:
        name = "no name"
    return f"{address()} {name}"


def failed(response: Response) -> bool:
    return response.status_code == 401


def setting(name: str):
    """The limit of that setting, read anew for each request so that every app has its own."""
    return lambda: getattr(current_app.config["SETTINGS"], name)


limiter = Limiter(
    asker,
    default_limits=[setting("request_limit")],
    default_limits_per_method=False,
    default_limits_exempt_when=lambda: not request.path.startswith("/api/"),
)
few_failures = limiter.limit(setting("sign_in_limit"), key_func=address_and_name, deduct_when=failed)
few_failures_in_all = limiter.limit(setting("sign_in_address_limit"), key_func=address, deduct_when=failed)
few_wrong_passwords = limiter.limit(setting("sign_in_limit"), key_func=asker, deduct_when=failed)
few_wrong_codes = limiter.limit(
    setting("sign_in_address_limit"), key_func=address, deduct_when=lambda response: response.status_code == 404
)


def answer_too_many(_: RateLimitExceeded) -> tuple[Response, int]:
    code, message, fix = HTTP_PROBLEMS[429]
    response = jsonify(error_body(code, message, fix=fix))
    response.headers["Retry-After"] = str(max(1, limiter.current_limit.reset_at - int(time.time())))
    return response, 429


def register(app: Flask, settings: Settings) -> None:
    app.config["RATELIMIT_STORAGE_URI"] = settings.limit_storage
    limiter.init_app(app)
    app.register_error_handler(RateLimitExceeded, answer_too_many)
