"""`fieldtally serve` and `fieldtally demo`: the server in the foreground until Ctrl-C or SIGTERM."""

import dataclasses
import os
from datetime import date
from pathlib import Path

import click
from flask import Flask

from fieldtally.cli.opening import open_app, settings_from_environment
from fieldtally.cli.output import answer, complain, json_option
from fieldtally.cli.startup_warnings import warnings
from fieldtally.demo.load import CanSignIn, load_scenarios
from fieldtally.demo.sign_in_list import keep, kept
from fieldtally.settings import Settings, variable
from fieldtally.store.accounts import any_account
from fieldtally.store.db import db
from fieldtally.store.replay import replay_held
from fieldtally.web.listen import Listener
from fieldtally.web.version import VERSION

DEMO_FOLDER = Path("fieldtally-demo")
PORTS_TO_TRY = 20
port_option = click.option("--port", type=click.IntRange(0, 65_535), help="Port to listen on; 0 for any free one.")


@click.command()
@click.option("--host", help="Address to listen on.")
@port_option
def serve(host: str | None, port: int | None) -> None:
    """Serve the app; makes or upgrades the database first."""
    settings = settings_from_environment(host=host, port=port)
    app = open_app(settings)
    listener = listen(app, settings)
    say_where(listener, settings)
    with app.app_context():
        replay_held()
        if not any_account():
            click.echo("Nobody has an account yet: open the address, or run fieldtally user add NAME.")
        db.session.remove()
    run(app, listener)


@click.command()
@port_option
@click.option("--no-serve", is_flag=True, help="Only make the demonstration and say who can sign in.")
@json_option
def demo(port: int | None, no_serve: bool, as_json: bool) -> None:
    """A living system with an invented season, in ./fieldtally-demo; nobody in it exists."""
    folder = Path(os.environ.get(variable("data_dir")) or DEMO_FOLDER)
    settings = settings_from_environment(data_dir=folder, port=port)
    app = open_app(settings)
    with app.app_context():
        people = demonstration(folder)
        db.session.remove()
    listener = None if no_serve else listen_nearby(app, settings, port)
    address = listener and address_of(listener, settings)
    data = {"address": address, "data_dir": str(folder), "people": [person.to_json() for person in people]}
    answer(data, as_json, lambda: demo_in_words(data))
    if listener:
        run(app, listener)


def demonstration(folder: Path) -> list[CanSignIn]:
    """Who can sign in; the scenario is loaded if the database is empty."""
    people = kept(folder)
    if any_account():
        if people is None:
            complain("this database has people of its own.", "Run fieldtally demo in another folder.")
        return people
    people = load_scenarios(date.today())
    keep(folder, people)
    return people


def listen(app: Flask, settings: Settings) -> Listener:
    try:
        return Listener(app, settings)
    except OSError as wrong:
        complain(
            f"cannot listen on {settings.host} port {settings.port}: {wrong.strerror or wrong}.",
            "Another server may be running there: stop it, or choose another one with --port.",
        )


def listen_nearby(app: Flask, settings: Settings, port: int | None) -> Listener:
    """On the port asked for, else on the first free one from the usual port on."""
    if port is not None:
        return listen(app, settings)
    for port in range(settings.port, settings.port + PORTS_TO_TRY):
        try:
            return Listener(app, dataclasses.replace(settings, port=port))
        except OSError:
            continue
    complain(f"no port from {settings.port} on is free.", "Choose one with --port.")


def run(app: Flask, listener: Listener) -> None:
    listener.run()
    with app.app_context():
        db.engine.dispose()


def address_of(listener: Listener, settings: Settings) -> str:
    host = "localhost" if settings.host in ("127.0.0.1", "::1", "0.0.0.0", "::") else settings.host
    return f"http://{host}:{listener.port}/"


def say_where(listener: Listener, settings: Settings) -> None:
    for warning in warnings(settings):
        click.echo(f"fieldtally: {warning}", err=True)
    where = settings.data_dir if settings.is_sqlite else "PostgreSQL"
    click.echo(f"Fieldtally {VERSION} answers at {address_of(listener, settings)} (data in {where}).")


def demo_in_words(data: dict) -> str:
    people = data["people"]
    width = max(len(person["sign_in_name"]) for person in people)
    lines = [
        f"  {person['sign_in_name']:{width}}  {person['password']}  {person['display_name']}, {person['role']}"
        for person in people
    ]
    where = f"Open {data['address']}" if data["address"] else f"Made in {data['data_dir']}."
    return "\n".join([where, "Who can sign in, all invented:", *lines])
