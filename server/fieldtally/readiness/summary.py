"""The standing in one sentence. It counts and names gaps; it never says that a pair is ready."""

from collections.abc import Sequence

from fieldtally.readiness.finding import STATES, Finding
from fieldtally.readiness.plain import listed

DECISION = "the decision is yours, your coach's and the officials'"
IN_WORDS = {
    "on_hold": "on hold",
    "shaky": "shaky",
    "gone_stale": "gone stale",
    "untried": "untried",
    "building": "building",
}


def summary(findings: Sequence[Finding]) -> dict:
    """Counts, and whether every required finding is shown."""
    required = [each for each in findings if each.requirement.required]
    counts = {state: sum(each.state == state for each in required) for state in STATES}
    return {
        "counts": counts,
        "required": len(required),
        "complete": counts["shown"] == len(required),
        "sentence": sentence(required, counts),
    }


def sentence(required: Sequence[Finding], counts: dict[str, int]) -> str:
    start = f"{counts['shown']} of {len(required)} asks shown"
    gaps = [gap(required, state) for state in IN_WORDS if counts[state]]
    return "; ".join([start, *([", ".join(gaps)] if gaps else []), DECISION]) + "."


def gap(required: Sequence[Finding], state: str) -> str:
    """Names up to two, else counts: “ditch downhill untried”, “3 building”."""
    titles = [each.requirement.title for each in required if each.state == state]
    if len(titles) > 2 or state == "building":
        return f"{len(titles)} {IN_WORDS[state]}"
    return f"{listed([title[0].lower() + title[1:].replace(',', '') for title in titles])} {IN_WORDS[state]}"
