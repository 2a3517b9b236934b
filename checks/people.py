"""A person's push, where the design says that people come near."""

import numpy as np

from .. import references
from ..design import plane
from ..design.sections import section
from ..design.shapes.shape import Array, corners
from ..design.structure import Structure
from ..loads.combinations import Factors
from .embedded_posts import Posts, push_that_gives_way
from .judging import Check, azimuth, judged
from .standing import Standing


def check_push(standing: Standing, factors: Factors, people: str | None) -> Check | None:
    """Return the check of a level push by the people named, or None where none are.

    The push acts at its height or at the top, whichever is lower, toward the worst line, without
    wind; helping weight takes the basis' factor.
    """
    rows = references.table("ground/pushes").where("people", people or "")
    if not rows:
        return None
    force, height = float(rows[0]["force_N"]), float(rows[0]["height_m"])
    height = min(height, standing.structure.height)
    weight = np.full(len(standing.normals), factors.helping * standing.structure.weight("light"))
    hold = factors.helping * standing.hold("light", standing.pivot(weight))
    line = int(hold.argmin())
    demand, capacity = force * height, float(hold[line])
    utilization, passes = judged(demand, capacity)
    return Check(
        name="push",
        demand=demand,
        capacity=capacity,
        unit="N*m",
        utilization=utilization,
        passes=passes,
        source=rows[0]["source"],
        toward_deg=azimuth(standing.normals[line]),
        dead=factors.helping,
        bare=capacity / factors.helping / demand,
    )


def check_climb(standing: Standing, factors: Factors, people: str | None) -> Check | None:
    """Return the check of a child that stands on the outermost edge, or None without children.

    Its weight presses straight down beyond the line of turning, without wind, on the farthest point
    of what lies below the height that it climbs to; helping weight takes the basis' factor.
    """
    rows = references.table("ground/pushes").where("people", f"climbing {people}")
    if not rows:
        return None
    force, height = float(rows[0]["force_N"]), float(rows[0]["height_m"])
    weight = np.full(len(standing.normals), factors.helping * standing.structure.weight("light"))
    pivot = standing.pivot(weight + force)
    hold = factors.helping * standing.hold("light", pivot)
    out = (_within_reach(standing.structure, height) @ standing.normals.T).max(axis=0)
    tipping = force * np.maximum(out - pivot, 0.0)
    line = int((tipping / np.maximum(hold, 1.0e-9)).argmax())
    demand, capacity = float(tipping[line]), float(hold[line])
    utilization, passes = judged(demand, capacity)
    return Check(
        name="climb",
        demand=demand,
        capacity=capacity,
        unit="N*m",
        utilization=utilization,
        passes=passes,
        source=rows[0]["source"],
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


def check_push_on_posts(
    posts: Posts, structure: Structure, factors: Factors, people: str | None
) -> Check | None:
    """Return the check of the same push where posts in the ground carry the piece."""
    rows = references.table("ground/pushes").where("people", people or "")
    if not rows:
        return None
    demand = float(rows[0]["force_N"])
    height = min(float(rows[0]["height_m"]), structure.height)
    capacity = factors.soil * push_that_gives_way(posts, structure, height)
    utilization, passes = judged(demand, capacity)
    return Check(
        name="push",
        demand=demand,
        capacity=capacity,
        unit="N",
        utilization=utilization,
        passes=passes,
        source=rows[0]["source"],
    )
