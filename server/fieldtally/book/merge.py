"""Merges several edits of one body, part by part. A part is one field, or a group of fields that state one
fact together (book.together). Text is never merged: a note is one part."""

from dataclasses import dataclass, field

from fieldtally.book.together import TOGETHER

Part = tuple[str, ...]


@dataclass
class Merged:
    """`body` settles every dispute in favour of the last edit. `contenders` are the places of the edits
    that have a say in a dispute, `own` what each of them says."""

    body: dict = field(default_factory=dict)
    disputed: tuple[str, ...] = ()
    own: dict[int, dict] = field(default_factory=dict)

    @property
    def contenders(self) -> list[int]:
        return sorted(self.own)

    def side(self, place: int) -> dict:
        """The body if the edit at `place` wins every dispute it takes part in."""
        return {**self.body, **self.own[place]}


def merge(kind: str, bases: list[dict], edits: list[dict]) -> Merged:
    """Merge complete bodies of one kind, the edit of the highest number last.

    `bases` are their nearest common ancestors. With none, or where several disagree, there is nothing to
    tell an edit from what was there before, so any difference is a dispute.
    """
    merged = Merged()
    for part in parts_of(kind, edits):
        _merge_part(merged, part, bases, edits)
    return merged


def parts_of(kind: str, bodies: list[dict]) -> list[Part]:
    groups = list(TOGETHER.get(kind, ()))
    grouped = {name for group in groups for name in group}
    single = sorted({name for body in bodies for name in body} - grouped)
    return [*groups, *((name,) for name in single)]


def _merge_part(merged: Merged, part: Part, bases: list[dict], edits: list[dict]) -> None:
    before = _agreed([_values(part, base) for base in bases])
    changed = [place for place, edit in enumerate(edits) if before is None or _values(part, edit) != before]
    said = [_values(part, edits[place]) for place in changed]
    merged.body |= said[-1] if said else before
    if any(values != said[0] for values in said):
        merged.disputed += tuple(name for name in part if any(v.get(name) != said[0].get(name) for v in said))
        for place, values in zip(changed, said, strict=True):
            merged.own.setdefault(place, {}).update(values)


def _values(part: Part, body: dict) -> dict:
    return {name: body[name] for name in part if name in body}


def _agreed(values: list[dict]) -> dict | None:
    return values[0] if values and all(each == values[0] for each in values) else None
