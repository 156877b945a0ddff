"""Standings over HTTP: computed on a push, never stale, never able to fail a push."""

import gzip
import json
from datetime import UTC, date, datetime, timedelta

import pytest

from fieldtally.trade.rulebook import shipped
from fieldtally.web import recompute
from support.asking import Browser, error_of
from support.cheap_passwords import cheap_passwords  # noqa: F401
from support.riders import edit, new_id, wire

RULEBOOK = "us-2025"
TODAY = datetime.now(UTC).date()
COUNTS = {"shown", "building", "untried", "shaky", "gone_stale", "on_hold"}


@pytest.fixture
def push(wren, book, people):
    def push(*entries, **head):
        body = {"protocol": 1, "device": people.wren, "entries": entries} | head
        response = wren.send("POST", f"{book}/entries", body)
        assert response.status_code == 200, response.get_json()
        assert {answer["result"] for answer in response.get_json()["answers"]} == {"accepted"}
        return response

    return push


class Season:
    """A horse, a log it jumped on a day, and what comes of it."""

    def __init__(self, horse: str = "Bramble", day: date = TODAY) -> None:
        self.horse = wire("horse", {"name": horse, "rulebook_id": RULEBOOK}, utc_offset_min=0)
        self.fence = wire("fence", {"label": "Log", "profile": "log", "asks": ["fixed"], "height_cm": 88},
                          utc_offset_min=0)  # fmt: skip
        self.outing = wire("outing", {"horse_id": self.horse["record_id"], "date": day.isoformat(),
                                      "activity": "cross_country_school"}, utc_offset_min=0)  # fmt: skip

    def attempt(self, outcome: str = "clear") -> dict:
        return wire("attempt", {"outing_id": self.outing["record_id"], "fence_id": self.fence["record_id"],
                                "outcome": outcome}, utc_offset_min=0)  # fmt: skip

    def entries(self) -> list[dict]:
        return [self.horse, self.fence, self.outing, self.attempt()]


def standings(browser, book) -> dict:
    response = browser.get(f"{book}/standings")
    assert response.status_code == 200, response.get_json()
    return response.get_json()


def fixed(found: dict, level: str = "novice") -> dict:
    """The first finding of a level that the season's attempts are behind."""
    (standing,) = [each for each in found["standings"] if each["level_id"] == level]
    return next(each for each in standing["findings"] if each["evidence"])


def attempts(found: dict) -> int:
    return len(fixed(found)["evidence"])


def test_a_push_of_evidence_gives_a_standing_for_every_level(push, wren, book):
    season = Season()
    push(*season.entries())
    found = standings(wren, book)
    assert set(found) == {"log_id", "as_of", "logbook_number", "standings"}
    assert (found["as_of"], found["logbook_number"]) == (TODAY.isoformat(), 4)
    assert [each["level_id"] for each in found["standings"]] == [level.id for level in shipped()[RULEBOOK].levels]
    for each in found["standings"]:
        assert each["horse_id"] == season.horse["record_id"] and each["logbook_number"] == 4
        assert set(each["summary"]["counts"]) == COUNTS
    assert attempts(found) == 1


def test_they_are_computed_at_the_push_and_only_read_after(push, wren, book, monkeypatch):
    push(*Season().entries())
    monkeypatch.setattr(recompute, "compute_standings", None)  # computing now would fail
    assert attempts(standings(wren, book)) == 1


def test_every_further_push_shows(push, wren, book):
    season = Season()
    push(*season.entries())
    second = season.attempt("refusal")
    push(second)
    assert attempts(standings(wren, book)) == 2
    push(edit(second, None))
    assert attempts(standings(wren, book)) == 1


def test_only_the_touched_horse_is_computed_again(push, wren, book, monkeypatch):
    bramble, sorrel = Season("Bramble"), Season("Sorrel")
    push(*bramble.entries(), *sorrel.entries())
    computed = []
    real = recompute.worked_out
    monkeypatch.setattr(recompute, "worked_out", lambda *given: computed.append(given[-1]) or real(*given))
    push(bramble.attempt())
    assert computed == [bramble.horse["record_id"]]
    found = standings(wren, book)
    assert {each["horse_id"] for each in found["standings"]} == {s.horse["record_id"] for s in (bramble, sorrel)}
    assert {each["logbook_number"] for each in found["standings"]} == {9}
    assert len(computed) == 1


