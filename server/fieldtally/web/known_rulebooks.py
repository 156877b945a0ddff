"""The rulebooks this server knows: those shipped and those added to the data folder, read again when a file
there changes."""

from functools import lru_cache
from pathlib import Path

from flask import current_app

from fieldtally.trade.rulebook import Rulebook, RulebookError, available

Fingerprint = tuple[tuple[str, int, int], ...]


def known_rulebooks() -> dict[str, Rulebook]:
    """By id. An added file that cannot be used is passed over, with a word in the log."""
    return _read(current_app.config["SETTINGS"].data_dir, added())


def added() -> Fingerprint:
    """Changes whenever an added rulebook does: name, time and size of each file."""
    folder = Path(current_app.config["SETTINGS"].data_dir, "rulebooks")
    stats = ((path.name, path.stat()) for path in sorted(folder.glob("*.toml")))
    return tuple((name, stat.st_mtime_ns, stat.st_size) for name, stat in stats)


@lru_cache(maxsize=8)
def _read(data_dir: Path, _: Fingerprint) -> dict[str, Rulebook]:
    return available(data_dir, _log_unusable)


def _log_unusable(wrong: RulebookError) -> None:
    current_app.logger.warning("%s is passed over: %s: %s %s", wrong.file, wrong.key, wrong.reason, wrong.fix)
