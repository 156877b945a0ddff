"""The API described for other programs: OpenAPI 3.1, made from the kinds' schemas and the rooms themselves.

The bodies come from book.kinds, the paths and their sentences from the rooms; only the shapes of questions
and answers around them are written here, in openapi_shapes.py.
"""

from functools import lru_cache

from apispec import APISpec
from apispec.ext.marshmallow import MarshmallowPlugin
from flask import Blueprint, Flask, current_app
from marshmallow import fields
from werkzeug.routing import Rule

from fieldtally.book.fields import Choice, CivilDate, Number, RecordId, Text
from fieldtally.book.kinds import KINDS
from fieldtally.web.openapi_shapes import ANSWERS, HEADERS, PUBLIC, QUERIES, QUESTIONS, SHAPES
from fieldtally.web.version import VERSION

bp = Blueprint("openapi", __name__, url_prefix="/api")

FAILED = {"description": "What went wrong, in the one shape of docs/errors.md", "schema": "Error"}


@bp.get("/openapi.json")
def openapi():
    """This description."""
    return description(current_app._get_current_object())


@lru_cache(maxsize=1)
def description(app: Flask) -> dict:
    """The whole document. A room that openapi_shapes.py does not know answers "any object"; a test minds."""
    plugin = MarshmallowPlugin()
    spec = APISpec("Fieldtally", VERSION, "3.1.0", plugins=[plugin], info={"description": "See docs/protocol.md."})
    plugin.converter.add_attribute_function(our_field)
    spec.components.security_scheme("session", {"type": "apiKey", "in": "cookie", "name": "fieldtally"})
    for name, shape in SHAPES.items():
        spec.components.schema(name, shape)
    for kind in KINDS.values():
        spec.components.schema(kind.schema.__name__, schema=kind.schema)
    spec.components.schema("Body", {"anyOf": [ref(kind.schema.__name__) for kind in KINDS.values()]})
    for rule in rules(app):
        operations = {m.lower(): operation(app, rule, m) for m in sorted(rule.methods - {"HEAD", "OPTIONS"})}
        spec.path(path_of(rule), operations=operations)
    return spec.to_dict()


def rules(app: Flask) -> list[Rule]:
    return sorted((rule for rule in app.url_map.iter_rules() if rule.rule.startswith("/api/")), key=str)


def path_of(rule: Rule) -> str:
    return rule.rule.replace("<", "{").replace(">", "}")


def operation(app: Flask, rule: Rule, method: str) -> dict:
    said = {"summary": sentence(app.view_functions[rule.endpoint]), "operationId": rule.endpoint.replace(".", "_")}
    parameters = [parameter(name, "path", {"type": "string"}, True) for name in sorted(rule.arguments)]
    parameters += [parameter(name, "query", shape) for name, shape in QUERIES.get(rule.endpoint, {}).items()]
    parameters += [parameter(name, "header", shape, True) for name, shape in HEADERS.get(rule.endpoint, {}).items()]
    if method != "GET":
        parameters.append(parameter("X-Fieldtally", "header", {"const": "1"}, True))
    said["parameters"] = parameters
    if rule.endpoint in QUESTIONS:
        said["requestBody"] = {"required": True, **json_of(QUESTIONS[rule.endpoint])}
    if rule.endpoint not in PUBLIC:
        said["security"] = [{"session": []}]
    return said | {"responses": responses(rule.endpoint)}


def responses(endpoint: str) -> dict:
    answer = ANSWERS.get(endpoint, "Anything")
    good = {"204": {"description": "Done"}} if answer is None else {"200": {"description": "Done", **json_of(answer)}}
    return good | {"default": {"description": FAILED["description"], **json_of(FAILED["schema"])}}


def parameter(name: str, where: str, shape: dict, required: bool = False) -> dict:
    return {"name": name, "in": where, "required": required, "schema": shape}


def sentence(view) -> str:
    """The first sentence of the room's docstring, or its name in words."""
    text = " ".join((view.__doc__ or view.__name__.replace("_", " ").capitalize()).split())
    return text.split(". ")[0].rstrip(".")


def json_of(name: str) -> dict:
    content_type = "application/octet-stream" if name == "Bytes" else "application/json"
    return {"content": {content_type: {"schema": ref(name)}}}


def ref(name: str) -> dict:
    return {"$ref": f"#/components/schemas/{name}"}


def our_field(self, field: fields.Field, **_) -> dict:
    """What apispec cannot know of book.fields: type and limits."""
    shape = _shape(field)
    if shape and field.allow_none:
        shape["type"] = [shape["type"], "null"]
        if "enum" in shape:
            shape["enum"] = [*shape["enum"], None]
    return shape


def _shape(field: fields.Field) -> dict:
    match field:
        case Text():
            return {"type": "string", "minLength": field.least, "maxLength": field.most}
        case Number():
            type_name = "integer" if field.whole else "number"
            return {"type": type_name, "minimum": field.least, "maximum": field.most, "x-unit": field.unit}
        case Choice():
            return {"type": "string", "enum": list(field.words)}
        case RecordId():
            return {"type": "string", "format": "uuid"}
        case CivilDate():
            return {"type": "string", "format": "date"}
    return {}
