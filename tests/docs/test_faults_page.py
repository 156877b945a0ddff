"""Every test that docs/faults.md names is there."""

import re
from pathlib import Path

ROOT = Path(__file__).parents[2]


def test_every_test_named_is_there():
    page = (ROOT / "docs" / "faults.md").read_text(encoding="utf-8")
    named = set(re.findall(r"`(\w+/\w+(?:\.test)?\.(?:py|ts))`", page))
    assert len(named) > 20
    assert not [name for name in named if not (ROOT / "tests" / name).is_file()]
