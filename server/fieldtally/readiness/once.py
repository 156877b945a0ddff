"""A property worked out on first use and kept: the standard library's without its lock, which costs more than
most of what is kept here."""

from collections.abc import Callable


class once:
    def __init__(self, work: Callable) -> None:
        self.work, self.__doc__ = work, work.__doc__

    def __set_name__(self, owner: type, name: str) -> None:
        self.name = name

    def __get__(self, instance, owner=None):
        if instance is None:
            return self
        value = instance.__dict__[self.name] = self.work(instance)
        return value
