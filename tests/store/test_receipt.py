"""After a restore, entries come back from whoever has them, and keep the author they had."""

from fieldtally.store import feed
from fieldtally.store.db import writing
from fieldtally.store.models import Entry, Logbook
from support.riders import new_id, wire


def lose_everything(stable) -> None:
    """As restoring the backup taken before the first push does."""
    with writing() as session:
        session.query(Entry).delete()
        book = session.get(Logbook, stable.logbook)
        book.last_number, book.log_id = 0, new_id()


def pulled(stable) -> list[dict]:
    return feed.page(stable.logbook, 0).entries


def the_coach_s_word() -> dict:
    return wire("word", {"horse_id": new_id(), "rulebook_id": "r", "level_id": "l", "decision": "hold",
                         "reason": "Looked tired"})  # fmt: skip


def test_a_rider_s_phone_brings_back_her_coach_s_word(stable):
    stable.push(the_coach_s_word(), role="coach")
    copy = pulled(stable)[0]
    lose_everything(stable)
    assert stable.results(copy, role="rider") == ["accepted"]
    again = pulled(stable)[0]
    assert again == copy
    assert again["author"] == stable.accounts["coach"] and again["author_name"] == "Coach"


def test_a_reader_s_phone_helps_too(stable):
    stable.push(wire())
    copy = pulled(stable)[0]
    lose_everything(stable)
    assert stable.results(copy, role="reader") == ["accepted"]
    assert pulled(stable)[0]["author"] == stable.accounts["rider"]


def test_no_part_of_a_receipt_can_be_forged(stable):
    stable.push(the_coach_s_word(), role="coach")
    copy = pulled(stable)[0]
    lose_everything(stable)
    forgeries = [
        copy | {"id": new_id()},
        copy | {"body": copy["body"] | {"decision": "go"}},
        copy | {"author": stable.accounts["scribe"]},
        copy | {"received_at": "2026-05-03T12:00:01.001Z"},
        copy | {"skew_ms": 251},
        copy | {"device": new_id()},
        copy | {"receipt": copy["receipt"][:-1] + ("0" if copy["receipt"][-1] != "0" else "1")},
        copy | {"receipt": ""},
        copy | {"receipt": None},
        copy | {"receipt": "é" * 32},
        {key: value for key, value in copy.items() if key != "receipt"},
    ]
    for forged in forgeries:
        answer = stable.push(forged, role="rider").answers[0]
        assert (answer.result, answer.code) == ("refused", "not_allowed")
    assert stable.results(copy, logbook=stable.other_logbook) == ["refused"]


def test_without_a_receipt_an_entry_is_by_whoever_sends_it(stable):
    stable.push(wire() | {"author": stable.accounts["coach"], "author_name": "Coach"})
    assert pulled(stable)[0]["author"] == stable.accounts["rider"]
