"""`fieldtally fit`: which levels admit a fence, which measurement binds, and the room to each limit."""

from dataclasses import asdict

import click

from fieldtally.cli.books import rulebook_named, rulebook_option
from fieldtally.cli.output import answer, complain, json_option
from fieldtally.trade.asks import ASKS, PROFILES
from fieldtally.trade.bad_input import BadInput
from fieldtally.trade.fence_cautions import fence_cautions
from fieldtally.trade.fit import fit as fit_fence
from fieldtally.trade.fit_words import headline, in_words
from fieldtally.trade.units import length_cm

# option -> (key of the fence, largest in cm as the book takes it, help)
MEASURES = {
    "height": ("height_cm", 250, "Height of the fixed part: 2'11\", 2ft11, 0.90m, 90cm, 90."),
    "brush": ("brush_height_cm", 300, "Height to the top of the brush."),
    "top": ("spread_top_cm", 600, "Spread at the highest point."),
    "base": ("spread_base_cm", 800, "Spread at the base."),
    "without-height": ("spread_without_height_cm", 900, "Spread of a ditch or water."),
    "drop": ("drop_cm", 400, "Drop on the landing side."),
    "water-depth": ("water_depth_cm", 150, "Depth of the water."),
}


def measured(command):
    for name, (key, _, says) in reversed(MEASURES.items()):
        command = click.option(f"--{name}", key, metavar="LENGTH", help=says)(command)
    return command


def fence_of(profile: str, asks: tuple[str, ...], typed: dict[str, str | None]) -> dict:
    """The fence's body from what was typed, or BadInput."""
    names = {key: (name, most) for name, (key, most, _) in MEASURES.items()}
    lengths = {
        key: length_cm(text, names[key][0], most=names[key][1]) for key, text in typed.items() if text is not None
    }
    return {"profile": profile, "asks": list(asks), "elements": [], **lengths}


@click.command()
@rulebook_option
@click.option("--profile", required=True, type=click.Choice(tuple(PROFILES)), help="How the fence is built.")
@click.option("--asks", multiple=True, type=click.Choice(ASKS), help="What it asks; may be given again.")
@measured
@json_option
def fit(rulebook_id: str, profile: str, asks: tuple[str, ...], as_json: bool, **typed: str | None) -> None:
    """The lowest level of a rulebook that admits a fence, what decides it and the room to every limit."""
    book = rulebook_named(rulebook_id)
    try:
        fence = fence_of(profile, asks, typed)
    except BadInput as refusal:
        complain(f"{refusal.field}: {refusal.message}", refusal.fix)
    found, cautions = fit_fence(fence, book), fence_cautions(fence)
    said = [f"\n{caution.text} ({caution.source})" for caution in cautions]
    data = {"fence": fence, "headline": headline(found), **found.to_json(), "cautions": [*map(asdict, cautions)]}
    answer(data, as_json, lambda: "".join([in_words(found), *said]))
