"""Every shape once more as a mesh, built by cutting with planes: independent of the formulas."""

from functools import cache
from math import cos, pi, sin

import numpy as np
import shapely
from manifold3d import CrossSection, FillRule, Manifold

from yardfast.design.placing import Body
from yardfast.design.shapes.ball import Ball
from yardfast.design.shapes.bodies import Shell, Solid
from yardfast.design.shapes.boxes import Box
from yardfast.design.shapes.cone import Cone
from yardfast.design.shapes.cutout import Cutout
from yardfast.design.shapes.flat import Frame, Panel, Plate
from yardfast.design.shapes.gables import Gable
from yardfast.design.shapes.hoop import Hoop
from yardfast.design.shapes.member import Member
from yardfast.design.shapes.plans import Rectangle
from yardfast.design.shapes.roofs import Dome, Vault
from yardfast.design.shapes.rotor import Rotor
from yardfast.design.shapes.turned import Turned
from yardfast.units.frozen import replace

ROUND = 160
FINE = 768


@cache
def mesh_of(shape) -> Manifold:
    """A shape in its own axes as a manifold mesh."""
    match shape:
        case Shell(sides, bottom, top, height, wall):
            faces = _faces(sides, bottom / 2, top / 2, height)
            return _cut(faces, height, 0.0) - _cut(faces, height, wall, over=True)
        case Solid(sides, bottom, top, height):
            return _cut(_faces(sides, bottom / 2, top / 2, height), height, 0.0)
        case Cone(sides, bottom, height, wall):
            faces = _faces(sides, bottom / 2, 0.0, height)
            outside = _cut(faces, height, 0.0)
            return outside - _cut(faces, height, wall, below=True) if wall else outside
        case Box():
            return _box(shape)
        case Gable(knee_width=float()) as gambrel:
            return _gambrel(gambrel)
        case Gable(length, width, height, thickness):
            slopes = [
                (np.array([0.0, s * height, width / 2.0]), (0.0, s * width / 2.0, 0.0))
                for s in (1.0, -1.0)
            ]
            outside = _planes(_block(length, width, height), slopes, 0.0)
            if thickness is None:
                return outside
            return outside - _planes(_block(2 * length, 2 * width, height, -1.0), slopes, thickness)
        case Plate(plan, thickness, hole):
            whole = _plan(plan).extrude(thickness)
            if hole:
                whole -= (
                    _ring_plan(plan.sides, hole)
                    .extrude(3 * thickness)
                    .translate((0, 0, -thickness))
                )
            return whole
        case Frame(plan, width, height):
            return _plan(plan).extrude(height) - _plan(plan.shrunk(width)).extrude(
                3 * height
            ).translate((0, 0, -height))
        case Panel(width, height, thickness):
            return _block(width, thickness, height)
        case Ball(across, wall):
            whole = Manifold.sphere(across / 2, FINE)
            if wall:
                whole -= Manifold.sphere(across / 2 - wall, FINE)
            return whole.translate((0, 0, across / 2))
        case Rotor():
            return Manifold.compose(blades_of(shape))
        case Member():
            return _member(shape)
        case Cutout(points, thickness, holes):
            rings = [np.asarray(points), *(np.asarray(hole) for hole in holes)]
            board = CrossSection(rings, FillRule.EvenOdd).extrude(thickness)
            return board.translate((0, 0, -thickness / 2)).rotate((90, 0, 0))
        case Dome(across, height, wall):
            radius = (across**2 / 4 + height**2) / (2 * height)
            outside = _ball_above_ground(radius, height - radius)
            if wall is None:
                return outside
            return outside - _ball_above_ground(radius - wall, height - radius)
        case Vault(length, width, height, wall):
            outside = _arch(length, width, height)
            if wall is None:
                return outside
            return outside - _arch(2 * length, width - 2 * wall, height - wall)
        case Turned(profile):
            points = [(0.0, profile[0][1]), *profile, (0.0, profile[-1][1])]
            half = CrossSection([np.array(list(dict.fromkeys(points)))], FillRule.NonZero)
            return half.revolve(ROUND).scale((_fit(ROUND), _fit(ROUND), 1.0))
        case Hoop(radius, section, wall):
            whole = _swept(section, radius)
            low = whole.bounding_box()[2]
            bore = None if wall is None else _swept(section.shrunk(wall), radius)
            return (whole if bore is None else whole - bore).translate((0, 0, -low))
        case _:
            raise TypeError(shape)