def test_what_is_no_evidence_computes_nothing(push, wren, book, monkeypatch):
    season = Season()
    push(*season.entries())
    monkeypatch.setattr(recompute, "compute_standings", None)
    push(wire("note", {"about_id": season.horse["record_id"], "text": "Shiny"}))
    found = standings(wren, book)
    assert found["logbook_number"] == 5 and attempts(found) == 1


def test_a_mistake_in_computing_never_fails_a_push(push, wren, book, monkeypatch, caplog):
    season = Season()
    push(*season.entries())

    def mistake(*_):
        raise ZeroDivisionError("a mistake of ours")

    monkeypatch.setattr(recompute, "worked_out", mistake)
    push(season.attempt("refusal"))
    assert "could not be computed" in caplog.text and "a mistake of ours" in caplog.text
    monkeypatch.undo()
    assert attempts(standings(wren, book)) == 2


def test_a_failure_does_not_hide_a_horse(push, wren, book, monkeypatch):
    """A new horse arrives while computing fails; the next push touches another horse only."""
    bramble, sorrel = Season("Bramble"), Season("Sorrel")
    push(*bramble.entries())
    monkeypatch.setattr(recompute, "compute_standings", None)
    push(*sorrel.entries())
    monkeypatch.undo()
    push(bramble.attempt())
    assert len({each["horse_id"] for each in standings(wren, book)["standings"]}) == 2


def test_more_to_come_waits_and_still_nothing_is_stale(push, wren, book, monkeypatch):
    season = Season()
    monkeypatch.setattr(recompute, "compute_standings", None)
    push(*season.entries(), more=True)
    monkeypatch.undo()
    assert attempts(standings(wren, book)) == 1


def test_the_day_changes(push, wren, book, monkeypatch):
    push(*Season().entries())
    tomorrow = TODAY + timedelta(days=1)
    monkeypatch.setattr(recompute, "today_in", lambda book: tomorrow)
    found = standings(wren, book)
    assert found["as_of"] == tomorrow.isoformat()
    assert {each["as_of"] for each in found["standings"]} == {tomorrow.isoformat()}


def test_today_is_where_the_rider_was_last(app, push, people):
    """At 23:30 UTC it is tomorrow in Auckland already and still today in Boise."""
    push(wire(utc_offset_min=780))
    with app.app_context():
        head = recompute.feed.head(people.book)
    assert head.utc_offset_min == 780
    assert recompute.today_in(head) == (datetime.now(UTC) + timedelta(hours=13)).date()


def test_the_etag_spares_the_phone_what_it_has(push, wren, book):
    season = Season()
    push(*season.entries())
    first = wren.get(f"{book}/standings")
    tag = {"If-None-Match": first.headers["ETag"]}
    again = wren.get(f"{book}/standings", headers=tag)
    assert (again.status_code, again.data) == (304, b"")
    packed = wren.get(f"{book}/standings", headers=tag | {"Accept-Encoding": "gzip"})
    assert packed.status_code == 304
    push(season.attempt())
    assert wren.get(f"{book}/standings", headers=tag).status_code == 200


def test_long_answers_are_compressed(push, wren, book):
    push(*Season().entries())
    packed = wren.get(f"{book}/standings", headers={"Accept-Encoding": "gzip"})
    assert packed.headers["Content-Encoding"] == "gzip"
    assert json.loads(gzip.decompress(packed.data)) == standings(wren, book)


def test_a_past_day_knows_only_what_had_happened(push, wren, book):
    early, late = Season(day=TODAY - timedelta(days=40)), Season(day=TODAY - timedelta(days=10))
    late.horse, late.fence = early.horse, early.fence
    late.outing["body"]["horse_id"] = early.horse["record_id"]
    push(*early.entries(), late.outing, late.attempt())
    horse = f"{book}/horses/{early.horse['record_id']}/standings"
    on_20_days_ago = wren.get(f"{horse}?as_of={TODAY - timedelta(days=20)}").get_json()
    assert on_20_days_ago["as_of"] == (TODAY - timedelta(days=20)).isoformat()
    assert attempts(on_20_days_ago) == 1
    assert attempts(wren.get(f"{horse}?as_of={TODAY}").get_json()) == 2
    assert wren.get(horse).get_json()["as_of"] == TODAY.isoformat()


