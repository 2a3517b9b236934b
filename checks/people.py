"""A person's push, where the design says that people come near."""

import numpy as np

from .. import references
from ..design import plane
from ..design.sections import section
from ..design.shapes.hulls import corners
from ..design.structure import Structure
from ..loads.combinations import Factors
from ..references import TableRow
from ..units.arrays import Array, first_greatest
from ..units.frozen import replace
from .anchoring.embedded_limits import push_that_gives_way
from .anchoring.embedded_posts import Posts
from .judged.judging import Check, Kind, azimuth, check_demand
from .stability.overturning import Hold
from .stability.standing import Standing


def check_push(
    standing: Standing, factors: Factors, people: str | None, held: Hold | None = None
) -> Check | None:
    """Return the check of a level push by the people named, or None where none are.

    The push acts at its height or at the top, whichever is lower, toward the worst line, without
    wind; helping weight takes the basis' factor. ``held`` is what anchors or guys hold besides.
    """
    row = _row(people or "")
    if row is None:
        return None
    weight = factors.helping * standing.structure.weight("light")
    pivot = standing.pivot(np.full(len(standing.normals), weight))
    push = _force(row) * _height(row, standing.structure)
    found = _over_the_worst(
        Kind.PUSH, standing, factors, np.full(len(standing.normals), push), pivot, row, held
    )
    return replace(found, bare=found.capacity / factors.helping / found.demand)


def check_climb(
    standing: Standing, factors: Factors, people: str | None, held: Hold | None = None
) -> Check | None:
    """Return the check of a child that stands on the outermost edge, or None without children.

    Its weight presses straight down beyond the line of turning, without wind, on the farthest point
    of what lies below the height that it climbs to; helping weight takes the basis' factor.
    """
    row = _row(f"climbing {people}")
    if row is None:
        return None
    force, height = _force(row), float(row["height_m"])
    weight = factors.helping * standing.structure.weight("light")
    pivot = standing.pivot(np.full(len(standing.normals), weight + force))
    out = (_within_reach(standing.structure, height) @ standing.normals.T).max(axis=0)
    return _over_the_worst(
        Kind.CLIMB, standing, factors, force * np.maximum(out - pivot, 0.0), pivot, row, held
    )


def check_push_on_posts(
    posts: Posts, structure: Structure, factors: Factors, people: str | None
) -> Check | None:
    """Return the check of the same push where posts in the ground carry the piece.

    Its weight may lean on them, and takes part as it is, heavy.
    """
    row = _row(people or "")
    if row is None:
        return None
    gives = factors.soil * push_that_gives_way(posts, structure, _height(row, structure))
    found = check_demand(Kind.PUSH, _force(row), gives, "N", row["source"])
    return replace(found, weighing="heavy", wind=0.0)


def _row(people: str) -> TableRow | None:
    rows = references.table("ground/pushes").where("people", people)
    return rows[0] if rows else None


def _force(row: TableRow) -> float:
    return float(row["force_N"])


def _height(row: TableRow, structure: Structure) -> float:
    return min(float(row["height_m"]), structure.height)


def _over_the_worst(
    kind: Kind,
    standing: Standing,
    factors: Factors,
    tipping: Array,
    pivot: Array,
    row: TableRow,
    held: Hold | None,
) -> Check:
    """Return the check of moments (lines,) in N m against what holds, over the worst line."""
    hold = factors.helping * standing.hold("light", pivot)
    hold = hold if held is None else hold + held.moment(pivot)
    line = first_greatest(tipping / np.maximum(hold, 1.0e-9))
    return replace(
        check_demand(kind, float(tipping[line]), float(hold[line]), "N*m", row["source"]),
        toward_deg=azimuth(standing.normals[line]),
        dead=factors.helping,
        wind=0.0,
    )


def _within_reach(structure: Structure, height: float) -> Array:
    """Return the plan points (k, 2) of all that lies below a height in m, in the outline of it."""
    found: list[Array] = [structure.footprint]
    for body in structure.bodies:
        for hull in body.shape.hulls():
            points = body.place(corners(hull))
            found.append(points[points[:, 2] <= height][:, :2])
        if body.bottom < height < body.top:
            found.append(plane.coordinates(section(body, height)))
    return np.vstack(found)