def _swept(section, radius: float) -> Manifold:
    """A section all round a circle, both drawn as wide as what has their area."""
    ring, bar = 96, 64
    round_ = getattr(section, "sides", None) == 0
    across = section.across * _fit(bar) if round_ else 0.0
    figure = CrossSection.circle(across / 2, bar) if round_ else _plan(section)
    whole = figure.translate((radius, 0.0)).revolve(ring)
    return whole.scale((_fit(ring), _fit(ring), 1.0))


def _fit(corners: int) -> float:
    """The reach of a regular figure's corners over the radius of the circle of its area."""
    return (2.0 * pi / corners / sin(2.0 * pi / corners)) ** 0.5


def placed(body: Body, build=mesh_of) -> Manifold:
    """A body where it stands."""
    return build(body.shape).transform(np.column_stack([body.rotation, body.origin]))


def volume_and_centre(mesh: Manifold) -> tuple[float, np.ndarray]:
    """Volume and centroid of a closed mesh, by the divergence theorem over its triangles."""
    raw = mesh.to_mesh()
    points = np.asarray(raw.vert_properties, dtype=float)[:, :3]
    a, b, c = (points[np.asarray(raw.tri_verts)[:, k]] for k in range(3))
    signed = np.einsum("ij,ij->i", a, np.cross(b, c)) / 6.0
    volume = signed.sum()
    return float(volume), (signed[:, None] * (a + b + c) / 4.0).sum(axis=0) / volume


@cache
def filled(shape) -> Manifold:
    """The outer shape without its hollow."""
    match shape:
        case Hoop():
            return mesh_of(replace(shape, wall=None))
        case Gable():
            return mesh_of(replace(shape, thickness=None))
        case Box():
            return mesh_of(replace(shape, wall=None, open=frozenset()))
        case Dome(across, height):
            radius = (across**2 / 4 + height**2) / (2 * height)
            return _ball_above_ground(radius, height - radius, 2 * ROUND)
        case Vault() | Member():
            return mesh_of(replace(shape, wall=None))
        case Cutout():
            return mesh_of(replace(shape, holes=()))
        case Ball(across):
            return Manifold.sphere(across / 2, ROUND).translate((0, 0, across / 2))
        case _:
            return mesh_of(shape)


def projected(mesh: Manifold, azimuth: float) -> shapely.Geometry:
    """The outline of a mesh seen along a level wind from the azimuth (rad): union of triangles.

    Those that turn their outside to whoever looks cover all that the others do.
    """
    raw = mesh.to_mesh()
    points = np.asarray(raw.vert_properties, dtype=float)[:, :3]
    flat = np.column_stack([points[:, :2] @ np.array([cos(azimuth), -sin(azimuth)]), points[:, 2]])
    corners = flat[np.asarray(raw.tri_verts)]
    one, two = corners[:, 1] - corners[:, 0], corners[:, 2] - corners[:, 0]
    turned = one[:, 0] * two[:, 1] - one[:, 1] * two[:, 0]
    return shapely.union_all(shapely.polygons(corners[turned > 2e-14]))


def _faces(sides, a0, a1, height):
    """Outward normal and a point of each lateral plane; a round body has many."""
    n = sides or ROUND
    # a circle's planes touch it from outside; shrink them to the same area
    fit = 1.0 if sides else np.sqrt(pi / (n * np.tan(pi / n)))
    result = []
    for k in range(n):
        u = np.array([cos(2 * pi * k / n), sin(2 * pi * k / n)])
        result.append((np.array([*(height * u), (a0 - a1) * fit]), (*(a0 * fit * u), 0.0)))
    return result


def _cut(faces, height, inward, over=False, below=False):
    """What lies within all planes moved inward; open at both ends with ``over``, below with it."""
    widest = max(np.hypot(*point[:2]) + 4.0 * abs(normal[2]) for normal, point in faces)
    reach = 4.0 * widest + height
    low, high = (-height if over or below else 0.0), (2 * height if over else height)
    block = Manifold.cube((reach, reach, high - low)).translate((-reach / 2, -reach / 2, low))
    return _planes(block, faces, inward)


def _planes(block, faces, inward):
    for normal, point in faces:
        unit = np.asarray(normal, dtype=float) / np.linalg.norm(normal)
        block = block.trim_by_plane(tuple(-unit), float(-(unit @ np.asarray(point)) + inward))
    return block


def _block(length, width, height, start=0.0):
    size = (length, width, height - start)
    return Manifold.cube(size).translate((-length / 2, -width / 2, start))


