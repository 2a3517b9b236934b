"""Tipping, sliding and bearing under a load that a design names: somebody on a bench."""

from dataclasses import replace

from ..loads.combinations import Factors
from .anchoring.embedded_posts import Posts, check_ends, check_posts
from .bearing import check_bearing
from .borne import Borne, as_actions
from .judging import Check, Kind
from .overturning import check_overturning
from .sliding import check_sliding
from .standing import Standing


def check_given_load(
    standing: Standing, borne: Borne, factors: Factors, posts: Posts | None = None
) -> Check:
    """Return the worst of tipping, sliding and bearing under a named load without wind.

    Of a piece that ``posts`` in the ground carry, the worst post.
    The load takes the basis' factor on live load in place of that on wind.
    """
    load = borne.load
    used = replace(factors, wind=factors.live)
    actions = as_actions(load)
    if posts is not None:
        down = factors.live * max(-load.force * load.direction[2], 0.0)
        found = check_posts(posts, standing.structure, actions, used)
        found.append(check_ends(posts, standing.structure, standing.ground, used, down))
    else:
        found = [check(standing, actions, used) for check in (check_overturning, check_sliding)]
    if posts is None and standing.contact.area > 0.0 and found[0].passes:
        found.append(check_bearing(standing, actions, used))
    worst = max(found, key=lambda one: one.rank)
    return replace(
        worst,
        kind=Kind.LOAD,
        subject=load.name,
        remark=worst.name,
        direction_deg=None,
        case="",
        wind=factors.live,
        load=load.name,
    )
