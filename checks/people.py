"""A person's push, where the design says that people come near."""

import numpy as np

from .. import references
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


def check_push_on_posts(
    posts: Posts, structure: Structure, factors: Factors, people: str | None
) -> Check | None:
    """Return the check of the same push where posts in the ground carry the piece."""
    rows = references.table("ground/pushes").where("people", people or "")
    if not rows:
        return None
    demand = float(rows[0]["force_N"])
    height = min(float(rows[0]["height_m"]), structure.height)
    capacity = factors.soil * push_that_gives_way(posts, height)
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
