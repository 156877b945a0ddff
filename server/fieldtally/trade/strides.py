"""How many canter strides lie between two fences, by the trade's planning stride.

A stride of 12 ft (3.66 m), and 6 ft each for landing and for take-off: bounce 12 ft, one stride 24 ft, two 36 ft,
and so on (US boarding stable's blog, 2015, and others). Cross-country strides are longer; no published figure was
found. A line of fewer than six strides is a related distance (UK article on show-jump distances).
"""

from fieldtally.trade.bad_input import above_zero
from fieldtally.trade.units import rounded

FOOT_M = 0.3048
STRIDE_M = 12 * FOOT_M
LANDING_AND_TAKE_OFF_M = 12 * FOOT_M
RELATED_BELOW = 6


def strides(distance_m: float) -> int:
    """Whole strides between two fences `distance_m` apart, the nearest number; 0 is a bounce."""
    above_zero("distance_m", distance_m, "m")
    return max(0, int(rounded((distance_m - LANDING_AND_TAKE_OFF_M) / STRIDE_M, 0)))


def distance_for_m(count: int) -> float:
    """Metres that ride in `count` planning strides."""
    return LANDING_AND_TAKE_OFF_M + count * STRIDE_M


def related(distance_m: float) -> bool:
    return strides(distance_m) < RELATED_BELOW
