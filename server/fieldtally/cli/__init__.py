"""The `fieldtally` command. Each family of commands is one file; it is imported only when asked for, so
that `fieldtally pace` never loads a web server."""

from importlib import import_module

import click

# command name -> module of this package that holds it, under a function of the same name
COMMANDS = {
    "serve": "server",
    "demo": "server",
    "doctor": "doctor",
    "user": "user",
    "export": "export",
    "backup": "backup",
    "restored": "backup",
    "tidy": "tidy",
    "standing": "standing",
    "rulebooks": "rulebooks",
    "fit": "fit",
    "pace": "pace",
    "course": "course",
    "score": "score",
    "eligibility": "eligibility",
}


class Family(click.Group):
    def list_commands(self, ctx: click.Context) -> list[str]:
        return sorted(COMMANDS)

    def get_command(self, ctx: click.Context, name: str) -> click.Command | None:
        if name not in COMMANDS:
            return None
        return getattr(import_module(f"fieldtally.cli.{COMMANDS[name]}"), name)


@click.group(cls=Family, context_settings={"help_option_names": ["-h", "--help"]})
@click.version_option(package_name="fieldtally")
def main() -> None:
    """Evidence for one decision: is this horse and rider ready for the next level of eventing?"""
