"""Whether the rulebook lets this rider and horse enter a level on a day, and if not, what is missing.

The rules are the rulebook's data; this only counts. Where the rulebook or the results leave a figure out the
answer is "not known", never a guess. A rule met here is no entry accepted: the organiser and the rulebook in
force decide, and a rulebook's permission says nothing about being ready.
"""

from collections.abc import Collection, Mapping, Sequence
from dataclasses import asdict, dataclass
from datetime import date, timedelta

from fieldtally.trade.counted_results import level_of
from fieldtally.trade.entry_gates import HORSE_BIRTHDAY, Gate, gates
from fieldtally.trade.entry_rule_finding import Results, RuleFinding, applies, rule_finding
from fieldtally.trade.rulebook import Level, Rulebook, Value

CAUTION = "Counted from this logbook and this rulebook's edition. The rulebook in force and the organiser decide."
ONE_RIDER = "Only this rider's results are here; the horse may have more with other riders."


@dataclass(frozen=True)
class Recency:
    """When moving up, one counted result must be recent. `until`: the last day the newest one is."""

    state: str
    weeks: float
    newest: str | None
    until: date | None
    missing: str
    source: str
    grade: str


@dataclass(frozen=True)
class Eligibility:
    """`state`: met when every rule is, not_met when any is not, else not_known; not_stated where the
    rulebook states no rule for the level. `until`: the last day on which all that is met now still is."""

    rulebook_id: str
    level_id: str
    on: date
    state: str
    gates: tuple[Gate, ...]
    rules: tuple[RuleFinding, ...]
    recency: Recency | None
    until: date | None
    cautions: tuple[str, ...]

    def to_json(self) -> dict:
        """Everything, with days as text."""
        return plain(asdict(self))


def plain(value: object) -> object:
    """Days as text, through lists and objects."""
    if isinstance(value, dict):
        return {key: plain(each) for key, each in value.items()}
    if isinstance(value, (list, tuple)):
        return [plain(each) for each in value]
    return value.isoformat() if isinstance(value, date) else value


def moved_up(results: Results, level: Level) -> bool:
    """Whether this horse has already completed an event at the level or above with this rider."""
    done = [body for body in results.of("pair")
            if body["status"] == "completed" and body["date"] < results.on.isoformat()]  # fmt: skip
    levels = [level_of(body, results.rulebook, results.editions) for body in done]
    return any(ridden is not None and ridden.order >= level.order for ridden in levels)


def recency_of(asked: Value, rules: Sequence[RuleFinding], on: date) -> Recency:
    """The newest result that counts, or might, against the weeks the rulebook gives it."""
    sure, maybe = (max((result.date for rule in rules for result in getattr(rule, kind)), default=None)
                   for kind in ("counted", "possible"))  # fmt: skip
    sure_until, maybe_until = (day and date.fromisoformat(day) + timedelta(weeks=asked.value) for day in (sure, maybe))
    if sure_until and on <= sure_until:
        return Recency("met", asked.value, sure, sure_until, "", asked.source, asked.grade)
    state = "not_known" if maybe_until and on <= maybe_until else "not_met"
    missing = f"One counted result must be from the {asked.value:g} weeks before the event."
    return Recency(state, asked.value, sure, sure_until, missing, asked.source, asked.grade)


def recency(results: Results, level: Level, rules: Sequence[RuleFinding]) -> Recency | None:
    """The rulebook's demand for a recent result, where it has one and the pair is moving up."""
    asked = results.rulebook.validity.get("one_within_weeks")
    if asked is None or not any(rule.need for rule in rules) or moved_up(results, level):
        return None
    return recency_of(asked, rules, results.on)


def overall(states: Sequence[str]) -> str:
    if not states:
        return "not_stated"
    if "not_met" in states:
        return "not_met"
    return "not_known" if "not_known" in states else "met"


def cautions(found_gates: Sequence[Gate], rules: Sequence[RuleFinding]) -> tuple[str, ...]:
    said = [CAUTION]
    if any(gate.rule == "horse_age_min_years" for gate in found_gates):
        said.append(HORSE_BIRTHDAY)
    if any(rule.who == "horse" for rule in rules):
        said.append(ONE_RIDER)
    return tuple(said)


def eligibility(
    results: Sequence[Mapping],
    rulebook: Rulebook,
    level_id: str,
    on: date,
    horse_birth_year: int | None,
    rider_birth_year: int | None = None,
    *,
    horse_id: str | None = None,
    horse_points: float | None = None,
    category: str | None = None,
    editions: Collection[str] = (),
) -> Eligibility:
    """Weigh every entry rule of a level for an event whose cross-country is on the day `on`.

    `results`: bodies of the rider's event_result entries, any horse; `horse_id` says which horse is entered
    (None: all results are of this horse). `editions`: ids of other rulebooks of the same body whose levels
    have the same ids, so that results recorded under an older edition count.
    """
    level = rulebook.level(level_id)
    there = Results([body for body in results if body["date"] <= on.isoformat()], horse_id, rulebook, on, editions)
    found_gates = gates(level, on, horse_birth_year, rider_birth_year, horse_points)
    rules = [rule_finding(rule, there) for rule in level.eligibility if applies(rule, on, category)]
    recent = recency(there, level, rules)
    states = [each.state for each in (*found_gates, *rules, *([recent] if recent else []))]
    days = [rule.met_until for rule in rules] + ([recent.until] if recent and recent.state == "met" else [])
    return Eligibility(rulebook.id, level.id, on, overall(states), tuple(found_gates), tuple(rules), recent,
                       min((day for day in days if day), default=None), cautions(found_gates, rules))  # fmt: skip
