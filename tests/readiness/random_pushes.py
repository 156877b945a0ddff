"""Random pushes to a made-up logbook: records added, edited in any field, taken back and put back."""

from dataclasses import replace
from datetime import timedelta
from operator import itemgetter

from fieldtally.book import words
from fieldtally.book.kinds import KINDS
from fieldtally.readiness.renew import Change
from readiness.made_up import TODAY
from readiness.test_any_logbook import random_day, random_fence


def living(records, kind):
    return [key for key, each in records.items() if each.kind == kind and each.body is not None]


def random_push(logbook, pick, said: dict) -> list[Change]:
    """A few records added, edited, taken back and put back as they were `said`, of any kind but the horse itself,
    whose change has everything worked out anew."""
    before = dict(logbook.records)
    added(logbook, pick)
    for key in pick.sample(sorted(before), min(len(before), pick.randint(0, 3))):
        record = before[key]
        if key != logbook.horse:
            put(logbook, record, said_next(logbook, record, pick, said))
    return changes_since(before, logbook)


def said_next(logbook, record, pick, said: dict) -> dict | None:
    if record.body is None:
        return said.get(record.record_id)
    said[record.record_id] = record.body
    return None if pick.random() < 0.4 else edited(logbook, record, pick)


def put(logbook, record, body):
    logbook.records[record.record_id] = replace(record, body=body, number=len(logbook.records) + 1)


def changes_since(before, logbook) -> list[Change]:
    return [Change(before.get(key), each) for key, each in logbook.records.items() if before.get(key) is not each]


def added(logbook, pick):
    if pick.random() < 0.4:
        random_outing(logbook, pick)
    if pick.random() < 0.3:
        random_fence(logbook, pick, [None, *living(logbook.records, "field")])
    if pick.random() < 0.1:
        logbook.add("track", name="Track", distance_m=400, measured_by="wheel")
    outings, fences = living(logbook.records, "outing"), living(logbook.records, "fence")
    if outings and fences and pick.random() < 0.8:
        for _ in range(pick.randint(1, 3)):
            outcome = pick.choice(words.OUTCOMES)
            logbook.attempt(pick.choice(outings), pick.choice(fences), outcome, element=pick.choice([None, "A", "B"]))
    if outings and fences and pick.random() < 0.3:
        random_day(logbook, pick, pick.choice(outings), fences, logbook.horse, TODAY.isoformat())


def random_outing(logbook, pick, **told):
    return logbook.add("outing", **{"horse_id": logbook.horse, "activity": "cross_country_school"} | told | {
        each: value for each, value in outing_fields(logbook, pick).items() if each not in told})  # fmt: skip


def outing_fields(logbook, pick) -> dict:
    """A value for every field that an outing can be edited in."""
    day = (TODAY - timedelta(days=pick.randint(-20, 900))).isoformat()
    return {
        "horse_id": pick.choice([logbook.horse, logbook.horse, *living(logbook.records, "horse")]),
        "date": pick.choice([TODAY.isoformat(), day]),
        "field_id": pick.choice([None, *living(logbook.records, "field")]),
        "activity": pick.choice(words.ACTIVITIES), "going": pick.choice([None, *words.GOING]),
        "rider_confidence": pick.choice([None, 1, 3, 5]), "minutes_in_saddle": pick.choice([None, 30, 200]),
        "from_memory": pick.random() < 0.5, "closed": pick.random() < 0.5, "accompanied": pick.choice([None, True]),
        "notes": pick.choice([None, "Wet"]),
    }  # fmt: skip


def fence_fields(pick) -> dict:
    """The same of a fence."""
    letters = pick.choice(["", "", "A", "AB", "ABC"])
    elements = [{"letter": letter, "profile": pick.choice(words.PROFILES), "height_cm": 90} for letter in letters]
    sizes = {name: pick.choice([None, 60, 95, 110]) for name in ("height_cm", "drop_cm", "spread_top_cm")}
    loaded = KINDS["fence"].schema().load({
        "label": pick.choice(["Log", "Ditch"]), "profile": pick.choice(words.PROFILES), "elements": elements,
        "asks": pick.sample(words.ASKS, pick.randint(0, 2)), "favourite": pick.random() < 0.5} | sizes)  # fmt: skip
    return {name: value for name, value in loaded.items() if name != "field_id"}


def edited(logbook, record, pick):
    """One field of an attempt, an outing or a fence says something else; others say the same again."""
    choices = {"attempt": lambda: attempt_fields(logbook, pick), "outing": lambda: outing_fields(logbook, pick),
               "fence": lambda: fence_fields(pick)}.get(record.kind, dict)()  # fmt: skip
    return record.body | dict(pick.sample(sorted(choices.items(), key=itemgetter(0)), min(1, len(choices))))


def attempt_fields(logbook, pick) -> dict:
    fields = {"outcome": pick.choice(words.OUTCOMES), "element": pick.choice([None, "A", "B"]),
              "height_cm": pick.choice([None, 60, 105]), "attitude": pick.choice([None, *words.ATTITUDES])}  # fmt: skip
    fences, outings = living(logbook.records, "fence"), living(logbook.records, "outing")
    fields |= {"fence_id": pick.choice(fences)} if fences else {}
    return fields | ({"outing_id": pick.choice(outings)} if outings else {})
