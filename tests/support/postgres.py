"""A real PostgreSQL for the tests: made in a temporary folder, started, stopped and thrown away again.

It listens on a Unix socket only, so there is no port to collide on. PostgreSQL refuses to run as root; then
it is run as the user `postgres`, or `nobody`.
"""

import os
import pwd
import shutil
import signal
import subprocess
import tempfile
import time
from itertools import count
from pathlib import Path

import psycopg

INSTALL = "the store's tests need PostgreSQL 15 or newer: install your system's 'postgresql' package"
START_S = 30


class Postgres:
    """A running server; `new_database()` gives the URL of an empty database of its own."""

    def __init__(self) -> None:
        self.folder = Path(tempfile.mkdtemp(prefix="fieldtally-pg-"))
        self.user = unprivileged_user()
        self.numbers = count(1)
        if self.user:
            shutil.chown(self.folder, self.user)
        self._run(binary("initdb"), "-D", "data", "-U", "fieldtally", "-A", "trust", "-E", "UTF8",
                  "--locale=C", "--no-sync")  # fmt: skip
        self.log = (self.folder / "log").open("w+")
        # fsync off: these data need not survive this machine's power cut, only the test
        self.process = subprocess.Popen(
            [binary("postgres"), "-D", "data", "-k", str(self.folder), "-c", "listen_addresses=",
             "-c", "fsync=off", "-c", "max_connections=150"],
            stdout=self.log, stderr=subprocess.STDOUT, **self._as_user(),
        )  # fmt: skip
        self._wait()

    def new_database(self) -> str:
        name = f"test_{next(self.numbers)}"
        with psycopg.connect(self.url("postgres"), autocommit=True) as connection:
            connection.execute(f"CREATE DATABASE {name}")
        return self.url(name)

    def url(self, database: str) -> str:
        return f"postgresql://fieldtally@/{database}?host={self.folder}"

    def stop(self) -> None:
        self.process.send_signal(signal.SIGINT)  # "fast shutdown": open connections are ended
        self.process.wait(START_S)
        self.log.close()
        shutil.rmtree(self.folder)

    def _wait(self) -> None:
        give_up = time.monotonic() + START_S
        while True:
            try:
                return psycopg.connect(self.url("postgres")).close()
            except psycopg.OperationalError as error:
                if self.process.poll() is not None or time.monotonic() > give_up:
                    self.log.seek(0)
                    raise RuntimeError(f"PostgreSQL did not start:\n{self.log.read()}") from error
                time.sleep(0.05)

    def _run(self, *command: str) -> None:
        done = subprocess.run(command, capture_output=True, text=True, **self._as_user())
        if done.returncode:
            raise RuntimeError(f"{command[0]} failed:\n{done.stdout}{done.stderr}")

    def _as_user(self) -> dict:
        where = {"cwd": self.folder}
        if self.user is None:
            return where
        person = pwd.getpwnam(self.user)
        return where | {"user": person.pw_uid, "group": person.pw_gid, "extra_groups": []}


def binary(name: str) -> str:
    """The path of a PostgreSQL program; an error that says what to install where there is none."""
    if found := shutil.which(name):
        return found
    packaged = sorted(Path("/usr/lib/postgresql").glob(f"*/bin/{name}"), key=lambda p: float(p.parts[4]))
    if not packaged:
        raise RuntimeError(f"there is no '{name}' on this machine; {INSTALL}.")
    return str(packaged[-1])


def unprivileged_user() -> str | None:
    """Whom to run as: None for ourselves, unless we are root."""
    if os.geteuid() != 0:
        return None
    names = {person.pw_name for person in pwd.getpwall()}
    return "postgres" if "postgres" in names else "nobody"
