"""For every test: property tests have no time limit per example, so that a busy machine does not fail them."""

from hypothesis import settings

settings.register_profile("fieldtally", deadline=None)
settings.load_profile("fieldtally")
