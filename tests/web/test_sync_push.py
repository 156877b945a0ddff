"""Push as a phone sees it, over HTTP: good entries, bad entries, and bodies that are none."""

import json
import tracemalloc

import pytest

from support.asking import ASKED, Browser, error_of
from support.cheap_passwords import cheap_passwords  # noqa: F401
from support.riders import edit, new_id, wire

DEVICE = new_id()
MEBIBYTE = 1024 * 1024


def body_of(*entries, **changes) -> dict:
    return {
        "protocol": 1, "app": "0.1.0", "device": DEVICE, "sent_at": "2026-05-03T12:00:00.000Z",
        "log_id": None, "entries": list(entries),
    } | changes  # fmt: skip


@pytest.fixture
def push(wren, book):
    """Pushes entries as Wren; hands back the answers."""

    def push(*entries, **changes):
        response = wren.send("POST", f"{book}/entries", body_of(*entries, **changes))
        assert response.status_code == 200, response.get_json()
        return response.get_json()["answers"]

    return push


@pytest.fixture
def send_raw(wren, book):
    def send_raw(raw: bytes, content_type: str = "application/json", **how):
        return wren.client.post(
            f"{book}/entries", data=raw, content_type=content_type, headers=ASKED, **how
        )

    return send_raw


def raw_push(entries: str) -> bytes:
    return json.dumps(body_of()).replace('"entries": []', f'"entries": [{entries}]').encode("utf-8", "surrogatepass")


def attempt(**changes) -> dict:
    return wire("attempt", {"outing_id": new_id(), "fence_id": new_id(), "outcome": "clear"} | changes)


def canter(**changes) -> dict:
    return wire("timed_canter", {"outing_id": new_id(), "distance_m": 400, "measured_by": "wheel",
                                 "elapsed_ms": 58_000} | changes)  # fmt: skip


def test_a_push_answers_every_entry(wren, book):
    sent = [wire("horse", {"name": "Bramble"}), attempt(), canter()]
    answer = wren.send("POST", f"{book}/entries", body_of(*sent)).get_json()
    assert set(answer) == {"log_id", "last_number", "answers", "server_time"}
    assert answer["last_number"] == 3
    assert answer["answers"] == [
        {"id": entry["id"], "result": "accepted", "number": number} for number, entry in enumerate(sent, 1)
    ]


BAD = {
    "negative height": (lambda: attempt(height_cm=-80), "out_of_range", "body.height_cm"),
    "zero time": (lambda: canter(elapsed_ms=0), "out_of_range", "body.elapsed_ms"),
    "10 MB note": (lambda: attempt(note="x" * 10_000_000), "entry_too_large", "body.note"),
    "long note": (lambda: attempt(note="x" * 2001), "too_long", "body.note"),
    "a date in 1823": (lambda: wire(recorded_at="1823-05-03T09:12:33.120Z"), "out_of_range", "recorded_at"),
    "a day in 1823": (lambda: wire(local_date="1823-05-03"), "out_of_range", "local_date"),
    "no such day": (lambda: wire(local_date="2026-02-30"), "bad_date", "local_date"),
    "naive time": (lambda: wire(recorded_at="2026-05-03T09:12:33.120"), "bad_time", "recorded_at"),
    "offset without colon": (lambda: wire(recorded_at="2026-05-03T09:12:33+0200"), "bad_time", "recorded_at"),
    "no id": (lambda: wire(id=None), "missing", "id"),
    "shouted id": (lambda: wire(id=new_id().upper()), "bad_id", "id"),
    "unknown outcome": (lambda: attempt(outcome="fine"), "unknown_word", "body.outcome"),
    "unknown field": (lambda: attempt(colour="red"), "unknown_field", "body.colour"),
    "missing field": (lambda: wire("note", {"text": "no subject"}), "missing", "body.about_id"),
    "body a list": (lambda: wire(body=[]), "not_a_body", "body"),
    "not an object": (lambda: 5, "not_an_entry", None),
    "coach's kind": (lambda: wire("remark", {"about_id": new_id(), "text": "x"}), "not_allowed", "kind"),
    "51 superseded": (lambda: wire(supersedes=[new_id() for _ in range(51)]), "too_many", "supersedes"),
    "offset of a day": (lambda: wire(utc_offset_min=1440), "out_of_range", "utc_offset_min"),
    "deep body": (lambda: wire(body=json.loads("[" * 40 + "]" * 40)), "too_deep", None),
}


@pytest.mark.parametrize("bad", BAD)
def test_a_bad_entry_is_refused_by_itself(push, bad):
    """With a code, the field and the fix; its neighbours are stored, and so is its corrected version."""
    make, code, field = BAD[bad]
    before, refused, after = push(wire(), make(), wire())
    assert (before["result"], refused["result"], after["result"]) == ("accepted", "refused", "accepted")
    assert (refused["code"], refused.get("field")) == (code, field)
    assert refused["message"] and refused["fix"]
    assert (before["number"], after["number"]) == (1, 2)


