"""How every command answers: text for people, or JSON for programs; complaints on stderr with status 2."""

import json
import sys
from collections.abc import Callable

import click

json_option = click.option("--json", "as_json", is_flag=True, help="Print JSON instead of text.")


def answer(value: object, as_json: bool, in_words: Callable[[], str]) -> None:
    """Print `value` as JSON, or `in_words()` when a person is reading."""
    click.echo(json.dumps(value, ensure_ascii=False, indent=2) if as_json else in_words())


def complain(message: str, fix: str | None = None) -> None:
    """Say on stderr what is wrong and how to mend it, then leave with status 2."""
    click.echo(f"fieldtally: {message}" + (f"\n  {fix}" if fix else ""), err=True)
    sys.exit(2)
