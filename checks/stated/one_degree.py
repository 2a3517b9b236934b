"""What one degree of slope costs a piece of which the file takes the ground as level."""

from math import cos, radians, sin, sqrt

import numpy as np

from ...units.frozen import replace
from ..examination import Examination

DEGREE = radians(1.0)


def tips_on_a_degree(found: Examination) -> float | None:
    """Return the forecast gust in m/s that tips it on one degree of slope; None where none does.

    None too where a loose part of it tips first. As force goes with the square of the wind.
    """
    standing, limits = found.standing, found.limits
    if not limits.forecast_tipping or limits.loose_tips is not None:
        return None
    weight = np.full(len(standing.normals), standing.structure.weight("typical"))
    pivot = standing.pivot(weight)
    level = standing.hold("typical", pivot)[limits.tipping_line]
    sloped = replace(standing, slope=DEGREE).hold("typical", pivot)
    share = max(float(sloped.min() / level), 0.0) if level > 0.0 else 0.0
    return limits.forecast_tipping * sqrt(min(share, 1.0))


def slides_on_a_degree(found: Examination) -> float | None:
    """Return the forecast gust in m/s that makes it slide there; None as above."""
    standing, limits = found.standing, found.limits
    if not limits.forecast_sliding or limits.loose_slides is not None:
        return None
    mu = min(standing.ground.friction[p.contact].coefficient for p in standing.structure.patches)
    share = max(cos(DEGREE) - sin(DEGREE) / mu, 0.0)
    return limits.forecast_sliding * sqrt(share)
