"""Volumes: straight pieces of any section, and bodies between two level sections."""

from collections.abc import Sequence

import numpy as np
import shapely
from shapely import Polygon
from shapely.geometry.base import BaseGeometry

from ...units.arrays import Array
from .hulls import Hull, Moments


def standing_prism(outline: BaseGeometry, thickness: float, solidity: float = 1.0) -> Moments:
    """Return the moments of an outline (x, z) in m with its thickness centred on y = 0."""
    volume = float(outline.area) * thickness * solidity
    centre = outline.centroid
    return Moments(volume, volume * np.array([centre.x, 0.0, centre.y]))


def along_x(section: BaseGeometry, length: float) -> Moments:
    """Return the moments of a section (y, z) in m drawn out along x, about its middle."""
    volume = float(section.area) * length
    centre = section.centroid
    return Moments(volume, volume * np.array([0.0, centre.x, centre.y]))


def convex_pieces(outline: Polygon) -> list[Array]:
    """Return convex outlines (k, 2) that fill a polygon without holes: itself, or triangles."""
    hull = outline.convex_hull
    if isinstance(hull, Polygon) and hull.area <= outline.area * (1.0 + 1.0e-12):
        return [np.asarray(hull.exterior.coords)[:-1]]
    triangles = shapely.get_parts(shapely.constrained_delaunay_triangles(outline))
    return [np.asarray(triangle.exterior.coords)[:3] for triangle in triangles]


def standing_hulls(outlines: Sequence[Array], thickness: float) -> tuple[Hull, ...]:
    """Return hulls of outlines (k, 2) in x and z, their thickness centred on y = 0."""
    half = thickness / 2.0
    return tuple(
        Hull(
            np.vstack(
                [
                    np.column_stack([points[:, 0], np.full(len(points), y), points[:, 1]])
                    for y in (-half, half)
                ]
            ),
            ends=True,
        )
        for points in outlines
    )


def hulls_along_x(sections: Sequence[Array], length: float) -> tuple[Hull, ...]:
    """Return hulls of sections (k, 2) in y and z drawn out along x, about the middle."""
    half = length / 2.0
    return tuple(
        Hull(
            np.vstack([np.column_stack([np.full(len(points), x), points]) for x in (-half, half)]),
            ends=True,
        )
        for points in sections
    )


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
