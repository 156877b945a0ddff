"""What an instrument's reading is worth, from walking it several times along a taped stretch.

factor = taped / mean read, and a later reading R stands for factor · R metres. Uncertainties by the GUM
(JCGM 100:2008): the mean of the walks as type A, s / √n (4.2.3); the instrument's smallest step as a
rectangle (4.3.7, F.2.2.1); the tape as type B; all put together in quadrature (5.1.6). With three walks s
itself is known to a half only (E.4.3, table E.1): more walks are better.
"""

import math
import statistics
from collections.abc import Sequence
from dataclasses import dataclass

from fieldtally.trade.bad_input import BadInput, above_zero, not_below_zero
from fieldtally.trade.pace import TAPE_RELATIVE_U
from fieldtally.trade.propagation import quotient_u, rectangular_u

FEWEST_WALKS = 3


@dataclass(frozen=True)
class Calibrated:
    """`factor` times a reading is metres. `scatter_m` is the standard deviation of one walk over `mean_m`."""

    factor: float
    factor_u: float
    mean_m: float
    scatter_m: float
    reading_step_m: float


@dataclass(frozen=True)
class PutRight:
    """A reading in metres as the tape would have it, with its standard uncertainty in m."""

    distance_m: float
    distance_u_m: float


def mean_u(values: Sequence[float]) -> tuple[float, float, float]:
    """Mean, sample standard deviation, and standard uncertainty of the mean (JCGM 100:2008, 4.2.1 to 4.2.3)."""
    scatter = statistics.stdev(values)
    return statistics.fmean(values), scatter, scatter / math.sqrt(len(values))


def calibrate(
    taped_distance_m: float, walked_m: Sequence[float], taped_u_m: float | None = None, reading_step_m: float = 0.0
) -> Calibrated:
    """The factor of an instrument that read `walked_m` along `taped_distance_m` metres of tape.

    `taped_u_m` None takes the relative uncertainty assumed for a tape on uneven ground (trade/pace.py). Raises
    BadInput for fewer than three walks, or anything that is no length.
    """
    above_zero("taped_distance_m", taped_distance_m, "m")
    for reading in walked_m:
        above_zero("walked_m", reading, "m")
    if len(walked_m) < FEWEST_WALKS:
        raise BadInput("walked_m", f"{len(walked_m)} walks are too few.", f"Walk it at least {FEWEST_WALKS} times.")
    if taped_u_m is None:
        taped_u_m = taped_distance_m * TAPE_RELATIVE_U
    not_below_zero("taped_u_m", taped_u_m, "m")
    mean, scatter, type_a = mean_u(walked_m)
    read_u = math.hypot(type_a, rectangular_u(not_below_zero("reading_step_m", reading_step_m, "m")))
    factor = taped_distance_m / mean
    return Calibrated(factor, quotient_u(factor, taped_u_m / taped_distance_m, read_u / mean), mean, scatter,
                      reading_step_m)  # fmt: skip


def put_right(reading_m: float, by: Calibrated) -> PutRight:
    """A single reading of a calibrated instrument. It scatters as one walk did, in proportion to its length
    (an assumption on the careful side: errors that come and go would grow more slowly)."""
    above_zero("reading_m", reading_m, "m")
    walk_u = math.hypot(by.scatter_m / by.mean_m * reading_m, rectangular_u(by.reading_step_m))
    distance = by.factor * reading_m
    return PutRight(distance, quotient_u(distance, by.factor_u / by.factor, walk_u / reading_m))
