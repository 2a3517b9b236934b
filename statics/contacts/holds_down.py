"""Where anchors, guys and ballast meet the piece that they are said to hold; else it is a fault."""

from collections.abc import Iterator, Sequence

import numpy as np
from shapely.geometry.base import BaseGeometry

from ...design import plane
from ...design.faults import DesignError, Fault
from ...design.on_ground import touching_face
from ...design.placing import Body, about_z
from ...design.sections import section
from ...design.structure import Structure
from ...materials import anchors as kinds
from ...units import plain
from ...units.arrays import Array, distinct
from ...units.frozen import ByIdentity, kept_with, replace
from ..tables.anchor_table import AnchorRow, BallastRow, GuyRow
from .edges_found import swings
from .fit import ANCHOR_LEFT, CARRIED_ACROSS, FIT, HEAD_REACH
from .unsupported import shown_length

_THROUGH = ("washer",)
"""Heads of what goes through the wood: a bolt, a pier's or a pad's rod with nut and washer."""

_WITHIN = 3.0e-3
"""An anchor whose middle lies so deep (m) in the wood goes through it."""

_LEAST = 1.0e-6
"""A length in m that counts for nothing: within a body, beside the face that it ends in."""


APART = 3
"""So many feet that stand apart are held one by one, outermost: judgement."""


class _Near(ByIdentity, frozen=True):
    """The wood nearest to a point: ``apart`` m off, at ``place`` (3,), of body ``body``."""

    apart: float
    place: Array
    body: int


def anchor_points(structure: Structure, row: AnchorRow) -> Array:
    """Return where the anchors of a row stand (n, 2) in m on the site. DesignError: no such."""
    if row.where == "feet":
        feet = outermost(structure, row.inset)
        if not len(feet):
            raise DesignError((_too_far_in(structure, row),))
        return feet
    if row.where is not None:
        foot = plane.inset(structure.footprint, row.inset)
        if not len(foot):
            raise DesignError((_too_far_in(structure, row),))
        middles = 0.5 * (foot + np.roll(foot, -1, axis=0))
        step = 2 if row.where == "second sides" else 1
        return foot if row.where == "corners" else middles[::step]
    around = [np.zeros(2)]
    if row.ring is not None:
        angles = row.start + 2.0 * np.pi * np.arange(row.count) / row.count
        around = list(0.5 * row.ring * np.column_stack([np.cos(angles), np.sin(angles)]))
    plain = np.array([np.asarray(row.at[:2]) + offset for offset in around])
    return plain @ about_z(structure.design.turn)[:2, :2].T


def outermost(structure: Structure, inset: float = 0.0) -> Array:
    """Return the place (n, 2) in m of each separate foot farthest out, as seen from the middle.

    A corner, or the middle of an edge that lies square to that way. Each foot's edges ``inset`` m
    in; none at all where one is too narrow for that.
    """
    feet = plane.pieces(structure.contact_area)
    inner = [plane.moved_in(foot, inset) for foot in feet] if inset > 0.0 else feet
    if not feet or any(foot.is_empty for foot in inner):
        return np.zeros((0, 2))
    middle = structure.footprint.mean(axis=0)
    return np.array([_farthest(foot, plane.middle(foot) - middle) for foot in inner])


def feet_apart(structure: Structure) -> Array:
    """Return the outermost places (n, 2) in m of feet that are held one by one; else none."""
    feet = outermost(structure)
    several = APART <= len(feet) < len(structure.footprint)
    return feet if several else np.zeros((0, 2))


def _farthest(foot: BaseGeometry, way: Array) -> Array:
    """Return the middle (2,) of the corners of a foot that lie farthest along a way (2,)."""
    corners = distinct(plane.coordinates(foot), axis=0)
    along = corners @ (way / max(float(np.hypot(*way)), _LEAST))
    return corners[along > along.max() - _WITHIN].mean(axis=0)


def guy_tops(structure: Structure, row: GuyRow) -> tuple[Array, Array]:
    """Return where the guys of a row leave the piece (n, 3) in m, and their ways out (n, 2)."""
    turn = structure.design.turn
    angles = row.start + turn + 2.0 * np.pi * np.arange(row.count) / row.count
    outward = np.column_stack([np.cos(angles), np.sin(angles)])
    middle = about_z(turn)[:2, :2] @ np.asarray(row.at[:2])
    return np.column_stack([middle + row.out * outward, np.full(row.count, row.height)]), outward


def anchor_reach(kind: str) -> float:
    """Return how far in m from the wood the middle of an anchor may stand and still hold it.

    What goes through it not at all; what stands against it by half its own width, and what its
    head reaches over (judgement: fit.csv).
    """
    if _goes_through(kind):
        return FIT
    return 0.5 * (kinds.find_anchor(kind).diameter or 0.0) + HEAD_REACH


