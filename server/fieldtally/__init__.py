"""Fieldtally: evidence for the decision to move up a level of eventing."""
