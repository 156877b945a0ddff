"""What a rider waits for: a push over HTTP to a server with a long logbook, and the standings fetched after it.

    python tests/bench/push.py [--attempts 20000] [--json OUT]

The server runs in this process, its database in a temporary folder. Processor time in ms, so that other programs
count less, the median of PUSHES; and the memory of the process, which a logbook kept open must not make grow without
end.
"""

import argparse
import json
import logging
import resource
import sys
import tempfile
import time
from pathlib import Path

sys.path[:0] = [str(Path(__file__).parents[1]), str(Path(__file__).parents[2] / "server"), str(Path(__file__).parent)]

from standing import Season, median  # noqa: E402

from fieldtally import create_app  # noqa: E402
from fieldtally.settings import Settings  # noqa: E402
from fieldtally.store.accounts import add_account  # noqa: E402
from fieldtally.store.db import db  # noqa: E402
from fieldtally.store.memberships import open_logbook  # noqa: E402
from support.asking import PASSWORD, Browser  # noqa: E402
from support.riders import new_id, wire  # noqa: E402

PUSHES = 9
MOST = 500


class Phone:
    """A browser that is signed in, with the id of its logbook."""

    def __init__(self, folder: Path) -> None:
        self.app = create_app(Settings(data_dir=folder))
        with self.app.app_context():
            with db.engine.begin() as connection:
                db.metadata.create_all(connection)
            self.book = f"/api/logbooks/{open_logbook(add_account('wren', 'Wren', PASSWORD)).id}"
        self.browser, self.device = Browser(self.app), new_id()
        self.browser.sign_in("wren")

    def push(self, entries: list[dict], more: bool = False) -> float:
        return self.asked("POST", f"{self.book}/entries",
                          {"protocol": 1, "device": self.device, "entries": entries, "more": more})  # fmt: skip

    def asked(self, method: str, path: str, body: dict | None = None) -> float:
        """ms of work until the answer is there, which must be a good one."""
        start = time.process_time()
        answer = self.browser.send(method, path, body, headers={"X-Fieldtally": "1", "Accept-Encoding": "gzip"})
        taken = 1000 * (time.process_time() - start)
        if answer.status_code != 200 or b'"refused"' in answer.data:
            raise SystemExit(f"{method} {path}: {answer.status_code} {answer.data[:300]}")
        return taken


def entries_of(season: Season, after: int = 0) -> list[dict]:
    return [
        wire(each.kind, each.body, record_id=each.record_id, utc_offset_min=0, kind_version=each.kind_version)
        for each in season.entries[after:]
    ]


def send_all(phone: Phone, season: Season) -> None:
    entries = entries_of(season)
    for start in range(0, len(entries), MOST):
        phone.push(entries[start : start + MOST], more=True)


def wait(phone: Phone, season: Season, told) -> tuple[float, float]:
    """(push, standings) in ms, for what `told` adds to the season."""
    before = len(season.entries)
    told()
    pushed = phone.push(entries_of(season, before))
    return pushed, phone.asked("GET", f"{phone.book}/standings?packed=1")


def measure(phone: Phone, season: Season) -> dict:
    first = phone.asked("GET", f"{phone.book}/standings?packed=1")
    found = {"attempts": sum(each.kind == "attempt" for each in season.entries), "first_standings_ms": round(first, 1)}
    for name, told in season.pushes().items():
        waits = [wait(phone, season, told) for _ in range(PUSHES)]
        found[f"push_{name}_ms"] = median([pushed for pushed, _ in waits])
        found[f"standings_after_{name}_ms"] = median([fetched for _, fetched in waits])
    horse = f"{phone.book}/horses/{season.horse}/standings?as_of=2024-06-01"
    found["past_day_ms"] = median([phone.asked("GET", horse) for _ in range(PUSHES)])
    return found


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--attempts", type=int, default=20_000)
    parser.add_argument("--json", type=Path)
    given = parser.parse_args()
    logging.disable(logging.CRITICAL)
    with tempfile.TemporaryDirectory() as folder:
        phone, season = Phone(Path(folder)), Season(given.attempts)
        send_all(phone, season)
        found = measure(phone, season)
    found["memory_mb"] = round(resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024)
    print(json.dumps(found, indent=2))
    if given.json:
        given.json.write_text(json.dumps(found, indent=2), encoding="utf-8")


if __name__ == "__main__":
    main()
