"""The commands printed in docs/pace.md and docs/scoring.md run, and print what the page shows."""

import re
import shlex
from pathlib import Path

import pytest
from click.testing import CliRunner

from fieldtally.cli import main

DOCS = Path(__file__).parents[2] / "docs"
BLOCK = re.compile(r"^```console\n(.*?)^```$", re.MULTILINE | re.DOTALL)
RESULTS = "date,event,level_id,status,horse\n2024-05-01,Heathfold,training,completed,Brindle\n"


def commands():
    """(command line, output shown or "") of each page, in order."""
    for page in ("pace.md", "scoring.md"):
        for block in BLOCK.findall((DOCS / page).read_text(encoding="utf-8")):
            for command in block.split("$ ")[1:]:
                line, _, shown = command.partition("\n")
                yield pytest.param(line, shown, id=f"{page}: {line}")


@pytest.mark.parametrize("line, shown", list(commands()))
def test_a_command_as_printed(line, shown, tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    Path("results.csv").write_text(RESULTS, encoding="utf-8")
    program, *arguments = shlex.split(line)
    result = CliRunner().invoke(main, arguments)
    assert program == "fieldtally"
    assert result.exit_code == 0, result.stderr
    assert not shown or result.stdout == shown
