"""Patterns of trouble as a rider meets them: silent while there is too little, silent while chance could have done
it, and said, with its counts and its doubts, once the last run-out is on the phone: without signal too.

Logging each refusal by rein and kind of fence and looking for patterns is a governing body's own advice (BE Life,
BE100 to Novice); when there is enough to speak is this project's own rule (docs/patterns.md).
"""

import re
from collections.abc import Iterable
from datetime import date, timedelta
from uuid import uuid4

import pytest
from playwright.sync_api import expect

from browser.person import Person
from browser.test_recording import PUSH, entry, open_fence, saved

pytestmark = pytest.mark.xdist_group("browser")

FENCES = 8  # met once each on every day: the even ones on the left rein, the odd ones on the right


class Season:
    """One horse, one field of logs, and days on each of which she stops at two fences met on the left rein."""

    def __init__(self, rider: Person) -> None:
        self.rider, self.horse, self.field = rider, str(uuid4()), str(uuid4())
        self.fences = [str(uuid4()) for _ in range(FENCES)]
        logs = [
            entry("fence", {"field_id": self.field, "label": f"{n + 1} Log", "profile": "log", "order": n + 1}, fence)
            for n, fence in enumerate(self.fences)
        ]
        self.send([entry("horse", {"name": "Bracken Lane"}, self.horse),
                   entry("field", {"name": "Thornybank"}, self.field), *logs])  # fmt: skip

    def send(self, entries: list[dict]) -> None:
        self.rider.page.evaluate(PUSH, entries)

    def day(self, days_ago: int, stops: tuple[int, ...], met: Iterable[int] = range(FENCES)) -> str:
        """Sends one outing and answers its id; `stops` are the places in the field where she stopped."""
        outing, day = str(uuid4()), str(date.today() - timedelta(days=days_ago))
        body = {"horse_id": self.horse, "field_id": self.field, "date": day, "activity": "cross_country_school"}
        self.send([entry("outing", body, outing), *(self.attempt(outing, day, n, n in stops) for n in met)])
        return outing

    def attempt(self, outing: str, day: str, n: int, stopped: bool) -> dict:
        rein = "right" if n % 2 else "left"
        body = {
            "outing_id": outing, "fence_id": self.fences[n], "outcome": "refusal" if stopped else "clear",
            "presentation": {"rein": rein},
        }  # fmt: skip
        at = entry("attempt", body, str(uuid4()))
        return at | {"recorded_at": f"{day}T08:{n:02}:00.000Z", "local_date": day}

    def look(self) -> None:
        self.rider.go(f"/patterns/{self.horse}")
        self.rider.heading("Patterns of trouble: Bracken Lane")


def says_nothing(rider: Person, title: str) -> None:
    rider.sees(title)
    assert rider.page.locator(".pattern").count() == 0


def pulled(rider: Person, attempts: int) -> None:
    """The phone holds so many attempts, and the screen counts them."""
    rider.page.reload()
    rider.sees(re.compile(f"^Looked at: {attempts} attempts"))


def run_out_by_hand(rider: Person, outing: str, label: str) -> None:
    """A run-out met on the left rein, at a fence not yet met in this outing."""
    open_fence(rider, f"/outing/{outing}", label)
    rider.tap(re.compile("Next attempt"))
    expect(rider.page.get_by_role("group", name="Rein").get_by_label("Left rein")).to_be_checked()  # as on other days
    rider.tap(re.compile("Next attempt"))
    rider.thumb(rider.button("Not clear"))
    rider.thumb(rider.button("Run-out"))
    saved(rider)


def test_silent_before_there_is_enough_and_said_after(server, rider):
    season = Season(rider)
    season.look()
    says_nothing(rider, "Not enough to say yet")
    season.day(20, stops=(0, 4))
    season.day(15, stops=(2, 5))
    season.day(10, stops=(0, 6))
    pulled(rider, 24)
    says_nothing(rider, "Not enough to say yet")
    season.day(5, stops=(2, 4))
    last = season.day(1, stops=(), met=(0, 1, 3, 4, 5, 7))
    pulled(rider, 38)
    says_nothing(rider, "Nothing stands out")
    rider.go(f"/outing/{last}")
    rider.sees("3 Log")
    server.stop()
    run_out_by_hand(rider, last, "3 Log")
    run_out_by_hand(rider, last, "7 Log")
    season.look()
    rein_left_is_said(rider)


def rein_left_is_said(rider: Person) -> None:
    """Five days of 8 fences, 4 of them on the left rein, with two stops a day: chance puts both on the left on 6 of
    28 days and one on 16 of 28. Nine or more of ten: (6/28)**5 + 5 (6/28)**4 (16/28) = 1 in 154."""
    card = rider.page.locator(".pattern").filter(has=rider.page.get_by_role("heading", name="Rein: Left rein"))
    expect(card).to_contain_text("9 of 10 stops were on the left rein")
    expect(card).to_contain_text("only 50 % of the fences were met that way")
    drawn = card.get_by_role("img")
    expect(drawn).to_have_accessible_name("Rein: Left rein: 9 of 20 went wrong, 45 %. Otherwise: 1 of 20, 5 %.")
    expect(card).to_contain_text("about once in 150 such records")
    expect(card).to_contain_text("It says what went together, not what caused it.")
    assert rider.page.locator(".pattern").count() == 1
    rider.sees(re.compile("may be in pain"))
    card.get_by_text("The attempts behind it").click()
    assert card.get_by_role("link").count() == 9
    expect(card.get_by_role("link").first).to_contain_text("Log, run-out")
