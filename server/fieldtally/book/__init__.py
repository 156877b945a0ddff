"""The logbook itself: what may be written in it and what its entries add up to. Pure: no Flask, no SQL."""
