"""Propagation of uncertainty for a quotient, by the GUM (JCGM 100:2008, 5.1.6 and 5.2.2).

For q = c · a / b the relative variances add, less twice the covariance of the two parts:
(u(q)/q)² = (u(a)/a)² + (u(b)/b)² − 2 r u(a)u(b)/(ab).
"""

import math


def quotient_u(quotient: float, a_relative_u: float, b_relative_u: float, correlation: float = 0.0) -> float:
    """Standard uncertainty of a quotient, in the quotient's own unit.

    `a_relative_u` and `b_relative_u` are relative standard uncertainties (no unit), `correlation` is the
    correlation coefficient of the two parts, from -1 to 1.
    """
    variance = a_relative_u**2 + b_relative_u**2 - 2 * correlation * a_relative_u * b_relative_u
    return abs(quotient) * math.sqrt(max(0.0, variance))


def rectangular_u(whole_width: float) -> float:
    """Standard uncertainty of a value known only to lie within an interval of `whole_width` (same unit):
    width / √12 (JCGM 100:2008, 4.3.7; for the resolution of a display F.2.2.1)."""
    return whole_width / math.sqrt(12)
