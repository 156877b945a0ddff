"""What holds for every answer, and what no stranger's page can do."""

import re

import pytest

from support.asking import PASSWORD, Browser, error_of

SIGN_IN = {"sign_in_name": "wren", "password": PASSWORD}


@pytest.mark.parametrize("path", ["/", "/api/session", "/api/health", "/api/nowhere", "/outing/x"])
def test_every_answer_carries_the_headers(browser, path):
    headers = browser.get(path).headers
    policy = headers["Content-Security-Policy"]
    assert "default-src 'self'" in policy and "frame-ancestors 'none'" in policy
    assert "worker-src 'self'" in policy and "object-src 'none'" in policy
    assert "unsafe" not in policy and "http" not in policy and "*" not in policy
    assert headers["X-Content-Type-Options"] == "nosniff"
    assert headers["Referrer-Policy"] == "no-referrer"
    assert "geolocation=(self)" in headers["Permissions-Policy"]  # fences and traces; never for a frame of another site
    assert {"camera=(self)", "microphone=(self)", "usb=()"} <= set(headers["Permissions-Policy"].split(", "))
    assert headers["Cross-Origin-Opener-Policy"] == "same-origin"
    assert "Access-Control-Allow-Origin" not in headers


def test_answers_about_people_are_never_kept_by_a_cache(people, browser):
    browser.sign_in("wren")
    assert browser.get("/api/session").headers["Cache-Control"] == "no-store"


def test_cookie_flags_over_plain_http(people, browser):
    cookie = browser.sign_in("wren").headers["Set-Cookie"]
    assert cookie.startswith("fieldtally=")
    assert {"HttpOnly", "SameSite=Lax", "Path=/"} <= set(cookie.split("; "))
    assert "Secure" not in cookie and "Domain" not in cookie
    assert int(re.search(r"Expires=.*(\d{4})", cookie)[1])  # outlives the browser being closed


def test_cookie_flags_and_hsts_over_https(make_app):
    app = make_app(https=True)
    answer = Browser(app).send("POST", "/api/first-account", SIGN_IN)
    cookie = answer.headers["Set-Cookie"]
    assert cookie.startswith("__Host-fieldtally=")
    assert {"Secure", "HttpOnly", "SameSite=Lax", "Path=/"} <= set(cookie.split("; "))
    assert "Domain" not in cookie
    assert answer.headers["Strict-Transport-Security"] == "max-age=31536000; includeSubDomains"


def test_no_cookie_is_set_on_the_shell_or_for_a_stranger(browser):
    assert "Set-Cookie" not in browser.get("/").headers
    assert "Set-Cookie" not in browser.get("/api/session").headers


@pytest.mark.parametrize("method", ["POST", "PUT", "PATCH", "DELETE"])
@pytest.mark.parametrize("headers", [{}, {"X-Fieldtally": "0"}, {"Origin": "https://elsewhere.example"}])
def test_a_change_without_our_header_is_refused_before_anything_else(people, browser, method, headers):
    browser.sign_in("wren")
    refused = browser.send(method, "/api/session", SIGN_IN, headers)
    assert (refused.status_code, error_of(refused)["code"]) == (403, "missing_header")
    assert browser.who() == "wren"


def test_a_form_of_another_site_is_refused_even_with_the_header(people, browser):
    """Plain forms can send these types without asking the server first (Fetch standard, CORS-safelisted)."""
    for content_type in ("text/plain", "application/x-www-form-urlencoded", "multipart/form-data"):
        refused = browser.client.post(
            "/api/session", data=b'{"sign_in_name": "wren"}', content_type=content_type,
            headers={"X-Fieldtally": "1"},
        )  # fmt: skip
        assert (refused.status_code, error_of(refused)["code"]) == (415, "not_json")


def test_a_page_opened_days_ago_still_works(people, browser):
    """There is no token in the page that could grow old: the header is all a change needs."""
    assert browser.get("/").status_code in (200, 503)
    assert browser.sign_in("wren").status_code == 200


def test_no_answer_names_the_software_behind(browser):
    assert "Server" not in browser.get("/api/health").headers


def test_what_somebody_may_not_is_logged_without_what_they_typed(people, browser, caplog):
    browser.sign_in("not a name but my password", "another gate entirely")
    browser.sign_in("maren")
    browser.get(f"/api/logbooks/{people.book}/export\nforged line")
    browser.get(f"/api/logbooks/{people.book}/export")
    assert "POST '/api/session' from 127.0.0.1: wrong_password" in caplog.text
    assert f"GET '/api/logbooks/{people.book}/export' from 127.0.0.1: not_yours" in caplog.text
    assert "my password" not in caplog.text and "gate" not in caplog.text
