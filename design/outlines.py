"""Outlines of the parts as the wind sees them: exact projections on upright planes."""

from collections.abc import Sequence

import numpy as np

from ..units.arrays import Array
from ..units.frozen import replace
from . import plane
from .on_ground import TOUCHING
from .placing import Body
from .plane import Polygons
from .shapes.hulls import Disc, Hull, rim

_CIRCLE_POINTS = 72
"""Corners of the polygon that stands for a circle seen at a slant; it has the circle's area."""

_STEP = 2.0 * np.pi / _CIRCLE_POINTS
_FIT = float(np.sqrt(_STEP / np.sin(_STEP)))


def lateral_axes(directions: Array) -> Array:
    """Return the level unit vectors (D, 2) across the wind, for azimuths (D,) it comes from, rad.

    Looking downwind the axis points to the left: the wind's own direction turned by +90 degrees.
    """
    return np.column_stack([np.cos(directions), -np.sin(directions)])


def downwind_axes(directions: Array) -> Array:
    """Return the unit vectors (D, 2) along which the wind blows, for azimuths it comes from."""
    return -np.column_stack([np.sin(directions), np.cos(directions)])


def outlines(bodies: Sequence[Body], directions: Array) -> Polygons:
    """Return the outline polygons (bodies, D) in the planes (across the wind, up), in m.

    ``directions`` are azimuths (D,) in rad, clockwise from +y, from which the wind comes. A part
    is filled; a body without wind area gives empty polygons.
    """
    across = lateral_axes(directions)
    result = np.full((len(bodies), len(directions)), plane.NOTHING, dtype=object)
    for row, body in enumerate(bodies):
        pieces = [_project(body, hull, across) for hull in body.shape.hulls()]
        if len(pieces) == 1:
            result[row] = pieces[0]
        elif pieces:
            result[row] = plane.union_over(np.stack(pieces))
        if pieces and body.bottom < -TOUCHING:
            result[row] = _above_ground(result[row])
    return result


def round_in_plan(body: Body) -> Array:
    """Return the corners (4, 2) in m of the narrowest rectangle round a body in plan.

    It turns with the body, but of what is round somewhere lies along the axes. What has no outline,
    such as a weight, is its own place.
    """
    hulls = body.shape.hulls()
    points = [body.place(hull.points)[:, :2] for hull in hulls if len(hull.points)]
    if points and not any(hull.discs or hull.spheres for hull in hulls):
        return plane.narrowest_box(plane.hull(np.vstack(points)))
    low, high = body.extent
    ends = low[0], high[0], high[0], low[0]
    return np.column_stack([ends, (low[1], low[1], high[1], high[1])])


def _above_ground(outline: Polygons) -> Polygons:
    """Return outlines (D,) without what lies in the ground: no wind blows there."""
    bounds = plane.bounds(outline)
    return plane.intersection(
        outline, plane.upright_boxes(bounds[:, 0], 0.0, bounds[:, 2], float(bounds[:, 3].max()))
    )


def _project(body: Body, hull: Hull, across: Array) -> Polygons:
    """Return one piece's convex outline in each direction (D,)."""
    wheel = body.shape.wheel
    yaws = wheel is not None and wheel.yaws
    groups: list[Array] = []
    if len(hull.points):
        if yaws:
            side = (body.origin[:2] @ across.T)[:, None] + hull.points[:, 0]
            up = np.broadcast_to(hull.points[:, 2] + body.origin[2], side.shape)
        else:
            side, up = _level_by_level(body.place(hull.points), across)
        groups.append(np.stack([side, up], axis=-1))
    for disc in hull.discs:
        centre = body.place(np.asarray(disc.centre))
        axis = body.rotation @ np.asarray(disc.axis)
        if abs(axis[2]) > 1.0 - 1.0e-12:
            side = (across @ centre[:2])[:, None] + np.array([-disc.radius, disc.radius])
            groups.append(np.stack([side, np.full_like(side, centre[2])], axis=-1))
        else:
            groups.append(_leaning_circle(disc, body, across))
    for sphere in hull.spheres:
        centre = body.place(np.asarray(sphere.centre))
        angles, radius = _STEP * np.arange(_CIRCLE_POINTS), sphere.radius * _FIT
        side = (across @ centre[:2])[:, None] + radius * np.cos(angles)
        up = np.broadcast_to(centre[2] + radius * np.sin(angles), side.shape)
        groups.append(np.stack([side, up], axis=-1))
    if len(hull.spheres) == len(groups) == 1:
        return plane.polygons(groups[0])  # corners all
    return plane.hulls(np.concatenate(groups, axis=1))


def _level_by_level(points: Array, across: Array) -> tuple[Array, Array]:
    """Return sides and heights (D, k) of the points (n, 3) that can be corners of an outline.

    Of those on one level the outermost two.
    """
    side = across @ points[:, :2].T
    levels, of = np.unique(points[:, 2], return_inverse=True)
    if 2 * len(levels) >= len(points):
        return side, np.broadcast_to(points[:, 2], side.shape)
    order = np.argsort(of.reshape(-1), kind="stable")
    starts = np.searchsorted(of.reshape(-1)[order], np.arange(len(levels)))
    outer = [each.reduceat(side[:, order], starts, axis=1) for each in (np.minimum, np.maximum)]
    side = np.concatenate(outer, axis=1)
    return side, np.broadcast_to(np.tile(levels, 2), side.shape)


def _leaning_circle(disc: Disc, body: Body, across: Array) -> Array:
    """Return points (D, k, 2) round the ellipse that a leaning circle shows, of its own area."""
    fitted = replace(disc, radius=disc.radius * _FIT)
    points = body.place(rim(fitted, _CIRCLE_POINTS, tangent=False))
    side = across @ points[:, :2].T
    return np.stack([side, np.broadcast_to(points[:, 2], side.shape)], axis=-1)
