import pytest

from support.command import Command


@pytest.fixture
def command(tmp_path):
    return Command(tmp_path / "data")
