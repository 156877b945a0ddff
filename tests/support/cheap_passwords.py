"""Hashes passwords cheaply, for tests that are about something else: else hashing is most of their time."""

import pytest
from argon2 import PasswordHasher

from fieldtally.store import passwords


@pytest.fixture(autouse=True)
def cheap_passwords(monkeypatch):
    monkeypatch.setattr(passwords, "HASHER", PasswordHasher(time_cost=1, memory_cost=8, parallelism=1))
