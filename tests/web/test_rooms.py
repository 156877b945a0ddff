"""Health, rulebooks and taking a logbook away; and who may: docs/security.md lists every cell."""

import json
import re
from pathlib import Path

import pytest

from fieldtally.book.kinds import KINDS
from fieldtally.book.words import ROLES
from fieldtally.store.feed import append
from fieldtally.store.sender import Sender
from fieldtally.trade.rulebook import shipped
from fieldtally.trade.rulebook_file import SHIPPED
from support.asking import Browser, error_of

SECURITY = (Path(__file__).parents[2] / "docs" / "security.md").read_text(encoding="utf-8")
DEVICE = "11111111-2222-4333-8444-555555555555"


def test_health(browser):
    answer = browser.get("/api/health").get_json()
    assert (answer["ok"], answer["name"], answer["database"], answer["protocol"]) == (True, "fieldtally", "sqlite", 1)


def test_rulebooks_are_listed_and_whole(browser):
    listed = {one["id"]: one for one in browser.get("/api/rulebooks").get_json()}
    assert listed.keys() == shipped().keys()
    for rulebook in shipped().values():
        levels = [{"id": level.id, "name": level.name} for level in rulebook.levels]
        assert listed[rulebook.id]["levels"] == levels
        assert listed[rulebook.id]["status"] == rulebook.status
        assert browser.get(f"/api/rulebooks/{rulebook.id}").get_json() == json.loads(json.dumps(rulebook.to_json()))


def test_a_rulebook_the_phone_has_is_not_sent_again(browser):
    etag = browser.get("/api/rulebooks").headers["ETag"]
    assert browser.get("/api/rulebooks", {"If-None-Match": etag}).status_code == 304


def test_a_rulebook_added_to_the_data_folder_is_known_at_once(tmp_path, browser, caplog):
    assert len(browser.get("/api/rulebooks").get_json()) == len(shipped())
    folder = tmp_path / "rulebooks"
    folder.mkdir()
    source = next(path for path in SHIPPED.glob("*.toml")).read_text(encoding="utf-8")
    own = re.sub(r'(?m)^id = ".*"$', 'id = "club-2026"', source, count=1)
    (folder / "club.toml").write_text(own, encoding="utf-8")
    (folder / "broken.toml").write_text("levels = 7", encoding="utf-8")
    ids = {one["id"] for one in browser.get("/api/rulebooks").get_json()}
    assert ids == {"club-2026", *shipped()}
    assert "broken.toml is passed over" in caplog.text
    assert browser.get("/api/rulebooks/club-2026").get_json()["id"] == "club-2026"


def test_an_unknown_rulebook(browser):
    assert error_of(browser.get("/api/rulebooks/moon-2099"))["code"] == "not_found"


def horse(n):
    return {
        "id": f"0190a0b0-0000-7000-8000-{n:012d}", "record_id": f"0190a0b0-0000-4000-8000-{n:012d}", "supersedes": [],
        "kind": "horse", "kind_version": 1, "body": {"name": f"Šárka {n}", "rulebook_id": "us-2025"},
        "recorded_at": "2026-05-03T09:12:33.120Z",
        "utc_offset_min": 60, "local_date": "2026-05-03", "clock": None,
    }  # fmt: skip


def fill(app, people, count):
    unknown = horse(count + 1) | {"kind": "from_a_newer_phone"}
    with app.app_context():
        sender = Sender(people.wren, "rider", DEVICE, 0, 1_750_000_000_000)
        for start in range(0, count, 500):
            append(people.book, sender, [horse(n) for n in range(start, min(start + 500, count))])
        append(people.book, sender, [unknown])
    return unknown


