"""Draws the trade between care and patience as one SVG of three panels: docs/tradeoff.svg.

    python tests/bench/tradeoff_picture.py RESULT.json docs/tradeoff.svg      (RESULT of decision.py --trade --json)
"""

import json
import sys
from pathlib import Path

WIDTH, HEIGHT, LEFT, TOP, GAP = 250, 220, 46, 40, 60
OUTINGS, FALSE = (3.0, 17.0), (0.0, 0.7)
PANELS = (
    ("alike", "all worlds", "Same outings for all rules"),
    ("planned", "all worlds", "Each rule plans its own"),
    ("alike", "independent", "Independent world, same outings"),
)
SERIES = (
    ("rules of thumb, at every strictness", "#7a7a72", "circle"),
    ("Fieldtally, at several bounds", "#17513b", "square"),
    ("perfect judge: nobody can do better", "#8a5a00", "triangle"),
    ("the target", "#9b2c1f", "cross"),
)
NAMED = ("3 clear in a row", "rate over 80% of at least 1")  # the two rules that the target is measured by


TARGET = len(SERIES) - 1


def series_of(name: str) -> int:
    return 1 if name.startswith("fieldtally") else 2 if name.startswith("perfect") else 0


def place(outings: float, false: float, panel: int) -> tuple[float, float]:
    x = LEFT + panel * (WIDTH + GAP) + (outings - OUTINGS[0]) / (OUTINGS[1] - OUTINGS[0]) * WIDTH
    y = TOP + HEIGHT - (min(false, FALSE[1]) - FALSE[0]) / (FALSE[1] - FALSE[0]) * HEIGHT
    return round(x, 1), round(y, 1)


def mark(x: float, y: float, series: int) -> str:
    _, colour, shape = SERIES[series]
    if shape == "circle":
        return f'<circle cx="{x}" cy="{y}" r="3" fill="none" stroke="{colour}"/>'
    if shape == "square":
        return f'<rect x="{x - 4:.1f}" y="{y - 4:.1f}" width="8" height="8" fill="{colour}"/>'
    if shape == "triangle":
        return f'<path d="M{x} {y - 5:.1f}l5 9h-10z" fill="{colour}"/>'
    return f'<path d="M{x - 5:.1f} {y - 5:.1f}l10 10m0 -10l-10 10" fill="none" stroke="{colour}" stroke-width="2"/>'


def text(x: float, y: float, said: str, anchor: str = "middle", more: str = "") -> str:
    return f'<text x="{x}" y="{y}" text-anchor="{anchor}" {more}>{said}</text>'


def axes(panel: int, title: str) -> list[str]:
    (left, bottom), (right, top) = place(*map(min, (OUTINGS, FALSE)), panel), place(OUTINGS[1], FALSE[1], panel)
    found = [f'<path d="M{left} {top}V{bottom}H{right}" fill="none" stroke="#55554d"/>']
    found += [text(*offset(place(each, 0, panel), 0, 16), str(each)) for each in (4, 8, 12, 16)]
    found += [text(*offset(place(OUTINGS[0], each / 10, panel), -6, 4), f"0.{each}", "end") for each in (0, 2, 4, 6)]
    middle = (left + right) / 2
    found.append(text(middle, TOP - 14, title, more='font-weight="bold"'))
    return [*found, text(middle, bottom + 34, "outings until a pair above the bar is complete")]


def offset(point: tuple[float, float], x: float, y: float) -> tuple[float, float]:
    return point[0] + x, point[1] + y


def panel_of(points: dict[str, dict], panel: int, title: str) -> list[str]:
    found = axes(panel, title)
    for series in range(TARGET):
        mine = [each for name, each in points.items() if series_of(name) == series]
        found += [mark(*place(each["outings_to_complete"], each["false_complete"], panel), series) for each in mine]
    better = min((points[name] for name in NAMED), key=lambda each: each["false_complete"])
    return [*found, mark(*place(better["outings_to_complete"], better["false_complete"] / 3, panel), TARGET)]


def legend() -> list[str]:
    found = []
    for series, (label, _, _) in enumerate(SERIES):
        x, y = LEFT + 10 + series * 235, TOP + HEIGHT + 62
        found += [mark(x, y - 4, series), text(x + 10, y, label, "start")]
    return found


def picture(trade: dict) -> str:
    wide, high = LEFT + 3 * (WIDTH + GAP), TOP + HEIGHT + 80
    parts = [part for n, (how, world, title) in enumerate(PANELS) for part in panel_of(trade[how][world], n, title)]
    about = (
        "False completes against outings: rules of thumb, Fieldtally, a perfect judge and the target; the tables say "
        "the same."
    )
    return "\n".join([
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {wide} {high}" font-family="sans-serif" font-size="11" '
        f'fill="#14201b" role="img"><title>{about}</title>',
        f'<rect width="{wide}" height="{high}" fill="#fbfaf5"/>',
        text(14, TOP + HEIGHT / 2, "false complete", more=f'transform="rotate(-90 14 {TOP + HEIGHT / 2})"'),
        *parts, *legend(), "</svg>\n",
    ])  # fmt: skip


if __name__ == "__main__":
    told, target = map(Path, sys.argv[1:3])
    target.write_text(picture(json.loads(told.read_text(encoding="utf-8"))["trade"]), encoding="utf-8")
