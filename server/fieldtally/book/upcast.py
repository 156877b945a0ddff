"""Reads a body of any released version as today's: stored text is never rewritten, it is brought up to
date each time it is read.

To change a kind so that old bodies no longer fit: raise its version in book.kinds and add the step from
the version before to STEPS. To add a field with a default, raise the version too, so that an older server
holds the new bodies untouched; no step is needed here.
"""

from collections.abc import Callable
from copy import deepcopy
from dataclasses import dataclass
from functools import cache
from sys import intern

from marshmallow import fields, missing

from fieldtally.book.fields import Choice, RecordId
from fieldtally.book.kinds import KINDS, Body

MOST_SHARED = 20_000
"""More than the words of a presentation can be put together in a lifetime; a bound all the same."""

STEPS: dict[tuple[str, int], Callable[[dict], dict]] = {}
"""(kind, version) -> what makes a body of the next version of it."""


@dataclass(frozen=True)
class Shape:
    """What a body must hold once complete: `plain` defaults, and the keys that hold bodies of their own.

    A body read from its text has copies of its own of every key, id and word. Thousands of bodies read fastest
    where they share them and lie close together: the keys are those of `plain`, what is `repeated` is
    interned, and `plain` is a copy, because a copy is as small as can be and one that grew is not.
    """

    plain: dict
    demanded: tuple[str, ...]  # keys without a default; in `plain` only to lend the body their own text
    nested: tuple[tuple[str, "Shape", bool], ...]  # key, its shape, whether it is a list of them
    fresh: dict  # defaults that are lists or bodies and must not be shared
    repeated: tuple[str, ...]  # keys of ids and words: thousands of attempts say the same few
    shared: dict[tuple, dict] | None  # where it holds words alone: one body for all that say the same


def readable(kind: str, version: int) -> bool:
    """Whether this release knows the kind and this version of it."""
    return kind in KINDS and 1 <= version <= KINDS[kind].version


def current(kind: str, version: int, body: dict) -> dict:
    """The body as today's release reads it, every default filled in. The body given is not changed.

    Raises KeyError for what is not `readable`.
    """
    for step in range(version, KINDS[kind].version):
        body = STEPS.get((kind, step), as_it_is)(body)
    return complete(shape_of(KINDS[kind].schema), body)


def as_it_is(body: dict) -> dict:
    """The step to a version that only added fields with a default."""
    return body


def one_for_all(shape: Shape, body: dict) -> dict:
    """The complete body; where it holds words alone, as a presentation does, the same one for all that say
    the same. A season says the same thing thousands of times: so it lies in memory once, and whoever
    reads it can tell by its identity that it was read before. Nobody changes a body that was read."""
    if shape.shared is None:
        return complete(shape, body)
    says = tuple(body.items())
    found = shape.shared.get(says)
    if found is None:
        found = complete(shape, body)
        if len(shape.shared) < MOST_SHARED:
            shape.shared[says] = found
    return found


def complete(shape: Shape, body: dict) -> dict:
    full = shape.plain.copy()
    full.update(body)
    for key in shape.demanded:
        if key not in body:
            del full[key]
    for key in shape.repeated:
        value = full.get(key)
        if type(value) is str:
            full[key] = intern(value)
    for key, default in shape.fresh.items():
        if key not in body:
            full[key] = deepcopy(default)
    for key, inner, many in shape.nested:
        value = full.get(key)
        if value is not None:
            full[key] = [complete(inner, each) for each in value] if many else one_for_all(inner, value)
    return full


@cache
def shape_of(schema: type[Body]) -> Shape:
    declared = schema().fields
    defaults = {name: default_of(field) for name, field in declared.items()}
    known = {name: default for name, default in defaults.items() if default is not missing}
    fresh = {name: default for name, default in known.items() if isinstance(default, (list, dict))}
    return Shape(
        plain={name: None if name in fresh else default for name, default in defaults.items()}.copy(),
        demanded=tuple(name for name in declared if name not in known),
        fresh=fresh,
        nested=tuple(
            (name, shape_of(type(inner.schema)), inner is not field)
            for name, field in declared.items()
            if (inner := nested_in(field)) is not None
        ),
        repeated=tuple(name for name, field in declared.items() if isinstance(field, (Choice, RecordId))),
        shared={} if all(isinstance(field, Choice) for field in declared.values()) else None,
    )


def default_of(field: fields.Field):
    """The value an absent field stands for, or marshmallow's `missing` if it must be given."""
    return field.load_default() if callable(field.load_default) else field.load_default


def nested_in(field: fields.Field) -> fields.Nested | None:
    inner = field.inner if isinstance(field, fields.List) else field
    return inner if isinstance(inner, fields.Nested) else None
