"""Numbers things in the order they are first met."""


class Numbering(dict):
    """The number of each thing by the thing itself; one never met before gets the next."""

    def __missing__(self, thing) -> int:
        number = self[thing] = len(self)
        return number
