"""How often something may be tried, and that nobody can lock somebody else out."""

from support.asking import Browser, error_of


def fail(browser, name="wren"):
    return browser.sign_in(name, "not her password").status_code


def test_guessing_at_one_name_from_one_address_is_stopped(make_app, people_of):
    app = people_of(make_app(sign_in_limit="3 per minute"))
    thief = Browser(app, REMOTE_ADDR="203.0.113.9")
    assert [fail(thief) for _ in range(4)] == [401, 401, 401, 429]
    refused = thief.sign_in("wren")
    assert (refused.status_code, error_of(refused)["code"]) == (429, "too_many")
    assert 1 <= int(refused.headers["Retry-After"]) <= 61


def test_the_one_whose_name_is_guessed_at_still_signs_in_elsewhere(make_app, people_of):
    app = people_of(make_app(sign_in_limit="3 per minute"))
    thief = Browser(app, REMOTE_ADDR="203.0.113.9")
    [fail(thief) for _ in range(5)]
    assert Browser(app, REMOTE_ADDR="198.51.100.4").sign_in("wren").status_code == 200


def test_spelling_the_name_otherwise_does_not_start_a_new_count(make_app, people_of):
    thief = Browser(people_of(make_app(sign_in_limit="3 per minute")))
    assert [fail(thief, name) for name in ("wren", "WREN", " wren ", "Ｗren")] == [401, 401, 401, 429]


def test_trying_many_names_from_one_address_is_stopped(make_app, people_of):
    thief = Browser(people_of(make_app(sign_in_address_limit="3 per minute")))
    assert [fail(thief, f"rider{n}") for n in range(4)] == [401, 401, 401, 429]


def test_one_ipv6_household_is_one_address(make_app, people_of):
    app = people_of(make_app(sign_in_address_limit="2 per minute"))
    found = [fail(Browser(app, REMOTE_ADDR=f"2001:db8:1:2::{n}"), f"rider{n}") for n in range(1, 4)]
    assert found == [401, 401, 429]
    assert fail(Browser(app, REMOTE_ADDR="2001:db8:1:3::1")) == 401


def test_signing_in_rightly_is_never_counted(make_app, people_of):
    browser = Browser(people_of(make_app(sign_in_limit="2 per minute", sign_in_address_limit="2 per minute")))
    assert {browser.sign_in("wren").status_code for _ in range(6)} == {200}


def test_a_forged_forwarding_header_does_not_start_a_new_count(make_app, people_of):
    thief = Browser(people_of(make_app(sign_in_limit="2 per minute")))
    body = {"sign_in_name": "wren", "password": "not her password"}
    found = [
        thief.send("POST", "/api/session", body, {"X-Fieldtally": "1", "X-Forwarded-For": f"10.0.0.{n}"}).status_code
        for n in range(3)
    ]
    assert found == [401, 401, 429]


def test_requests_are_counted_per_person_and_not_per_shared_address(make_app, people_of):
    app = people_of(make_app(request_limit="6 per minute"))
    wren, coach = Browser(app), Browser(app)
    wren.sign_in("wren"), coach.sign_in("coach")
    assert [wren.get("/api/health").status_code for _ in range(7)] == [200] * 6 + [429]
    assert coach.get("/api/health").status_code == 200
    assert {wren.get("/").status_code for _ in range(9)} <= {200, 503}  # the shell is no request of this kind
