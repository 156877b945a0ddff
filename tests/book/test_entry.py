"""The check of one entry: what passes, what is held, and that nothing a stranger sends can break it."""

import copy
import json

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from fieldtally.book.entry import ADDED, Entry, Held, Refusal, check, content_of, digest
from fieldtally.book.kinds import KINDS
from fieldtally.book.measure import MOST_BYTES
from support.bodies import FULL, LEAST
from support.riders import NOON_MS, new_id, wire


def test_a_good_entry_becomes_what_it_says():
    raw = wire("track", {"name": "Long side", "distance_m": 412.5, "measured_by": "wheel"})
    entry = check(raw)
    assert isinstance(entry, Entry)
    assert entry.content() == raw
    assert (entry.recorded_at_ms, entry.number, entry.author) == (NOON_MS, None, None)


@pytest.mark.parametrize("kind", KINDS)
def test_every_kind_passes_with_all_fields_and_with_the_fewest(kind):
    for bodies in (FULL, LEAST):
        entry = check(wire(kind, bodies[kind]))
        assert isinstance(entry, Entry), entry
        assert entry.body == bodies[kind]


@pytest.mark.parametrize("kind", KINDS)
def test_the_examples_leave_out_no_field(kind):
    assert set(FULL[kind]) == set(KINDS[kind].schema().fields)


@pytest.mark.parametrize("kind", KINDS)
def test_no_required_field_can_be_left_out(kind):
    for name in LEAST[kind]:
        body = {key: value for key, value in LEAST[kind].items() if key != name}
        refusal = check(wire(kind, body))
        assert isinstance(refusal, Refusal), (kind, name)
        assert (refusal.code, refusal.field) == ("missing", f"body.{name}")


def test_any_record_can_be_taken_back():
    assert all(check(wire(kind, None)).body is None for kind in KINDS)


def test_the_body_is_kept_as_it_was_sent():
    """Nothing is filled in, sorted or rounded: the phone gets back what it wrote."""
    body = {"outcome": "clear", "outing_id": new_id(), "height_cm": 79.99, "fence_id": new_id()}
    assert list(check(wire("attempt", body)).body.items()) == list(body.items())


def test_what_the_server_adds_is_passed_over():
    raw = wire() | {"number": 7, "author": "nobody", "author_name": "x", "device": 1, "skew_ms": "x",
                    "received_at": None, "receipt": [], "logbook_id": "here"}  # fmt: skip
    assert set(raw) - set(wire()) == ADDED
    assert check(raw).content() == content_of(raw)


@pytest.mark.parametrize(
    ("change", "reason"),
    [
        ({"kind": "saddle_fit"}, "unknown_kind"),
        ({"kind_version": 2}, "unknown_version"),
        ({"kind_version": 1_000_000}, "unknown_version"),
        ({"weather": {"rain_mm": 3}}, "unknown_envelope"),
    ],
)
def test_what_is_unknown_is_held_word_for_word(change, reason):
    raw = wire() | change
    held = check(raw)
    assert held == Held(raw["id"], reason, held.text)
    assert json.loads(held.text) == raw


def test_an_unknown_kind_must_still_be_an_entry():
    assert check(wire("saddle_fit", recorded_at="yesterday")).code == "bad_time"


EDGES = [
    ("height_cm", 1, True), ("height_cm", 0.999, False), ("height_cm", 250, True), ("height_cm", 250.01, False),
    ("height_cm", -1, False), ("height_cm", True, False), ("height_cm", "80", False), ("height_cm", None, True),
    ("canter_offset_ms", 0, True), ("canter_offset_ms", 0.5, False), ("canter_offset_ms", 7_200_001, False),
    ("note", "x" * 2000, True), ("note", "x" * 2001, False), ("note", "", True), ("note", "a\x00b", False),
    ("element", "F", True), ("element", "G", False), ("element", "a", False), ("element", ["A"], False),
]  # fmt: skip


@pytest.mark.parametrize(("field", "value", "fits"), EDGES)
def test_edges_of_an_attempt(field, value, fits):
    outcome = check(wire("attempt", LEAST["attempt"] | {field: value}))
    assert isinstance(outcome, Entry) is fits
    if not fits:
        assert outcome.field == f"body.{field}" and outcome.message and outcome.fix


AN_ID = "019dee92-bc71-7001-8a52-5c0a4e9b1f1f"
ENVELOPE_EDGES = [
    ("recorded_at", "1990-01-01T00:00:00.000Z", True), ("recorded_at", "1989-12-31T23:59:59.999Z", False),
    ("recorded_at", "2199-12-31T23:59:59.999Z", True), ("recorded_at", "2200-01-01T00:00:00.000Z", False),
    ("recorded_at", "1990-01-01T00:00:00+01:00", False), ("recorded_at", NOON_MS, False),
    ("recorded_at", "2026-05-03T09:12:33.1234Z", False), ("recorded_at", "2026-05-03 09:12:33Z", False),
    ("local_date", "1990-01-01", True), ("local_date", "1989-12-31", False), ("local_date", "2199-12-31", True),
    ("local_date", "2026-5-3", False), ("local_date", "20260503", False), ("local_date", "2026-W18-7", False),
    ("utc_offset_min", -720, True), ("utc_offset_min", 840, True), ("utc_offset_min", 841, False),
    ("utc_offset_min", 60.5, False), ("utc_offset_min", None, False),
    ("supersedes", [], True), ("supersedes", [AN_ID] * 50, True), ("supersedes", None, False),
    ("kind_version", 0, False), ("kind_version", 1.5, False), ("kind", "", False), ("kind", "x" * 61, False),
    ("clock", None, True), ("clock", {}, False), ("clock", {"wall_ms": 1, "monotonic_ms": -1}, False),
    ("clock", {"wall_ms": -5.5, "monotonic_ms": 0.25}, True), ("body", "text", False),
    ("record_id", "{" + AN_ID + "}", False), ("id", AN_ID + "\n", False),
]  # fmt: skip