def test_an_export_is_complete_over_several_pages_and_keeps_what_is_held(app, people, browser):
    unknown = fill(app, people, 1201)
    browser.sign_in("reader")
    answer = browser.get(f"/api/logbooks/{people.book}/export")
    data = answer.get_json()
    assert data["fieldtally_export"] == 1
    assert [entry["number"] for entry in data["entries"]] == list(range(1, 1202))
    assert data["entries"][7]["body"]["name"] == "Šárka 7"
    assert data["entries"][7]["author_name"] == "Wren"
    assert data["held"] == [unknown]
    assert data["logbook"]["last_number"] == 1201
    assert {"display_name": "Coach", "role": "coach"} in data["logbook"]["members"]
    assert answer.headers["Content-Disposition"].startswith("attachment")
    assert answer.headers["Cache-Control"] == "no-store"


def test_an_empty_logbook_exports_too(people, browser):
    browser.sign_in("wren")
    data = browser.get(f"/api/logbooks/{people.book}/export").get_json()
    assert (data["entries"], data["held"]) == ([], [])


def test_no_password_leaves_with_an_export(app, people, browser):
    browser.sign_in("wren")
    text = browser.get(f"/api/logbooks/{people.book}/export").text
    assert "argon2" not in text and "receipt_key" not in text


# Who may ask what. Each line is a row of the table "Who may ask" in docs/security.md.
ASKERS = ("rider", "coach", "scribe", "reader", "stranger", "nobody")
REFUSALS = NOT_YOURS, SIGNED_OUT, NOT_HERS, NO_READER, NO_SHARER = (
    "not_yours", "signed_out", "not_the_rider", "not_allowed", "may_not_share"
)
YES = "yes"
SIGN_IN_AS = {"rider": "wren", "stranger": "maren"}
MATRIX = {
    "GET /api/session": (YES,) * 6,
    "GET /api/health": (YES,) * 6,
    "GET /api/rulebooks": (YES,) * 6,
    "GET /api/logbooks/{id}/entries": (YES, YES, YES, YES, NOT_YOURS, SIGNED_OUT),
    "POST /api/logbooks/{id}/entries": (YES, YES, YES, YES, NOT_YOURS, SIGNED_OUT),
    "GET /api/logbooks/{id}/standings": (YES, YES, YES, YES, NOT_YOURS, SIGNED_OUT),
    "GET /api/logbooks/{id}/horses/{horse_id}/standings": (YES, YES, YES, YES, NOT_YOURS, SIGNED_OUT),
    "POST /api/logbooks/{id}/horses/{horse_id}/levels/{level_id}/what-if": (YES, YES, YES, YES, NOT_YOURS, SIGNED_OUT),
    "GET /api/logbooks/{id}/horses/{horse_id}/levels/{level_id}/plans": (YES, YES, YES, YES, NOT_YOURS, SIGNED_OUT),
    "GET /api/logbooks/{id}/export": (YES, YES, YES, YES, NOT_YOURS, SIGNED_OUT),
    "GET /api/logbooks/{id}/media/{sha256}": (YES, YES, YES, YES, NOT_YOURS, SIGNED_OUT),
    "PATCH /api/logbooks/{id}/media/{sha256}": (YES, YES, YES, NO_READER, NOT_YOURS, SIGNED_OUT),
    "GET /api/logbooks/{id}/members": (YES, YES, YES, YES, NOT_YOURS, SIGNED_OUT),
    "DELETE /api/logbooks/{id}/members/{account_id}": (YES, NOT_HERS, NOT_HERS, NOT_HERS, NOT_YOURS, SIGNED_OUT),
    "GET /api/logbooks/{id}/invitations": (YES, NOT_HERS, NOT_HERS, NOT_HERS, NOT_YOURS, SIGNED_OUT),
    "POST /api/logbooks/{id}/invitations": (YES, NOT_HERS, NOT_HERS, NOT_HERS, NOT_YOURS, SIGNED_OUT),
    "DELETE /api/logbooks/{id}/invitations/{invitation_id}": (YES, NOT_HERS, NOT_HERS, NOT_HERS, NOT_YOURS, SIGNED_OUT),
    "GET /api/logbooks/{id}/field-shares": (YES, YES, NO_SHARER, NO_SHARER, NOT_YOURS, SIGNED_OUT),
    "POST /api/logbooks/{id}/field-shares": (YES, YES, NO_SHARER, NO_SHARER, NOT_YOURS, SIGNED_OUT),
    "DELETE /api/logbooks/{id}/field-shares/{share_id}": (YES, YES, NO_SHARER, NO_SHARER, NOT_YOURS, SIGNED_OUT),
    "POST /api/field-shares": (YES, YES, YES, YES, YES, SIGNED_OUT),
}
PUSH = {"protocol": 1, "app": "0.1.0", "device": DEVICE, "sent_at": "2026-05-03T09:12:33.120Z", "log_id": None}


