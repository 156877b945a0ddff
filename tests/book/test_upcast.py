"""Old bodies are read as today's, with every default filled, and are never changed themselves."""

import copy
import json
from pathlib import Path

import pytest

from fieldtally.book import upcast
from fieldtally.book.kinds import KINDS, Kind
from support.bodies import FULL, LEAST


@pytest.mark.parametrize("kind", KINDS)
def test_filling_in_gives_what_marshmallow_would_load(kind):
    """Reading fills in defaults without checking again; it must come to the same."""
    for body in (FULL[kind], LEAST[kind]):
        before = copy.deepcopy(body)
        assert upcast.current(kind, 1, body) == KINDS[kind].schema().load(body)
        assert body == before


def test_defaults_are_not_shared_between_bodies():
    one, other = (upcast.current("fence", 1, LEAST["fence"]) for _ in range(2))
    one["asks"].append("ditch")
    assert other["asks"] == []


def test_what_thousands_of_attempts_say_alike_is_in_memory_once():
    """Each attempt read from its own text: keys, ids, words and presentations are the very same objects."""
    bodies = [upcast.current("attempt", 1, json.loads(json.dumps(FULL["attempt"]))) for _ in range(2)]
    one, other = bodies
    assert one == other and one is not other
    assert one["presentation"] is other["presentation"]
    assert all(a is b for a, b in zip(one, other, strict=True))
    assert all(one[key] is other[key] for key in ("outing_id", "fence_id", "outcome", "attitude"))
    given = LEAST["attempt"] | {"presentation": {"rein": "left"}}
    least = upcast.current("attempt", 1, given)["presentation"]
    assert least is not one["presentation"] and given["presentation"] == {"rein": "left"}
    assert upcast.current("attempt", 1, LEAST["attempt"])["presentation"]["rein"] is None


def test_a_body_without_what_is_demanded_stays_without():
    assert "outcome" not in upcast.current("attempt", 1, {"fence_id": LEAST["attempt"]["fence_id"]})


def test_inner_bodies_are_filled_too():
    fence = LEAST["fence"] | {"elements": [{"letter": "A", "profile": "log"}]}
    (element,) = upcast.current("fence", 1, fence)["elements"]
    assert element["asks"] == [] and element["height_cm"] is None


def test_steps_lead_from_any_version_to_today(monkeypatch):
    monkeypatch.setitem(KINDS, "field", Kind("field", KINDS["field"].schema, False, ("rider",), version=3))
    monkeypatch.setitem(upcast.STEPS, ("field", 1), lambda body: {"name": body["title"]})
    monkeypatch.setitem(upcast.STEPS, ("field", 2), lambda body: {"name": body["name"].strip()})
    assert upcast.current("field", 1, {"title": " Home "}) == {"name": "Home", "notes": None}
    assert upcast.current("field", 2, {"name": " Home "}) == {"name": "Home", "notes": None}
    assert upcast.current("field", 3, {"name": " Home "}) == {"name": " Home ", "notes": None}
    assert [upcast.readable("field", version) for version in (0, 1, 3, 4)] == [False, True, True, False]
    with pytest.raises(KeyError):
        upcast.current("no such kind", 1, {})


PUSHES = sorted((Path(__file__).parents[2] / "fixtures" / "old_clients").glob("*.json"))
RELEASED = [entry for push in PUSHES for entry in json.loads(push.read_text(encoding="utf-8"))["entries"]
            if entry["body"] is not None]  # fmt: skip


def test_every_version_of_every_kind_was_pushed_and_fits_today_s_schema():
    """A version needs no step where it only added fields with defaults; this is how one knows."""
    for entry in RELEASED:
        kind = KINDS[entry["kind"]]
        now = upcast.current(entry["kind"], entry["kind_version"], entry["body"])
        assert kind.schema().load(now) == now
    pushed = {(entry["kind"], entry["kind_version"]) for entry in RELEASED}
    assert pushed >= {(kind.name, kind.version) for kind in KINDS.values()}
