"""One entry of a logbook, and the check that a stranger's JSON must pass to become one.

`check` answers with exactly one of three: an `Entry` to be numbered; `Held`, for what is well formed but
of a kind, version or shape this release does not know; a `Refusal` with a code, the field and the fix.
"""

import hashlib
import json
from dataclasses import dataclass

from marshmallow import EXCLUDE, Schema, ValidationError, fields

from fieldtally.book.fields import CivilDate, Number, RecordId, Text, fail
from fieldtally.book.instant import Instant, show_instant
from fieldtally.book.kinds import KINDS
from fieldtally.book.measure import MOST_BYTES, Trouble, find_trouble, too_large
from fieldtally.book.trouble import first_trouble
from fieldtally.book.upcast import STEPS, as_it_is, readable

MOST_SUPERSEDED = 50


@dataclass(frozen=True, slots=True)
class Entry:
    """`body` is as it was sent; None takes the record back. The last five come from the server, in numbering
    the entry; `skew_ms` is the server's clock less the phone's when it was sent."""

    id: str
    record_id: str
    supersedes: tuple[str, ...]
    kind: str
    kind_version: int
    body: dict | None
    recorded_at_ms: int
    utc_offset_min: int
    local_date: str
    clock: dict | None = None
    number: int | None = None
    author: str | None = None
    device: str | None = None
    skew_ms: int | None = None
    received_at_ms: int | None = None

    def content(self) -> dict:
        """What the device wrote, as it goes over the wire."""
        return {
            "id": self.id,
            "record_id": self.record_id,
            "supersedes": list(self.supersedes),
            "kind": self.kind,
            "kind_version": self.kind_version,
            "body": self.body,
            "recorded_at": show_instant(self.recorded_at_ms),
            "utc_offset_min": self.utc_offset_min,
            "local_date": self.local_date,
            "clock": self.clock,
        }


@dataclass(frozen=True)
class Held:
    """Well formed, but not for this release: `reason` is unknown_kind, unknown_version or unknown_envelope.

    `text` is what the device wrote, as compact JSON; `check` may be asked again about it after an upgrade.
    """

    id: str
    reason: str
    text: str


@dataclass(frozen=True)
class Refusal:
    id: str | None
    code: str
    field: str | None
    message: str
    fix: str


class Clock(Schema):
    """The two clocks of the phone when the entry was made, in ms: wall since 1970, monotonic since any start."""

    wall_ms = Number(-8.64e15, 8.64e15, "ms", required=True)
    monotonic_ms = Number(0, 1e15, "ms", required=True)


def few(superseded: list[str]) -> None:
    if len(superseded) > MOST_SUPERSEDED:
        raise fail("too_many", f"An entry may supersede {MOST_SUPERSEDED} others.", "Name only its heads.")


class Envelope(Schema):
    class Meta:
        unknown = EXCLUDE

    id = RecordId(required=True)
    record_id = RecordId(required=True)
    supersedes = fields.List(RecordId(), required=True, validate=few)
    kind = Text(60, 1, required=True)
    kind_version = Number(1, 1_000_000, "version", whole=True, required=True)
    recorded_at = Instant(required=True)
    utc_offset_min = Number(-720, 840, "minutes", whole=True, required=True)  # the range of the tz database
    local_date = CivilDate(required=True)
    clock = fields.Nested(Clock, allow_none=True, load_default=None)


# What the server adds when it numbers an entry; a phone that sends its copy again sends these too.
ADDED = {"number", "author", "author_name", "device", "skew_ms", "received_at", "receipt", "logbook_id"}
KNOWN = set(Envelope().fields) | {"body"} | ADDED

_envelope = Envelope()
_bodies = {kind.name: kind.schema() for kind in KINDS.values()}


def check(raw: object) -> Entry | Held | Refusal:
    """Never raises, whatever it is given, and costs no more than the limits of one entry allow."""
    trouble = find_trouble(raw)
    if trouble is None and not isinstance(raw, dict):
        trouble = Trouble("not_an_entry", None, "This is not an entry.", "Send each entry as a JSON object.")
    if trouble is None and len(compact(raw).encode()) > MOST_BYTES:
        trouble = too_large()
    return _refuse(raw, trouble) if trouble else _check_envelope(raw)


def compact(value: object) -> str:
    """The value as compact JSON, keys in the order given."""
    return json.dumps(value, ensure_ascii=False, separators=(",", ":"), allow_nan=False)


def digest(content: dict) -> str:
    """Tells contents apart, blind to key order and to 5 against 5.0: every JSON library writes these anew."""
    text = json.dumps(_plain(content), separators=(",", ":"), sort_keys=True, allow_nan=False)
    return hashlib.sha256(text.encode()).hexdigest()


def content_of(raw: dict) -> dict:
    """What the device wrote of a raw entry: all of it but what the server adds."""
    return {key: value for key, value in raw.items() if key not in ADDED}


def _check_envelope(raw: dict) -> Entry | Held | Refusal:
    try:
        envelope = _envelope.load(raw)
    except ValidationError as error:
        return _refuse(raw, first_trouble(error.messages))
    if reason := _unknown(raw, envelope):
        return Held(envelope["id"], reason, compact(content_of(raw)))
    if trouble := _body_trouble(raw, envelope["kind"], envelope["kind_version"]):
        return _refuse(raw, trouble)
    return Entry(
        envelope["id"],
        envelope["record_id"],
        tuple(dict.fromkeys(envelope["supersedes"])),
        envelope["kind"],
        envelope["kind_version"],
        raw["body"],
        envelope["recorded_at"],
        envelope["utc_offset_min"],
        envelope["local_date"],
        envelope["clock"],
    )


def _unknown(raw: dict, envelope: dict) -> str | None:
    if not raw.keys() <= KNOWN:
        return "unknown_envelope"
    if envelope["kind"] not in KINDS:
        return "unknown_kind"
    return None if readable(envelope["kind"], envelope["kind_version"]) else "unknown_version"


def _body_trouble(raw: dict, kind: str, version: int) -> Trouble | None:
    body = raw.get("body", "")
    if body is None:
        return None
    if not isinstance(body, dict):
        return Trouble("not_a_body", "body", "The body must be an object, or null to take the record back.",
                       "Send the body as documented for its kind.")
    for step in range(version, KINDS[kind].version):
        body = STEPS.get((kind, step), as_it_is)(body)
    errors = _bodies[kind].validate(body)
    return first_trouble(errors, "body") if errors else None


def _refuse(raw: object, trouble: Trouble) -> Refusal:
    entry_id = raw.get("id") if isinstance(raw, dict) else None
    known = isinstance(entry_id, str) and len(entry_id) <= 60 and entry_id.isascii()
    return Refusal(entry_id if known else None, trouble.code, trouble.path, trouble.message, trouble.fix)


def _plain(value: object) -> object:
    if isinstance(value, dict):
        return {key: _plain(inner) for key, inner in value.items()}
    if isinstance(value, list):
        return [_plain(inner) for inner in value]
    return int(value) if isinstance(value, float) and value.is_integer() else value
