"""A field's code on both databases: a week, twenty uses, never in the clear, gone with its logbook."""

import re

import pytest
from sqlalchemy import func, select

from fieldtally.store import field_shares
from fieldtally.store.accounts import add_account, remove_account
from fieldtally.store.db import db
from fieldtally.store.memberships import open_logbook
from fieldtally.store.models import FieldShare
from support.asking import PASSWORD

WEEK_MS = 7 * 86_400_000


@pytest.fixture
def book(store):
    return open_logbook(add_account("wren", "Wren", PASSWORD))


def count():
    return db.session.scalar(select(func.count()).select_from(FieldShare))


def test_a_code_has_sixty_bits_and_is_not_kept(book):
    code, made = field_shares.share(book.id, "anybody", "Thornybank", "{}")
    assert re.fullmatch(r"([0-9A-HJKMNP-TV-Z]{4}-){2}[0-9A-HJKMNP-TV-Z]{4}", code)  # 12 of 32 signs: 60 bits
    assert code.replace("-", "") not in made.id and len(made.id) == 64
    assert len({field_shares.share(book.id, "anybody", "x", "{}")[0] for _ in range(50)}) == 50


def test_it_is_good_for_twenty_uses(book):
    code, _ = field_shares.share(book.id, "anybody", "Thornybank", "the field")
    assert [field_shares.take(code) for _ in range(21)] == ["the field"] * 20 + [None]
    assert field_shares.open_shares(book.id) == []


def test_it_is_good_for_a_week_and_then_dropped(book, monkeypatch):
    code, made = field_shares.share(book.id, "anybody", "Thornybank", "the field")
    monkeypatch.setattr(field_shares, "now_ms", lambda: made.made_at_ms + WEEK_MS - 1)
    assert field_shares.take(code)
    monkeypatch.setattr(field_shares, "now_ms", lambda: made.made_at_ms + WEEK_MS)
    assert field_shares.take(code) is None
    field_shares.share(book.id, "anybody", "Another", "{}")
    assert count() == 1


def test_only_its_own_logbook_withdraws_it(book):
    code, made = field_shares.share(book.id, "anybody", "Thornybank", "the field")
    other = open_logbook(add_account("maren", "Maren", PASSWORD))
    assert not field_shares.withdraw(other.id, made.id) and field_shares.take(code)
    assert field_shares.withdraw(book.id, made.id) and field_shares.take(code) is None


def test_it_goes_with_its_logbook(store):
    rider = add_account("wren", "Wren", PASSWORD)
    field_shares.share(open_logbook(rider).id, rider.id, "Thornybank", "the field")
    remove_account(rider)
    assert count() == 0
