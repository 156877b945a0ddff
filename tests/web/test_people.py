"""Inviting, leaving, one's own account: docs/security.md says who may."""

import pytest

from fieldtally.store.feed import UnknownLogbook, page
from support.asking import PASSWORD, Browser, error_of

NEW = {"sign_in_name": "robin", "display_name": "Robin", "password": "nine gates and a stile"}


@pytest.fixture
def code(people, wren):
    return wren.send("POST", f"/api/logbooks/{people.book}/invitations", {"role": "coach"}).get_json()["code"]


def roles(browser):
    return {book["title"]: book["role"] for book in browser.get("/api/session").get_json()["logbooks"]}


def test_whoever_has_the_code_sees_whose_logbook_it_opens(browser, people, code):
    offer = browser.get(f"/api/invitations/{code}").get_json()
    assert (offer["title"], offer["inviter"], offer["role"]) == ("Wren", "Wren", "coach")
    assert set(offer) == {"title", "inviter", "role", "expires_at"}


def test_a_new_person_joins_with_a_new_account(app, people, code):
    browser = Browser(app)
    answer = browser.send("POST", f"/api/invitations/{code}", NEW).get_json()
    assert answer["account"]["sign_in_name"] == "robin"
    assert [(book["title"], book["role"]) for book in answer["logbooks"]] == [("Wren", "coach")]
    assert browser.get(f"/api/logbooks/{people.book}/entries").status_code == 200


def test_somebody_with_an_account_joins_as_who_they_are(app, people, code):
    browser = Browser(app)
    browser.sign_in("maren")
    browser.send("POST", f"/api/invitations/{code}", {})
    assert roles(browser) == {"Maren": "rider", "Wren": "coach"}


def test_a_used_code_opens_nothing_and_leaves_no_account(app, people, code):
    Browser(app).send("POST", f"/api/invitations/{code}", NEW)
    answer = Browser(app).send("POST", f"/api/invitations/{code}", NEW | {"sign_in_name": "late"})
    assert (answer.status_code, error_of(answer)["code"]) == (404, "no_invitation")
    assert Browser(app).sign_in("late", NEW["password"]).status_code == 401


def test_a_bad_password_does_not_spend_the_code(app, people, code):
    answer = Browser(app).send("POST", f"/api/invitations/{code}", NEW | {"password": "short"})
    assert (answer.status_code, error_of(answer)["field"]) == (400, "password")
    assert Browser(app).send("POST", f"/api/invitations/{code}", NEW).status_code == 200


def test_the_rider_does_not_become_her_own_coach(people, wren, code):
    answer = wren.send("POST", f"/api/invitations/{code}", {})
    assert (answer.status_code, error_of(answer)["code"]) == (409, "own_logbook")
    assert roles(wren) == {"Wren": "rider"}


def test_a_withdrawn_invitation_is_gone(people, wren, code):
    listed = wren.get(f"/api/logbooks/{people.book}/invitations").get_json()["invitations"]
    assert len(listed) == 1 and "code" not in listed[0]
    address = f"/api/logbooks/{people.book}/invitations/{listed[0]['id']}"
    assert wren.send("DELETE", address).status_code == 204
    assert wren.get(f"/api/invitations/{code}").status_code == 404
    assert wren.send("DELETE", address).status_code == 404


def test_nobody_can_be_invited_as_a_second_rider(people, wren):
    answer = wren.send("POST", f"/api/logbooks/{people.book}/invitations", {"role": "rider"})
    assert (answer.status_code, error_of(answer)["field"]) == (400, "role")


def test_too_many_open_invitations_are_refused(people, wren):
    address = f"/api/logbooks/{people.book}/invitations"
    answers = [wren.send("POST", address, {"role": "reader"}) for _ in range(21)]
    assert [answer.status_code for answer in answers] == [200] * 20 + [409]
    assert error_of(answers[-1])["code"] == "too_many_invitations"


def test_guessing_codes_is_slowed_down(make_app, people_of):
    browser = Browser(people_of(make_app(sign_in_address_limit="3 per hour")))
    tried = [browser.get(f"/api/invitations/guess-{n}").status_code for n in range(5)]
    assert tried == [404, 404, 404, 429, 429]