@pytest.mark.parametrize("asker", ASKERS)
@pytest.mark.parametrize("what", MATRIX)
def test_who_may_ask(app, people, what, asker):
    fill(app, people, 1)
    browser = Browser(app)
    if asker != "nobody":
        browser.sign_in(SIGN_IN_AS.get(asker, asker))
    method, path = what.split(" ")
    body = PUSH | {"entries": []} if path.endswith("entries") else {}
    nobody = horse(99)["record_id"]
    filled = path.format(
        id=people.book, horse_id=horse(0)["record_id"], level_id="novice", account_id=nobody, invitation_id=nobody,
        sha256="5f" * 32, share_id=nobody,
    )
    answer = browser.send(method, filled, body if method == "POST" else None)
    assert said_to(answer) == MATRIX[what][ASKERS.index(asker)]


def said_to(answer):
    """How the person was refused; yes when only what they asked for was at fault."""
    if answer.status_code < 400:
        return YES
    code = error_of(answer)["code"]
    assert code in REFUSALS or answer.status_code in (400, 404), code
    return code if code in REFUSALS else YES


def test_every_room_about_a_logbook_is_in_the_matrix(app):
    rules = [rule for rule in app.url_map.iter_rules() if "logbook_id" in rule.arguments]
    found = {f"{method} {rule.rule}" for rule in rules for method in rule.methods - {"HEAD", "OPTIONS"}}
    as_documented = {re.sub(r"<(\w+)>", r"{\1}", one).replace("{logbook_id}", "{id}") for one in found}
    assert as_documented == {what for what in MATRIX if "{id}" in what}


def table_rows(heading):
    """The rows of the table under a heading of docs/security.md, as lists of cells."""
    text = SECURITY.split(f"## {heading}\n", 1)[1].split("\n## ", 1)[0]
    rows = [line.strip("|").split("|") for line in text.splitlines() if line.startswith("|")]
    return [[cell.strip().strip("`") for cell in row] for row in rows]


def test_the_documented_matrix_of_asking_is_the_tested_one():
    _, _, *rows = table_rows("Who may ask")
    assert {row[0]: row[1:] for row in rows} == {
        what: list(answers) for what, answers in MATRIX.items()
    }


def test_the_documented_matrix_of_writing_is_the_one_the_book_enforces():
    _, _, *rows = table_rows("Who may write")
    documented = {
        row[0]: tuple(role for role, cell in zip(ROLES, row[1:], strict=True) if cell == "yes") for row in rows
    }
    assert documented == {name: tuple(role for role in ROLES if role in kind.writers) for name, kind in KINDS.items()}


def test_every_error_code_of_the_web_is_documented():
    errors = (Path(__file__).parents[2] / "docs" / "errors.md").read_text(encoding="utf-8")
    web = Path(__file__).parents[2] / "server" / "fieldtally" / "web"
    found = set()
    for file in web.glob("*.py"):
        found |= set(re.findall(r'problem\(\s*\d+,\s*"(\w+)"', file.read_text(encoding="utf-8")))
    found |= set(re.findall(r'\d{3}: \("(\w+)"', (web / "errors.py").read_text(encoding="utf-8")))
    assert found and not [code for code in found if f"`{code}`" not in errors]
