"""Weighs the coach's word on the level: go, not yet, hold; each with a reason and a day on which it lapses."""

from datetime import date
from functools import partial

from fieldtally.book.fold import Record
from fieldtally.readiness.context import Weighing
from fieldtally.readiness.finding import Finding, Reason
from fieldtally.readiness.listed_records import records_behind
from fieldtally.readiness.plain import day_words, iso
from fieldtally.readiness.requirement import Requirement
from fieldtally.trade.rulebook import Level

ASK = Reason("ask_coach", {}, "Ask your coach for a word on this level.")


def words_on(weighing: Weighing, level: Level | None = None) -> list:
    """The coach's words on this level or on another, oldest first."""
    wanted = (weighing.rulebook.id, (level or weighing.level).id)
    return [each for each in weighing.book.all("word") if (each.body["rulebook_id"], each.body["level_id"]) == wanted]


def lapses_on(word, numbers: dict[str, float]) -> int | None:
    """The ordinal day on which a word lapses. A hold without a date stands until another word is given."""
    body = word.body
    if body["expires_on"]:
        return date.fromisoformat(body["expires_on"]).toordinal()
    if body["decision"] == "hold":
        return None
    return date.fromisoformat(word.local_date).toordinal() + int(numbers["valid_days"])


def hold_in_force(weighing: Weighing, level: Level | None = None):
    """The coach's hold on this level or on another, where the last word on it is a hold that has not lapsed."""
    words = words_on(weighing, level)
    if not words or words[-1].body["decision"] != "hold":
        return None
    lapses = lapses_on(words[-1], {})
    return words[-1] if lapses is None or lapses >= weighing.book.today else None


def held_elsewhere(weighing: Weighing) -> list[tuple[Level, Record]]:
    """The other levels of this rulebook that the coach holds for this horse, lowest first, with the word."""
    others = (each for each in weighing.rulebook.levels if each.id != weighing.level.id)
    return [(level, hold) for level in others if (hold := hold_in_force(weighing, level))]


def hold_over(weighing: Weighing) -> tuple[Level, Record] | None:
    """The hold that stops the schooling of this level, and on which level it is: this one, or one below."""
    here = hold_in_force(weighing)
    lower = (each for each in held_elsewhere(weighing) if each[0].order < weighing.level.order)
    return (weighing.level, here) if here else next(lower, None)


def weigh_word(requirement: Requirement, weighing: Weighing) -> Finding:
    words = words_on(weighing)
    evidence = partial(
        records_behind, weighing.book, words, lambda each: each.body["reason"], lambda each: each.body["decision"]
    )
    if not words:
        reason = Reason("no_word", {}, "No coach has given a word on this level.")
        return Finding(
            requirement, "untried", (reason,), (ASK,), {}, lambda: explained(requirement, weighing), evidence
        )
    last = words[-1]
    lapses = lapses_on(last, requirement.numbers)
    if lapses is not None and lapses < weighing.book.today:
        return Finding(
            requirement, "gone_stale", (lapsed(last, lapses),), (ASK,), {},
            lambda: explained(requirement, weighing, last), evidence,
        )  # fmt: skip
    return Finding(
        requirement,
        STATE[last.body["decision"]],
        (spoken(last, lapses),),
        asked(last),
        {},
        lambda: explained(requirement, weighing, last),
        evidence,
    )


STATE = {"go": "shown", "not_yet": "building", "hold": "on_hold"}
SAID = {"go": "Go", "not_yet": "Not yet", "hold": "Hold"}


def lapsed(word, day: int) -> Reason:
    decision = word.body["decision"]
    text = f"The last word, “{SAID[decision].lower()}”, lapsed on {day_words(day)}."
    return Reason("lapsed", {"decision": decision, "date": iso(day)}, text)


def spoken(word, lapses: int | None) -> Reason:
    body = word.body
    until = f", until {day_words(lapses)}" if lapses is not None else ""
    text = f"{SAID[body['decision']]}{until}: {body['reason']}"
    return Reason(body["decision"], {"reason": body["reason"], "author": word.author}, text)


def asked(word) -> tuple[Reason, ...]:
    return () if word.body["decision"] == "go" else (ASK,)


def explained(requirement: Requirement, weighing: Weighing, last=None) -> tuple[Reason, ...]:
    days = requirement.numbers["valid_days"]
    text = (
        f"Nothing is counted here: the coach's last word on this level stands. A go or a not-yet lapses after "
        f"{days:.0f} days unless it names a day; a hold without a day stands until another word is given."
    )
    rule = Reason("worked_word", {"days": days}, text)
    if last is None:
        return (rule,)
    given = weighing.book.date_of(last)
    said = f"The last one was given on {day_words(date.fromisoformat(given))}."
    return rule, Reason("worked_word_given", {"date": given}, said)