def test_a_helper_put_out_sees_nothing_more(app, people, wren):
    coach = Browser(app)
    coach.sign_in("coach")
    members = wren.get(f"/api/logbooks/{people.book}/members").get_json()["members"]
    assert [one["role"] for one in members][0] == "rider" and len(members) == 4
    who = next(one["account_id"] for one in members if one["role"] == "coach")
    assert coach.get(f"/api/logbooks/{people.book}/entries").status_code == 200
    assert wren.send("DELETE", f"/api/logbooks/{people.book}/members/{who}").status_code == 204
    assert error_of(coach.get(f"/api/logbooks/{people.book}/entries"))["code"] == "not_yours"


def test_a_helper_may_leave_but_not_put_others_out(app, people):
    scribe = Browser(app)
    own_id = scribe.sign_in("scribe").get_json()["account"]["id"]
    answer = scribe.send("DELETE", f"/api/logbooks/{people.book}/members/{people.wren}")
    assert (answer.status_code, error_of(answer)["code"]) == (403, "not_the_rider")
    assert scribe.send("DELETE", f"/api/logbooks/{people.book}/members/{own_id}").status_code == 204
    assert roles(scribe) == {}


def test_the_rider_stays(people, wren):
    answer = wren.send("DELETE", f"/api/logbooks/{people.book}/members/{people.wren}")
    assert (answer.status_code, error_of(answer)["code"]) == (409, "rider_stays")


def test_sign_ins_are_listed_and_ended_one_by_one(app, people, wren):
    """ASVS 5.0, 7.5.2 (from memory): a person sees and ends their own sessions."""
    lost = Browser(app)
    lost.send("POST", "/api/session", {"sign_in_name": "wren", "password": PASSWORD, "device_label": "Lost phone"})
    listed = wren.get("/api/account/sign-ins").get_json()["sign_ins"]
    assert sorted((one["label"], one["here"]) for one in listed) == [("", True), ("Lost phone", False)]
    there = next(one["id"] for one in listed if not one["here"])
    stranger = Browser(app)
    stranger.sign_in("maren")
    assert stranger.send("DELETE", f"/api/account/sign-ins/{there}").status_code == 404
    assert lost.who() == "wren"
    assert wren.send("DELETE", f"/api/account/sign-ins/{there}").status_code == 204
    assert (lost.who(), wren.who()) == (None, "wren")


def test_a_new_password_signs_out_everywhere_else(app, people, wren):
    other = Browser(app)
    other.sign_in("wren")
    body = {"password": PASSWORD, "new_password": NEW["password"]}
    assert wren.send("POST", "/api/account/password", body).status_code == 204
    assert (other.who(), wren.who()) == (None, "wren")
    assert other.sign_in("wren").status_code == 401
    assert other.sign_in("wren", NEW["password"]).status_code == 200


def test_a_helper_opens_one_logbook_of_their_own(app, people):
    coach = Browser(app)
    coach.sign_in("coach")
    assert coach.send("POST", "/api/logbooks", {}).status_code == 200
    assert roles(coach) == {"Coach": "rider", "Wren": "coach"}
    answer = coach.send("POST", "/api/logbooks", {})
    assert (answer.status_code, error_of(answer)["code"]) == (409, "has_logbook")


@pytest.mark.parametrize("address", ["/api/account/password", "/api/account/end"])
def test_whoever_borrowed_the_phone_does_not_know_the_password(people, wren, address):
    answer = wren.send("POST", address, {"password": "something else", "new_password": NEW["password"]})
    assert (answer.status_code, error_of(answer)["code"]) == (401, "wrong_password")
    assert wren.who() == "wren"


def test_an_account_is_deleted_everywhere(app, people, wren):
    coach, elsewhere = Browser(app), Browser(app)
    coach.sign_in("coach")
    elsewhere.sign_in("wren")
    assert wren.send("POST", "/api/account/end", {"password": PASSWORD}).status_code == 204
    assert (wren.who(), elsewhere.who()) == (None, None)
    assert wren.sign_in("wren").status_code == 401
    assert roles(coach) == {}
    assert error_of(coach.get(f"/api/logbooks/{people.book}/entries"))["code"] == "not_yours"
    with app.app_context(), pytest.raises(UnknownLogbook):
        page(people.book, 0)


@pytest.mark.parametrize("method, path", [
    ("GET", "/api/account/sign-ins"), ("DELETE", "/api/account/sign-ins/x"),
    ("POST", "/api/account/password"), ("POST", "/api/account/end"), ("POST", "/api/logbooks"),
])  # fmt: skip
def test_nobody_asks_about_an_account_without_signing_in(people, browser, method, path):
    answer = browser.send(method, path, {"password": PASSWORD} if method == "POST" else None)
    assert (answer.status_code, error_of(answer)["code"]) == (401, "signed_out")