# What Python's json would never write, spelled out.
RAW_BAD = {
    "NaN": ("NaN", "not_a_number", "body.height_cm"),
    "Infinity": ("-Infinity", "not_a_number", "body.height_cm"),
    "too big to hold": ("1e999", "not_a_number", "body.height_cm"),
    "6000 digits": ("9" * 6000, "not_a_number", "body.height_cm"),
    "lone surrogate": ('"\\ud83d"', "bad_text", "body.height_cm"),
    "raw surrogate": ('"\ud83d"', "bad_text", "body.height_cm"),
    "not JSON": ("zwölf", "not_json", None),
}


@pytest.mark.parametrize("bad", RAW_BAD)
def test_what_is_not_json_is_refused_by_itself(send_raw, bad):
    value, code, field = RAW_BAD[bad]
    broken = json.dumps(attempt(height_cm=1)).replace('"height_cm": 1', f'"height_cm": {value}')
    response = send_raw(raw_push(f"{json.dumps(wire())}, {broken}, {json.dumps(wire())}"))
    first, refused, last = response.get_json()["answers"]
    assert (first["result"], refused["result"], last["result"]) == ("accepted", "refused", "accepted")
    assert (refused["code"], refused.get("field")) == (code, field)


def test_a_lone_surrogate_in_a_note(send_raw):
    broken = json.dumps(attempt(note="PLACE")).replace("PLACE", "half a horse: \\ud83d")
    (refused,) = send_raw(raw_push(broken)).get_json()["answers"]
    assert (refused["code"], refused["field"]) == ("bad_text", "body.note")


def test_another_logbook_s_id_refuses_the_whole_push(wren, book, people):
    response = wren.send(
        "POST", f"{book}/entries", body_of(wire(), wire() | {"logbook_id": people.other}, wire())
    )
    assert response.status_code == 403 and error_of(response)["code"] == "wrong_logbook"
    assert wren.get(f"{book}/entries").get_json()["last_number"] == 0


def test_what_one_person_recorded_is_never_taken_as_somebody_else_s(app, people, book, wren):
    """Two people of one logbook share a browser: the phone holds Wren's entries, the cookie is the coach's."""
    shared = Browser(app)
    shared.sign_in("coach")
    response = shared.send("POST", f"{book}/entries", body_of(wire(), account=people.wren))
    assert (response.status_code, error_of(response)["code"]) == (401, "other_account")
    assert wren.get(f"{book}/entries").get_json()["last_number"] == 0
    assert wren.send("POST", f"{book}/entries", body_of(wire(), account=people.wren)).status_code == 200


def test_naming_the_right_logbook_is_fine(push, people):
    assert push(wire() | {"logbook_id": people.book})[0]["result"] == "accepted"


def test_an_unknown_kind_is_held(push):
    first, held, last = push(wire(), wire("saddle_fit", {"anything": ["at", "all"]}), wire())
    assert (held["result"], held["code"]) == ("held", "unknown_kind")
    assert (first["number"], last["number"]) == (1, 2)


def test_a_repeated_push_is_answered_already(push):
    sent = [wire(), attempt()]
    push(*sent)
    assert [(a["result"], a["number"]) for a in push(*sent)] == [("already", 1), ("already", 2)]


def test_the_author_is_the_account_whatever_the_phone_says(push, wren, book, people):
    push(wire() | {"author": people.maren, "author_name": "Maren"})
    (entry,) = wren.get(f"{book}/entries").get_json()["entries"]
    assert (entry["author"], entry["author_name"]) == (people.wren, "Wren")


def test_a_stranger_may_not_push_nor_pull(app, people, book):
    maren = Browser(app)
    maren.sign_in("maren")
    for response in (
        maren.send("POST", f"{book}/entries", body_of(wire())),
        maren.get(f"{book}/entries"),
        maren.send("POST", f"/api/logbooks/{new_id()}/entries", body_of(wire())),
    ):
        assert response.status_code == 403 and error_of(response)["code"] == "not_yours"


def test_signed_out_and_without_the_header(app, wren, people, book):
    response = Browser(app).send("POST", f"{book}/entries", body_of(wire()))
    assert response.status_code == 401 and error_of(response)["code"] == "signed_out"
    response = wren.send("POST", f"{book}/entries", body_of(wire()), headers={})
    assert response.status_code == 403 and error_of(response)["code"] == "missing_header"


def test_each_role_writes_its_kinds(app, people, book):
    remark = wire("remark", {"about_id": new_id(), "text": "Softer"})
    expected = {"coach": ["accepted", "accepted"], "scribe": ["accepted", "refused"], "reader": ["refused"] * 2}
    for role, results in expected.items():
        browser = Browser(app)
        browser.sign_in(role)
        response = browser.send("POST", f"{book}/entries", body_of(wire(), remark | {"id": new_id()}))
        assert [answer["result"] for answer in response.get_json()["answers"]] == results, role


