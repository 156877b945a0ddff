"""Photos and voice notes on their way: sent in pieces, taken up again after a cut, read by the logbook's members.

The headers are those of the IETF's draft for resumable uploads. A file is served as what its bytes are, never as
what somebody called it, and never as a page.
"""

import errno
import re

from flask import Blueprint, Response, jsonify, request

from fieldtally.book.bodies.media import SHA256
from fieldtally.book.kinds import KINDS
from fieldtally.store import blobs as shelf
from fieldtally.store.blobs import blobs
from fieldtally.store.media_type import FILE_NAMES, media_type
from fieldtally.web.access import Member, member
from fieldtally.web.errors import problem
from fieldtally.web.limits import limiter, setting

bp = Blueprint("blobs", __name__, url_prefix="/api/logbooks")

MOST_BYTES_PER_PIECE = 256 * 1024
WHOLE_NUMBER = re.compile(r"[0-9]{1,9}")
NO_PAGE = "default-src 'none'; sandbox; frame-ancestors 'none'"
NO_ROOM = (errno.ENOSPC, errno.EDQUOT)


@bp.get("/<logbook_id>/media/<sha256>")
def show(logbook_id: str, sha256: str):
    """A photo or voice note that is here whole; HEAD says in `Upload-Offset` how many bytes of it are here."""
    member(logbook_id)
    digest = digest_in(sha256)
    if request.method == "HEAD":
        return how_much(logbook_id, digest)
    data = blobs().read(logbook_id, digest)
    if data is None:
        problem(
            404, "not_here_yet", "This has not arrived here yet.", fix="The phone it was made with sends it.",
            details=[{"received_bytes": blobs().received(logbook_id, digest)}],
        )  # fmt: skip
    return as_file(data)


@bp.patch("/<logbook_id>/media/<sha256>")
@limiter.limit(setting("media_limit"))
def add(logbook_id: str, sha256: str):
    """Takes the next piece of a file; with the last one it is checked and becomes readable."""
    request.max_content_length = MOST_BYTES_PER_PIECE
    may_write(member(logbook_id))
    digest = digest_in(sha256)
    offset, size_bytes = whole_header("Upload-Offset"), whole_header("Upload-Length")
    piece = request.get_data(cache=False)
    if not piece or offset + len(piece) > size_bytes:
        problem(400, "out_of_range", "This piece does not fit the file.", field="Upload-Length", fix="See protocol.md.")
    received = keep(logbook_id, digest, offset, piece, size_bytes)
    return jsonify(received_bytes=received, complete=received == size_bytes)


def keep(logbook_id: str, digest: str, offset: int, piece: bytes, size_bytes: int) -> int:
    try:
        return blobs().add(logbook_id, digest, offset, piece, size_bytes)
    except shelf.WrongOffset as wrong:
        here = {"received_bytes": wrong.received_bytes}
        problem(409, "wrong_offset", "The file stands elsewhere.", fix="Go on from received_bytes.", details=[here])
    except shelf.WrongDigest:
        problem(422, "wrong_digest", "What came is not the file announced.", fix="Send it again from the start.")
    except shelf.NotMedia:
        problem(415, "not_media", "This is no photo or voice note.", fix="Send JPEG, WebP, WebM, MP4 or Ogg.")
    except shelf.TooLarge as large:
        problem(413, "too_large", "This photo or voice note is too large.", fix=f"Send at most {large.most} bytes.")
    except shelf.QuotaFull:
        problem(
            413, "quota_full", "This logbook's room for photos is used up.",
            fix="Whoever runs the server can raise FIELDTALLY_MEDIA_QUOTA_BYTES.",
        )  # fmt: skip
    except OSError as wrong:
        if wrong.errno not in NO_ROOM:
            raise
        problem(503, "no_room", "The server's disk is full.", fix="Keep it; whoever runs the server has to make room.")


def may_write(who: Member) -> None:
    if who.role not in KINDS["photo"].writers:
        problem(403, "not_allowed", "A reader cannot add photos.", fix="Ask the rider.")


def digest_in(name: str) -> str:
    if not SHA256.fullmatch(name):
        problem(404, "not_found", "A photo is asked for by its SHA-256.")
    return name


def whole_header(name: str) -> int:
    text = request.headers.get(name, "")
    if not WHOLE_NUMBER.fullmatch(text):
        problem(400, "out_of_range", f"{name} must be a whole number of bytes.", field=name, fix="See protocol.md.")
    return int(text)


def how_much(logbook_id: str, digest: str) -> Response:
    whole = blobs().size(logbook_id, digest)
    received = blobs().received(logbook_id, digest) if whole is None else whole
    return Response(headers={"Upload-Offset": str(received), "Upload-Complete": "?0" if whole is None else "?1"})


def as_file(data: bytes) -> Response:
    found = media_type(data) or "application/octet-stream"
    response = Response(data, content_type=found)
    response.headers["Content-Disposition"] = f'attachment; filename="{FILE_NAMES.get(found, "file.bin")}"'
    response.headers["Content-Security-Policy"] = NO_PAGE
    return response
