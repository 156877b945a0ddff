"""The real server as a user runs it: a process that can be stopped, killed and started again."""

import json
import os
import socket
import subprocess
import sys
import time
import urllib.error
import urllib.request
from pathlib import Path

ROOT = Path(__file__).parents[2]
STATIC = ROOT / "server" / "fieldtally" / "static"
PATIENCE_S = 30


def free_port() -> int:
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        return probe.getsockname()[1]


class RunningServer:
    """`fieldtally serve` on one port with one data folder; keeps both over restarts."""

    def __init__(self, data_dir: Path, needs_client: bool = True) -> None:
        built = (STATIC / "index.html").exists()
        assert built or not needs_client, "The client is not built: run tests/run, or pip install -e ."
        self.data_dir, self.port = data_dir, free_port()
        self.log = data_dir.parent / "server.log"
        self.process: subprocess.Popen | None = None

    @property
    def address(self) -> str:
        return f"http://localhost:{self.port}"

    def environment(self) -> dict[str, str]:
        return {
            **os.environ,
            "PYTHONPATH": str(ROOT / "server"),
            "FIELDTALLY_DATA_DIR": str(self.data_dir),
            "FIELDTALLY_PORT": str(self.port),
            "FIELDTALLY_HOST": "127.0.0.1",
        }

    def command(self, *words: str, given: str | None = None) -> str:
        """Run one `fieldtally` command against this data folder and return what it printed."""
        done = subprocess.run(
            [sys.executable, "-m", "fieldtally", *words],
            env=self.environment(), input=given, capture_output=True, text=True, timeout=120,
        )  # fmt: skip
        assert done.returncode == 0, f"fieldtally {' '.join(words)}: {done.stderr}"
        return done.stdout

    def start(self) -> None:
        with open(self.log, "ab") as log:
            self.process = subprocess.Popen(
                [sys.executable, "-m", "fieldtally", "serve"], env=self.environment(), stdout=log, stderr=log
            )
        self.wait_until_it_answers()

    def wait_until_it_answers(self) -> None:
        end = time.monotonic() + PATIENCE_S
        while time.monotonic() < end:
            assert self.process.poll() is None, f"the server died:\n{self.log.read_text()}"
            try:
                with urllib.request.urlopen(f"{self.address}/api/health", timeout=2) as reply:
                    assert json.load(reply)["ok"]
                    return
            except (urllib.error.URLError, ConnectionError, TimeoutError):
                time.sleep(0.1)
        raise AssertionError(f"no answer within {PATIENCE_S} s:\n{self.log.read_text()}")

    def stop(self) -> None:
        if self.process and self.process.poll() is None:
            self.process.terminate()
            self.process.wait(20)
        self.process = None
