"""Ids for invented records: the same scenario loaded twice gives the same ids, so loading is repeatable."""

from hashlib import sha256
from uuid import UUID, uuid5

NAMESPACE = UUID("6f1d1c7e-6a0c-5b43-9c55-0d8f2f6b7a10")


def record_id(*parts: str) -> str:
    """The id of the record that `parts` names within a scenario."""
    return str(uuid5(NAMESPACE, "/".join(parts)))


def entry_id(at_ms: int, *parts: str) -> str:
    """A version 7 UUID (RFC 9562) whose random bits come from `parts`; `at_ms` is ms since 1970 UTC."""
    noise = int.from_bytes(sha256("/".join(parts).encode()).digest()[:10])
    bits = (at_ms & (1 << 48) - 1) << 80 | noise
    bits = bits & ~(0xF << 76) | 0x7 << 76
    bits = bits & ~(0x3 << 62) | 0x2 << 62
    return str(UUID(int=bits))
