"""A display, a demonstration's server, and WebKit phones for it. What is missing is an error, never a skip."""

import json
import os
import subprocess

import pytest

from browser.running_server import RunningServer
from webkit.phone import WebKitPhone, program


@pytest.fixture(scope="session")
def display():
    """An X server of our own, on whatever number is free."""
    reads, writes = os.pipe()
    screen = subprocess.Popen(
        [program("Xvfb"), "-displayfd", str(writes), "-screen", "0", "1280x900x24", "-nolisten", "tcp"],
        pass_fds=[writes], stderr=subprocess.DEVNULL,
    )  # fmt: skip
    os.close(writes)
    with open(reads) as said:
        number = said.readline().strip()
    assert number, "Xvfb found no display to serve"
    yield f":{number}"
    screen.terminate()
    screen.wait(10)


@pytest.fixture
def server(tmp_path):
    """A server with the demonstration's season; `passwords` by sign-in name."""
    running = RunningServer(tmp_path / "data")
    made = json.loads(running.command("demo", "--no-serve", "--json"))
    running.passwords = {one["sign_in_name"]: one["password"] for one in made["people"]}
    running.start()
    yield running
    running.stop()


@pytest.fixture
def phone(server, display, tmp_path):
    made = WebKitPhone(tmp_path / "profile", server.address, display)
    yield made
    made.kill()
