"""`fieldtally user`: people and what they are in which logbook. A password is never part of a command."""

import sys

import click

from fieldtally.cli.opening import opened
from fieldtally.cli.output import answer, complain, json_option
from fieldtally.cli.people import book_of, named
from fieldtally.store.accounts import add_account, all_accounts, change_password
from fieldtally.store.db import writing
from fieldtally.store.memberships import join, leave, logbooks_of, open_logbook, own_logbook
from fieldtally.store.models import Account, Logbook
from fieldtally.trade.bad_input import BadInput

HELPERS = ("coach", "scribe", "reader")
password_option = click.option("--password-stdin", is_flag=True, help="Read the password from standard input.")


def roles_option(command):
    """--coach-of, --scribe-of, --reader-of, each of which may be given for several riders."""
    for role in reversed(HELPERS):
        text = f"Make them {role} of this rider's logbook; may be repeated."
        command = click.option(f"--{role}-of", metavar="RIDER", multiple=True, help=text)(command)
    return command


@click.group()
def user() -> None:
    """People: add, list, change their roles and passwords."""


@user.command()
@click.argument("name")
@click.option("--display-name", help="As others see it; the sign-in name if not given.")
@click.option("--role", type=click.Choice(["rider"]), help="Give them a logbook (so does naming no role at all).")
@roles_option
@password_option
@json_option
def add(name, display_name, role, coach_of, scribe_of, reader_of, password_stdin, as_json) -> None:
    """Add somebody who signs in as NAME: a rider with a logbook, or a helper of other riders."""
    password = asked_password(password_stdin)
    with opened(), writing():
        books = named_books(coach_of, scribe_of, reader_of)
        account = wanted(lambda: add_account(name, display_name, password))
        if role == "rider" or not books:
            open_logbook(account)
        for logbook, helper in books:
            join(account, logbook, helper)
        data = described(account)
    answer(data, as_json, lambda: f"Added {in_words(data)}")


@user.command("list")
@json_option
def list_them(as_json) -> None:
    """Everybody who can sign in, and their roles."""
    with opened():
        people = [described(account) for account in all_accounts()]
    answer(people, as_json, lambda: "\n".join(map(in_words, people)) or "Nobody yet.")


@user.command("join")
@click.argument("name")
@roles_option
def join_them(name, coach_of, scribe_of, reader_of) -> None:
    """Give NAME a role in a rider's logbook, instead of any they had there."""
    with opened(), writing():
        account, books = named(name), named_books(coach_of, scribe_of, reader_of)
        if not books:
            complain("no role was named.", "Add --coach-of, --scribe-of or --reader-of with a rider's name.")
        for logbook, role in books:
            refuse_the_rider(account, logbook)
            join(account, logbook, role)
        data = described(account)
    click.echo(in_words(data))


@user.command("leave")
@click.argument("name")
@click.option("--of", "rider", metavar="RIDER", required=True, help="Whose logbook they leave.")
def leave_it(name, rider) -> None:
    """End what NAME is in RIDER's logbook; what they wrote stays."""
    with opened():
        account, logbook = named(name), book_of(rider)
        refuse_the_rider(account, logbook)
        if not leave(account, logbook):
            complain(f"{account.sign_in_name} has no role in the logbook of {rider}.")
    click.echo(f"{account.sign_in_name} no longer sees the logbook of {rider}.")


@user.command("password")
@click.argument("name")
@password_option
def renew(name, password_stdin) -> None:
    """Give NAME a new password and sign them out everywhere."""
    password = asked_password(password_stdin)
    with opened():
        account = named(name)
        wanted(lambda: change_password(account, password))
    click.echo(f"{account.sign_in_name} has a new password and is signed out everywhere.")


def asked_password(from_stdin: bool) -> str:
    if from_stdin:
        return sys.stdin.readline().rstrip("\r\n")
    return click.prompt("Password", hide_input=True, confirmation_prompt=True, err=True)


def wanted(act):
    """What `act` returns; what it refuses is said on stderr."""
    try:
        return act()
    except BadInput as refusal:
        complain(f"{refusal.field}: {refusal.message}", refusal.fix)


def named_books(*riders_by_role: tuple[str, ...]) -> list[tuple[Logbook, str]]:
    """(logbook, role) for the riders named after --coach-of, --scribe-of and --reader-of, in that order."""
    pairs = zip(HELPERS, riders_by_role, strict=True)
    return [(book_of(rider), role) for role, riders in pairs for rider in riders]


def refuse_the_rider(account: Account, logbook: Logbook) -> None:
    own = own_logbook(account)
    if own and own.id == logbook.id:
        complain(f"{account.sign_in_name} is the rider of that logbook and stays it.")


def described(account: Account) -> dict:
    logbooks = [{"id": book.id, "title": book.title, "role": role} for book, role in logbooks_of(account.id)]
    return {
        "id": account.id,
        "sign_in_name": account.sign_in_name,
        "display_name": account.display_name,
        "logbooks": logbooks,
    }


def in_words(person: dict) -> str:
    roles = ", ".join(f"{book['role']} of {book['title']}" for book in person["logbooks"])
    return f"{person['sign_in_name']} ({person['display_name']}): {roles or 'no logbook'}"
