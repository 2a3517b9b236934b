"""Tipping, sliding and bearing under a load that a design names: somebody on a bench."""

from collections.abc import Callable, Iterator, Sequence

import numpy as np

from ...loads.actions import Actions
from ...loads.combinations import Factors
from ...units.arrays import Array
from ...units.frozen import replace
from ..anchoring.embedded_posts import Posts, check_ends, check_posts
from ..judged.judging import Check, Kind, Remark
from ..stability.bearing import check_bearing
from ..stability.overturning import Hold, check_overturning
from ..stability.sliding import check_sliding
from ..stability.standing import Standing
from .borne import Borne, as_actions
from .load_cases import MINIMUM

Level = Callable[[Array], Array]
"""What anchors hold (…) in N along a level force (…, 2)."""


def check_given_loads(
    standing: Standing,
    loads: Sequence[Borne],
    factors: Factors,
    wind: Actions,
    posts: Posts | None = None,
    held: tuple[Hold, Level] | None = None,
    *,
    stands: bool = True,
) -> list[Check]:
    """Return the worst of tipping, sliding and bearing under each named load.

    By itself and, where it stands each alone, all together; without ``wind`` (Q, D, C) and, where
    the piece ``stands`` in that alone, with it, by the factors of both at once. Of a piece that
    ``posts`` in the ground carry, the worst post. ``held`` is what anchors or guys hold against
    turning, and along a level force.
    """
    blown = wind if stands else None
    each = [
        list(_tried(standing, as_actions(one.load), _down(one), factors, blown, posts, held))
        for one in loads
    ]
    if len(loads) > 1 and all(check.passes for tried in each for check in tried):
        together = summed([as_actions(one.load) for one in loads])
        down = sum(_down(one) for one in loads)
        whole = list(_tried(standing, together, down, factors, blown, posts, held))
        each = [[*tried, *whole] for tried in each]
    return [
        replace(
            max(tried, key=lambda check: check.rank),
            kind=Kind.LOAD,
            subject=one.load.name,
            remark=Remark.WORST_OF,
            slots=(max(tried, key=lambda check: check.rank).name,),
            load=one.load.name,
        )
        for one, tried in zip(loads, each, strict=True)
    ]


def _down(one: Borne) -> float:
    """Return with how much in N a load presses down."""
    return max(-one.load.force * one.load.direction[2], 0.0)


def _tried(
    standing: Standing,
    load: Actions,
    down: float,
    factors: Factors,
    wind: Actions | None,
    posts: Posts | None,
    held: tuple[Hold, Level] | None,
) -> Iterator[Check]:
    """Yield every check under loads alone, then with wind as well where any is given."""
    used = replace(factors, wind=factors.live)
    for check in _each(standing, load, used, posts, held, factors.live * down):
        yield replace(check, direction_deg=None, case="", wind=factors.live)
    for by_wind, live in factors.companions if wind is not None else ():
        assert wind is not None
        both = both_at_once(wind, by_wind, load, live)
        for check in _each(standing, both, replace(factors, wind=1.0), posts, held, live * down):
            yield replace(check, wind=live)


def _each(
    standing: Standing,
    actions: Actions,
    used: Factors,
    posts: Posts | None,
    held: tuple[Hold, Level] | None,
    down: float,
) -> Iterator[Check]:
    if posts is not None:
        yield from check_posts(posts, standing.structure, actions, used)
        yield check_ends(posts, standing.structure, standing.ground, used, down)
        return
    hold, level = held if held is not None else (None, None)
    tips = check_overturning(standing, actions, used, hold)
    yield tips
    yield check_sliding(standing, actions, used, level(actions.force) if level else 0.0)
    if standing.contact.area > 0.0 and tips.passes:
        yield check_bearing(standing, actions, used, hold)


def summed(each: Sequence[Actions]) -> Actions:
    """Return loads of one gust, direction and case as one."""
    first = each[0]

    def whole(name: str) -> Array:
        return np.sum([getattr(one, name) for one in each], axis=0)

    return Actions(
        first.azimuths,
        whole("force"),
        whole("tilting"),
        whole("twist"),
        whole("uplift"),
        whole("lifting"),
        first.names,
    )


def one_at_a_time(each: Sequence[Actions]) -> Actions:
    """Return loads of one gust, direction and case as so many directions."""
    first = each[0]

    def all_of(name: str) -> Array:
        return np.concatenate([getattr(one, name) for one in each], axis=1)

    return Actions(
        np.zeros(len(each)),
        all_of("force"),
        all_of("tilting"),
        all_of("twist"),
        all_of("uplift"),
        all_of("lifting"),
        first.names,
    )


def both_at_once(wind: Actions, by_wind: float, load: Actions, live: float) -> Actions:
    """Return wind and a load at once, each by its factor, but for the least wind of a standard."""
    kept = [k for k, name in enumerate(wind.names) if name != MINIMUM]

    def both(name: str, cases_axis: int) -> Array:
        blown: Array = np.take(getattr(wind, name), kept, axis=cases_axis)
        return by_wind * blown + live * getattr(load, name)

    return Actions(
        wind.azimuths,
        both("force", -2),
        both("tilting", -2),
        both("twist", -1),
        both("uplift", -1),
        both("lifting", -2),
        tuple(wind.names[k] for k in kept),
    )
