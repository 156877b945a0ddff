"""Fills an empty database with the invented seasons of fixtures/riders, as if their people had sent them."""

import secrets
from collections.abc import Iterator
from dataclasses import asdict, dataclass
from datetime import date
from itertools import groupby

from fieldtally.book.instant import parse_instant
from fieldtally.demo.ids import record_id
from fieldtally.demo.scenario import Person, Scenario, Written, read_scenario, scenario_files
from fieldtally.store.accounts import add_account
from fieldtally.store.db import writing
from fieldtally.store.feed import MOST_PER_PAGE, append
from fieldtally.store.memberships import join, open_logbook
from fieldtally.store.models import Account, Logbook
from fieldtally.store.sender import Sender

EASY_TO_TYPE = "abcdefghjkmnpqrstuvwxyz23456789"  # nothing that looks like something else


@dataclass(frozen=True)
class CanSignIn:
    """Somebody of the scenario: the name and password to sign in with, and who they are."""

    sign_in_name: str
    display_name: str
    role: str
    password: str

    def to_json(self) -> dict:
        return asdict(self)


class NotAccepted(Exception):
    """The scenario holds an entry that this server does not take."""


def load_scenarios(today: date) -> list[CanSignIn]:
    """All of it or nothing. Returns everybody once, with the password made up for them."""
    with writing():
        people: dict[str, tuple[Account, CanSignIn]] = {}
        seasons = [read_scenario(file, today) for file in scenario_files()]
        for season in sorted(seasons, key=lambda one: -len(one.entries)):  # the fullest is shown first
            load(season, people)
    return [can_sign_in for _, can_sign_in in people.values()]


def load(scenario: Scenario, people: dict[str, tuple[Account, CanSignIn]]) -> None:
    """One season; `people` are those who are there already, and gains the new ones."""
    by_role = {person.role: account_for(person, people) for person in scenario.people}
    logbook = open_logbook(by_role["rider"])
    for role, account in by_role.items():
        join(account, logbook, role)
    for batch in batches(scenario.entries):
        send(logbook, by_role[batch[0].role], batch)


def account_for(person: Person, people: dict[str, tuple[Account, CanSignIn]]) -> Account:
    if person.sign_in_name not in people:
        password = "-".join("".join(secrets.choice(EASY_TO_TYPE) for _ in range(4)) for _ in range(3))
        account = add_account(person.sign_in_name, person.display_name, password)
        told = CanSignIn(person.sign_in_name, person.display_name, person.role, password)
        people[person.sign_in_name] = account, told
    return people[person.sign_in_name][0]


def batches(entries: tuple[Written, ...]) -> Iterator[list[Written]]:
    """Runs of entries by the same hand, none longer than one push may be."""
    for _, run in groupby(entries, key=lambda written: written.role):
        run = list(run)
        for start in range(0, len(run), MOST_PER_PAGE):
            yield run[start : start + MOST_PER_PAGE]


def send(logbook: Logbook, account: Account, batch: list[Written]) -> None:
    arrived_ms = parse_instant(batch[-1].entry["recorded_at"])
    device = record_id("device", account.sign_in_name)
    sender = Sender(account.id, batch[0].role, device, 0, arrived_ms)
    answers = append(logbook.id, sender, [written.entry for written in batch]).answers
    wrong = [answer.to_json() for answer in answers if answer.result != "accepted"]
    if wrong:
        raise NotAccepted(wrong[0])
