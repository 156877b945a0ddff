"""`python -m fieldtally` is the `fieldtally` command."""

from fieldtally.cli import main

main(prog_name="fieldtally")
