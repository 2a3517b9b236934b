"""Panels sawn from slabs with tilted planes and stood where they belong: a body put together."""

from math import cos, pi, sin, tan

import numpy as np
from manifold3d import Manifold

from yardfast.design.cutting.sawn import sawn_from
from yardfast.design.shapes.bodies import Shell
from yardfast.design.shapes.boxes import Box
from yardfast.design.shapes.cone import Cone
from yardfast.design.shapes.gables import Gable

AZIMUTHS = {"right": 0.0, "back": pi / 2, "left": pi, "front": -pi / 2}


def sawn(panel):
    """A panel from a slab whose outer face is z = 0, its bottom's middle at the origin, y up."""
    reach = 4 * (panel.bottom + panel.top + panel.length)
    slab = Manifold.cube((reach, reach, panel.thickness))
    slab = slab.translate((-reach / 2, -reach / 2, -panel.thickness))
    low, high = panel.bottom / 2, panel.top / 2
    corners = [(-low, 0.0), (low, 0.0), (high, panel.length), (-high, panel.length)]
    edges = {"bottom": (0, 1), "right": (1, 2), "top": (2, 3), "left": (3, 0)}
    for name, (i, j) in edges.items():
        tilt = getattr(panel.edges, name)
        a, b = np.array(corners[i]), np.array(corners[j])
        if name in ("bottom", "top"):
            if np.allclose(a, b) and tilt == 0.0:
                continue
            b = a + np.array([1.0 if name == "bottom" else -1.0, 0.0])
        along = (b - a) / np.linalg.norm(b - a)
        inward = np.array([-along[1], along[0]])
        # at depth d the edge has moved inward by d tan(tilt)
        normal = np.array([*inward, tan(tilt)])
        normal /= np.linalg.norm(normal)
        slab = slab.trim_by_plane(tuple(normal), float(normal[:2] @ a))
    return slab


def refolded(shape):
    """Every panel of one body where it stands, in the shape's own axes."""
    placed = []
    for panel in sawn_from(shape).panels:
        placed += [_stood(sawn(panel), *where) for where in _places(shape, panel)]
    return placed


def outward_normals(shape):
    """The outward unit normal of every panel, and the azimuth in which it looks."""
    found = []
    for panel in sawn_from(shape).panels:
        for azimuth, _ in _azimuths(shape, panel):
            c = cos(panel.lean)
            found.append(np.array([c * cos(azimuth), c * sin(azimuth), sin(panel.lean)]))
    return found


def _azimuths(shape, panel):
    match shape:
        case Shell(sides, bottom) | Cone(sides, bottom):
            return [(2 * pi * k / sides, bottom / 2) for k in range(sides)]
        case Gable():
            half = shape.width if panel.face != "upper slope" else shape.knee_width
            return [(pi / 2, half / 2), (-pi / 2, half / 2)]
    names = list(AZIMUTHS) if panel.face == "side" else panel.face.split(" and ")
    x0, x1, y0, y1 = shape.outer().section(_base(shape, panel) / shape.height)
    reach = {"right": x1, "left": -x0, "back": y1, "front": -y0}
    return [(AZIMUTHS[name], reach[name]) for name in names]


def _base(shape, panel):
    if isinstance(shape, Gable):
        return shape.knee_height if panel.face == "upper slope" else 0.0
    if isinstance(shape, Box):
        return 0.0 if "bottom" in shape.open else shape.wall
    return 0.0


def _places(shape, panel):
    """Origin, and where the slab's x, y and z come to point."""
    if isinstance(shape, Box) and panel.face in ("top", "bottom"):
        plan = (
            (shape.length, shape.width)
            if panel.face == "bottom"
            else (shape.top_plan.length, shape.top_plan.width)
        )
        along = np.array([1.0, 0, 0]) if plan[0] >= plan[1] else np.array([0, 1.0, 0])
        out = np.array([0, 0, 1.0 if panel.face == "top" else -1.0])
        height = shape.height if panel.face == "top" else 0.0
        return [(-along * panel.length / 2 + [0, 0, height], np.cross(along, out), along, out)]
    found = []
    for azimuth, reach in _azimuths(shape, panel):
        level = np.array([cos(azimuth), sin(azimuth), 0.0])
        up = np.array([0.0, 0.0, 1.0])
        out = level * cos(panel.lean) + up * sin(panel.lean)
        slope = -level * sin(panel.lean) + up * cos(panel.lean)
        origin = level * reach + up * _base(shape, panel)
        found.append((origin, np.cross(slope, out), slope, out))
    return found


def _stood(mesh, origin, x, y, z):
    return mesh.transform(np.column_stack([x, y, z, origin]))
