"""What the camera and the microphone kept: the entry describes it, the bytes travel on their own way.

The bytes are named by their SHA-256, so that one photo sent twice is one photo, and nobody can put another
picture under an entry that stands. docs/protocol.md tells how they are sent; records always go first.
"""

import re

from fieldtally.book import words
from fieldtally.book.bodies.body import Body, optional
from fieldtally.book.fields import Choice, Number, RecordId, Text, fail

MOST_PHOTO_BYTES = 2 * 1024 * 1024
MOST_VOICE_BYTES = 1024 * 1024
MOST_VOICE_MS = 65_000  # the app stops after 60 s; recorders overrun a little
SHA256 = re.compile(r"[0-9a-f]{64}")


class Digest(Text):
    """The SHA-256 of the bytes, in 64 lower-case hexadecimal digits."""

    def __init__(self, **kwargs) -> None:
        super().__init__(64, 64, **kwargs)

    def _deserialize(self, value, attr, data, **kwargs):
        if not isinstance(value, str) or not SHA256.fullmatch(value):
            raise fail("bad_id", "This is not a SHA-256.", "Send 64 lower-case hexadecimal digits.")
        return value


class Photo(Body):
    """A picture of any record, shrunk on the phone, without the place it was taken at."""

    about_id = RecordId(required=True)
    media_sha256 = Digest(required=True)
    media_type = Choice(words.PHOTO_TYPES, required=True)
    size_bytes = Number(1, MOST_PHOTO_BYTES, "bytes", whole=True, required=True)
    width_px = Number(1, 20_000, "px", whole=True, required=True)
    height_px = Number(1, 20_000, "px", whole=True, required=True)
    caption = optional(Text, 200)


class VoiceNote(Body):
    """Something said about any record; `text` is what was said, if somebody typed it."""

    about_id = RecordId(required=True)
    media_sha256 = Digest(required=True)
    media_type = Choice(words.VOICE_TYPES, required=True)
    size_bytes = Number(1, MOST_VOICE_BYTES, "bytes", whole=True, required=True)
    duration_ms = Number(1, MOST_VOICE_MS, "ms", whole=True, required=True)
    text = optional(Text, 4000)
