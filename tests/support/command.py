"""Running `fieldtally …` inside this process, with settings as variables."""

import json

from click.testing import CliRunner

from fieldtally.cli import main

PASSWORD = "rope halter seven gates"


class Command:
    """`run("user", "list")` with FIELDTALLY_* variables; keeps the data folder over several commands."""

    def __init__(self, data_dir, **settings):
        self.data_dir = data_dir
        self.environment = {"FIELDTALLY_DATA_DIR": str(data_dir)} | {
            f"FIELDTALLY_{name.upper()}": str(value) for name, value in settings.items()
        }

    def run(self, *words, given=None):
        return CliRunner().invoke(main, words, input=given, env=self.environment)

    def json(self, *words, given=None):
        done = self.run(*words, "--json", given=given)
        assert done.exit_code == 0, done.output
        return json.loads(done.stdout)

    def add(self, name, *words, password=PASSWORD):
        return self.run("user", "add", name, *words, "--password-stdin", given=password + "\n")


def assert_complains(done, *texts):
    """Status 2, everything on stderr, in words and with all of `texts` in it."""
    assert done.exit_code == 2
    assert done.stdout == ""
    assert done.stderr.startswith(("fieldtally: ", "Usage: "))
    assert "Traceback" not in done.stderr
    assert not [text for text in texts if text not in done.stderr]
