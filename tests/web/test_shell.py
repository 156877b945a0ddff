"""The built client as it is handed out: one page for every address, packed files, no redirect ever."""

import gzip

import pytest

from fieldtally.web import shell
from support.asking import error_of

PAGE = b"<!doctype html><title>Fieldtally</title>"
SCRIPT = b"console.log('a tap')" * 50


@pytest.fixture
def built(tmp_path, monkeypatch):
    """A stand-in for what the client's build leaves behind; the real one is served in tests/browser."""
    folder = tmp_path / "static"
    folder.mkdir()
    files = {"index.html": PAGE, "start-1A2B3C4D.js": SCRIPT, "sw.js": b"//", "manifest.webmanifest": b"{}"}
    for name, content in files.items():
        (folder / name).write_bytes(content)
    (folder / "start-1A2B3C4D.js.gz").write_bytes(gzip.compress(SCRIPT))
    (folder / "start-1A2B3C4D.js.br").write_bytes(b"as brotli")
    (tmp_path / "secret.txt").write_text("not for anybody")
    monkeypatch.setattr(shell, "STATIC", folder)


@pytest.mark.parametrize("path", ["/", "/board", "/outing/1/fence/2", "/board/", "/a//b/", "/apiary"])
def test_every_address_of_the_app_is_the_page_itself_without_redirect(built, browser, path):
    answer = browser.get(path)
    assert (answer.status_code, answer.data) == (200, PAGE)
    assert answer.headers["Cache-Control"] == "no-cache"
    assert answer.content_type == "text/html; charset=utf-8"


@pytest.mark.parametrize(
    ("path", "kind", "cache"),
    [
        ("/sw.js", "text/javascript; charset=utf-8", "no-cache"),
        ("/manifest.webmanifest", "application/manifest+json", "no-cache"),
        ("/start-1A2B3C4D.js", "text/javascript; charset=utf-8", "public, max-age=31536000, immutable"),
    ],
)
def test_files_have_their_type_and_only_hashed_ones_are_kept_for_ever(built, browser, path, kind, cache):
    answer = browser.get(path)
    assert (answer.status_code, answer.content_type, answer.headers["Cache-Control"]) == (200, kind, cache)


@pytest.mark.parametrize(
    ("accepted", "encoding", "content"),
    [
        ("gzip, deflate, br", "br", b"as brotli"),
        ("gzip", "gzip", None),
        ("br;q=0, gzip", "gzip", None),
        ("identity", None, SCRIPT),
        ("", None, SCRIPT),
    ],
)
def test_the_smallest_form_the_browser_takes_is_sent(built, browser, accepted, encoding, content):
    answer = browser.get("/start-1A2B3C4D.js", {"Accept-Encoding": accepted})
    assert answer.headers.get("Content-Encoding") == encoding
    assert answer.headers["Vary"] == "Accept-Encoding"
    if encoding == "gzip":
        assert gzip.decompress(answer.data) == SCRIPT
    elif content:
        assert answer.data == content


def test_what_a_browser_has_is_not_sent_again(built, browser):
    etag = browser.get("/sw.js").headers["ETag"]
    assert browser.get("/sw.js", {"If-None-Match": etag}).status_code == 304


def test_the_packed_forms_have_their_own_etags(built, browser):
    etags = {
        browser.get("/start-1A2B3C4D.js", {"Accept-Encoding": one}).headers["ETag"]
        for one in ("br", "gzip", "identity")
    }
    assert len(etags) == 3


@pytest.mark.parametrize(
    "path",
    [
        "/nowhere.js", "/../secret.txt", "/%2e%2e/secret.txt", "/..%2fsecret.txt", "/a%00b.js", "/.env",
        "/start-1A2B3C4D.js.br", "/index.html.bak", "/static.css/", "/\\secret.txt",
    ],
)  # fmt: skip
def test_nothing_but_the_built_files_is_handed_out(built, browser, path):
    answer = browser.get(path)
    if answer.status_code != 200:
        assert (answer.status_code, error_of(answer)["code"]) == (404, "not_found")
    else:
        assert answer.data == PAGE


def test_head_answers_like_get_without_the_content(built, browser):
    answer = browser.client.head("/board")
    assert (answer.status_code, answer.data) == (200, b"")


def test_without_a_built_client_the_page_says_what_to_run(browser, monkeypatch, tmp_path):
    monkeypatch.setattr(shell, "STATIC", tmp_path / "nothing")
    answer = browser.get("/")
    assert answer.status_code == 503
    assert "pip install ." in answer.text and "fieldtally doctor" in answer.text
    assert browser.get("/api/health").status_code == 200
