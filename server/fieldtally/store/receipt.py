"""Receipts: the server's signature under who wrote an entry and when it came.

Every pulled entry carries one. After a restore from a backup, whoever still holds an entry sends it again,
its author or not; the receipt proves that this server once took it from that author, so it gets its author
back. Without a valid receipt an entry is always by the account that sends it.
"""

import hmac
import json
from dataclasses import dataclass
from hashlib import sha256

from fieldtally.book.fields import UUID_PATTERN
from fieldtally.book.instant import parse_instant


@dataclass(frozen=True)
class Origin:
    """Who wrote an entry, on which device, and how it reached the server. `skew_ms`: server less phone."""

    author: str
    device: str
    skew_ms: int | None
    received_at_ms: int


def sign(key: str, logbook_id: str, content_digest: str, origin: Origin) -> str:
    """The receipt for this content in this logbook: 128 bits of HMAC-SHA256, as hex."""
    signed = json.dumps(
        [logbook_id, content_digest, origin.author, origin.device, origin.skew_ms, origin.received_at_ms]
    )
    return hmac.new(bytes.fromhex(key), signed.encode(), sha256).hexdigest()[:32]


def proven_origin(key: str, logbook_id: str, content_digest: str, claim: dict) -> Origin | None:
    """The origin an entry claims on the wire, if its receipt proves it."""
    origin = _claimed(claim)
    receipt = claim.get("receipt")
    if origin is None or not isinstance(receipt, str) or not receipt.isascii():
        return None
    proven = hmac.compare_digest(receipt, sign(key, logbook_id, content_digest, origin))
    return origin if proven else None


def _claimed(claim: dict) -> Origin | None:
    author, device, skew_ms = claim.get("author"), claim.get("device"), claim.get("skew_ms")
    received_at = claim.get("received_at")
    received_at_ms = parse_instant(received_at) if isinstance(received_at, str) else None
    ids = all(isinstance(each, str) and UUID_PATTERN.fullmatch(each) for each in (author, device))
    if not ids or received_at_ms is None or not (skew_ms is None or type(skew_ms) is int):
        return None
    return Origin(author, device, skew_ms, received_at_ms)
