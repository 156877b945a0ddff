"""`fieldtally doctor`: looks at the installation, changes nothing, says what to fix. Status 2 if it is broken."""

import sys
from dataclasses import asdict

import click

from fieldtally.cli.checks import Check, all_checks
from fieldtally.cli.output import answer, json_option

MARKS = {"fine": "ok", "attention": "look", "broken": "BROKEN"}


@click.command()
@json_option
def doctor(as_json: bool) -> None:
    """Check this installation and say what to fix."""
    checks = all_checks()
    broken = any(check.state == "broken" for check in checks)
    answer({"ok": not broken, "checks": [asdict(check) for check in checks]}, as_json, lambda: in_words(checks))
    sys.exit(2 if broken else 0)


def in_words(checks: list[Check]) -> str:
    width = max(len(check.name) for check in checks)
    return "\n".join(line(check, width) for check in checks)


def line(check: Check, width: int) -> str:
    text = f"{MARKS[check.state]:6}  {check.name:{width}}  {check.found}"
    return text + (f"\n{'':8}{'':{width}}  -> {check.fix}" if check.fix else "")
