"""Writes the client's screens/bar/shipped.ts: where each number of the shipped bar comes from and how far it can
be turned, so that a coach reads and changes a bar with no signal.

    python -m fieldtally.readiness.bar_typescript
"""

from pathlib import Path

from fieldtally.book.typescript import literal, write
from fieldtally.readiness.bar import shipped_bars
from fieldtally.readiness.bar_range import is_whole, range_of
from fieldtally.readiness.requirement import Requirement

TARGET = Path(__file__).parents[3] / "webclient" / "src" / "screens" / "bar" / "shipped.ts"
# which canters, not how many: no number of the bar
NO_NUMBERS = ("over_fences",)
HEAD = """\
// Made by python -m fieldtally.readiness.bar_typescript from server/fieldtally/readiness/bars/common.toml; a test
// fails while they differ.

/** Where the numbers of each way of weighing come from. */
"""
MIDDLE = """\

type Described = readonly [title: string, weigh: string, source: string, own: readonly string[]];
type Range = readonly [least: number, most: number, whole: boolean];

/** Each requirement: its title, its way of weighing, where it comes from, and which of its numbers are its own. */
export const REQUIREMENTS: { readonly [id: string]: Described } = """
END = """\

/** The least and the most that each number can be turned to, and whether it must be whole. */
export const RANGES: { readonly [quantity: string]: Range } = """


def typescript() -> str:
    common = shipped_bars().common
    return (
        f"{HEAD}export const SOURCES: {{ readonly [weigh: string]: {{ readonly [quantity: string]: string }} }} = "
        f"{literal(sources(common))};\n{MIDDLE}{literal({each.id: described(each) for each in common})};\n"
        f"{END}{literal(ranges(common))};\n"
    )


def described(requirement: Requirement) -> list:
    return [requirement.title, requirement.weigh, requirement.source, own(requirement)]


def own(requirement: Requirement) -> list[str]:
    """The numbers that this requirement states for itself: they come from where it comes from."""
    return [name for name, source in requirement.number_sources.items() if source is requirement.source]


def sources(common) -> dict[str, dict[str, str]]:
    found: dict[str, dict[str, str]] = {}
    for each in common:
        shared = {name: source for name, source in each.number_sources.items() if name not in own(each)}
        found.setdefault(each.weigh, {}).update(shared)
    return found


def ranges(common) -> dict[str, list]:
    names = dict.fromkeys(name for each in common for name in each.numbers if name not in NO_NUMBERS)
    return {name: [*range_of(name), is_whole(name)] for name in (*names, "dropped")}


def main() -> None:
    write(TARGET, typescript())


if __name__ == "__main__":
    main()
