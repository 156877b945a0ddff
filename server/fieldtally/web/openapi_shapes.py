"""The questions and answers of the API around the bodies: what openapi.py puts into its description.

Keys of the four tables are the rooms' names, as Flask knows them.
"""

from fieldtally.book.words import ROLES


def thing(required: dict, **optional: dict) -> dict:
    """A JSON object with these keys."""
    return {"type": "object", "properties": required | optional, "required": list(required)}


def or_null(shape: dict) -> dict:
    return {"anyOf": [shape, {"type": "null"}]}


def list_of(shape: dict) -> dict:
    return {"type": "array", "items": shape}


def named(name: str) -> dict:
    return {"$ref": f"#/components/schemas/{name}"}


TEXT, NUMBER, WHOLE, TRUTH = ({"type": t} for t in ("string", "number", "integer", "boolean"))
ID, DAY, INSTANT = ({"type": "string", "format": f} for f in ("uuid", "date", "date-time"))
ANY = {"type": "object"}

ENTRY = {
    "id": ID, "record_id": ID, "supersedes": list_of(ID) | {"maxItems": 50}, "kind": TEXT, "kind_version": WHOLE,
    "body": or_null(named("Body")), "recorded_at": INSTANT, "utc_offset_min": WHOLE, "local_date": DAY,
    "clock": or_null(thing({"wall_ms": NUMBER, "monotonic_ms": NUMBER})),
}  # fmt: skip
ADDED = {
    "number": WHOLE, "author": ID, "author_name": TEXT, "device": ID, "skew_ms": or_null(WHOLE),
    "received_at": INSTANT, "receipt": TEXT,
}  # fmt: skip
LOGBOOK = {
    "id": ID, "title": TEXT, "role": {"type": "string", "enum": list(ROLES)}, "log_id": ID, "last_number": WHOLE,
}  # fmt: skip
ACCOUNT = {"id": ID, "sign_in_name": TEXT, "display_name": TEXT}
LEVEL = {"id": TEXT, "name": TEXT}
INVITATION = {"id": TEXT, "role": TEXT, "expires_at": INSTANT}
FIELD_SHARE = {"id": TEXT, "name": TEXT, "expires_at": INSTANT, "uses_left": WHOLE}
HEADING = {"id": TEXT, "title": TEXT, "body": TEXT, "edition": TEXT, "levels": list_of(thing(LEVEL))}