def near_the_ground(structure: Structure, points: Array) -> list[_Near]:
    """Return for each point (n, 2) in m the wood nearest to an anchor that stands there.

    What touches the ground there, or lies no higher than what is left of an anchor above it.
    """
    return list(_near(structure, tuple((x, y) for x, y in points.tolist())))


@kept_with
def _near(structure: Structure, places: tuple[tuple[float, float], ...]) -> tuple[_Near, ...]:
    wood = list(_low_wood(structure))
    return tuple(_nearest(np.array(place), 0.0, wood) for place in places)


def ways_out(structure: Structure, points: Array) -> Array:
    """Return which way (n, 2) from the wood anchors at points (n, 2) in m stand against it.

    Square to an edge, askew at a corner; 0 of what goes through the wood, which holds every way.
    """
    found = np.zeros((len(points), 2))
    for k, near in enumerate(near_the_ground(structure, points)):
        if near.body < 0:
            continue
        away = points[k] - plane.nearest_point(
            points[k], _stood_against(structure.bodies[near.body])
        )
        apart = float(np.hypot(*away))
        found[k] = away / apart if apart > _LEAST else 0.0
    return found


@kept_with
def _stood_against(body: Body) -> BaseGeometry:
    """Return that face of a body which an anchor beside it stands against, a little within it."""
    wood = touching_face(body)
    if wood.is_empty:
        wood = section(body, body.bottom + _LEAST)
    deep = plane.moved_in(wood, _WITHIN)
    return wood if deep.is_empty else deep


def near_a_guy(structure: Structure, tops: Array) -> list[_Near]:
    """Return for each top (n, 3) in m of a guy the wood nearest to it.

    A line is tied round a part or made fast to it: within its outline, hollow or not, is on it.
    """
    return [_nearest(top[:2], float(top[2]), list(_wood_at(structure, top[2]))) for top in tops]


def anchors_meet(structure: Structure, points: Array, kind: str) -> bool:
    """Return whether anchors of a kind at points (n, 2) all meet the piece."""
    reach = anchor_reach(kind)
    return all(near.apart <= reach + _LEAST for near in near_the_ground(structure, points))


def guys_meet(structure: Structure, tops: Array) -> bool:
    """Return whether guys at their tops (n, 3) all meet the piece."""
    return all(near.apart <= CARRIED_ACROSS + _LEAST for near in near_a_guy(structure, tops))


def holding_nothing(structure: Structure) -> list[Fault]:
    """Return a fault for each row of anchors, guys and ballast that does not meet the piece."""
    design, found = structure.design, list[Fault]()
    for anchor in design.several(AnchorRow):
        found += _anchor_faults(structure, anchor)
    for guy in design.several(GuyRow):
        found += _guy_faults(structure, guy)
    for ballast in design.several(BallastRow):
        found += _ballast_faults(structure, ballast)
    return found


def _anchor_faults(structure: Structure, row: AnchorRow) -> Iterator[Fault]:
    points, reach = anchor_points(structure, row), anchor_reach(row.kind)
    near = near_the_ground(structure, points)
    astray = [one for one in near if one.apart > reach + _LEAST]
    if astray:
        does = "goes through" if _goes_through(row.kind) else "goes through or stands against"
        key, hint = _anchor_mended(structure, row, points, near)
        found = _astray(structure, astray, len(points), "stand")
        yield _fault(structure, row.name, key, found, f"an anchor that {does} what it holds", hint)


def _anchor_mended(
    structure: Structure, row: AnchorRow, points: Array, near: list[_Near]
) -> tuple[str, str]:
    """Return the key that puts anchors where they hold, and what to write there."""
    if row.ring is not None:
        middle = points.mean(axis=0)
        for radius in sorted(float(np.linalg.norm(one.place[:2] - middle)) for one in near):
            moved = middle + (points - middle) * (2.0 * radius / row.ring)
            if anchors_meet(structure, moved, row.kind):
                return "ring", f"ring = {_written(structure, 2.0 * radius)}"
        return "ring", "say where = 'corners' in place of 'at', 'ring' and 'count'"
    if row.where is None:
        return "at", f"at = {_place(structure, near[0].place @ about_z(structure.design.turn))}"
    for inset in row.inset * np.arange(7, -1, -1) / 8.0 if row.inset > 0.0 else ():
        nearer = anchor_points(structure, replace(row, inset=float(inset)))
        if anchors_meet(structure, nearer, row.kind):
            return "inset", f"inset = {_written(structure, float(inset))}"
    return "where", "where = 'corners', or at = [...] for each"


def _guy_faults(structure: Structure, row: GuyRow) -> Iterator[Fault]:
    tops, outward = guy_tops(structure, row)
    near = near_a_guy(structure, tops)
    astray = [one for one in near if one.apart > CARRIED_ACROSS + _LEAST]
    if not astray:
        return
    worst = max(astray, key=lambda one: one.apart)
    if abs(float(worst.place[2]) - row.height) > _LEAST:
        key, hint = "height", f"height = {_written(structure, float(worst.place[2]))}"
    else:
        out = [
            float((one.place[:2] - top[:2]) @ way) + row.out
            for one, top, way in zip(near, tops, outward, strict=True)
        ]
        key, hint = "out", f"out = {_written(structure, max(min(out), 0.0))}"
    found = _astray(structure, astray, len(tops), "are tied")
    yield _fault(structure, row.name, key, found, "a guy that is tied to the piece", hint)


