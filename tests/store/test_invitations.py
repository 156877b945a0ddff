"""A code lets one person in, once, for a week; deleting an account leaves nothing of it behind."""

import pytest
from sqlalchemy import func, select

from fieldtally.store import invitations, sign_ins
from fieldtally.store.accounts import add_account, remove_account
from fieldtally.store.db import db
from fieldtally.store.memberships import end_membership, join, logbooks_of, members_of, open_logbook
from fieldtally.store.models import Account, Device, Entry, HeldEntry, Invitation, Logbook, Membership, SignIn, Standing
from support.asking import PASSWORD
from support.riders import wire

WEEK_MS = 7 * 86_400_000


@pytest.fixture
def two(store):
    rider, coach = (add_account(name, name.title(), PASSWORD) for name in ("wren", "maren"))
    return rider, coach, open_logbook(rider)


def test_a_code_lets_one_person_in_and_is_spent(two):
    rider, coach, book = two
    code, _ = invitations.invite(book.id, rider.id, "coach")
    offer = invitations.offer_of(code)
    assert (offer.logbook.id, offer.inviter, offer.invitation.role) == (book.id, "Wren", "coach")
    assert invitations.take_up(code, coach)
    assert [(logbook.id, role) for logbook, role in logbooks_of(coach.id)] == [(book.id, "coach")]
    assert not invitations.take_up(code, add_account("third", "Third", PASSWORD))
    assert invitations.offer_of(code) is None and invitations.open_invitations(book.id) == []


def test_the_database_does_not_hold_the_code(two):
    rider, _, book = two
    code, made = invitations.invite(book.id, rider.id, "reader")
    assert code not in made.id and len(made.id) == 64 and len(code) >= 22  # 128 bits in base64


def test_a_code_is_good_for_a_week(two, monkeypatch):
    rider, coach, book = two
    code, made = invitations.invite(book.id, rider.id, "scribe")
    monkeypatch.setattr(invitations, "now_ms", lambda: made.made_at_ms + WEEK_MS - 1)
    assert invitations.offer_of(code)
    monkeypatch.setattr(invitations, "now_ms", lambda: made.made_at_ms + WEEK_MS)
    assert invitations.offer_of(code) is None and not invitations.take_up(code, coach)


def test_a_withdrawn_code_opens_nothing(two):
    rider, coach, book = two
    code, made = invitations.invite(book.id, rider.id, "coach")
    assert invitations.withdraw(book.id, made.id) and not invitations.withdraw(book.id, made.id)
    assert not invitations.take_up(code, coach)


def test_the_rider_cannot_be_put_out_of_her_logbook(two):
    rider, coach, book = two
    join(coach, book, "coach")
    assert not end_membership(book.id, rider.id)
    assert end_membership(book.id, coach.id)
    assert [role for _, role in members_of(book.id)] == ["rider"]


def test_an_account_goes_with_its_logbook_and_leaves_what_it_wrote_elsewhere(stable):
    """ASVS 5.0, 7.4.2 and 14.2 (from memory): what belongs to the account goes; no row is left an orphan."""
    rider = db.session.get(Account, stable.accounts["rider"])
    stable.push(wire(), wire("from_a_newer_phone"))
    other_rider = add_account("other-rider", "Other", PASSWORD)
    other = open_logbook(other_rider)
    join(rider, other, "coach")
    sign_ins.begin(rider, "a phone")
    invitations.invite(stable.logbook, rider.id, "coach")
    assert remove_account(rider) == [stable.logbook]
    own = stable.logbook
    for table in (Entry, HeldEntry, Standing, Membership, Invitation):
        which = select(func.count()).select_from(table).where(table.logbook_id == own)
        assert db.session.scalar(which) == 0, table
    for table in (SignIn, Device, Membership):
        which = select(func.count()).select_from(table).where(table.account_id == rider.id)
        assert db.session.scalar(which) == 0, table
    assert db.session.get(Logbook, stable.logbook) is None
    assert [role for _, role in members_of(other.id)] == ["rider"]