SHAPES = {
    "WhatIf": thing(
        {}, as_of=or_null(DAY), without_outings=list_of(ID), bar_changes=list_of(named("BarChange")),
        more=list_of(thing({"requirement_id": TEXT, "clear": WHOLE}, outings=WHOLE)),
    ),
    "Comparison": thing({"before": ANY, "after": ANY, "changes": list_of(thing({
        "requirement_id": TEXT, "title": TEXT, "before": or_null(TEXT), "after": or_null(TEXT),
    }))}),
    "Plans": thing({"plans": list_of(thing({
        "field_id": or_null(ID), "steps": list_of(ANY), "leave_alone": list_of(ANY), "stop_when": list_of(TEXT),
        "cautions": list_of(TEXT),
        "text": TEXT,
    }))}),
    "Error": thing({"error": thing({
        "code": TEXT, "message": TEXT, "field": or_null(TEXT), "fix": or_null(TEXT), "details": list_of(ANY),
    })}),
    "Entry": thing({name: shape for name, shape in ENTRY.items() if name != "clock"}, clock=ENTRY["clock"]),
    "NumberedEntry": thing(ENTRY | ADDED),
    "Push": thing(
        {"protocol": {"const": 1}, "device": ID, "entries": list_of(named("Entry")) | {"maxItems": 500}},
        app=TEXT, sent_at=INSTANT, log_id=or_null(ID), account=or_null(ID), more=TRUTH,
    ),
    "Answer": thing(
        {"id": or_null(TEXT), "result": {"enum": ["accepted", "already", "held", "refused"]}},
        number=WHOLE, code=TEXT, field=TEXT, message=TEXT, fix=TEXT,
    ),
    "Pushed": thing({"log_id": ID, "last_number": WHOLE, "answers": list_of(named("Answer")), "server_time": INSTANT}),
    "Page": thing({
        "log_id": ID, "last_number": WHOLE, "entries": list_of(named("NumberedEntry")), "more": TRUTH,
        "server_time": INSTANT,
    }),
    "Standings": thing(
        {"log_id": ID, "as_of": DAY, "logbook_number": WHOLE, "standings": list_of(ANY)},
        evidence={"type": "object", "additionalProperties": list_of(ANY)},
        bars={"type": "object", "additionalProperties": list_of(ANY)},
    ),
    "Session": thing({
        "account": or_null(thing(ACCOUNT)), "first_run": TRUTH, "version": TEXT, "protocol": WHOLE,
        "logbooks": list_of(thing(LOGBOOK)),
    }),
    "SignIn": thing({"sign_in_name": TEXT, "password": TEXT}, device_label=TEXT),
    "FirstAccount": thing({"sign_in_name": TEXT, "password": TEXT}, display_name=TEXT, device_label=TEXT),
    "Rulebooks": list_of(thing(HEADING)),
    "Rulebook": ANY,
    "WholeLogbook": thing({
        "fieldtally_export": {"const": 1}, "logbook": ANY, "entries": list_of(named("NumberedEntry")),
    }),
    "Health": thing({"ok": TRUTH, "version": TEXT, "database": {"enum": ["sqlite", "postgresql"]}}),
    "Members": thing({"members": list_of(thing({"account_id": ID, "display_name": TEXT, "role": TEXT}))}),
    "Invite": thing({"role": {"enum": ["coach", "scribe", "reader"]}}),
    "Invitation": thing(INVITATION | {"code": TEXT}),
    "Invitations": thing({"invitations": list_of(thing(INVITATION))}),
    "Offer": thing({"title": TEXT, "inviter": TEXT, "role": TEXT, "expires_at": INSTANT}),
    "ShareField": thing({"fieldtally_field": {"const": 1}, "made_at": INSTANT, "parts": list_of(thing({
        "kind": {"enum": ["field", "fence", "track"]}, "kind_version": WHOLE, "record_id": ID, "body": ANY,
    })) | {"maxItems": 1000}}),
    "FieldShare": thing(FIELD_SHARE | {"code": TEXT}),
    "FieldShares": thing({"field_shares": list_of(thing(FIELD_SHARE))}),
    "TakeField": thing({"code": TEXT}),
    "TakeUp": thing({}, sign_in_name=TEXT, display_name=TEXT, password=TEXT, device_label=TEXT),
    "SignIns": thing({"sign_ins": list_of(thing({
        "id": TEXT, "label": TEXT, "here": TRUTH, "signed_in_at": INSTANT, "last_seen_at": INSTANT,
    }))}),
    "NewPassword": thing({"password": TEXT, "new_password": TEXT}),
    "Password": thing({"password": TEXT}),
    "Anything": ANY,
    "Bytes": {"type": "string", "format": "binary"},
    "Received": thing({"received_bytes": WHOLE, "complete": TRUTH}),
}  # fmt: skip

ANSWERS: dict[str, str | None] = {
    "auth.show": "Session", "auth.sign_in": "Session", "auth.sign_out": None, "auth.first_account": "Session",
    "sync.push": "Pushed", "sync.pull": "Page", "standing.every_horse": "Standings",
    "standing.one_horse": "Standings", "logbooks.export": "WholeLogbook", "rulebooks.every": "Rulebooks",
    "rulebooks.one": "Rulebook", "health.health": "Health", "openapi.openapi": "Anything",
    "what_if.suppose": "Comparison", "what_if.plans": "Plans",
    "logbooks.open_own": "Session", "members.everybody": "Members", "members.end": None,
    "invitations.every_open_one": "Invitations",
    "invitations.invite": "Invitation", "invitations.withdraw": None, "invitations.offered": "Offer",
    "invitations.take_up": "Session", "account.where": "SignIns", "account.sign_out_there": None,
    "account.renew_password": None, "account.end": None, "blobs.show": "Bytes", "blobs.add": "Received",
    "field_shares.every_open_one": "FieldShares", "field_shares.share": "FieldShare", "field_shares.withdraw": None,
    "field_shares.take": "ShareField",
}  # fmt: skip
QUESTIONS = {
    "auth.sign_in": "SignIn", "auth.first_account": "FirstAccount", "sync.push": "Push", "what_if.suppose": "WhatIf",
    "invitations.invite": "Invite", "invitations.take_up": "TakeUp", "account.renew_password": "NewPassword",
    "account.end": "Password", "blobs.add": "Bytes", "field_shares.share": "ShareField",
    "field_shares.take": "TakeField",
}  # fmt: skip
QUERIES = {
    "sync.pull": {
        "after": {"type": "integer", "minimum": 0, "default": 0},
        "limit": {"type": "integer", "minimum": 1, "maximum": 500, "default": 500},
    },
    "standing.every_horse": {"packed": {"const": "1"}},
    "standing.one_horse": {"as_of": DAY},
}
HEADERS = {"blobs.add": {"Upload-Offset": WHOLE, "Upload-Length": WHOLE}}
PUBLIC = {"auth.show", "auth.sign_in", "auth.first_account", "rulebooks.every", "rulebooks.one", "health.health",
          "openapi.openapi", "invitations.offered", "invitations.take_up"}  # fmt: skip
