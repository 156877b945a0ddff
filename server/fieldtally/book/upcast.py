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

from marshmallow import fields, missing

from fieldtally.book.kinds import KINDS, Body

STEPS: dict[tuple[str, int], Callable[[dict], dict]] = {}
"""(kind, version) -> what makes a body of the next version of it."""


@dataclass(frozen=True)
class Shape:
    """What a body must hold once complete: `plain` defaults, and the keys that hold bodies of their own."""

    plain: dict
    nested: tuple[tuple[str, "Shape", bool], ...]  # key, its shape, whether it is a list of them
    fresh: dict  # defaults that are lists or bodies and must not be shared


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


def complete(shape: Shape, body: dict) -> dict:
    full = {**shape.plain, **body}
    for key, default in shape.fresh.items():
        if key not in full:
            full[key] = deepcopy(default)
    for key, inner, many in shape.nested:
        value = full.get(key)
        if value is not None:
            full[key] = [complete(inner, each) for each in value] if many else complete(inner, value)
    return full


@cache
def shape_of(schema: type[Body]) -> Shape:
    declared = schema().fields
    defaults = {name: default_of(field) for name, field in declared.items()}
    known = {name: default for name, default in defaults.items() if default is not missing}
    return Shape(
        plain={name: default for name, default in known.items() if not isinstance(default, (list, dict))},
        fresh={name: default for name, default in known.items() if isinstance(default, (list, dict))},
        nested=tuple(
            (name, shape_of(type(inner.schema)), inner is not field)
            for name, field in declared.items()
            if (inner := nested_in(field)) is not None
        ),
    )


def default_of(field: fields.Field):
    """The value an absent field stands for, or marshmallow's `missing` if it must be given."""
    return field.load_default() if callable(field.load_default) else field.load_default


def nested_in(field: fields.Field) -> fields.Nested | None:
    inner = field.inner if isinstance(field, fields.List) else field
    return inner if isinstance(inner, fields.Nested) else None
