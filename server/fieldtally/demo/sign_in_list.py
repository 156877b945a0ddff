"""The passwords made up for a demonstration, kept beside its database so that they can be shown again."""

import json
import os
from pathlib import Path

from fieldtally.demo.load import CanSignIn

FILE = "who-can-sign-in.json"


def keep(folder: Path, people: list[CanSignIn]) -> None:
    """Write the list where only its owner can read it."""
    text = json.dumps([person.to_json() for person in people], ensure_ascii=False, indent=2)
    handle = os.open(folder / FILE, os.O_WRONLY | os.O_CREAT | os.O_TRUNC, 0o600)
    with open(handle, "w", encoding="utf-8") as out:
        out.write(text + "\n")


def kept(folder: Path) -> list[CanSignIn] | None:
    """The list, or None where no demonstration was made."""
    file = folder / FILE
    if not file.exists():
        return None
    return [CanSignIn(**person) for person in json.loads(file.read_text(encoding="utf-8"))]
