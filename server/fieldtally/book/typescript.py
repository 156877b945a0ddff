"""Writes webclient/src/entries/bodies.ts from the kinds, so that there is one description of a body.

Run `python -m fieldtally.book.typescript` after any change of kinds.py, bodies/, words.py or together.py. A test
compares the file with what this would write.
"""

import json
import sys
from pathlib import Path

from marshmallow import fields, missing

from fieldtally.book import words
from fieldtally.book.fields import Choice, CivilDate, Number, RecordId, Text
from fieldtally.book.kinds import KINDS, Body
from fieldtally.book.together import TOGETHER
from fieldtally.book.upcast import default_of, nested_in

TARGET = Path(__file__).parents[3] / "webclient" / "src" / "entries" / "bodies.ts"

TYPE_NAMES = {
    "ACTIVITIES": "Activity", "GOING": "Going", "PROFILES": "Profile", "ASKS": "Ask", "REINS": "Rein",
    "GROUNDS": "Ground", "WAYS": "Way", "LANDINGS": "Landing", "COMPANIES": "Company", "PACES": "Pace",
    "OUTCOMES": "Outcome", "STOPS": "Stop", "FALLS": "Fall", "ATTITUDES": "Attitude",
    "MEASURED_BY": "MeasuredBy", "CLOCKS": "ClockVerdict", "STARTS": "Start",
    "EVENT_STATUSES": "EventStatus", "DECISIONS": "Decision", "PHASES": "Phase", "RULEBOOK_PARTS": "RulebookPart",
    "ROLES": "Role", "TRACE_SOURCES": "TraceSource", "PHOTO_TYPES": "PhotoType", "VOICE_TYPES": "VoiceType",
}  # fmt: skip

HEADER = """\
// Made from the server's book/kinds.py by `python -m fieldtally.book.typescript`; a test checks that it is
// up to date. Do not edit it: edit kinds.py and run that again.
"""

TAIL = """\
type Shape = {
  readonly [key: string]: { readonly missing?: unknown; readonly shape?: Shape; readonly many?: true };
};

/** The body with every default filled in, as screens and the fold read it. The one given is not changed. */
export function completeBody<K extends KindName>(kind: K, body: BodyInputs[K]): Bodies[K] {
  return complete(SHAPES[kind], body as unknown as Record<string, unknown>) as unknown as Bodies[K];
}

function complete(shape: Shape, body: Record<string, unknown>): Record<string, unknown> {
  const full: Record<string, unknown> = { ...body };
  for (const [key, part] of Object.entries(shape)) {
    if (full[key] === undefined && "missing" in part) full[key] = structuredClone(part.missing);
    if (part.shape && full[key] != null) full[key] = completePart(part.shape, full[key], part.many);
  }
  return full;
}

function completePart(shape: Shape, value: unknown, many: true | undefined): unknown {
  if (!many) return complete(shape, value as Record<string, unknown>);
  return (value as Record<string, unknown>[]).map((each) => complete(shape, each));
}
"""


def typescript() -> str:
    """The whole text of bodies.ts."""
    schemas = all_schemas()
    parts = [HEADER, *vocabularies(), *map(interface, schemas), *map(input_interface, schemas)]
    parts += [maps(), kinds(), limits(), together(), shapes(), TAIL]
    return "\n".join(parts)


def vocabularies() -> list[str]:
    return [
        f"export const {name} = {array(values)} as const;\n"
        f"export type {TYPE_NAMES[name]} = (typeof {name})[number];\n"
        for name, values in vars(words).items()
        if name.isupper()
    ]


def all_schemas() -> list[type[Body]]:
    """Every schema once, the inner ones before those that hold them."""
    found: dict[type[Body], None] = {}
    for kind in KINDS.values():
        for field in kind.schema().fields.values():
            if (inner := nested_in(field)) is not None:
                found[type(inner.schema)] = None
        found[kind.schema] = None
    return list(found)


def interface(schema: type[Body]) -> str:
    lines = (f"  {name}: {type_of(field)};" for name, field in schema().fields.items())
    return "\n".join([f"export interface {schema.__name__} {{", *lines, "}\n"])


def input_interface(schema: type[Body]) -> str:
    """The same body as it may be written: what has a default may be left out."""
    lines = (
        f"  {name}{'' if default_of(field) is missing else '?'}: {type_of(field, 'Input')};"
        for name, field in schema().fields.items()
    )
    return "\n".join([f"export interface {schema.__name__}Input {{", *lines, "}\n"])


def type_of(field: fields.Field, suffix: str = "") -> str:
    if isinstance(field, fields.List):
        inner = type_of(field.inner, suffix)
        return f"({inner})[]" if "|" in inner else f"{inner}[]"
    plain = plain_type(field, suffix)
    return f"{plain} | null" if field.allow_none else plain


