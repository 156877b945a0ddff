"""What kind of file some bytes are, by their first ones. What a phone or a file name claims plays no part.

Signatures: JPEG (ITU-T T.81, SOI and the next marker), WebP (RFC 9649), EBML with the DocType "webm" (RFC 8794),
ISO base media (ISO/IEC 14496-12, the `ftyp` box), Ogg (RFC 3533).
"""

from fieldtally.book.bodies.media import MOST_PHOTO_BYTES, MOST_VOICE_BYTES
from fieldtally.book.words import PHOTO_TYPES, VOICE_TYPES

EBML = b"\x1a\x45\xdf\xa3"
DOC_TYPE_WITHIN = 64  # bytes: an EBML header is short
MOST_BYTES = dict.fromkeys(PHOTO_TYPES, MOST_PHOTO_BYTES) | dict.fromkeys(VOICE_TYPES, MOST_VOICE_BYTES)
FILE_NAMES = {
    "image/jpeg": "photo.jpg", "image/webp": "photo.webp", "audio/webm": "voice.webm", "audio/mp4": "voice.m4a",
    "audio/ogg": "voice.ogg",
}  # fmt: skip


def media_type(start: bytes) -> str | None:
    """One of book.words' PHOTO_TYPES and VOICE_TYPES, or None. `start`: the first bytes, 64 if there are as many."""
    if start.startswith(b"\xff\xd8\xff"):
        return "image/jpeg"
    if start[:4] == b"RIFF" and start[8:12] == b"WEBP":
        return "image/webp"
    if start.startswith(EBML) and b"webm" in start[:DOC_TYPE_WITHIN]:
        return "audio/webm"
    if start[4:8] == b"ftyp":
        return "audio/mp4"
    return "audio/ogg" if start.startswith(b"OggS") else None
