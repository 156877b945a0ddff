"""A phone in a few lines: what the real client does when it syncs, without its screens and its database.

Every step that the real phone makes in one transaction is one method here. The line it speaks over may lose
a request before the server sees it, or the reply after the server has stored everything.
"""

import json
from collections.abc import Callable
from dataclasses import dataclass, field

from fieldtally.store import feed
from fieldtally.store.feed import LogChanged, Page, Pushed
from fieldtally.store.sender import Sender


class Lost(Exception):
    """No answer came. Whether the server got the request nobody can tell."""


class Line:
    """The way to the server. `mishap()` says what happens to one exchange: "", "request" or "reply" lost,
    "twice" for a request that arrives two times."""

    def __init__(self, logbook: str, mishap: Callable[[], str]) -> None:
        self.logbook, self.mishap = logbook, mishap

    def push(self, sender: Sender, entries: list[dict], log_id: str | None) -> Pushed:
        return self._exchange(lambda: feed.append(self.logbook, sender, json.loads(json.dumps(entries)), log_id))

    def pull(self, after: int, limit: int) -> Page:
        return self._exchange(lambda: feed.page(self.logbook, after, limit))

    def _exchange(self, ask: Callable):
        what = self.mishap()
        if what == "request":
            raise Lost
        if what == "twice":
            ask()
        answer = ask()
        if what == "reply":
            raise Lost
        return answer


@dataclass
class Phone:
    """`entries` by id, as they go over the wire; the outbox is those without a number. `cursor` is the
    number up to which everything was pulled, `log_id` the run of numbers it belongs to."""

    sender: Sender
    line: Line
    batch: int = 5
    page: int = 4
    entries: dict[str, dict] = field(default_factory=dict)
    cursor: int = 0
    log_id: str | None = None
    needs_you: dict[str, str] = field(default_factory=dict)
    held: set[str] = field(default_factory=set)
    resets: int = 0

    def write(self, entry: dict) -> None:
        self.entries[entry["id"]] = entry

    def sync(self) -> bool:
        """Send, then fetch. True if it went through to the end."""
        try:
            return self.send() and self.fetch() and self.check_myself()
        except Lost:
            return False
        except LogChanged:
            return self.begin_again()

    def send(self) -> bool:
        while batch := self.outbox()[: self.batch]:
            self.store_answers(self.line.push(self.sender, batch, self.log_id))
        return True

    def outbox(self) -> list[dict]:
        """Oldest first. What was refused waits for its rider, what is held for the server's upgrade."""
        done = self.needs_you.keys() | self.held
        waiting = (e for e in self.entries.values() if e.get("number") is None and e["id"] not in done)
        return sorted(waiting, key=lambda entry: (entry["recorded_at"], entry["id"]))

    def store_answers(self, pushed: Pushed) -> None:
        """The numbers belong to the reply's log id, so it is kept with them: another restore before the next
        request must not go unnoticed."""
        self.log_id = pushed.log_id
        for answer in pushed.answers:
            if answer.number is not None:
                self.entries[answer.id]["number"] = answer.number
            elif answer.result == "held":
                self.held.add(answer.id)
            else:
                self.needs_you[answer.id] = answer.code

    def fetch(self) -> bool:
        while True:
            page = self.line.pull(self.cursor, self.page)
            if page.log_id != (self.log_id or page.log_id) or page.last_number < self.cursor:
                return self.begin_again()
            self.store_page(page)
            if not page.more:
                return True

    def store_page(self, page: Page) -> None:
        self.log_id = page.log_id
        self.entries |= {entry["id"]: entry for entry in json.loads(json.dumps(page.entries))}
        self.cursor = page.entries[-1]["number"] if page.entries else self.cursor

    def check_myself(self) -> bool:
        """After a pull to the end, as many numbered entries as the cursor says."""
        numbered = sum(1 for entry in self.entries.values() if entry.get("number") is not None)
        return numbered == self.cursor or self.begin_again()

    def begin_again(self) -> bool:
        """The server's numbers are not those this phone knows: keep everything, number nothing, start over."""
        for entry in self.entries.values():
            entry["number"] = None
        self.cursor, self.log_id, self.needs_you, self.held = 0, None, {}, set()
        self.resets += 1
        return False
