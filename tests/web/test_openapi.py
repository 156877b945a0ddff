"""The API's description is complete, and what the server really answers is what it says."""

import pytest

from fieldtally.book.kinds import KINDS
from fieldtally.web.openapi_shapes import ANSWERS
from support.asking import PASSWORD, Browser
from support.bodies import FULL, LEAST
from support.cheap_passwords import cheap_passwords  # noqa: F401
from support.riders import new_id, wire


@pytest.fixture
def description(browser):
    response = browser.get("/api/openapi.json")
    assert response.status_code == 200
    return response.get_json()


def schemas(description: dict) -> dict:
    return description["components"]["schemas"]


def wrong(value, shape: dict, known: dict, path: str = "") -> list[str]:
    """Where the value is not of the shape: the part of JSON Schema that the description uses."""
    if "$ref" in shape:
        return wrong(value, known[shape["$ref"].rsplit("/", 1)[1]], known, path)
    if "anyOf" in shape:
        return [] if any(not wrong(value, each, known) for each in shape["anyOf"]) else [f"{path}: {value!r}"]
    found = [] if fits(value, shape) else [f"{path}: {value!r} is not {shape}"]
    if isinstance(value, dict):
        found += [f"{path}.{name} is missing" for name in shape.get("required", ()) if name not in value]
        parts = shape.get("properties", {})
        return found + [w for n, v in value.items() if n in parts for w in wrong(v, parts[n], known, f"{path}.{n}")]
    if isinstance(value, list) and "items" in shape:
        return found + [w for place, v in enumerate(value) for w in wrong(v, shape["items"], known, f"{path}.{place}")]
    return found


def fits(value, shape: dict) -> bool:
    types = shape.get("type", [])
    types = [types] if isinstance(types, str) else types
    python = {"string": str, "number": (int, float), "integer": int, "boolean": bool, "object": dict, "array": list,
              "null": type(None)}  # fmt: skip
    is_truth = isinstance(value, bool)
    typed = not types or any(isinstance(value, python[t]) and (t == "boolean") == is_truth for t in types)
    listed = value in shape.get("enum", [value]) and value == shape.get("const", value)
    low, high = shape.get("minimum"), shape.get("maximum")
    number = isinstance(value, (int, float)) and not is_truth
    return typed and listed and not (number and low is not None and value < low) and not (
        number and high is not None and value > high
    )


def test_every_room_is_described(app, description):
    rules = [rule for rule in app.url_map.iter_rules() if rule.rule.startswith("/api/")]
    described = {(path, method) for path, said in description["paths"].items() for method in said}
    assert described == {
        (rule.rule.replace("<", "{").replace(">", "}"), method.lower())
        for rule in rules
        for method in rule.methods - {"HEAD", "OPTIONS"}
    }
    assert {rule.endpoint for rule in rules} == set(ANSWERS)
    assert all(said["summary"] for path in description["paths"].values() for said in path.values())
    assert description["openapi"] == "3.1.0"


def test_every_reference_leads_somewhere(description):
    def references(value):
        if isinstance(value, dict):
            yield from [value["$ref"]] if "$ref" in value else []
            value = list(value.values())
        if isinstance(value, list):
            for inner in value:
                yield from references(inner)

    found = set(references(description))
    assert len(found) > 20
    assert {each.rsplit("/", 1)[1] for each in found} <= set(schemas(description))


@pytest.mark.parametrize("kind", KINDS)
def test_bodies_are_what_the_description_says(description, kind):
    shape = schemas(description)[KINDS[kind].schema.__name__]
    known = schemas(description)
    assert set(shape["properties"]) == set(FULL[kind])
    assert wrong(FULL[kind], shape, known) == [] and wrong(LEAST[kind], shape, known) == []
    assert wrong({}, shape, known) != []


def test_limits_reach_the_description(description):
    height = schemas(description)["Attempt"]["properties"]["height_cm"]
    assert height == {"type": ["number", "null"], "minimum": 1, "maximum": 250, "x-unit": "cm"} | height
    known = schemas(description)
    assert wrong(FULL["attempt"] | {"height_cm": -1}, known["Attempt"], known)
    assert wrong(FULL["attempt"] | {"outcome": "fine"}, known["Attempt"], known)


def test_what_the_server_answers_is_what_it_describes(app, people, description):
    wren, stranger = Browser(app), Browser(app)
    known = schemas(description)

    def check(response, name: str) -> None:
        assert wrong(response.get_json(), known[name], known) == [], name

    check(wren.get("/api/session"), "Session")
    check(wren.send("POST", "/api/session", {"sign_in_name": "wren", "password": PASSWORD}), "Session")
    horse = wire("horse", {"name": "Bramble", "rulebook_id": "us-2025"})
    push = {"protocol": 1, "device": new_id(), "sent_at": "2026-05-03T12:00:00.000Z", "log_id": None,
            "entries": [horse, wire("newer"), wire(local_date="1823-01-01")]}  # fmt: skip
    assert wrong(push | {"entries": [horse]}, known["Push"], known) == []
    book = f"/api/logbooks/{people.book}"
    check(wren.send("POST", f"{book}/entries", push), "Pushed")
    check(wren.get(f"{book}/entries"), "Page")
    check(wren.get(f"{book}/standings"), "Standings")
    check(wren.get(f"{book}/horses/{horse['record_id']}/standings"), "Standings")
    check(wren.get(f"{book}/export"), "WholeLogbook")
    check(wren.get("/api/rulebooks"), "Rulebooks")
    check(wren.get("/api/health"), "Health")
    check(stranger.get(f"{book}/entries"), "Error")
    check(wren.get("/api/nowhere"), "Error")
