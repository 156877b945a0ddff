"""Names of people: kept as typed, compared so that one person is one account.

“Zoë” typed composed, decomposed or in capitals is the same name on both databases, because the comparing
is done here and not by a database. Unicode Standard, sections 3.11 (NFKC) and 3.13 (case folding).
"""

import re
import unicodedata

from fieldtally.trade.bad_input import BadInput

LONGEST_NAME = 100  # characters as typed
LONGEST_KEY = 400  # characters; some letters grow when folded
NOT_IN_NAMES = ("Cc", "Cs", "Cn", "Co")  # controls, lone surrogates, unassigned, private use


def tidy_name(field: str, text: object) -> str:
    """`text` trimmed, runs of white space made one space; BadInput naming `field` if it cannot be a name."""
    if not isinstance(text, str):
        raise BadInput(field, "A name is text.", "Give a name.")
    name = re.sub(r"\s+", " ", text).strip()
    if not 1 <= len(name) <= LONGEST_NAME:
        raise BadInput(field, f"{len(name)} characters cannot be a name.", f"Give 1 to {LONGEST_NAME} characters.")
    if any(unicodedata.category(letter) in NOT_IN_NAMES for letter in name):
        raise BadInput(field, "This name holds a character that cannot be shown.", "Type it again.")
    return name


def sign_in_key(name: str) -> str:
    """`name` folded for comparing; BadInput if nothing comparable is left of it."""
    folded = unicodedata.normalize("NFKC", unicodedata.normalize("NFKC", name).casefold())
    seen = "".join(letter for letter in folded if unicodedata.category(letter) != "Cf")
    key = re.sub(r"\s+", " ", seen).strip()
    if not 1 <= len(key) <= LONGEST_KEY:
        raise BadInput("sign_in_name", "This cannot be a name.", "Use letters or digits.")
    return key
