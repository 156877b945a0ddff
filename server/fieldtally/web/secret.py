"""The key that signs cookies: made once, kept in the data folder, the same for every process and restart."""

import os
import secrets
import tempfile
from pathlib import Path

from fieldtally.settings import Settings


def secret_key(settings: Settings) -> str:
    """The configured key, or the one in the data folder, made there (readable by its owner only) if missing."""
    if settings.secret_key:
        return settings.secret_key
    file = settings.data_dir / "secret_key"
    if not file.exists():
        _make(file)
    return file.read_text("ascii").strip()


def _make(file: Path) -> None:
    """Write a whole key under another name, then link it: of two processes at once one wins, both read it."""
    file.parent.mkdir(mode=0o700, parents=True, exist_ok=True)
    handle, draft = tempfile.mkstemp(dir=file.parent, prefix=".secret_key-")  # mode 0600
    try:
        with os.fdopen(handle, "w", encoding="ascii") as out:
            out.write(secrets.token_urlsafe(48) + "\n")
        os.link(draft, file)
    except FileExistsError:
        pass
    finally:
        os.unlink(draft)
