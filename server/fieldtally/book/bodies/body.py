"""What every body shares."""

from marshmallow import RAISE, Schema, fields

from fieldtally.book.fields import Number


class Body(Schema):
    class Meta:
        unknown = RAISE

    error_messages = {"unknown": {"code": "unknown_field", "message": "This field is not known here.",
                                  "fix": "Remove it, or raise the kind's version."}}  # fmt: skip


def optional(field_class, *args, **kwargs):
    """A field that may be absent or null; both mean "not stated"."""
    return field_class(*args, allow_none=True, load_default=None, **kwargs)


def centimetres(most: float, least: float = 1):
    return optional(Number, least, most, "cm")


def yes_no_or_unsaid():
    """A plain JSON boolean, or null where nobody said."""
    return fields.Boolean(allow_none=True, load_default=None, truthy={True}, falsy={False})


def yes_or_no():
    """A plain JSON boolean; absent means no."""
    return fields.Boolean(load_default=False, truthy={True}, falsy={False})