def test_a_changed_log_id_stores_nothing_and_names_the_new_one(wren, book):
    log_id = wren.get(f"{book}/entries").get_json()["log_id"]
    response = wren.send("POST", f"{book}/entries", body_of(wire(), log_id=new_id()))
    assert response.status_code == 409 and error_of(response)["code"] == "log_changed"
    assert error_of(response)["details"] == [{"log_id": log_id}]
    assert wren.get(f"{book}/entries").get_json()["last_number"] == 0


@pytest.mark.parametrize(
    ("changes", "code", "field"),
    [
        ({"protocol": None}, "missing", "protocol"),
        ({"protocol": 2}, "newer_protocol", "protocol"),
        ({"protocol": "1"}, "not_a_number", "protocol"),
        ({"device": "my phone"}, "bad_id", "device"),
        ({"log_id": 5}, "bad_id", "log_id"),
        ({"app": ["x"]}, "not_text", "app"),
    ],
)
def test_a_head_that_makes_no_sense(wren, book, changes, code, field):
    response = wren.send("POST", f"{book}/entries", body_of(wire(), **changes))
    assert response.status_code == 400
    assert (error_of(response)["code"], error_of(response)["field"]) == (code, field)


@pytest.mark.parametrize("sent_at", [None, 5, "", "yesterday", "1970-01-01T00:00:00.000Z"])
def test_a_phone_with_a_mad_clock_still_gets_through(push, sent_at):
    """Its clock only serves to show how far off it is."""
    assert push(wire(), sent_at=sent_at)[0]["result"] == "accepted"


def test_a_newer_phone_s_extra_words_in_the_head_are_passed_over(push):
    assert push(wire(), battery=0.4)[0]["result"] == "accepted"


@pytest.mark.parametrize(
    ("raw", "status", "code"),
    [
        (b"", 400, "bad_json"),
        (b"[]", 400, "bad_json"),
        (b"null", 400, "bad_json"),
        (b'{"protocol": 1}', 400, "bad_json"),
        (b'{"protocol": 1, "entries": {}}', 400, "bad_json"),
        (b'{"protocol": 1, "entries": [', 400, "bad_json"),
        (b'{"protocol": 1, "entries": []', 400, "bad_json"),
        (b'{"protocol": 1, "entries": []}}', 400, "bad_json"),
        (b'\xff\xfe{\x00}\x00', 400, "bad_json"),
        (b"[" * 200_000, 400, "too_deep"),
        (b'{"entries": [' + b"[" * 200_000, 400, "too_deep"),
        (b'{"a":' * 200_000, 400, "too_deep"),
    ],
)
def test_a_body_that_cannot_be_read(send_raw, raw, status, code):
    response = send_raw(raw)
    assert (response.status_code, error_of(response)["code"]) == (status, code)


def test_other_content_types_are_not_read(send_raw):
    response = send_raw(raw_push(""), content_type="text/plain")
    assert (response.status_code, error_of(response)["code"]) == (415, "not_json")


def test_501_entries_are_too_many(wren, book, push):
    response = wren.send("POST", f"{book}/entries", body_of(*[wire() for _ in range(501)]))
    assert (response.status_code, error_of(response)["code"]) == (413, "too_many_entries")
    assert len(push(*[wire() for _ in range(500)])) == 500


# 16 MiB of the most expensive things a stranger can think of (BE-05 of the public fault list).
HEAVY = {
    "a million tiny entries": b"{}," * 1_000_000 + b"{}",
    "one entry of a million lists": b"[" + b"[]," * 1_000_000 + b"0]",
    "one entry of eight million numbers": b"[" + b"1," * 8_000_000 + b"1]",
    "one endless string": b'"' + b"x" * (15 * MEBIBYTE) + b'"',
    "one string without an end": b'"' + b"\\\\" * (7 * MEBIBYTE),
}


@pytest.mark.parametrize("heavy", HEAVY)
def test_heavy_bodies_cost_little(send_raw, heavy):
    """With less than 50 MB beside the body itself; a limit on brackets and commas keeps the time short."""
    raw = b'{"protocol": 1, "device": "' + DEVICE.encode() + b'", "entries": [' + HEAVY[heavy] + b"]}"
    assert len(raw) < 16 * MEBIBYTE + 1024
    response = send_raw(raw)
    refused_entry = response.status_code == 200 and response.get_json()["answers"][0]["result"] == "refused"
    assert refused_entry or response.status_code in (400, 413)
    tracemalloc.start()
    send_raw(raw)
    peak = tracemalloc.get_traced_memory()[1]
    tracemalloc.stop()
    assert peak - 2 * len(raw) < 50 * MEBIBYTE  # the test client and the server each hold the body once


def test_above_16_mebibytes_nothing_is_read(send_raw):
    response = send_raw(b" " * (16 * MEBIBYTE + 1))
    assert (response.status_code, error_of(response)["code"]) == (413, "too_large")


def test_edits_and_taking_back(push, wren, book):
    first = wire()
    assert [a["result"] for a in push(first, edit(first, {"name": "Hill"}), edit(first, None))] == ["accepted"] * 3
    bodies = [entry["body"] for entry in wren.get(f"{book}/entries").get_json()["entries"]]
    assert bodies == [{"name": "Home", "notes": None}, {"name": "Hill"}, None]
