"""The contract of the feed, one suite for both databases. Faults it must not have are named by their class:
reply lost (SY-03 of the public fault list), equal stamps at a page edge (SY-02), half-stored batch (SY-09)."""

import pytest
from sqlalchemy import event, select

from fieldtally.book.entry import digest
from fieldtally.store import feed
from fieldtally.store.db import db, writing
from fieldtally.store.models import Entry, HeldEntry, Logbook
from support.riders import NOON_MS, edit, new_id, wire


def numbers(stable) -> list[int]:
    return [entry["number"] for entry in everything(stable)]


def everything(stable, limit: int = 500) -> list[dict]:
    after, found = 0, []
    while True:
        page = feed.page(stable.logbook, after, limit)
        found += page.entries
        if not page.more:
            return found
        after = page.entries[-1]["number"]


def book(stable) -> Logbook:
    db.session.expire_all()
    return db.session.get(Logbook, stable.logbook)


def test_entries_are_numbered_from_one_without_gaps(stable):
    pushed = stable.push(wire(), wire(), wire())
    assert [(a.result, a.number) for a in pushed.answers] == [("accepted", n) for n in (1, 2, 3)]
    assert pushed.last_number == 3 and numbers(stable) == [1, 2, 3]
    assert stable.push(wire()).answers[0].number == 4


def test_a_pulled_entry_is_what_was_pushed(stable):
    sent = wire("attempt", {"outing_id": new_id(), "fence_id": new_id(), "outcome": "clear", "note": "Zoë 🐴 \u0001"})
    stable.push(sent)
    got = everything(stable)[0]
    assert {key: got[key] for key in sent} == sent
    assert list(got["body"]) == list(sent["body"])
    assert got["number"] == 1 and got["author"] == stable.accounts["rider"] and got["author_name"] == "Rider"
    assert (got["device"], got["skew_ms"], got["received_at"]) == (stable.device, 250, "2026-05-03T12:00:01.000Z")


@pytest.mark.parametrize(
    ("sent", "read"),
    [
        ("2026-10-25T02:30:00+02:00", "2026-10-25T00:30:00.000Z"),
        ("2026-10-25T02:30:00+01:00", "2026-10-25T01:30:00.000Z"),
        ("2026-05-03T13:30:45.123-08:00", "2026-05-03T21:30:45.123Z"),
        ("2026-05-03T13:30:45.1Z", "2026-05-03T13:30:45.100Z"),
    ],
)
def test_instants_keep_their_milliseconds(stable, sent, read):
    """The two hours of a clock change are told apart, on both databases."""
    assert stable.results(wire(recorded_at=sent)) == ["accepted"]
    assert everything(stable)[0]["recorded_at"] == read


def test_a_naive_time_is_refused(stable):
    answer = stable.push(wire(recorded_at="2026-05-03T13:30:45.123")).answers[0]
    assert (answer.result, answer.code, answer.field) == ("refused", "bad_time", "recorded_at")


def test_the_same_push_again_is_answered_already(stable):
    """The reply was lost: same batch, then the same with one more, then in another batch."""
    first, second, third = wire(), wire(), wire()
    stable.push(first, second)
    again = stable.push(first, second, third)
    assert [(a.result, a.number) for a in again.answers] == [("already", 1), ("already", 2), ("accepted", 3)]
    assert stable.results(third) == ["already"]
    assert numbers(stable) == [1, 2, 3]


def test_the_same_entry_written_differently_is_the_same(stable):
    """A phone that stored a pulled copy sends it back with the server's additions and other JSON habits."""
    sent = wire("track", {"name": "Long side", "distance_m": 400.0, "measured_by": "wheel"})
    stable.push(sent)
    pulled = everything(stable)[0]
    assert stable.results(pulled) == ["already"]
    assert stable.results(dict(reversed(sent.items())) | {"body": sent["body"] | {"distance_m": 400}}) == ["already"]


def test_another_entry_under_a_known_id_is_refused(stable):
    sent = wire()
    stable.push(sent)
    answer = stable.push(sent | {"body": {"name": "Hill", "notes": None}}).answers[0]
    assert (answer.result, answer.code, answer.field) == ("refused", "id_taken", "id")
    assert everything(stable)[0]["body"]["name"] == "Home"


