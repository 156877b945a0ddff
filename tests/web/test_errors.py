"""One JSON shape for everything that fails: {"error": {code, message, field, fix, details}}."""

import logging

import pytest
from sqlalchemy.exc import OperationalError

from support.asking import ASKED, Browser, error_of

KEYS = ["code", "message", "field", "fix", "details"]
HTML = {"Accept": "text/html,application/xhtml+xml"}


def assert_one_shape(response, status, code):
    assert response.status_code == status
    assert response.content_type == "application/json"
    body = response.get_json()
    assert list(body) == ["error"] and list(body["error"]) == KEYS
    assert body["error"]["code"] == code
    assert body["error"]["message"].endswith(".")
    assert isinstance(body["error"]["details"], list)
    assert "Location" not in response.headers


@pytest.mark.parametrize(
    "path", ["/api/nowhere", "/api/", "/api", "/api/session/", "/api//session", "/x.js", "/a/b.css"]
)
def test_404(browser, path):
    assert_one_shape(browser.get(path, HTML), 404, "not_found")


def test_405_says_what_is_allowed(browser):
    refused = browser.send("POST", "/api/health")
    assert_one_shape(refused, 405, "wrong_method")
    assert "GET" in refused.headers["Allow"]
    assert_one_shape(browser.send("POST", "/board"), 405, "wrong_method")


@pytest.mark.parametrize("raw", [b"", b"{", b"[]", b"null", b'"x"', b"\xff\xfe", b"[" * 200_000, b'{"a":' * 5000])
def test_400_for_what_is_no_json_object(browser, raw):
    refused = browser.client.post("/api/session", data=raw, content_type="application/json", headers=ASKED)
    if len(raw) <= 16 * 1024:
        assert_one_shape(refused, 400, "bad_json")
    else:
        assert_one_shape(refused, 413, "too_large")


def test_413_by_length_before_reading(make_app):
    browser = Browser(make_app(max_request_bytes=64 * 1024))
    assert_one_shape(browser.send("POST", "/api/session", {"x": "y" * 70_000}), 413, "too_large")
    assert_one_shape(browser.send("POST", "/api/session", {"x": "y" * 20_000}), 413, "too_large")


def test_415_for_a_compressed_body(browser):
    refused = browser.send("POST", "/api/session", {}, ASKED | {"Content-Encoding": "gzip"})
    assert_one_shape(refused, 415, "not_json")


def test_401_is_json_and_no_redirect_whatever_the_browser_asks_for(people, browser):
    for path in (f"/api/logbooks/{people.book}/export", "/api/logbooks/nowhere/export"):
        assert_one_shape(browser.get(path, HTML), 401, "signed_out")


def test_500_tells_the_user_a_number_and_the_log_the_trace(app, browser, caplog):
    app.add_url_rule("/api/mistake", view_func=lambda: 1 / 0)
    with caplog.at_level(logging.ERROR):
        refused = browser.get("/api/mistake", HTML)
    assert_one_shape(refused, 500, "server_mistake")
    incident = error_of(refused)["details"][0]["incident"]
    assert f"incident {incident}" in caplog.text and "ZeroDivisionError" in caplog.text
    assert "Zero" not in refused.text and "Traceback" not in refused.text


def test_503_while_the_database_does_not_answer(app, browser):
    def stuck():
        raise OperationalError("UPDATE logbook", {}, Exception("database is locked"))

    app.add_url_rule("/api/stuck", view_func=stuck)
    refused = browser.get("/api/stuck")
    assert_one_shape(refused, 503, "database_busy")
    assert "UPDATE" not in refused.text
