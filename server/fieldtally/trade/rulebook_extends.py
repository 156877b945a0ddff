"""Editions that say only what changed: `extends = "us-2014"` takes everything else from a shipped rulebook.

Tables are merged key by key and levels by id; a value is replaced whole, with its source and note. Where both
files have a list (asks, eligibility, notes, …) the newer one's counts. `{ withdrawn = true }` takes a key away.
A new level says after which level it comes, with `after`.
"""

from collections.abc import Callable

from fieldtally.trade.stated import RulebookError

DEEPEST = 5


def merged(base: dict, newer: dict) -> dict:
    """`base` with `newer` laid over it; neither is changed."""
    table = dict(base)
    for key, value in newer.items():
        if value == {"withdrawn": True}:
            table.pop(key, None)
        elif isinstance(value, dict) and isinstance(table.get(key), dict) and "value" not in value:
            table[key] = merged(table[key], value)
        else:
            table[key] = value
    return table


def merged_levels(base: list[dict], newer: list[dict], file: str) -> list[dict]:
    levels = list(base)
    for level in newer:
        places = {each.get("id"): place for place, each in enumerate(levels)}
        rest = {key: value for key, value in level.items() if key != "after"}
        if level.get("id") in places:
            place = places[level["id"]]
            levels[place] = merged(levels[place], rest)
        elif level.get("after") in places:
            levels.insert(places[level["after"]] + 1, rest)
        else:
            raise RulebookError(
                file, f"levels.{level.get('id')}.after", "this level is new and it is not clear where it stands.",
                f"Add after = one of: {', '.join(filter(None, places))}.",
            )  # fmt: skip
    return levels


def extended(table: dict, file: str, read_shipped: Callable[[str], dict | None], depth: int = 0) -> dict:
    """The table with what it extends filled in; a table that extends nothing is returned as it is."""
    if "extends" not in table:
        return table
    base = read_shipped(table["extends"]) if isinstance(table["extends"], str) else None
    if base is None or depth > DEEPEST:
        raise RulebookError(file, "extends", f"there is no shipped rulebook {table['extends']!r}.", "Check its id.")
    base = extended(base, file, read_shipped, depth + 1)
    newer = {key: value for key, value in table.items() if key not in ("extends", "levels")}
    levels = table.get("levels", [])
    if not isinstance(levels, list) or not all(isinstance(level, dict) for level in levels):
        raise RulebookError(file, "levels", "this must be a list of tables.", "Write each level under [[levels]].")
    return merged(base, newer) | {"levels": merged_levels(base["levels"], levels, file)}
