"""The wire between a phone and its logbook: push and pull. docs/protocol.md tells it in order."""

from collections.abc import Iterator

from flask import Blueprint, jsonify, request
from marshmallow import EXCLUDE, Schema, ValidationError

from fieldtally.book.fields import Number, RecordId, Text
from fieldtally.book.instant import parse_instant, show_instant
from fieldtally.book.kinds import KINDS
from fieldtally.book.trouble import first_trouble
from fieldtally.store import devices, feed
from fieldtally.store.clock import now_ms
from fieldtally.store.sender import Sender
from fieldtally.web.access import Member, member
from fieldtally.web.errors import problem
from fieldtally.web.push_body import BadBody, PushBody, take_apart
from fieldtally.web.recompute import refresh_after_push
from fieldtally.web.squeeze import squeezed
from fieldtally.web.version import PROTOCOL

bp = Blueprint("sync", __name__, url_prefix="/api/logbooks")

MOST_ENTRIES = 500


class Head(Schema):
    """What a push says of itself. What a newer phone may say beside it is passed over."""

    class Meta:
        unknown = EXCLUDE

    protocol = Number(1, 1_000_000, "protocol", whole=True, required=True)
    device = RecordId(required=True)
    app = Text(60, load_default="")
    log_id = RecordId(allow_none=True, load_default=None)
    account = RecordId(allow_none=True, load_default=None)


head_schema = Head()


@bp.post("/<logbook_id>/entries")
def push(logbook_id: str):
    """Takes entries and answers each one. Sending again what was sent before is always right."""
    who = member(logbook_id)
    body = read_push()
    head = read_head(body.head)
    refuse_mixed_up(who, head["account"])
    sender = sender_of(who, head, body.head.get("sent_at"))
    pushed = append(logbook_id, sender, of_this_logbook(logbook_id, body.entries()), head["log_id"])
    devices.seen(who.account_id, sender.device, head["app"], sender.received_at_ms)
    if any(KINDS[entry.kind].evidence for entry in pushed.accepted) and body.head.get("more") is not True:
        refresh_after_push(logbook_id)
    return jsonify(
        log_id=pushed.log_id,
        last_number=pushed.last_number,
        answers=[answer.to_json() for answer in pushed.answers],
        server_time=show_instant(now_ms()),
    )


@bp.get("/<logbook_id>/entries")
def pull(logbook_id: str):
    """The entries numbered above `after`, in order, at most `limit`."""
    member(logbook_id)
    after = whole_number("after", 0, 0, 2**53)
    limit = whole_number("limit", feed.MOST_PER_PAGE, 1, feed.MOST_PER_PAGE)
    try:
        page = feed.page(logbook_id, after, limit)
    except feed.UnknownLogbook:
        no_such_logbook()
    return squeezed(
        jsonify(
            log_id=page.log_id,
            last_number=page.last_number,
            entries=page.entries,
            more=page.more,
            server_time=show_instant(now_ms()),
        )
    )


def read_push() -> PushBody:
    if not request.is_json:
        problem(415, "not_json", "This server reads JSON only.", fix="Send Content-Type: application/json.")
    try:
        return take_apart(request.get_data(cache=False), MOST_ENTRIES)
    except BadBody as bad:
        status = 413 if bad.code == "too_many_entries" else 400
        problem(status, bad.code, bad.message, fix=f"Send at most {MOST_ENTRIES} entries as documented.")


def read_head(raw: dict) -> dict:
    try:
        head = head_schema.load(raw)
    except ValidationError as error:
        trouble = first_trouble(error.messages)
        problem(400, trouble.code, trouble.message, field=trouble.path, fix=trouble.fix)
    if head["protocol"] > PROTOCOL:
        problem(
            400, "newer_protocol", f"This server speaks protocol {PROTOCOL} and older ones.", field="protocol",
            fix="Whoever runs the server should upgrade it; your phone keeps everything until then.",
            details=[{"protocol": PROTOCOL}],
        )  # fmt: skip
    return head


def refuse_mixed_up(who: Member, account_id: str | None) -> None:
    """Two people of one logbook in one browser: nothing recorded by one is ever taken as the other's."""
    if account_id not in (None, who.account_id):
        fix = "Sign in as the person who recorded these entries; the phone keeps them."
        problem(401, "other_account", "This browser is signed in as somebody else.", field="account", fix=fix)


def sender_of(who: Member, head: dict, sent_at: object) -> Sender:
    """`sent_at` only serves to see how far the phone's clock is off; a senseless one is no reason to refuse."""
    now = now_ms()
    sent_ms = parse_instant(sent_at) if isinstance(sent_at, str) else None
    return Sender(who.account_id, who.role, head["device"], None if sent_ms is None else now - sent_ms, now)


def of_this_logbook(logbook_id: str, entries: Iterator[object]) -> Iterator[object]:
    """The entries as they are; if one names another logbook the whole push is refused, for then the phone
    has mixed up two riders' books and none of it can be trusted."""
    for entry in entries:
        if isinstance(entry, dict) and entry.get("logbook_id", logbook_id) != logbook_id:
            problem(
                403, "wrong_logbook", "An entry of this push belongs to another logbook.", field="logbook_id",
                fix="Send each logbook's entries to its own address.", details=[{"id": str(entry.get("id"))[:60]}],
            )  # fmt: skip
        yield entry


def append(logbook_id: str, sender: Sender, entries: Iterator[object], log_id: str | None) -> feed.Pushed:
    try:
        return feed.append(logbook_id, sender, entries, log_id)
    except feed.LogChanged as changed:
        problem(
            409, "log_changed", "The server was restored from a backup since this phone last spoke to it.",
            fix="Send everything again; what is there already is recognised.", details=[{"log_id": changed.log_id}],
        )  # fmt: skip
    except feed.UnknownLogbook:
        no_such_logbook()


def no_such_logbook():
    problem(404, "not_found", "This logbook is no longer here.", fix="Ask its rider.")


def whole_number(name: str, otherwise: int, least: int, most: int) -> int:
    text = request.args.get(name, str(otherwise))
    if not (text.isascii() and text.isdigit() and len(text) <= 16 and least <= int(text) <= most):
        problem(
            400, "out_of_range", f"“{name}” must be a whole number from {least} to {most}.", field=name,
            fix="Ask as documented.",
        )  # fmt: skip
    return int(text)
