"""Takes the body of a push apart without trusting it: the head, and each entry's own piece of JSON.

The entries are cut out by their brackets and parsed one at a time, so that one that is broken, deep or huge
costs itself only, and memory stays flat whatever is sent. The head is the rest of the object.
"""

import json
import re
from collections.abc import Iterator
from dataclasses import dataclass

TOKEN = re.compile(rb'"(?:[^"\\]++|\\.)*+"|[][{},]', re.DOTALL)
MOST_TOKENS = 1_000_000  # a push of 500 ordinary entries has some 30,000
MOST_DEPTH = 64
LONGEST_WHOLE = 17  # digits; a longer whole number is read as a float, as browsers do

NOT_JSON = object()
"""Stands for an entry that is no JSON; it is refused as such, its neighbours are not."""


class BadBody(Exception):
    """The body as a whole cannot be taken apart: `code`, and what is wrong in words."""

    def __init__(self, code: str, message: str) -> None:
        super().__init__(message)
        self.code, self.message = code, message


@dataclass(frozen=True)
class PushBody:
    """`head` is everything but the entries; `pieces` say where in `text` each entry stands, in order."""

    head: dict
    text: bytes
    pieces: list[slice]

    def entries(self) -> Iterator[object]:
        return (read_piece(self.text[piece]) for piece in self.pieces)


def take_apart(body: bytes, most_entries: int) -> PushBody:
    """Raises BadBody with code bad_json, too_deep, too_complex or too_many_entries."""
    cut = _Cut(most_entries)
    for token in TOKEN.finditer(body):
        cut.take(token, body)
    if cut.depth or cut.array is None:
        raise BadBody("bad_json", "This is not a JSON object with a list of entries.")
    start, end = cut.array
    return PushBody(_head(body[:start] + b"[]" + body[end:]), body, cut.pieces)


def read_piece(piece: bytes) -> object:
    try:
        return json.loads(piece.decode("utf-8", "surrogatepass"), parse_int=_whole)
    except (ValueError, RecursionError):
        return NOT_JSON


def _whole(digits: str) -> int | float:
    return int(digits) if len(digits) <= LONGEST_WHOLE else float(digits)


def _head(text: bytes) -> dict:
    try:
        head = json.loads(text.decode("utf-8", "surrogatepass"), parse_int=_whole)
    except (ValueError, RecursionError):
        head = None
    if not isinstance(head, dict) or head.get("entries") != []:
        raise BadBody("bad_json", "This is not a JSON object with a list of entries.")
    return head


class _Cut:
    """Follows the brackets. The entries are the array that the key "entries" of the outermost object names."""

    def __init__(self, most_entries: int) -> None:
        self.most_entries = most_entries
        self.depth, self.tokens = 0, 0
        self.array: tuple[int, int] | None = None
        self.pieces: list[slice] = []
        self.piece_start: int | None = None
        self.key_end: int | None = None

    def take(self, token: re.Match[bytes], body: bytes) -> None:
        self.tokens += 1
        if self.tokens > MOST_TOKENS:
            raise BadBody("too_complex", "This push has more parts than 500 entries can have.")
        first = body[token.start()]
        if first in b"[{":
            self._open(token, body)
        elif first in b"]}":
            self._close(token, body)
        elif self.depth == 1:
            self.key_end = token.end() if token.group() == b'"entries"' else None
        elif first == ord(",") and self.depth == 2 and self.piece_start is not None:
            self._add(slice(self.piece_start, token.start()))
            self.piece_start = token.end()

    def _open(self, token: re.Match[bytes], body: bytes) -> None:
        named = self.key_end is not None and body[self.key_end : token.start()].strip() == b":"
        if self.depth == 1 and named and self.array is None and body[token.start()] == ord("["):
            self.piece_start = token.end()
            self.array = (token.start(), len(body))
        self.key_end = None
        self.depth += 1
        if self.depth > MOST_DEPTH:
            raise BadBody("too_deep", "This push is nested too deeply.")

    def _close(self, token: re.Match[bytes], body: bytes) -> None:
        self.depth -= 1
        if self.depth < 0:
            raise BadBody("bad_json", "This is not JSON that can be read.")
        if self.depth == 1 and self.piece_start is not None:
            self.array = (self.array[0], token.end())
            last = slice(self.piece_start, token.start())
            if self.pieces or body[last].strip():
                self._add(last)
            self.piece_start = None

    def _add(self, piece: slice) -> None:
        if len(self.pieces) == self.most_entries:
            raise BadBody("too_many_entries", f"One push takes {self.most_entries} entries.")
        self.pieces.append(piece)
