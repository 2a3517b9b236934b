"""What of a piece touches the ground: faces, footprint, and what may not be there."""

import numpy as np
from shapely.geometry.base import BaseGeometry

from .. import materials
from ..units import INCH, plain
from ..units.arrays import Array
from ..units.frozen import ByValue
from . import plane
from .faults import DesignError, Fault
from .model import Design, Part
from .placing import Body
from .sections import section
from .shapes.hulls import corners

BEDDING = 0.010
"""How far (m) an edge or a point is taken to bed into what it stands on: judgement."""

TOUCHING = 1.0e-3
"""What lies within this height (m) of the ground touches it."""


class Patch(ByValue, frozen=True):
    """A touching face in plan (m), and the part and kind of surface that it belongs to."""

    area: BaseGeometry
    part: int
    contact: str


def ground_contact(design: Design, bodies: tuple[Body, ...]) -> tuple[Array, tuple[Patch, ...]]:
    """Return the plan points (k, 2) that touch the ground, and the touching faces."""
    points: list[Array] = []
    patches: list[Patch] = []
    for body in bodies:
        face = touching_face(body)
        if face.is_empty:
            continue
        points.append(plane.coordinates(face))
        kind = contact_kind(design.parts[body.part])
        patches.append(Patch(face, body.part, kind))
    return (np.vstack(points) if points else np.empty((0, 2))), tuple(patches)


def touching_face(body: Body, level: float = 0.0) -> BaseGeometry:
    """Return the part of a body's underside that lies within 1 mm of a height, in plan (m).

    A plumb body's own underside; of a leaning one the hull of the corners that touch. What stands
    on an edge or a point beds in: its section 10 mm up touches (judgement). A wheel does not stand.
    """
    if not body.shape.stands or not body.shape.hulls():
        return plane.NOTHING
    if abs(body.bottom - level) > TOUCHING:
        return plane.NOTHING
    if body.upright:
        face = body.in_plan(body.shape.contact())
    else:
        points = np.vstack([body.place(corners(hull)) for hull in body.shape.hulls()])
        face = plane.hull(points[np.abs(points[:, 2] - level) <= TOUCHING][:, :2])
    return face if face.area > 0.0 else section(body, level + BEDDING)


def contact_kind(part: Part) -> str:
    """Return what a part rubs as: from its material, else as given, else wood."""
    of_material = (
        materials.find_material(part.material).contact if part.material is not None else None
    )
    return part.contact or of_material or "wood"


def footprint_of(design: Design, bodies: tuple[Body, ...], points: Array) -> Array:
    """Return the convex hull (k, 2) of the touching points, counter-clockwise.

    Where only posts in the ground carry it, that of their sections at the surface.
    """
    lowest = [
        (_lowest(body), design.parts[body.part].name)
        for body in bodies
        if body.shape.hulls() and design.parts[body.part].embed == 0.0
    ]
    height, name = min(lowest, default=(0.0, design.parts[0].name))
    height, name = min((height, name), _lowest_weight(design, bodies))
    if height < -TOUCHING:
        raise refusal(
            design,
            "at",
            f"{-height * 1000:.0f} mm ({plain(-height / INCH, 3)} in) below the ground",
            "nothing lower than the ground, z = 0",
            "raise it with at, stand it on another part with on, or set it in the ground with "
            "embed",
            part=name,
        )
    _refuse_buried(design, bodies)
    if not len(points):
        points = _sections_at_surface(design, bodies)
    if len(points) == 0:
        raise refusal(
            design,
            None,
            f"nothing touches the ground: the lowest part hangs {height * 1000:.0f} mm "
            f"({plain(height / INCH, 3)} in) above it",
            "at least one part standing on the ground, z = 0",
            "lower it with at, or add the foot or posts that it stands on",
            part=name,
        )
    hull = plane.hull(points)
    if hull.area < 1.0e-6:
        raise refusal(
            design,
            None,
            "it touches the ground in a line or a point only",
            "a foot with some width both ways",
            "add the foot that it stands on",
            part=name,
        )
    return _without_straight_corners(plane.ring_of(hull))


def _lowest_weight(design: Design, bodies: tuple[Body, ...]) -> tuple[float, str]:
    """Return how low a mere weight lies that the ground would have to make room for, and its name.

    Beside posts in the ground it may be what is cast round them.
    """
    if any(part.embed > 0.0 for part in design.parts):
        return 0.0, ""
    weights = [
        (body.bottom, design.parts[body.part].name) for body in bodies if not body.shape.hulls()
    ]
    return min(weights, default=(0.0, ""))


def _sections_at_surface(design: Design, bodies: tuple[Body, ...]) -> Array:
    """Return the corners (k, 2) of what stands in the ground, where it enters it."""
    cuts = [
        plane.coordinates(section(body, 0.0))
        for body in bodies
        if design.parts[body.part].embed > 0.0
    ]
    return np.vstack([np.empty((0, 2)), *cuts])


def _refuse_buried(design: Design, bodies: tuple[Body, ...]) -> None:
    """Raise DesignError where a part that stands in the ground does not come out of it."""
    for body in bodies:
        part = design.parts[body.part]
        if part.embed > 0.0 and (body.top <= TOUCHING or section(body, 0.0).area <= 0.0):
            raise refusal(
                design,
                "embed",
                f"{plain(part.embed)} m deep, all of it",
                "less than its height: 'height' is the whole piece as bought",
                "a longer post, or less depth",
                part=part.name,
            )


def _lowest(body: Body) -> float:
    """Return the height of the lowest point in m, of a wheel as it turns."""
    wheel = body.shape.wheel
    if wheel is not None:
        return float(body.origin[2]) - wheel.sweep
    return body.bottom


def _without_straight_corners(ring: Array) -> Array:
    """Drop corners that lie on a straight edge, as where two faces share it."""
    before, after = ring - np.roll(ring, 1, axis=0), np.roll(ring, -1, axis=0) - ring
    sine = _cross(before, after) / (np.linalg.norm(before, axis=1) * np.linalg.norm(after, axis=1))
    return ring[sine > 1.0e-7]


def _cross(a: Array, b: Array) -> Array:
    return a[:, 0] * b[:, 1] - a[:, 1] * b[:, 0]


def refusal(
    design: Design, key: str | None, found: str, expected: str, hint: str, part: str | None = None
) -> DesignError:
    """Return the error of a part, or of the whole design, with its line in the file."""
    line = design.lines.get((part or design.name, key), design.lines.get((part or "", None)))
    return DesignError((Fault(design.file, line, part, key, found, expected, hint),))
