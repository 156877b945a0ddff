"""What this release cannot read is kept, and numbered once it can."""

import pytest
from sqlalchemy import func, select

from fieldtally.book import entry as entry_module
from fieldtally.book.kinds import KINDS, Kind
from fieldtally.store import feed
from fieldtally.store.db import db
from fieldtally.store.models import HeldEntry
from fieldtally.store.replay import Replayed, replay_held
from support.riders import wire


def still_held() -> int:
    return db.session.scalar(select(func.count()).select_from(HeldEntry))


@pytest.fixture
def upgrade(monkeypatch):
    """Installs a kind called `surface`, as a newer release would know it."""

    def install(writers=("rider",), schema=KINDS["field"].schema):
        monkeypatch.setitem(KINDS, "surface", Kind("surface", schema, True, writers))
        monkeypatch.setitem(entry_module._bodies, "surface", schema())

    return install


@pytest.mark.parametrize(
    ("change", "reason"),
    [
        ({"kind": "surface"}, "unknown_kind"),
        ({"kind_version": 2}, "unknown_version"),
        ({"weather": "rain"}, "unknown_envelope"),
    ],
)
def test_the_unknown_is_held_not_refused(stable, change, reason):
    sent = wire(**change)
    for _ in range(2):  # again after a lost reply
        answer = stable.push(sent).answers[0]
        assert (answer.id, answer.result, answer.code, answer.number) == (sent["id"], "held", reason, None)
    assert still_held() == 1
    assert feed.page(stable.logbook, 0).last_number == 0


def test_another_entry_under_a_held_id_is_refused(stable):
    sent = wire("surface")
    stable.push(sent)
    assert stable.push(sent | {"local_date": "2026-05-04"}).answers[0].code == "id_taken"
    assert stable.push(sent | {"kind": "field"}).answers[0].code == "id_taken"


def test_replay_numbers_what_the_upgrade_can_read(stable, upgrade):
    sent = [wire("surface"), wire("surface"), wire("still newer")]
    stable.push(*sent, wire())
    upgrade()
    assert replay_held() == Replayed(numbered=2, still_held=1, refused=0)
    entries = feed.page(stable.logbook, 0).entries
    assert [entry["number"] for entry in entries] == [1, 2, 3]
    assert {entry["id"] for entry in entries[1:]} == {entry["id"] for entry in sent[:2]}
    assert entries[1]["author"] == stable.accounts["rider"] and entries[1]["skew_ms"] == 250
    assert still_held() == 1 and replay_held() == Replayed(0, 1, 0)
    assert stable.results(sent[0]) == ["already"]


def test_a_phone_that_sends_again_after_the_upgrade_needs_no_replay(stable, upgrade):
    sent = wire("surface")
    stable.push(sent)
    upgrade()
    assert stable.results(sent) == ["accepted"] and still_held() == 0


def test_what_the_upgrade_refuses_stays_with_the_reason(stable, upgrade):
    stable.push(wire("surface", {"name": ""}), wire("surface"))
    stable.push(wire("surface"), role="scribe")
    upgrade()
    assert replay_held() == Replayed(numbered=1, still_held=0, refused=2)
    reasons = db.session.scalars(select(HeldEntry.refusal)).all()
    assert sorted("empty" in reason for reason in reasons) == [False, True]
    assert any("not_allowed" in reason for reason in reasons)
