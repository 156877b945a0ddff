"""docs/protocol.md says what the code does: kinds, codes, limits and versions."""

import json
import re
from pathlib import Path

from fieldtally.book import entry, measure, trouble
from fieldtally.book.kinds import KINDS
from fieldtally.store import answer, feed
from fieldtally.web import push_body, sync
from fieldtally.web.version import PROTOCOL

ROOT = Path(__file__).parents[2]
PAGE = (ROOT / "docs" / "protocol.md").read_text(encoding="utf-8")
BOOK = ROOT / "server" / "fieldtally" / "book"


def section(heading: str) -> str:
    return PAGE.split(f"\n## {heading}\n", 1)[1].split("\n## ", 1)[0]


def rows(heading: str) -> list[list[str]]:
    table = [line.strip("|").split("|") for line in section(heading).splitlines() if line.startswith("|")]
    return [[cell.strip() for cell in row] for row in table[2:]]


def codes_of(heading: str) -> set[str]:
    return {code for row in rows(heading) for code in re.findall(r"`(\w+)`", row[0])}


def text_of(*modules) -> str:
    return "\n".join(Path(module.__file__).read_text(encoding="utf-8") for module in modules)


def test_every_reason_to_refuse_is_listed_and_no_other():
    # a shared field is no entry: what is wrong with one is told by its own room
    files = [path for path in BOOK.rglob("*.py") if path.name != "shared_field.py"]
    checks = "\n".join(path.read_text(encoding="utf-8") for path in files)
    used = set(re.findall(r'(?:fail|Trouble)\(\s*"(\w+)"', checks))
    used |= {code for code, *_ in trouble.OWN_WORDS.values()} | {"invalid"}
    used |= set(re.findall(r'"refused", None, "(\w+)"', text_of(answer)))
    assert codes_of("Why an entry is refused") == used


def test_every_reason_to_hold_is_listed():
    used = set(re.findall(r'return "(unknown_\w+)"|else "(unknown_\w+)"', text_of(entry)))
    assert codes_of("Why an entry is held") == {code for pair in used for code in pair if code}


def test_kinds():
    assert [[cell.strip("`") for cell in row] for row in rows("Kinds")] == [
        [kind.name, str(kind.version), "yes" if kind.evidence else "no", ", ".join(kind.writers)]
        for kind in KINDS.values()
    ]


def test_limits():
    said = section("Limits")
    assert f"{sync.MOST_ENTRIES} (a phone" in said and f"{push_body.MOST_TOKENS:,}" in said
    assert f"nested {push_body.MOST_DEPTH} deep" in said and f"nested {measure.MOST_DEPTH} deep" in said
    assert f"{measure.MOST_BYTES // 1024} KiB" in said and f"1 to {feed.MOST_PER_PAGE}" in said
    assert f"at most {entry.MOST_SUPERSEDED}" in section("An entry")
    assert f"{feed.MOST_BYTES_PER_PAGE // 2**20} MiB" in section("One sync, step by step")


def test_every_protocol_has_its_line():
    assert [row[0] for row in rows("Versions")] == [str(number) for number in range(1, PROTOCOL + 1)]


def test_the_example_is_an_entry():
    example = json.loads(section("An entry").split("```json\n")[1].split("```")[0])
    assert isinstance(entry.check(example), entry.Entry)
    described = {name for row in rows("An entry") for name in re.findall(r"`(\w+)`", row[0])}
    assert described == set(example)
