"""The README's first command, as a new user has it: only the tracked files, a new virtual environment."""

import json
import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]


@pytest.fixture(scope="module")
def installed(tmp_path_factory) -> Path:
    """Folder of a fresh copy with `pip install .` done in its own `.venv`."""
    copy = tmp_path_factory.mktemp("fresh") / "fieldtally"
    for name in run(["git", "ls-files", "--cached", "--others", "--exclude-standard", "-z"], ROOT).split("\0"):
        if name and (ROOT / name).is_file():
            (copy / name).parent.mkdir(parents=True, exist_ok=True)
            shutil.copy2(ROOT / name, copy / name)
    run([sys.executable, "-m", "venv", ".venv"], copy)
    run([".venv/bin/pip", "install", "--quiet", "--disable-pip-version-check", "."], copy)
    return copy


def run(words: list[str], folder: Path) -> str:
    environment = {key: value for key, value in os.environ.items() if key not in ("PYTHONPATH", "VIRTUAL_ENV")}
    done = subprocess.run(words, cwd=folder, env=environment, capture_output=True, text=True, timeout=900)
    assert done.returncode == 0, f"{words}: {done.stdout[-2000:]}{done.stderr[-4000:]}"
    return done.stdout


def test_the_client_is_built_and_installed(installed):
    told = run([".venv/bin/python", "-c", "import fieldtally; print(fieldtally.__path__[0])"], installed)
    package = Path(told.strip())
    assert ".venv" in str(package)
    assert (package / "static" / "index.html").is_file()
    assert (package / "static" / "sw.js").is_file()


def test_commands_without_a_server_work(installed):
    pace = json.loads(run([".venv/bin/fieldtally", "pace", "--distance", "420m", "--time", "63.2s",
                           "--target", "420", "--json"], installed))  # fmt: skip
    assert pace["speed_mpm"] == pytest.approx(60 * 420 / 63.2)  # v = 60 d / t, arithmetic
    fit = run([".venv/bin/fieldtally", "fit", "--rulebook", "us-2025",
               "--profile", "log", "--height", "2ft11"], installed)  # fmt: skip
    assert "Novice" in fit


def test_the_demonstration_tells_who_can_sign_in(installed):
    told = json.loads(run([".venv/bin/fieldtally", "demo", "--no-serve", "--json"], installed))
    assert {"wren", "idris"} <= {person["sign_in_name"] for person in told["people"]}


def test_doctor_is_content(installed):
    told = json.loads(run([".venv/bin/fieldtally", "doctor", "--json"], installed))
    assert told["ok"] is True
