"""A field as one logbook hands it to another: the field, its fences and its measured tracks, and no word of who
rode there. The phone writes and reads the same form as a file, with no server between (webclient/src/sharing).
"""

from marshmallow import ValidationError, fields, validates_schema

from fieldtally.book import upcast
from fieldtally.book.bodies.body import Body
from fieldtally.book.fields import Choice, Number, RecordId, fail
from fieldtally.book.instant import Instant
from fieldtally.book.kinds import KINDS

FORMAT = 1
MOST_PARTS = 1000
KINDS_OF_A_FIELD = ("field", "fence", "track")


class Part(Body):
    """One record of the logbook it comes from, as it stood when the field was handed on."""

    kind = Choice(KINDS_OF_A_FIELD, required=True)
    kind_version = Number(1, 1000, "version", whole=True, required=True)
    record_id = RecordId(required=True)
    body = fields.Dict(required=True)

    @validates_schema
    def body_fits(self, part: dict, **_) -> None:
        if not upcast.readable(part["kind"], part["kind_version"]):
            raise ValidationError({"kind_version": fail(
                "unknown_version", "This server does not know this version yet.", "Upgrade the server.").messages})
        try:
            KINDS[part["kind"]].schema().load(upcast.current(part["kind"], part["kind_version"], part["body"]))
        except ValidationError as wrong:
            raise ValidationError({"body": wrong.messages}) from wrong


class SharedField(Body):
    """The whole of it. `made_at`: when the phone wrote it down."""

    fieldtally_field = Number(FORMAT, FORMAT, "format", whole=True, required=True)
    made_at = Instant(required=True)
    parts = fields.List(fields.Nested(Part), required=True)

    @validates_schema
    def is_one_field(self, shared: dict, **_) -> None:
        wrong = what_is_wrong(shared["parts"])
        if wrong is not None:
            raise ValidationError({"parts": wrong.messages})


def what_is_wrong(parts: list[dict]) -> ValidationError | None:
    """Why these are not one field with what belongs to it, if they are not."""
    if len(parts) > MOST_PARTS:
        return fail("too_many", f"This field has {len(parts)} parts; {MOST_PARTS} fit.", "Share it without some.")
    heads = [part["record_id"] for part in parts if part["kind"] == "field"]
    if len(heads) != 1:
        return fail("not_one_field", "This is not one field.", "Send one field with what belongs to it.")
    if any(part["kind"] != "field" and part["body"].get("field_id") != heads[0] for part in parts):
        return fail("other_field", "A fence or a track is of another field.", "Send what belongs to this field only.")
    return None


def name_of(shared: dict) -> str:
    """What the field of a checked form is called."""
    return next(part["body"]["name"] for part in shared["parts"] if part["kind"] == "field")
