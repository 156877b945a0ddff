"""What if: the same standing as of another day, without an outing, with more clear attempts of a kind, or with
another bar. Nothing is stored; records are copied and the same computation runs again."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from datetime import date
from math import inf

from fieldtally.book.fold import Record
from fieldtally.book.kinds import KINDS
from fieldtally.readiness.bar import Bars
from fieldtally.readiness.limits import FENCE_DIMENSIONS
from fieldtally.readiness.requirement import Requirement
from fieldtally.readiness.selection import limit_and_least_cm
from fieldtally.readiness.shapes import SIDES
from fieldtally.readiness.standing import Standing, compute_standings
from fieldtally.trade.rulebook import Level, Rulebook

AFTER_ALL = (inf, "")  # what is supposed comes after what was written down


@dataclass(frozen=True)
class More:
    """So many clear attempts more at one requirement, spread evenly over so many further outings."""

    requirement_id: str
    clear: int
    outings: int = 1


@dataclass(frozen=True)
class Question:
    """What to suppose. `as_of`: another day than the case's own. `bar_changes` are bodies of bar_change entries
    that nobody has saved yet."""

    without_outings: frozenset[str] = frozenset()
    more: tuple[More, ...] = ()
    bar_changes: tuple[Mapping, ...] = ()
    as_of: date | None = None


@dataclass(frozen=True)
class Comparison:
    """The standing as it is and as it would be, and each finding whose state would differ."""

    before: Standing
    after: Standing
    changes: list[dict] = field(default_factory=list)

    def to_json(self) -> dict:
        return {"before": self.before.to_json(), "after": self.after.to_json(), "changes": self.changes}


@dataclass(frozen=True)
class Case:
    """Whose standing: one horse, one level, on one day."""

    records: Mapping[str, Record]
    rulebook: Rulebook
    bars: Bars
    as_of: date
    logbook_number: int
    horse_id: str
    level_id: str

    def standing(self, records: Mapping[str, Record]) -> Standing:
        found = compute_standings(
            records, {self.rulebook.id: self.rulebook}, self.bars, self.as_of, self.logbook_number, self.horse_id
        )
        return next(each for each in found if each.weighing.level.id == self.level_id)


def what_if(case: Case, question: Question) -> Comparison:
    """The answer to `question`. Raises StopIteration where the horse has no standing at that level, KeyError
    for a requirement of which no more attempts can be made up: one this level's bar does not have, or one of
    another kind than a question at a fence."""
    before = case.standing(case.records)
    then = replace(case, as_of=question.as_of or case.as_of)
    after = then.standing(supposed(then, question, before))
    return Comparison(before, after, differences(before, after))


def supposed(case: Case, question: Question, before: Standing) -> dict[str, Record]:
    records = without(case.records, question.without_outings)
    requirements = {each.requirement.id: each.requirement for each in before.findings if each.requirement.condition}
    for place, more in enumerate(question.more):
        records |= more_clear(more, requirements[more.requirement_id], case, place)
    for place, body in enumerate(question.bar_changes):
        made = record("bar_change", f"supposed-bar-{place}", body, case.as_of)
        records[made.record_id] = made
    return records


def without(records: Mapping[str, Record], outings: Iterable[str]) -> dict[str, Record]:
    """All records but these outings and whatever belongs to them."""
    gone = frozenset(outings)
    return {
        key: each
        for key, each in records.items()
        if key not in gone and (each.body is None or each.body.get("outing_id") not in gone)
    }


def more_clear(more: More, requirement: Requirement, case: Case, place: int) -> dict[str, Record]:
    """A supposed fence that asks the question at the level's limit, in supposed outings of the same day, at a
    field of its own."""
    level = case.rulebook.level(case.level_id)
    name = f"supposed-{place}"
    made = [record("fence", f"{name}-fence", supposed_fence(requirement, level), case.as_of)]
    outings = min(more.outings, more.clear)  # an outing without an attempt would still count for breadth
    for number in range(outings):
        body = {"horse_id": case.horse_id, "date": case.as_of.isoformat(), "activity": "cross_country_school",
                "field_id": f"{name}-field"}  # fmt: skip
        made.append(record("outing", f"{name}-outing-{number}", body, case.as_of))
    for number in range(more.clear):
        body = {"outing_id": f"{name}-outing-{number % outings}", "fence_id": f"{name}-fence",
                "outcome": "clear", "presentation": supposed_presentation(requirement)}  # fmt: skip
        made.append(record("attempt", f"{name}-attempt-{number}", body, case.as_of))
    return {each.record_id: each for each in made}


def supposed_presentation(requirement: Requirement) -> dict:
    return dict.fromkeys(SIDES) | {side: values[0] for side, values in requirement.condition.presentation}


def supposed_fence(requirement: Requirement, level: Level) -> dict:
    condition = requirement.condition
    size = max(filter(None, limit_and_least_cm(requirement, level)), default=None)
    elements = [{"letter": letter, "profile": "rail"} for letter in "ABCDEF"[: condition.elements]]
    body = {"label": requirement.title, "profile": "log", "asks": [condition.ask], "elements": elements}
    return body | ({condition.size: size} if size else {})


def record(kind: str, record_id: str, body: Mapping, on: date) -> Record:
    """A record that was never written down; absent fields get the kind's defaults."""
    schema = KINDS[kind].schema()
    defaults = {name: each.load_default for name, each in schema.fields.items() if not each.required}
    filled = {name: value() if callable(value) else value for name, value in defaults.items()}
    body = with_elements(filled | dict(body))
    return Record(record_id, kind, body, on.isoformat(), None, None, (record_id,), first=AFTER_ALL)


def with_elements(body: dict) -> dict:
    """Gives the elements of a supposed combination the fields that nobody stated."""
    if "elements" in body:
        nothing = dict.fromkeys((*FENCE_DIMENSIONS, "distance_to_next_m"))
        body["elements"] = [nothing | {"asks": []} | each for each in body["elements"]]
    return body


def differences(before: Standing, after: Standing) -> list[dict]:
    """Findings whose state differs, or that only one of the two bars has."""
    old, new = by_requirement(before), by_requirement(after)
    return [
        {"requirement_id": key, "title": (new.get(key) or old[key]).requirement.title,
         "before": old[key].state if key in old else None, "after": new[key].state if key in new else None}
        for key in [*old, *(key for key in new if key not in old)]
        if key not in old or key not in new or old[key].state != new[key].state
    ]  # fmt: skip


def by_requirement(standing: Standing) -> dict:
    return {each.requirement.id: each for each in standing.findings}


def bar_change_preview(case: Case, changes: Sequence[Mapping]) -> Comparison:
    """What a change of the bar would do, before anybody saves it."""
    return what_if(case, Question(bar_changes=tuple(changes)))
