"""A complete logbook as one JSON document, written piece by piece so that its size does not matter.

    {"fieldtally_export": 1, "logbook": {…}, "entries": […], "held": […], "media": […]}

`held` are entries this release could not read, as they came. `media` are the photos and voice notes, each as
{"sha256", "media_type", "size_bytes", "base64"}.
"""

import json
from collections.abc import Iterable, Iterator

FORMAT = 1


def as_text(value: object) -> str:
    return json.dumps(value, ensure_ascii=False, separators=(",", ":"))


def whole_logbook(
    logbook: dict, entries: Iterable[dict], held: Iterable[str], media: Iterable[dict] = ()
) -> Iterator[str]:
    """The pieces of the document. `held` are JSON texts and go in untouched."""
    yield f'{{"fieldtally_export":{FORMAT},"logbook":{as_text(logbook)},\n"entries":['
    yield from listed(as_text(entry) for entry in entries)
    yield '],\n"held":['
    yield from listed(held)
    yield '],\n"media":['
    yield from listed(as_text(each) for each in media)
    yield "]}\n"


def listed(texts: Iterable[str]) -> Iterator[str]:
    for place, text in enumerate(texts):
        yield ("\n" if place == 0 else ",\n") + text
