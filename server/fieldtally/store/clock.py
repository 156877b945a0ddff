"""The server's own clock, in the unit the tables use."""

import time


def now_ms() -> int:
    """Whole milliseconds since 1970 UTC."""
    return time.time_ns() // 1_000_000
