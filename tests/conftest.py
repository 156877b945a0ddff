"""For all tests: property tests are judged by their examples, never by how busy the machine is."""

from hypothesis import settings

settings.register_profile("fieldtally", deadline=None)
settings.load_profile("fieldtally")