def _box(box: Box):
    top = box.top_plan
    dx, dy = (box.length - top.length) / 2, (box.width - top.width) / 2
    sides = {
        "right": (np.array([box.height, 0, dx]), (box.length / 2, 0, 0)),
        "left": (np.array([-box.height, 0, dx]), (-box.length / 2, 0, 0)),
        "back": (np.array([0, box.height, dy]), (0, box.width / 2, 0)),
        "front": (np.array([0, -box.height, dy]), (0, -box.width / 2, 0)),
    }
    reach = 4 * (box.length + box.width + top.length + top.width)
    outside = _planes(_block(reach, reach, box.height), list(sides.values()), 0.0)
    if box.wall is None:
        return outside
    low = -1.0 if "bottom" in box.open else box.wall
    high = box.height + (1.0 if "top" in box.open else -box.wall)
    space = _block(reach, reach, high, low)
    for name, face in sides.items():
        space = _planes(space, [face], 0.0 if name in box.open else box.wall)
    return outside - space


def _plan(plan):
    if isinstance(plan, Rectangle):
        return CrossSection.square((plan.length, plan.width), True)
    return _ring_plan(plan.sides, plan.across)


def _ring_plan(sides, across):
    n = sides or ROUND
    radius = (
        across / 2 / cos(pi / n) if sides else across / 2 * np.sqrt(2 * pi / n / sin(2 * pi / n))
    )
    angles = pi / n * (1 + 2 * np.arange(n))
    return CrossSection([np.column_stack([np.cos(angles), np.sin(angles)]) * radius])


def blades_of(wheel: Rotor):
    """Each blade extruded from its trapezoid, twisted, turned up the wheel, then faced."""
    flat = np.array(
        [
            [-wheel.root / 2, 0],
            [wheel.root / 2, 0],
            [wheel.tip / 2, wheel.span],
            [-wheel.tip / 2, wheel.span],
        ]
    )
    blade = CrossSection([flat]).extrude(wheel.thickness).translate((0, 0, -wheel.thickness / 2))
    upright = blade.rotate((90, 0, 0)).rotate((0, 0, np.degrees(wheel.pitch)))
    return [
        upright.rotate((0, 360.0 * k / wheel.blades, 0)).rotate(
            (0, 0, -np.degrees(wheel.facing or 0))
        )
        for k in range(wheel.blades)
    ]


def _gambrel(roof: Gable):
    half, knee = roof.width / 2, roof.knee_width / 2
    faces = []
    for s in (1.0, -1.0):
        faces.append((np.array([0, s * roof.knee_height, half - knee]), (0.0, s * half, 0.0)))
        upper = np.array([0, s * (roof.height - roof.knee_height), knee])
        faces.append((upper, (0.0, 0.0, roof.height)))
    outside = _planes(_block(roof.length, 3 * roof.width, roof.height), faces, 0.0)
    if roof.thickness is None:
        return outside
    return outside - _planes(
        _block(2 * roof.length, 3 * roof.width, roof.height, -1.0), faces, roof.thickness
    )


def _member(stick: Member):
    """A long prism along the axis, cut by a plane at either end."""
    start, end = np.asarray(stick.start), np.asarray(stick.end)
    along = (end - start) / np.linalg.norm(end - start)
    level = np.cross(along, [0.0, 0.0, 1.0])
    level = level / np.linalg.norm(level) if np.linalg.norm(level) > 1e-9 else np.array([1.0, 0, 0])
    frame = np.column_stack([level, np.cross(along, level), along, 0.5 * (start + end)])

    def bar(inset):
        if stick.across:
            step = 2 * pi / ROUND
            fit = np.sqrt(step / sin(step))
            radius = (stick.across / 2 - inset) * fit
            plain = Manifold.cylinder(3 * stick.length, radius, radius, ROUND, True)
        else:
            size = (stick.width - 2 * inset, stick.depth - 2 * inset, 3 * stick.length)
            plain = Manifold.cube(size, True)
        return plain.transform(frame)

    normal = along
    if stick.cut == "level":
        normal = np.array([0.0, 0.0, np.sign(along[2])])
    if stick.cut == "plumb":
        normal = along * [1, 1, 0] / np.linalg.norm(along[:2])
    whole = bar(0.0) - bar(stick.wall) if stick.wall is not None else bar(0.0)
    whole = whole.trim_by_plane(tuple(normal), float(normal @ start))
    return whole.trim_by_plane(tuple(-normal), float(-normal @ end))


def _ball_above_ground(radius, centre, count=None):
    count = count or FINE
    ball = Manifold.sphere(radius, count).translate((0, 0, centre))
    return ball.trim_by_plane((0, 0, 1), 0.0)


def _arch(length, width, height):
    radius = width / 2
    tube = Manifold.cylinder(length, radius, radius, FINE, True).rotate((0, 90, 0))
    tube = tube.translate((0, 0, height - radius)).trim_by_plane((0, 0, 1), height - radius)
    return tube + _block(length, width, height - radius) if height > radius else tube
