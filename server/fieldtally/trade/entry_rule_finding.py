"""One entry rule of a level weighed against event results: what it has, what it needs, until when."""

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass
from datetime import date

from fieldtally.trade.counted_results import CountedResult, Tally, need_words, tally
from fieldtally.trade.entry_rules import EntryRule, Need
from fieldtally.trade.rulebook import Rulebook

WHOSE = {"rider": "by the rider", "horse": "by the horse", "pair": "by this rider on this horse",
         "not_stated": "by this rider on this horse (the source does not say whose)"}  # fmt: skip
UNCATEGORISED = "uncategorised"  # riders without a category are these, so the rule is theirs too


@dataclass(frozen=True)
class Results:
    """What there is to count from. `horse_id` picks the results of the horse and of the pair."""

    all: Sequence[Mapping]
    horse_id: str | None
    rulebook: Rulebook
    on: date
    editions: Collection[str] = ()

    def of(self, who: str) -> Sequence[Mapping]:
        if who == "rider" or self.horse_id is None:
            return self.all
        return [body for body in self.all if body.get("horse_id") == self.horse_id]


@dataclass(frozen=True)
class RuleFinding:
    """`state` met, not_met, not_known or waived. `have` of `need` results. `missing` says in words what is,
    and is empty when the rule is met. `met_until`: the last day it stays met if nothing is added."""

    text: str
    who: str
    state: str
    have: int
    need: int
    missing: str
    counted: tuple[CountedResult, ...]
    possible: tuple[CountedResult, ...]
    met_until: date | None
    source: str
    grade: str


def applies(rule: EntryRule, on: date, category: str | None) -> bool:
    """Whether a rule is in force on the day and meant for riders of this category."""
    begun = rule.in_force_from is None or rule.in_force_from <= on.isoformat()
    running = rule.in_force_to is None or on.isoformat() <= rule.in_force_to
    return begun and running and rule.category in (None, category or UNCATEGORISED)


RANK = {"met": 0, "not_known": 1, "not_met": 2}


def option_state(tallies: Sequence[Tally]) -> str:
    """An option is as good as its worst need."""
    return max((each.state for each in tallies), key=RANK.__getitem__)


def best_option(rule: EntryRule, results: Results) -> list[Tally]:
    """The option that is met, else could be, else lacks the fewest results."""
    bodies = results.of(rule.who)
    options = [tally(needs, bodies, results.rulebook, results.on, results.editions) for needs in rule.options]
    return min(options, key=lambda each: (RANK[option_state(each)], sum(need.short for need in each)))


def missing_words(tallies: Sequence[Tally], who: str, rulebook: Rulebook) -> str:
    """“2 more qualifying results at Training by the horse”, and what might fill the gap."""
    lacking = [need_words(each.need, each.short, rulebook) for each in tallies if each.short]
    if not lacking:
        return ""
    words = f"{' and '.join(lacking)} {WHOSE[who]}."
    gaps = [f"{result.event} on {result.date}: {', '.join(result.reasons)}."
            for each in tallies if each.short for result in each.possible]  # fmt: skip
    return " ".join([words, "This might count:" if gaps else "", *gaps]).replace("  ", " ").strip()


def waived(rule: EntryRule, results: Results) -> bool:
    """Whether the rider's own record makes the rule fall away."""
    if rule.waived_by is None:
        return False
    [found] = tally([rule.waived_by], results.all, results.rulebook, results.on, results.editions)
    return found.state == "met"


def until(tallies: Sequence[Tally]) -> date | None:
    days = [each.met_until for each in tallies if each.met_until is not None]
    return min(days, default=None)


def need_count(needs: Sequence[Need]) -> int:
    return sum(need.count for need in needs)


def rule_finding(rule: EntryRule, results: Results) -> RuleFinding:
    """Weigh one entry rule. Its options are alternatives; the nearest one is reported."""
    tallies = best_option(rule, results)
    state = "waived" if waived(rule, results) else option_state(tallies)
    done = state in ("met", "waived")
    return RuleFinding(
        rule.text,
        rule.who,
        state,
        sum(each.have for each in tallies),
        need_count([each.need for each in tallies]),
        "" if done else missing_words(tallies, rule.who, results.rulebook),
        tuple(result for each in tallies for result in each.counted),
        tuple(result for each in tallies for result in each.possible),
        until(tallies) if state == "met" else None,
        rule.source,
        rule.grade,
    )
