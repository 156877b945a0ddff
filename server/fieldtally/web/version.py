"""What this server is: its version and the wire it speaks (docs/protocol.md has a line for each number)."""

from importlib.metadata import PackageNotFoundError, version

PROTOCOL = 1

try:
    VERSION = version("fieldtally")
except PackageNotFoundError:  # a working copy that is not installed
    VERSION = "0.1.0"
