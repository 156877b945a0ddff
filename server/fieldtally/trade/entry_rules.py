"""Who may enter a level, as a rulebook states it. Data only; trade/eligibility.py computes with it."""

from dataclasses import dataclass

QUALIFYING, COMPLETED, CROSS_COUNTRY_CLEAR = "qualifying", "completed", "cross_country_clear"
RESULTS = (QUALIFYING, COMPLETED, CROSS_COUNTRY_CLEAR)
WHO = ("rider", "horse", "pair", "not_stated")


@dataclass(frozen=True)
class Need:
    """`count` results at level `at` of the same rulebook ("or higher" where `or_higher`).

    `result`: a qualifying result as the rulebook defines it, a completed event, or a clear cross-country
    round (there `show_jumping_penalties_max` is the most show-jumping penalties it may carry).
    `within_days`: only results of so many days before the entry count; None: the rulebook's own validity.
    """

    count: int
    at: str
    or_higher: bool = False
    result: str = QUALIFYING
    within_days: int | None = None
    show_jumping_penalties_max: float | None = None


@dataclass(frozen=True)
class EntryRule:
    """Met when every need of any one of `options` is met by results of `who`.

    `who` "pair" counts results of this rider on this horse; "not_stated": the source does not say whose, so
    count the pair's, which satisfies every reading. `waived_by`: the rule falls away once it is met by the
    rider. `in_force_from` and `in_force_to` are days (YYYY-MM-DD, inclusive) or None. `category` names the
    riders a rule is for (such as "uncategorised"); None: all.
    """

    who: str
    text: str
    source: str
    grade: str
    options: tuple[tuple[Need, ...], ...]
    waived_by: Need | None = None
    in_force_from: str | None = None
    in_force_to: str | None = None
    category: str | None = None