def _ballast_faults(structure: Structure, row: BallastRow) -> Iterator[Fault]:
    """Yield a fault where a row's middle lies beside what it lies on.

    Several pieces for which no place is given are laid round a part whose middle is open.
    """
    bodies, parts = structure.bodies, structure.design.parts
    name = row.on if row.on is not None else row.inside
    spread = row.count > 1 and (row.name, "at") not in structure.design.lines and not any(row.at)
    filled = spread or row.on is None
    plans = [
        (i, _wood_in_plan(body)) for i, body in enumerate(bodies) if parts[body.part].name == name
    ]
    for point in [body.origin for body in bodies if parts[body.part].name == row.name]:
        at = float(point[2])
        wood = [(i, plan.convex_hull if filled else plan, at) for i, plan in plans]
        near = _nearest(point[:2], at, wood)
        if near.apart > FIT + _LEAST:
            moved = np.asarray(row.at) + (near.place - point) @ about_z(structure.design.turn)
            others = "; lay as many opposite, as a row of their own" if row.count > 1 else ""
            yield _fault(
                structure,
                row.name,
                "at",
                _astray(structure, [near], 1, "lie"),
                f"ballast that lies on {name}",
                f"at = {_place(structure, moved)}{others}",
            )
            return


def _wood_in_plan(body: Body) -> BaseGeometry:
    """Return in plan (m) what of a body ballast may lie on: a floor, a top, a ring, no hole."""
    levels = np.linspace(body.bottom + _LEAST, body.top - _LEAST, 3)
    return plane.union_of([section(body, float(level)) for level in levels])


def _low_wood(structure: Structure) -> Iterator[tuple[int, BaseGeometry, float]]:
    """Yield what an anchor may hold: by body, what touches the ground or lies just above it."""
    for i, body in enumerate(structure.bodies):
        if swings(structure, i) or not body.shape.hulls() or body.bottom > ANCHOR_LEFT:
            continue
        yield i, touching_face(body), 0.0
        for height in (body.bottom + _LEAST, min(body.top - _LEAST, ANCHOR_LEFT)):
            yield i, section(body, height), 0.0


def _wood_at(structure: Structure, height: float) -> Iterator[tuple[int, BaseGeometry, float]]:
    """Yield by body its outline at a height in m, or at its own nearest to it."""
    for i, body in enumerate(structure.bodies):
        if swings(structure, i) or not body.shape.hulls():
            continue
        level = min(max(height, body.bottom + _LEAST), body.top - _LEAST)
        yield i, section(body, level).convex_hull, level


def _nearest(point: Array, height: float, wood: Sequence[tuple[int, BaseGeometry, float]]) -> _Near:
    """Return the nearest of regions at their heights to a point (2,) at a height."""
    found = _Near(np.inf, np.array([*point, height]), -1)
    for i, region, level in wood:
        if region.is_empty:
            continue
        apart = float(np.hypot(plane.distance(point, region), level - height))
        if apart < found.apart:
            found = _Near(apart, np.array([*plane.nearest_point(point, region), level]), i)
    return found


_ONE = {"stand": "stands", "are tied": "is tied", "lie": "lies"}


def _goes_through(kind: str) -> bool:
    return kinds.find_anchor(kind).head.name in _THROUGH


def _written(structure: Structure, size: float) -> str:
    return f"'{shown_length(structure, size, 4)}'"


def _place(structure: Structure, point: Array) -> str:
    """Return a place (3,) in the design's own axes as the file has it."""
    return "[" + ", ".join(_written(structure, float(one)) for one in point) + "]"


def _astray(structure: Structure, astray: Sequence[_Near], count: int, do: str) -> str:
    """Return what was found: how many stand how far from the nearest part."""
    worst = max(astray, key=lambda one: one.apart)
    if worst.body < 0:
        return "no part is near"
    part = structure.design.parts[structure.bodies[worst.body].part].name
    does = f"{len(astray)} of {count} {do}" if count > 1 else _ONE[do]
    return f"{does} {shown_length(structure, worst.apart)} from the nearest part, {part}"


def _fault(structure: Structure, row: str, key: str, found: str, expected: str, hint: str) -> Fault:
    lines = structure.design.lines
    line = lines.get((row, key), lines.get((row, None)))
    return Fault(structure.design.file, line, row, key, found, expected, hint)


def _too_far_in(structure: Structure, row: AnchorRow) -> Fault:
    design = structure.design
    return Fault(
        design.file,
        design.lines.get((row.name, "inset")),
        row.name,
        "inset",
        f"{plain(row.inset)} m",
        "less than half of the foot's width",
    )
