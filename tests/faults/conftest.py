"""Faults that others met in the field, tried on ours with the real server and a real browser."""

from browser.conftest import coach, people, rider, server, signed_in_yesterday  # noqa: F401
