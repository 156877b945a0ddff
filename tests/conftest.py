"""For all tests: property tests are judged by their examples, never by how busy the machine is; one
Playwright serves every test of a process, for a process can hold only one."""

import pytest
from hypothesis import settings

settings.register_profile("fieldtally", deadline=None)
settings.load_profile("fieldtally")


@pytest.fixture(scope="session")
def playwright():
    from playwright.sync_api import sync_playwright

    with sync_playwright() as running:
        yield running
