"""Weighs the coach's word on the level: go, not yet, hold; each with a reason and a day on which it lapses."""

from datetime import date
from functools import partial

from fieldtally.readiness.context import Weighing
from fieldtally.readiness.finding import Finding, Reason
from fieldtally.readiness.listed_records import records_behind
from fieldtally.readiness.plain import day_words
from fieldtally.readiness.requirement import Requirement

ASK = Reason("ask_coach", {}, "Ask your coach for a word on this level.")


def words_on(weighing: Weighing) -> list:
    wanted = (weighing.rulebook.id, weighing.level.id)
    return [each for each in weighing.book.all("word") if (each.body["rulebook_id"], each.body["level_id"]) == wanted]


def lapses_on(word, numbers: dict[str, float]) -> int | None:
    """The ordinal day on which a word lapses. A hold without a date stands until another word is given."""
    body = word.body
    if body["expires_on"]:
        return date.fromisoformat(body["expires_on"]).toordinal()
    if body["decision"] == "hold":
        return None
    return date.fromisoformat(word.local_date).toordinal() + int(numbers["valid_days"])


def hold_in_force(weighing: Weighing):
    """The coach's hold on this level, where the last word is a hold that has not lapsed."""
    words = words_on(weighing)
    if not words or words[-1].body["decision"] != "hold":
        return None
    lapses = lapses_on(words[-1], {})
    return words[-1] if lapses is None or lapses >= weighing.book.today else None


def weigh_word(requirement: Requirement, weighing: Weighing) -> Finding:
    words = words_on(weighing)
    evidence = partial(
        records_behind, weighing.book, words, lambda each: each.body["reason"], lambda each: each.body["decision"]
    )
    if not words:
        reason = Reason("no_word", {}, "No coach has given a word on this level.")
        return Finding(requirement, "untried", (reason,), (ASK,), {}, explained(requirement), evidence)
    last = words[-1]
    lapses = lapses_on(last, requirement.numbers)
    if lapses is not None and lapses < weighing.book.today:
        reason = Reason("lapsed", {"decision": last.body["decision"]}, f"The last word lapsed on {day_words(lapses)}.")
        return Finding(requirement, "gone_stale", (reason,), (ASK,), {}, explained(requirement), evidence)
    return Finding(
        requirement,
        STATE[last.body["decision"]],
        (spoken(last, lapses),),
        asked(last),
        {},
        explained(requirement),
        evidence,
    )


STATE = {"go": "shown", "not_yet": "building", "hold": "on_hold"}
SAID = {"go": "Go", "not_yet": "Not yet", "hold": "Hold"}


def spoken(word, lapses: int | None) -> Reason:
    body = word.body
    until = f", until {day_words(lapses)}" if lapses is not None else ""
    text = f"{SAID[body['decision']]}{until}: {body['reason']}"
    return Reason(body["decision"], {"reason": body["reason"], "author": word.author}, text)


def asked(word) -> tuple[Reason, ...]:
    return () if word.body["decision"] == "go" else (ASK,)


def explained(requirement: Requirement) -> str:
    days = requirement.numbers["valid_days"]
    return (
        f"The coach's last word on this level counts. A go or a not-yet lapses after {days:.0f} days unless it names "
        "a day; a hold stands until it is lifted."
    )
