"""Loads that a design names: somebody on a bench, a rope on a rail."""

from dataclasses import replace

import numpy as np

from .. import references
from ..design.model import Design
from ..design.placing import about_z
from ..design.shapes.shape import Array
from ..loads.actions import Actions
from ..loads.combinations import Factors
from ..loads.given import GivenLoad
from ..loads.site import Site
from .bearing import check_bearing
from .embedded_posts import Posts, check_ends, check_posts
from .judging import Check
from .overturning import check_overturning
from .sliding import check_sliding
from .standing import Standing


def given_loads(design: Design) -> tuple[GivenLoad, ...]:
    """Return the loads that a design names, turned with it on its site."""
    turned = about_z(design.turn)
    return tuple(
        replace(load, at=_three(turned, load.at), direction=_three(turned, load.direction))
        for load in design.several(GivenLoad)
    )


def check_given_load(
    standing: Standing, load: GivenLoad, factors: Factors, site: Site, posts: Posts | None = None
) -> Check:
    """Return the worst of tipping, sliding and bearing under a named load without wind.

    Of a piece that ``posts`` in the ground carry, the worst post.
    The load takes the basis' factor on live load in place of that on wind.
    """
    live = float(references.table("combinations").one("basis", site.basis)["live"])
    used = replace(factors, wind=live)
    actions = _as_actions(load)
    if posts is not None:
        down = live * max(-load.force * load.direction[2], 0.0)
        found = check_posts(posts, standing.structure, actions, used)
        found.append(check_ends(posts, standing.structure, standing.ground, used, down))
    else:
        found = [check(standing, actions, used) for check in (check_overturning, check_sliding)]
    if posts is None and standing.contact.area > 0.0 and found[0].passes:
        found.append(check_bearing(standing, actions, used))
    worst = max(found, key=lambda one: np.inf if one.utilization is None else one.utilization)
    return replace(worst, name=f"load: {load.name}", remark=worst.name, direction_deg=None)


def _as_actions(load: GivenLoad) -> Actions:
    """Return a load as actions of one gust, one direction and one case; pressing is no uplift."""
    x, y, z = (load.force * part for part in load.direction)
    px, py, pz = load.at
    force: Array = np.array([x, y])
    lifting: Array = np.array([z * px, z * py])
    return Actions(
        azimuths=np.zeros(1),
        force=force[None, None, None],
        tilting=(force * pz)[None, None, None],
        twist=np.full((1, 1, 1), px * y - py * x),
        uplift=np.full((1, 1, 1), z),
        lifting=lifting[None, None, None],
        names=("load",),
    )


def _three(turned: Array, vector: tuple[float, float, float]) -> tuple[float, float, float]:
    x, y, z = (float(part) for part in turned @ np.asarray(vector))
    return x, y, z
