"""The bodies of entries, one file a family. They are named and gathered in book/kinds.py."""