@pytest.mark.parametrize(
    ("as_of", "code"),
    [
        ("yesterday", "bad_date"),
        ("1823-05-03", "out_of_range"),
        ("2026-W18-7", "bad_date"),
        ("2150-01-01", "out_of_range"),
    ],
)
def test_a_day_that_cannot_be_asked_for(push, wren, book, as_of, code):
    season = Season()
    push(season.horse)
    response = wren.get(f"{book}/horses/{season.horse['record_id']}/standings?as_of={as_of}")
    assert response.status_code == 400
    assert (error_of(response)["code"], error_of(response)["field"]) == (code, "as_of")


def test_no_such_horse(push, wren, book):
    season = Season()
    push(*season.entries(), edit(season.horse, None))
    for horse_id in (new_id(), "x", season.fence["record_id"], season.horse["record_id"]):
        response = wren.get(f"{book}/horses/{horse_id}/standings")
        assert response.status_code == 404 and error_of(response)["code"] == "not_found"


def test_an_empty_logbook_has_none(wren, book):
    assert standings(wren, book)["standings"] == []


def test_whoever_may_read_may_see_them_and_nobody_else(app, push, book):
    push(*Season().entries())
    for name, status in (("coach", 200), ("scribe", 200), ("reader", 200), ("maren", 403)):
        browser = Browser(app)
        browser.sign_in(name)
        assert browser.get(f"{book}/standings").status_code == status
    assert Browser(app).get(f"{book}/standings").status_code == 401


def correction(quantity: str, value: float | None, level: str = "training", phase: str = "cross_country") -> dict:
    where = {"rulebook_id": RULEBOOK, "level_id": level, "phase": phase, "quantity": quantity}
    return wire("rulebook_value", where | {"value": value, "edition": "in hand", "article": "EV"}, utc_offset_min=0)


def findings(browser, book) -> dict[str, list[dict]]:
    return {each["level_id"]: each["findings"] for each in standings(browser, book)["standings"]}


def may_enter(browser, book) -> dict[str, str]:
    """The state of each level's finding about its entry rules."""
    found = findings(browser, book)
    return {level: each["state"] for level in found for each in found[level] if each["requirement_id"] == "eligibility"}


def test_a_correction_of_the_rulebook_counts_until_it_is_taken_back(push, wren, book):
    """A rider corrects her rulebook's fixed height below the fence she jumped: the level's limit moves, and back."""
    push(*Season().entries())
    before = findings(wren, book)
    lower = correction("fixed_height_cm", 90)
    push(lower)
    after = findings(wren, book)
    assert "training" in {level for level in before if after[level] != before[level]}
    push(edit(lower, None))
    assert findings(wren, book) == before


def test_a_correction_that_cannot_be_meant_counts_for_nothing(push, wren, book):
    push(*Season().entries())
    before = findings(wren, book)
    push(correction("fixed_height_cm", 0.9), correction("fixed_height_cm", 90, level="grand"), correction("height", 90))
    assert findings(wren, book) == before


def test_a_corrected_entry_gate_moves_who_may_enter(push, wren, book):
    """The rulebook states an age of the horse; the one in hand asks for more than this one has."""
    season = Season()
    season.horse["body"]["birth_year"] = TODAY.year - 6
    push(*season.entries())
    before = may_enter(wren, book)
    older = correction("horse_age_min_years", 7, level="novice", phase="entry")
    push(older)
    assert (before["novice"], may_enter(wren, book)["novice"]) == ("shown", "on_hold")
    assert may_enter(wren, book) | {"novice": before["novice"]} == before
    push(edit(older, None))
    assert may_enter(wren, book) == before


def test_the_digest_of_bars_covers_what_a_standing_is_made_of():
    assert len(recompute.shipped_digest()) == 64
