"""Turns marshmallow's table of errors into the one the user should mend first."""

from fieldtally.book.measure import Trouble

# Marshmallow's own sentences, which know neither our codes nor our fixes.
OWN_WORDS = {
    "Missing data for required field.": ("missing", "This is missing.", "Fill it in."),
    "Field may not be null.": ("missing", "This must not be empty.", "Fill it in."),
    "Not a valid boolean.": ("not_yes_or_no", "This must be true or false.", "Send true or false."),
    "Not a valid list.": ("not_a_list", "This must be a list.", "Send a JSON list."),
    "Invalid input type.": ("not_an_object", "This must be an object.", "Send a JSON object."),
    "Unknown field.": ("unknown_field", "This field is not known here.", "Remove it."),
}


def first_trouble(errors: dict | list, *path: str) -> Trouble:
    """The first error of the table, in the order of the schema's fields, with its path under `path`."""
    while isinstance(errors, dict):
        if "code" in errors:
            return _trouble(errors, path)
        key, errors = next(iter(errors.items()))
        path = path if key == "_schema" else (*path, str(key))
    return _trouble(errors[0], path)


def _trouble(error: dict | str, path: tuple[str, ...]) -> Trouble:
    where = ".".join(path) or None
    if isinstance(error, dict):
        return Trouble(error["code"], where, error["message"], error["fix"])
    code, message, fix = OWN_WORDS.get(error, ("invalid", str(error), "Send the body as documented."))
    return Trouble(code, where, message, fix)