@pytest.mark.parametrize(("field", "value", "fits"), ENVELOPE_EDGES)
def test_edges_of_the_envelope(field, value, fits):
    outcome = check(wire() | {field: value})
    assert isinstance(outcome, Entry) is fits, outcome
    if not fits:
        assert outcome.field.split(".")[0] == field and outcome.message and outcome.fix


@pytest.mark.parametrize("missing", sorted(set(wire()) - {"clock"}))
def test_nothing_of_the_envelope_can_be_left_out(missing):
    raw = wire()
    del raw[missing]
    outcome = check(raw)
    assert isinstance(outcome, Refusal) and outcome.field == missing


def test_64_kibibytes_are_the_most():
    room = MOST_BYTES - len(json.dumps(wire("saddle_fit", ""), separators=(",", ":")))
    assert isinstance(check(wire("saddle_fit", "x" * room)), Held)
    assert check(wire("saddle_fit", "x" * (room + 1))).code == "entry_too_large"
    assert check(wire("saddle_fit", "é" * (room // 2 + 1))).code == "entry_too_large"
    assert check(wire("saddle_fit", '"' * (room // 2 + 1))).code == "entry_too_large"  # each escaped to two


def test_the_digest_is_blind_to_what_json_libraries_change():
    content = wire("track", {"name": "é", "distance_m": 400.0, "measured_by": "tape", "distance_u_m": 0.1})
    other = copy.deepcopy(content)
    other["body"] = dict(reversed(content["body"].items())) | {"distance_m": 400}
    assert digest(json.loads(json.dumps(other))) == digest(content)
    assert digest(content | {"body": content["body"] | {"distance_u_m": 0.2}}) != digest(content)
    assert digest(content | {"body": content["body"] | {"distance_m": "400"}}) != digest(content)


# ---- whatever is thrown at it --------------------------------------------------------------------

texts = st.text(max_size=20) | st.text(st.characters(codec=None), max_size=8)  # lone surrogates among them
numbers = st.integers() | st.integers(-(10**400), 10**400) | st.floats(allow_nan=True)
not_json = st.binary(max_size=3) | st.sampled_from([object(), {1, 2}, (1,), range(3), Ellipsis, 1j])
leaves = st.none() | st.booleans() | numbers | texts | not_json
junk = st.recursive(
    leaves,
    lambda inner: st.lists(inner, max_size=5) | st.dictionaries(texts | st.integers(), inner, max_size=5),
    max_leaves=20,
)
HEALTH = [HealthCheck.too_slow, HealthCheck.filter_too_much]


def one_of_three(raw: object) -> Entry | Held | Refusal:
    outcome = check(raw)
    assert isinstance(outcome, (Entry, Held, Refusal))
    if isinstance(outcome, Refusal):
        assert outcome.code and outcome.message and outcome.fix
        json.dumps([outcome.id, outcome.code, outcome.field, outcome.message, outcome.fix]).encode()
    return outcome


@given(junk)
@settings(max_examples=300, suppress_health_check=HEALTH)
def test_junk_never_raises(raw):
    one_of_three(raw)


@given(st.sampled_from(sorted(wire())), junk)
@settings(max_examples=300, suppress_health_check=HEALTH)
def test_junk_in_the_envelope_never_raises(field, value):
    one_of_three(wire() | {field: value})


@given(st.data())
@settings(max_examples=600, suppress_health_check=HEALTH)
def test_junk_in_a_body_never_raises(data):
    kind = data.draw(st.sampled_from(sorted(KINDS)))
    body = copy.deepcopy(FULL[kind])
    where = body
    while True:
        key = data.draw(st.sampled_from(sorted(where)))
        inner = where[key][0] if isinstance(where[key], list) and where[key] else where[key]
        if not isinstance(inner, dict) or data.draw(st.booleans()):
            break
        where = inner
    where[key] = data.draw(junk)
    outcome = one_of_three(wire(kind, body))
    if isinstance(outcome, Entry):
        json.dumps(outcome.content(), allow_nan=False).encode()


@pytest.mark.parametrize(
    "huge",
    [
        [0] * 1_000_000,
        ["x"] * 1_000_000,
        {str(number): number for number in range(1_000_000)},
        "x" * 50_000_000,
        10**100_000,
    ],
    ids=["numbers", "texts", "keys", "text", "digits"],
)
def test_huge_values_are_refused_quickly(huge):
    for raw in (huge, wire(body=huge), wire("attempt", LEAST["attempt"] | {"note": huge}), wire(supersedes=huge)):
        assert one_of_three(raw).code in ("entry_too_large", "not_a_number")


def test_nesting_deeper_than_python_can_recurse():
    deep: list = []
    for _ in range(100_000):
        deep = [deep]
    assert one_of_three(wire(body=deep)).code == "too_deep"
    while deep:  # taken apart by hand: freeing it at once would recurse
        deep = deep[0]
