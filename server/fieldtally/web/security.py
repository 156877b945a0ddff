"""What holds for every request and every answer: cookies, headers, and who may send changes at all.

A change needs the header `X-Fieldtally: 1`. Another site's page cannot send it without asking first, and
this server never says yes to such a question. It needs no token, so a page opened days ago still works.
"""

from datetime import timedelta

from flask import Flask, Response, current_app, request

from fieldtally.settings import Settings
from fieldtally.web.errors import problem
from fieldtally.web.secret import secret_key

CHANGES = ("POST", "PUT", "PATCH", "DELETE")
CONTENT_POLICY = "; ".join(
    (
        "default-src 'self'",
        "script-src 'self'",
        "style-src 'self'",
        "img-src 'self' data: blob:",
        "media-src 'self' blob:",
        "connect-src 'self'",
        "worker-src 'self'",
        "manifest-src 'self'",
        "object-src 'none'",
        "base-uri 'none'",
        "form-action 'self'",
        "frame-ancestors 'none'",
    )
)
ASKED_FOR = ("camera", "geolocation", "microphone")  # photos, fences and traces, voice notes; never for a frame
NOT_ALLOWED = ("accelerometer", "gyroscope", "payment", "usb")
HEADERS = {
    "Content-Security-Policy": CONTENT_POLICY,
    "X-Content-Type-Options": "nosniff",
    "X-Frame-Options": "DENY",
    "Referrer-Policy": "no-referrer",
    "Cross-Origin-Opener-Policy": "same-origin",
    "Cross-Origin-Resource-Policy": "same-origin",
    "Permissions-Policy": ", ".join(
        [*(f"{feature}=(self)" for feature in ASKED_FOR), *(f"{feature}=()" for feature in NOT_ALLOWED)]
    ),
}
ONE_YEAR_S = 31_536_000


def configure(app: Flask, settings: Settings) -> None:
    """Cookies and limits of `app`. `__Host-` ties the cookie to this host alone; it works over HTTPS only."""
    app.config.update(
        SETTINGS=settings,
        SECRET_KEY=secret_key(settings),
        SESSION_COOKIE_NAME="__Host-fieldtally" if settings.https else "fieldtally",
        SESSION_COOKIE_SECURE=settings.https,
        SESSION_COOKIE_HTTPONLY=True,
        SESSION_COOKIE_SAMESITE="Lax",
        SESSION_REFRESH_EACH_REQUEST=False,
        PERMANENT_SESSION_LIFETIME=timedelta(days=settings.session_max_days),
        MAX_CONTENT_LENGTH=settings.max_request_bytes,
    )
    app.url_map.merge_slashes = False  # merging would answer with a redirect
    app.json.sort_keys = False
    app.before_request(refuse_strangers)
    app.before_request(refuse_bulk)
    app.after_request(add_headers)


def refuse_strangers() -> None:
    """403 `missing_header` for a change that may come from another site's page."""
    if request.method in CHANGES and request.headers.get("X-Fieldtally") != "1":
        problem(403, "missing_header", "This change does not come from Fieldtally.", fix="Send X-Fieldtally: 1.")


def refuse_bulk() -> None:
    """413 before anything is read; 415 for a compressed body, whose true size nobody knows."""
    largest = current_app.config["MAX_CONTENT_LENGTH"]
    if (request.content_length or 0) > largest:
        fix = f"Send at most {largest} bytes at once."
        problem(413, "too_large", "This is more than the server takes at once.", fix=fix)
    if request.headers.get("Content-Encoding", "identity") != "identity":
        problem(415, "not_json", "Compressed requests are not read here.", fix="Send it uncompressed.")


def add_headers(response: Response) -> Response:
    for name, value in HEADERS.items():
        response.headers.setdefault(name, value)
    if request.path.startswith("/api/"):
        response.headers.setdefault("Cache-Control", "no-store")
    if current_app.config["SETTINGS"].https:
        response.headers["Strict-Transport-Security"] = f"max-age={ONE_YEAR_S}; includeSubDomains"
    return response
