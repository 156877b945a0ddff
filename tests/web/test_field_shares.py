"""A field goes from one logbook to another by a code, and nothing of the people who ride there goes with it."""

import pytest

from support.asking import Browser, error_of
from support.bodies import FULL
from support.riders import new_id

FIELD, FENCE = new_id(), new_id()


def part(kind, record_id, body, version=1):
    return {"kind": kind, "kind_version": version, "record_id": record_id, "body": body}


@pytest.fixture
def shared():
    return {
        "fieldtally_field": 1, "made_at": "2026-05-03T09:12:33.120Z",
        "parts": [
            part("field", FIELD, {"name": "Thornybank", "notes": None}),
            part("fence", FENCE, FULL["fence"] | {"field_id": FIELD}, version=2),
            part("track", new_id(), FULL["track"] | {"field_id": FIELD}, version=2),
        ],
    }  # fmt: skip


@pytest.fixture
def maren(app, people):
    browser = Browser(app)
    browser.sign_in("maren")
    return browser


@pytest.fixture
def made(wren, people, shared):
    return wren.send("POST", f"/api/logbooks/{people.book}/field-shares", shared).get_json()


def test_another_account_gets_exactly_what_was_shared(maren, made, shared):
    assert maren.send("POST", "/api/field-shares", {"code": made["code"]}).get_json() == shared


def test_a_code_is_read_as_people_write_it(maren, made, shared):
    code = made["code"]
    assert len(code.replace("-", "")) == 12  # 60 bits in base 32
    for typed in (code.lower(), code.replace("-", " "), code.replace("0", "O").replace("1", "l"), f" {code} "):
        assert maren.send("POST", "/api/field-shares", {"code": typed}).status_code == 200


def test_it_opens_nothing_for_nobody_and_nothing_of_the_logbook(app, maren, people, made):
    assert Browser(app).send("POST", "/api/field-shares", {"code": made["code"]}).status_code == 401
    assert maren.get(f"/api/logbooks/{people.book}/entries").status_code == 403


def test_the_list_tells_what_is_open_and_never_a_code(wren, maren, people, made):
    maren.send("POST", "/api/field-shares", {"code": made["code"]})
    (one,) = wren.get(f"/api/logbooks/{people.book}/field-shares").get_json()["field_shares"]
    assert (one["name"], one["uses_left"]) == ("Thornybank", 19)
    assert set(one) == {"id", "name", "expires_at", "uses_left"}


def test_a_withdrawn_code_opens_nothing(wren, maren, people, made):
    address = f"/api/logbooks/{people.book}/field-shares/{made['id']}"
    assert wren.send("DELETE", address).status_code == 204
    answer = maren.send("POST", "/api/field-shares", {"code": made["code"]})
    assert (answer.status_code, error_of(answer)["code"], error_of(answer)["field"]) == (404, "no_share", "code")
    assert wren.send("DELETE", address).status_code == 404


@pytest.mark.parametrize("kind", ["horse", "outing", "attempt", "note", "photo"])
def test_no_record_of_who_rode_there_is_taken(wren, people, shared, kind):
    shared["parts"].append(part(kind, new_id(), FULL[kind]))
    answer = wren.send("POST", f"/api/logbooks/{people.book}/field-shares", shared)
    error = error_of(answer)
    assert (answer.status_code, error["code"], error["field"]) == (400, "unknown_word", "parts.3.kind")


@pytest.mark.parametrize(("change", "code", "field"), [
    (lambda shared: shared.update(fieldtally_field=2), "out_of_range", "fieldtally_field"),
    (lambda shared: shared.update(made_at="yesterday"), "bad_time", "made_at"),
    (lambda shared: shared.update(horse="Bramble"), "unknown_field", "horse"),
    (lambda shared: shared["parts"].pop(0), "not_one_field", "parts"),
    (lambda shared: shared["parts"][1]["body"].update(field_id=new_id()), "other_field", "parts"),
    (lambda shared: shared["parts"][1]["body"].update(height_cm=-80), "out_of_range", "parts.1.body.height_cm"),
    (lambda shared: shared["parts"][1]["body"].update(rider="Wren"), "unknown_field", "parts.1.body.rider"),
    (lambda shared: shared["parts"][1].update(kind_version=99), "unknown_version", "parts.1.kind_version"),
    (lambda shared: shared["parts"].extend([part("field", FIELD, {"name": "x"})] * 1000), "too_many", "parts"),
])  # fmt: skip
def test_what_is_no_field_is_refused_and_says_where(wren, people, shared, change, code, field):
    change(shared)
    answer = wren.send("POST", f"/api/logbooks/{people.book}/field-shares", shared)
    assert (answer.status_code, error_of(answer)["code"], error_of(answer)["field"]) == (400, code, field)
    assert error_of(answer)["fix"]


def test_a_field_larger_than_any_is_refused(wren, people, shared):
    shared["parts"] *= 4000
    answer = wren.send("POST", f"/api/logbooks/{people.book}/field-shares", shared)
    assert (answer.status_code, error_of(answer)["code"]) == (413, "too_large")


def test_twenty_are_open_at_once(wren, people, shared):
    address = f"/api/logbooks/{people.book}/field-shares"
    assert [wren.send("POST", address, shared).status_code for _ in range(20)] == [200] * 20
    assert error_of(wren.send("POST", address, shared))["code"] == "too_many_shares"


def test_guessing_codes_is_limited(make_app, people_of):
    maren = Browser(people_of(make_app(sign_in_address_limit="3 per hour")))
    maren.sign_in("maren")
    answers = [maren.send("POST", "/api/field-shares", {"code": f"AAAA-AAAA-AAA{n}"}).status_code for n in range(5)]
    assert answers == [404, 404, 404, 429, 429]
