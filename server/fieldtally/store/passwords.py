"""Passwords: what one must be, and how it is kept (argon2id) and compared.

Composed and decomposed letters are one password: RFC 8265 section 4.2 (OpaqueString) maps every space to
U+0020 and normalises to NFC. NFKC is not used, since it would make different passwords equal.
Cost: OWASP Password Storage Cheat Sheet, argon2id with 19 MiB, 2 passes, 1 lane.
"""

import unicodedata

from argon2 import PasswordHasher, Type
from argon2.exceptions import InvalidHashError, VerificationError

from fieldtally.trade.bad_input import BadInput

SHORTEST, LONGEST = 12, 256  # characters
LEAST_DIFFERENT = 5  # different characters; fewer is a key held down
HASHER = PasswordHasher(time_cost=2, memory_cost=19 * 1024, parallelism=1, hash_len=32, salt_len=16, type=Type.ID)
# Compared against when nobody has the name, so that the answer takes as long as for a real account.
NOBODY = HASHER.hash("nobody has this name")


def prepared(password: str) -> str:
    """`password` as RFC 8265 compares it."""
    spaced = "".join(" " if unicodedata.category(letter) == "Zs" else letter for letter in password)
    return unicodedata.normalize("NFC", spaced)


def new_password(password: object, sign_in_name: str) -> str:
    """`password` prepared for keeping; BadInput says what it lacks."""
    if not isinstance(password, str) or not password.isprintable():
        raise BadInput("password", "A password is text that can be typed.", "Choose another one.")
    ready = prepared(password)
    if not SHORTEST <= len(ready) <= LONGEST:
        fix = f"Use {SHORTEST} to {LONGEST} characters; a few words in a row are easy to remember."
        raise BadInput("password", f"{len(ready)} characters is too short or too long.", fix)
    if len(set(ready.casefold())) < LEAST_DIFFERENT or _mostly_the_name(ready, sign_in_name):
        raise BadInput("password", "This password is easily guessed.", "Use a few words that have no link to you.")
    return ready


def _mostly_the_name(password: str, sign_in_name: str) -> bool:
    left = password.casefold()
    for known in (sign_in_name.casefold(), "fieldtally", "password"):
        left = left.replace(known, "")
    return len(left) < SHORTEST // 2


def hash_password(ready: str) -> str:
    return HASHER.hash(ready)


def password_matches(password: str, kept: str | None) -> bool:
    """Whether `password` is the one behind `kept`; None, for nobody, takes as long and is never right."""
    try:
        return HASHER.verify(kept or NOBODY, prepared(password)) and kept is not None
    except (VerificationError, InvalidHashError, UnicodeEncodeError):
        return False


def needs_new_hash(kept: str) -> bool:
    """Whether `kept` was made at another cost than today's."""
    return HASHER.check_needs_rehash(kept)
