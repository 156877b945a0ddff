"""Combinations met as a whole, from the attempts at their elements.

A combination is clear when every element met was clear, and two or more were; a fall or stop anywhere in it is
one of the whole. An attempt that names no element stands for the whole fence.
"""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from fieldtally.readiness.attempts import CLEAR, FALL, OTHER, STOP

BY_SEVERITY = np.array([CLEAR, OTHER, STOP, FALL])
SEVERITY = np.argsort(BY_SEVERITY)


@dataclass(frozen=True)
class Whole:
    """One row per combination met: its first attempt, of how many elements it was, and the worst result."""

    first: np.ndarray
    elements: np.ndarray
    result: np.ndarray


def met_whole(presentation: np.ndarray, letter: np.ndarray, result: np.ndarray, listed: Sequence[int]) -> Whole:
    """One entry per attempt at a combination: the number of the presentation it belongs to (numbered in the order
    they are first met), the number of the element's letter (0 where none was named) and the result. `listed`
    is of how many elements the fence is."""
    _, first, names = np.unique(presentation, return_index=True, return_counts=True)
    starts = np.concatenate(([0], np.cumsum(names)[:-1]))
    worst = np.maximum.reduceat(SEVERITY[result[np.argsort(presentation, kind="stable")]], starts)
    nameless = np.bincount(presentation[letter == 0], minlength=len(first)) > 0
    all_of_it = nameless | (worst > 0)
    elements = np.where(all_of_it, np.asarray(listed)[first], different_letters(presentation, letter))
    enough = elements >= 2
    return Whole(first[enough], elements[enough], BY_SEVERITY[worst[enough]])


def different_letters(presentation: np.ndarray, letter: np.ndarray) -> np.ndarray:
    letters = int(letter.max()) + 1
    return np.bincount(np.unique(presentation * letters + letter) // letters)
