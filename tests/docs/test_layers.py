"""The arrows between the folders point one way, and the pure parts stay pure (design: layout)."""

import ast
import subprocess
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
PACKAGE = ROOT / "server" / "fieldtally"

# folder -> our own folders it may import
MAY_IMPORT = {
    "trade": {"trade"},
    "book": {"book", "trade"},
    "readiness": {"readiness", "book", "trade"},
    "reports": {"reports", "readiness", "book", "trade"},
    "store": {"store", "book", "trade", "settings"},
    "web": {"web", "store", "reports", "readiness", "book", "trade", "settings"},
    "demo": {"demo", "web", "store", "reports", "readiness", "book", "trade", "settings", "", "cli"},
    "cli": {"cli", "demo", "web", "store", "reports", "readiness", "book", "trade", "settings", ""},
    "migrations": {"migrations", "store"},
}
PURE = ("trade", "book", "readiness")
NOT_PURE = {
    "flask", "sqlalchemy", "flask_sqlalchemy", "flask_login", "flask_migrate", "flask_limiter",
    "alembic", "psycopg", "waitress",
}  # fmt: skip


def imported(path: Path) -> set[str]:
    names: set[str] = set()
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Import):
            names |= {alias.name for alias in node.names}
        elif isinstance(node, ast.ImportFrom):
            assert node.level == 0, f"{path}: write imports in full, not relative"
            names |= {f"{node.module}.{alias.name}" for alias in node.names}
    return names


def files(folder: str) -> list[Path]:
    return sorted((PACKAGE / folder).rglob("*.py"))


def our_folder(name: str) -> str | None:
    """The folder of ours that an imported name lives in; "" for the package itself (the app)."""
    parts = name.split(".")
    if parts[0] != "fieldtally":
        return None
    if len(parts) > 1 and ((PACKAGE / parts[1]).is_dir() or (PACKAGE / f"{parts[1]}.py").exists()):
        return parts[1]
    return ""


@pytest.mark.parametrize("folder", MAY_IMPORT)
def test_imports_go_one_way(folder):
    wrong = {
        f"{path.relative_to(PACKAGE)} imports {name}"
        for path in files(folder)
        for name in imported(path)
        if our_folder(name) is not None and our_folder(name) not in MAY_IMPORT[folder]
    }
    assert not wrong


@pytest.mark.parametrize("folder", PURE)
def test_pure_parts_know_neither_web_nor_database(folder):
    wrong = {
        f"{path.name} imports {name}"
        for path in files(folder)
        for name in imported(path)
        if name.split(".")[0] in NOT_PURE
    }
    assert not wrong


def test_every_folder_is_listed():
    folders = {path.name for path in PACKAGE.iterdir() if path.is_dir() and list(path.rglob("*.py"))}
    assert folders - {"__pycache__"} == set(MAY_IMPORT)


def test_the_checker_sees_a_forbidden_import(tmp_path):
    bad = tmp_path / "bad.py"
    bad.write_text("from fieldtally.web import sync\nimport flask\n")
    assert our_folder(next(iter(name for name in imported(bad) if name.startswith("fieldtally")))) == "web"
    assert "flask" in imported(bad)


def test_top_level_holds_only_what_it_should():
    allowed = {"README.md", "DEVELOPERS.md", "CHANGELOG.md", "LICENSE", "pyproject.toml", "server", "webclient",
               "tests", "fixtures", "docs", ".ci", ".gitignore"}  # fmt: skip
    tracked = subprocess.run(["git", "ls-files"], cwd=ROOT, capture_output=True, text=True, check=True).stdout
    assert {line.split("/")[0] for line in tracked.splitlines()} <= allowed