def test_duplicates_inside_one_push(stable):
    sent = wire()
    answers = stable.push(sent, sent, sent | {"local_date": "2026-05-04"}).answers
    assert [(a.result, a.number) for a in answers] == [("accepted", 1), ("already", 1), ("refused", None)]
    assert answers[2].code == "id_taken" and numbers(stable) == [1]


def test_ids_are_unique_per_logbook_only(stable):
    """Two riders' phones never meet; a clash across logbooks must not tell one about the other."""
    sent = wire()
    stable.push(sent)
    assert stable.results(sent, logbook=stable.other_logbook) == ["accepted"]


def test_one_answer_each_and_neighbours_are_stored(stable):
    good = [wire() for _ in range(73)]
    bad = [wire(local_date="1823-01-01") for _ in range(27)]
    mixed = [entry for pair in zip(good, bad, strict=False) for entry in pair] + good[27:] + [good[0]]
    answers = stable.push(*mixed).answers
    assert [a.id for a in answers] == [entry["id"] for entry in mixed]
    assert {a.id for a in answers if a.result == "accepted"} == {entry["id"] for entry in good}
    refused = [a for a in answers if a.result == "refused"]
    assert len(refused) == 27 and {(a.code, a.field) for a in refused} == {("out_of_range", "local_date")}
    assert numbers(stable) == list(range(1, 74))


def test_a_role_writes_only_its_kinds(stable):
    remark = wire("remark", {"about_id": new_id(), "text": "Softer hand"})
    answer = stable.push(remark).answers[0]
    assert (answer.result, answer.code, answer.field) == ("refused", "not_allowed", "kind")
    assert stable.results(remark, role="coach") == ["accepted"]
    assert stable.results(wire("horse", {"name": "Bramble"}), role="scribe") == ["refused"]
    assert stable.results(wire(), wire("newer"), role="reader") == ["refused", "refused"]


def test_a_record_keeps_its_kind(stable):
    """Else a rider could bury her coach's word under a note of the same record."""
    word = wire("word", {"horse_id": new_id(), "rulebook_id": "r", "level_id": "l", "decision": "hold",
                         "reason": "Looked tired"})  # fmt: skip
    stable.push(word, role="coach")
    note = edit(word, {"about_id": new_id(), "text": "no"}) | {"kind": "note"}
    answer = stable.push(note).answers[0]
    assert (answer.result, answer.code, answer.field) == ("refused", "other_kind", "kind")
    both = new_id()
    assert stable.results(wire(record_id=both), wire("note", note["body"], record_id=both)) == [
        "accepted", "refused",
    ]  # fmt: skip


def test_a_changed_log_id_stores_nothing(stable):
    with pytest.raises(feed.LogChanged) as caught:
        stable.push(wire(), log_id=new_id())
    assert caught.value.log_id == book(stable).log_id
    assert numbers(stable) == [] and stable.results(wire(), log_id=book(stable).log_id) == ["accepted"]


def test_an_unknown_logbook(stable):
    with pytest.raises(feed.UnknownLogbook):
        stable.push(wire(), logbook=new_id())
    with pytest.raises(feed.UnknownLogbook):
        feed.page(new_id(), 0)


def test_renewing_log_ids(stable):
    before = book(stable).log_id
    assert feed.renew_log_ids() == 2
    assert book(stable).log_id != before and feed.page(stable.logbook, 0).log_id == book(stable).log_id


def test_a_crash_inside_the_transaction_leaves_nothing(stable, monkeypatch):
    """Numbers are spent only with what they number; the retry ends with each entry once."""
    sent = [wire() for _ in range(100)] + [wire("newer")]
    stable.push(sent[0])

    def power_cut(*_):
        raise OSError("power cut")

    monkeypatch.setattr("fieldtally.store.held.hold", power_cut)  # after the entries were written
    with pytest.raises(OSError):
        stable.push(*sent)
    monkeypatch.undo()
    assert numbers(stable) == [1] and book(stable).last_number == 1
    assert stable.results(*sent) == ["already"] + ["accepted"] * 99 + ["held"]
    assert numbers(stable) == list(range(1, 101))


