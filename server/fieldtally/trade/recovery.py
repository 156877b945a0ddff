"""Recovery after work, from heart and breathing rates, against published gates and the horse's own normals.

Fixed numbers are weak: how fast a horse recovers hangs on its own resting rate (Animals 10(1):120, 2020), so
the horse's own normals come first where they are known. No gate here clears a horse; the vet decides.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from fieldtally.trade.bad_input import BadInput, above_zero, not_below_zero

TALK_1998 = "endurance notes of a combined-training talk, 1998"
SUPPLIER = "article of a feed-supplement company"
PROVET = "Provet, equine cardiology pages"
USCTA_1987 = "USCTA Book of Eventing, 1987, reprinted by USEA 2015"
OWN_NORMAL_WITHIN = 0.15  # of normal, by 15 min after light and 30 to 45 min after rigorous work (Provet)
LIGHT_BY_MIN, RIGOROUS_BY_MIN = 15.0, 45.0

CAUTIONS = (
    "These gates are old, few and disagree; the horse's own normals tell more. Take them at rest, several days.",
    "Breathing faster than the heart beats, still blowing after 10 minutes, or anything unlike this horse: cool the "
    "horse, stop work and call the vet.",
    "The vet decides, not these numbers.",
)


@dataclass(frozen=True)
class Check:
    """Rates a number of minutes after the work ended; None: not taken."""

    minute: float
    heart_rate_bpm: float | None = None
    respiration_bpm: float | None = None


@dataclass(frozen=True)
class Gate:
    """By `minute` the rate of `what` should be at most `most`, or under it where `under`."""

    id: str
    what: str
    minute: float
    most: float
    under: bool
    meaning: str
    source: str
    grade: str

    def holds(self, rate: float) -> bool:
        return rate < self.most if self.under else rate <= self.most


@dataclass(frozen=True)
class Answer:
    """One gate against the checks. `state`: passed, missed or not_measured."""

    gate: Gate
    state: str
    minute: float | None
    rate: float | None


@dataclass(frozen=True)
class Recovery:
    """`state`: call_vet, slow, as_expected or not_known (nothing was measured when it matters)."""

    state: str
    words: str
    answers: tuple[Answer, ...]
    cautions: tuple[str, ...]


# the next canter of a set may start at these
NEXT_SET = (
    Gate("next_heart", "heart_rate_bpm", 0, 120, True, "before the next canter", TALK_1998, "secondary"),
    Gate("next_respiration", "respiration_bpm", 0, 80, True, "before the next canter", TALK_1998, "secondary"),
)
# after the last one
AFTER_WORK = (
    Gate("heart_2", "heart_rate_bpm", 2, 100, False, "2 minutes after the work", SUPPLIER, "secondary"),
    Gate("heart_10", "heart_rate_bpm", 10, 80, False, "10 minutes after; else go back a step", TALK_1998, "secondary"),
    Gate("respiration_10", "respiration_bpm", 10, 40, False, "10 minutes after; else go back a step", TALK_1998,
         "secondary"),
    Gate("heart_10_fit", "heart_rate_bpm", 10, 60, True, "10 minutes after, a fit horse", SUPPLIER, "secondary"),
)  # fmt: skip
STRICT = ("heart_2", "heart_10_fit")  # missing these says "not yet fit", not "go back"


def own_gates(resting_heart_bpm: float | None, resting_respiration_bpm: float | None, rigorous: bool) -> list[Gate]:
    """Gates from the horse's own normals: within 15 % of each, in the time its work allows."""
    minute = RIGOROUS_BY_MIN if rigorous else LIGHT_BY_MIN
    normals = {"heart_rate_bpm": resting_heart_bpm, "respiration_bpm": resting_respiration_bpm}
    return [
        Gate(f"own_{what}", what, minute, above_zero(f"resting_{what}", normal, "a minute") * (1 + OWN_NORMAL_WITHIN),
             False, f"within 15 % of this horse's normal of {normal:g}", PROVET, "secondary")
        for what, normal in normals.items() if normal is not None
    ]  # fmt: skip


def checked(checks: Sequence[Check]) -> list[Check]:
    """The checks in order of time, or BadInput at the first that cannot be."""
    for index, check in enumerate(checks):
        not_below_zero(f"checks[{index}].minute", check.minute, "min")
        for what in ("heart_rate_bpm", "respiration_bpm"):
            if getattr(check, what) is not None:
                above_zero(f"checks[{index}].{what}", getattr(check, what), "a minute")
    if not checks:
        raise BadInput("checks", "Nothing was measured.", "Take heart rate or breathing at least once.")
    return sorted(checks, key=lambda check: check.minute)


def answer(gate: Gate, checks: Sequence[Check]) -> Answer:
    """A rate low enough by the gate's minute passes it; one still too high at or after it misses it."""
    taken = [(check.minute, getattr(check, gate.what)) for check in checks if getattr(check, gate.what) is not None]
    late = [(minute, rate) for minute, rate in taken if minute >= gate.minute and not gate.holds(rate)]
    if late:
        return Answer(gate, "missed", *late[0])
    good = [(minute, rate) for minute, rate in taken if minute <= gate.minute and gate.holds(rate)]
    return Answer(gate, "passed", *good[-1]) if good else Answer(gate, "not_measured", None, None)


def inverted(checks: Sequence[Check]) -> bool:
    """Breathing faster than the heart beats: cool the horse and call the vet (from memory)."""
    return any(check.heart_rate_bpm is not None and check.respiration_bpm is not None
               and check.respiration_bpm > check.heart_rate_bpm for check in checks)  # fmt: skip


WORDS = {
    "call_vet": "Breathing faster than the heart beats: cool the horse, stop work and call the vet.",
    "slow": "Slower than it should be: do not go on; go back a step next time, and ask the vet if it stays so.",
    "as_expected": "As the published gates and this horse's normals ask. Watch the horse before the numbers.",
    "not_known": "Not measured at the minutes that matter: 2, 10 and, for the horse's own normals, later.",
}


def state_of(answers: Sequence[Answer], checks: Sequence[Check]) -> str:
    if inverted(checks):
        return "call_vet"
    telling = [each.state for each in answers if each.gate.id not in STRICT]
    if "missed" in telling:
        return "slow"
    return "as_expected" if "passed" in telling else "not_known"


def recovery(
    checks: Sequence[Check],
    resting_heart_bpm: float | None = None,
    resting_respiration_bpm: float | None = None,
    rigorous: bool = True,
) -> Recovery:
    """Judge the recovery after the last canter from checks at minutes after its end.

    Resting rates are the horse's own, in beats and breaths per minute. `rigorous`: interval or fast work,
    which is given longer to come back to normal than light work.
    """
    ordered = checked(checks)
    gates = [*own_gates(resting_heart_bpm, resting_respiration_bpm, rigorous), *AFTER_WORK]
    answers = tuple(answer(gate, ordered) for gate in gates)
    state = state_of(answers, ordered)
    return Recovery(state, WORDS[state], answers, CAUTIONS)


def next_set(heart_rate_bpm: float | None, respiration_bpm: float | None) -> Recovery:
    """Whether the rates now allow the next canter by the published gate; never a reason to go on alone."""
    now = checked([Check(0, heart_rate_bpm, respiration_bpm)])
    answers = tuple(answer(gate, now) for gate in NEXT_SET)
    state = state_of(answers, now)
    if state == "as_expected" and any(each.state == "not_measured" for each in answers):
        state = "not_known"
    words = "Wait and walk on: not yet under both rates." if state == "slow" else WORDS[state]
    return Recovery(state, words, answers, CAUTIONS)
