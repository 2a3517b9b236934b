"""Bodies between two level sections whose sizes change linearly with height."""

import numpy as np

from .shape import Moments

LevelSection = tuple[float, float, float]


def prismatoid(
    base: float, height: float, sections: tuple[LevelSection, LevelSection, LevelSection]
) -> Moments:
    """Return volume and first moments of a body from its bottom, middle and top sections.

    Each section is (area in m2, and its first moments about y and about x in m3); ``base`` is the
    height of the bottom section and ``height`` the distance to the top one, in m. Areas may vary
    up to quadratically and area moments up to cubically with height, so that Simpson's rule is
    exact: V = h/6 (A0 + 4 Am + A1), and for the first moment about the base h2/6 (2 Am + A1)
    (prismoidal formula; Simpson's rule is exact for cubics).
    """
    (a0, x0, y0), (am, xm, ym), (a1, x1, y1) = sections
    volume = height / 6.0 * (a0 + 4.0 * am + a1)
    return Moments(
        volume,
        np.array(
            [
                height / 6.0 * (x0 + 4.0 * xm + x1),
                height / 6.0 * (y0 + 4.0 * ym + y1),
                base * volume + height**2 / 6.0 * (2.0 * am + a1),
            ]
        ),
    )