@pytest.mark.parametrize("limit", [1, 2, 20, 21, 30, 59, 60, 61, 500])
def test_no_page_edge_loses_anything(stable, limit):
    """Sixty entries of one instant, pulled in pages of every awkward size."""
    stable.push(*[wire() for _ in range(60)])
    assert [entry["number"] for entry in everything(stable, limit)] == list(range(1, 61))


def test_what_is_pushed_while_paging_comes_too(stable):
    sent = [wire() for _ in range(60)]
    stable.push(*sent)
    first = feed.page(stable.logbook, 0, 21)
    stable.push(edit(sent[3], {"name": "edited"}), edit(sent[40], {"name": "edited"}))
    rest = [feed.page(stable.logbook, after, 21) for after in (21, 42)]
    assert [p.more for p in (first, *rest)] == [True, True, False]
    assert [e["number"] for p in (first, *rest) for e in p.entries] == list(range(1, 63))


def test_page_beyond_the_end_and_of_odd_limits(stable):
    stable.push(*[wire() for _ in range(3)])
    assert feed.page(stable.logbook, 3).entries == [] and not feed.page(stable.logbook, 3).more
    assert feed.page(stable.logbook, 99).last_number == 3
    assert len(feed.page(stable.logbook, 0, 0).entries) == 1
    assert len(feed.page(stable.logbook, 0, 10_000).entries) == 3


def test_a_page_is_bounded_in_bytes(stable, monkeypatch):
    monkeypatch.setattr(feed, "MOST_BYTES_PER_PAGE", 10_000)
    stable.push(*[wire(body={"name": "Home", "notes": "x" * 3900}) for _ in range(7)])
    page = feed.page(stable.logbook, 0)
    assert len(page.entries) == 2 and page.more
    assert len(everything(stable)) == 7


def test_two_logbooks_do_not_mix(stable):
    stable.push(wire())
    stable.push(wire(), wire(), logbook=stable.other_logbook)
    assert numbers(stable) == [1]
    assert len(feed.page(stable.other_logbook, 0).entries) == 2


def test_evidence_number_follows_evidence_only(stable):
    stable.push(wire("horse", {"name": "Bramble"}), wire())
    assert (book(stable).last_number, book(stable).evidence_number) == (2, 1)


def test_every_entry_reads_back_what_the_book_checked(stable):
    sent = [wire(), wire(body=None, clock=None), edit(wire(), {"name": "Hill"})]
    accepted = stable.push(*sent).accepted
    assert list(feed.every_entry(stable.logbook)) == accepted
    assert [entry.number for entry in feed.every_entry(stable.logbook, upto=2)] == [1, 2]


def test_the_first_write_of_a_push_takes_the_logbook(stable):
    """On SQLite the transaction has the write lock before it reads anything (else two pushes would meet
    half-way as "database is locked"); on PostgreSQL the logbook's row is locked before anything is read."""
    seen = []
    event.listen(db.engine, "before_cursor_execute", lambda c, cur, said, *_: seen.append(said))
    stable.push(wire())
    work = [said for said in seen if not said.startswith(("SELECT pg_", "SELECT 1"))]
    if db.engine.dialect.name == "sqlite":
        assert work.pop(0) == "BEGIN IMMEDIATE"
    assert work[0].startswith("UPDATE logbook SET last_number=logbook.last_number") and "RETURNING" in work[0]


def test_writes_outside_a_write_transaction_are_refused(store):
    with pytest.raises(RuntimeError, match="writing"):
        db.session.add(Logbook(id=new_id(), title="", log_id=new_id(), created_at_ms=NOON_MS))
        db.session.commit()
    db.session.rollback()


def test_writing_inside_writing_is_one_transaction(stable):
    with pytest.raises(OSError), writing():
        stable.add_logbook("inner")
        raise OSError
    assert "inner" not in db.session.scalars(select(Logbook.title)).all()


def test_the_digest_kept_is_the_content_s(stable):
    sent = wire()
    accepted = stable.push(sent).accepted[0]
    assert db.session.scalar(select(Entry.content_digest)) == digest(accepted.content())
    assert db.session.scalar(select(HeldEntry)) is None