def plain_type(field: fields.Field, suffix: str) -> str:
    match field:
        case fields.Nested():
            return type(field.schema).__name__ + suffix
        case Choice():
            return choice_type(field.words)
        case Number():
            return "number"
        case fields.Boolean():
            return "boolean"
        case Text() | RecordId() | CivilDate():
            return "string"
    raise TypeError(f"no TypeScript type for {field!r}")


def choice_type(values: tuple[str, ...]) -> str:
    for name, vocabulary in vars(words).items():
        if name.isupper() and vocabulary == values:
            return TYPE_NAMES[name]
    return " | ".join(json.dumps(value) for value in values)


def maps() -> str:
    full = (f"  {kind.name}: {kind.schema.__name__};" for kind in KINDS.values())
    given = (f"  {kind.name}: {kind.schema.__name__}Input;" for kind in KINDS.values())
    return "\n".join([
        "/** kind -> its body, complete. */", "export interface Bodies {", *full, "}\n",
        "/** kind -> its body as it may be written: defaults left out. */",
        "export interface BodyInputs {", *given, "}\n",
        "export type KindName = keyof Bodies;\n",
    ])  # fmt: skip


def kinds() -> str:
    lines = (
        f"  {kind.name}: {{ version: {kind.version}, evidence: {json.dumps(kind.evidence)}, "
        f"writers: {array(kind.writers)} }},"
        for kind in KINDS.values()
    )
    shape = "{ readonly version: number; readonly evidence: boolean; readonly writers: readonly Role[] }"
    return "\n".join([f"export const KINDS: {{ readonly [K in KindName]: {shape} }} = {{", *lines, "};\n"])


def limits() -> str:
    """The limits of every field, by kind and dotted path, so that a form can refuse before the server."""
    table = {kind.name: dict(limits_in(kind.schema)) for kind in KINDS.values()}
    return (
        "export interface Limit {\n  readonly least?: number;\n  readonly most?: number;\n"
        "  readonly unit?: string;\n  readonly whole?: boolean;\n  readonly characters?: number;\n}\n\n"
        "/** Limits by kind and field path; inner bodies are reached with a dot. */\n"
        f"export const LIMITS: {{ readonly [K in KindName]: {{ readonly [path: string]: Limit }} }} = "
        f"{literal(table)};\n"
    )


def limits_in(schema: type[Body], prefix: str = ""):
    for name, field in schema().fields.items():
        inner = field.inner if isinstance(field, fields.List) else field
        if isinstance(inner, Number):
            yield prefix + name, {"least": inner.least, "most": inner.most, "unit": inner.unit,
                                  "whole": inner.whole}  # fmt: skip
        elif isinstance(inner, Text):
            yield prefix + name, {"least": inner.least, "characters": inner.most}
        elif isinstance(inner, fields.Nested):
            yield from limits_in(type(inner.schema), f"{prefix}{name}.")


def together() -> str:
    return (
        "/** Fields that state one fact between them: edits inside a group never merge. */\n"
        "export const TOGETHER: { readonly [kind: string]: readonly (readonly string[])[] } = "
        f"{literal(TOGETHER)};\n"
    )


def shapes() -> str:
    table = {kind.name: shape(kind.schema) for kind in KINDS.values()}
    return f"const SHAPES: {{ readonly [K in KindName]: Shape }} = {literal(table)};\n"


def shape(schema: type[Body]) -> dict:
    parts: dict[str, dict] = {}
    for name, field in schema().fields.items():
        part = parts[name] = {}
        if (default := default_of(field)) is not missing:
            part["missing"] = default
        if (inner := nested_in(field)) is not None:
            part["shape"] = shape(type(inner.schema))
            if inner is not field:
                part["many"] = True
    return {name: part for name, part in parts.items() if part}


def array(values) -> str:
    return json.dumps(list(values))


def literal(value) -> str:
    """JSON with one line per entry of the two outer levels: readable in a diff, and valid TypeScript."""
    if not isinstance(value, dict):
        return json.dumps(value)
    rows = ",\n".join(f"  {json.dumps(key)}: {json.dumps(inner)}" for key, inner in value.items())
    return f"{{\n{rows},\n}}"


def write(target: Path, text: str) -> None:
    """Writes a file that is made, not typed, and says which."""
    target.parent.mkdir(parents=True, exist_ok=True)
    target.write_text(text, encoding="utf-8")
    sys.stdout.write(f"{target}\n")


def main() -> None:
    write(TARGET, typescript())


if __name__ == "__main__":
    main()
