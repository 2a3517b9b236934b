"""The least gust that tips or slides a piece as it stands, and the gust at which to act."""

from collections.abc import Sequence
from itertools import pairwise
from math import floor, inf, isinf, sqrt

import numpy as np

from ..design.structure import Weighing
from ..loads.actions import Actions, wind_actions
from ..loads.exposed import Exposed
from ..loads.methods import air_density, shelter_of_ground
from ..loads.wind.site import Site
from ..units import FOOT, MPH
from ..units.arrays import Array, distinct, first_greatest, where_greatest
from ..units.frozen import ByIdentity, ByValue, replace
from .anchoring.embedded_posts import Posts
from .loose import Loose
from .stability.overturning import push_that_tips
from .stability.sliding import sliding_pressures
from .stability.standing import DeadLoad, Standing
from .stability.tipping import LeastTipping, least_tipping

GREATEST_GUST = 150.0
"""Gusts in m/s above which no limit is stated."""

COEFFICIENT_BAND = 0.15
"""Judgement: a force coefficient of a yard piece is known within 15 %."""

_RANGE: tuple[tuple[Weighing, float], ...] = (
    ("typical", 1.0),
    ("light", 1.0 + COEFFICIENT_BAND),
    ("heavy", 1.0 - COEFFICIENT_BAND),
)
"""Weight and strength of coefficients of the best estimate, and of its low and high ends."""

RESERVE = 1.5
"""To act at: half again on pressure, so the limit over the square root of this."""

ACT_STEP = 5.0 * MPH
PUSH_HEIGHT = 5.0 * FOOT


class Limits(ByValue, frozen=True):
    """Gusts in m/s, 3 s long, at the piece itself and as forecasts state them; None above 150.

    ``tipping`` and ``sliding`` are best estimates (typical weight, no load factors), the low and
    high ends their range: light or heavy weight, coefficients 15 % off. ``act`` is the forecast
    gust at which to tie it or lay it down. ``push`` in N tips it, or what is loose on it, at
    ``push_height`` m.
    ``tipping_azimuth`` and ``sliding_azimuth`` (degrees) are where the governing wind comes from,
    ``tipping_line`` the index of the line that the whole tips about. ``ratio`` is the gust at the
    piece over the forecast gust. ``loose_tips`` and ``loose_slides`` name the loose part that goes
    before the whole does, if one does. ``act_at_piece`` is the gust at the piece to act at, not
    rounded, infinite where there is none.
    """

    tipping: float | None
    tipping_low: float | None
    tipping_high: float | None
    sliding: float | None
    sliding_low: float | None
    forecast_tipping: float | None
    forecast_sliding: float | None
    act: float | None
    push: float
    push_height: float
    tipping_azimuth: float
    tipping_line: int
    sliding_azimuth: float
    ratio: float
    loose_tips: str | None = None
    loose_slides: str | None = None
    act_at_piece: float = inf

    def act_by_ratio(self, ratio: float) -> float | None:
        """Return the forecast gust to act at, down to 5 mph, where a gust at the piece is so much.

        ``ratio`` as `shelter_of_ground` gives it for other surroundings; None above 150 m/s.
        """
        gust = self.act_at_piece / ratio
        if gust > GREATEST_GUST:
            return None
        return floor(gust / ACT_STEP + 1.0e-9) * ACT_STEP


def _push(standing: Standing, posts: Posts | None, loose: Sequence[Loose]) -> tuple[float, float]:
    """Return the least level push in N that tips it, or what is loose on it, and how high in m."""
    height = min(standing.structure.height, PUSH_HEIGHT)
    if posts is None:
        whole = push_that_tips(standing, "typical", height)
    else:
        from .anchoring.embedded_limits import push_that_gives_way  # noqa: PLC0415 - posts alone

        whole = push_that_gives_way(posts, standing.structure, height)
    pushes = [(whole, height)]
    for one in loose:
        height = min(one.top, PUSH_HEIGHT)
        if height > one.level:
            pushes.append((push_that_tips(one.standing, "typical", height - one.level), height))
    return min(pushes)


class _Found(ByValue, frozen=True):
    tipping: float
    sliding: float
    tipping_direction: int
    tipping_line: int
    sliding_direction: int
    loose_tips: str | None = None
    loose_slides: str | None = None


def limits(
    standing: Standing,
    exposed: Exposed,
    site: Site,
    loose: Sequence[tuple[Loose, Exposed]] = (),
    posts: Posts | None = None,
) -> Limits:
    """Return the limits of a piece without anchors, for every method by the gust at the piece.

    Where ``posts`` in the ground carry it, tipping is their giving way and it does not slide. A
    ``loose`` part, with what it alone offers the wind, that goes sooner than the whole sets them.
    """
    density = air_density(site)
    whole = stages(standing, exposed, slides=posts is None)
    parts = [(one, stages(one.standing, alone, one)) for one, alone in loose]

    if posts is None:
        found = _least(standing, whole, density)
    else:
        found = _least_of_posts(posts, standing, whole, density)
    for one, its in parts:
        gone = _least(one.standing, its, density)
        found = [_sooner(*each, one.name) for each in zip(found, gone, strict=True)]
    best, low, high = found
    ratio = shelter_of_ground(site, standing.structure.height)
    push, push_height = _push(standing, posts, [one for one, _ in loose])
    stated = Limits(
        tipping=_stated(best.tipping),
        tipping_low=_stated(low.tipping),
        tipping_high=_stated(high.tipping),
        sliding=_stated(best.sliding),
        sliding_low=_stated(low.sliding),
        forecast_tipping=_stated(best.tipping, ratio),
        forecast_sliding=_stated(best.sliding, ratio),
        act=None,
        push=push,
        push_height=push_height,
        tipping_azimuth=float(exposed.azimuths[best.tipping_direction]),
        tipping_line=best.tipping_line,
        sliding_azimuth=float(exposed.azimuths[best.sliding_direction]),
        ratio=ratio,
        loose_tips=best.loose_tips,
        loose_slides=best.loose_slides,
        act_at_piece=_act_at_piece(best, low),
    )
    return replace(stated, act=stated.act_by_ratio(ratio))


def _sooner(whole: _Found, part: _Found, name: str) -> _Found:
    """Return what goes first of the whole and a loose part; the whole keeps its own line."""
    if part.tipping < whole.tipping:
        whole = replace(
            whole,
            tipping=part.tipping,
            tipping_direction=part.tipping_direction,
            loose_tips=name,
        )
    if part.sliding < whole.sliding:
        whole = replace(
            whole,
            sliding=part.sliding,
            sliding_direction=part.sliding_direction,
            loose_slides=name,
        )
    return whole


class Stage(ByIdentity, frozen=True):
    """Actions of 1 Pa that hold between two pressures, and friction's share in each."""

    actions: Actions
    share: Array
    low: float
    high: float


def stages(
    standing: Standing, exposed: Exposed, loose: Loose | None = None, slides: bool = True
) -> list[Stage]:
    """Return the ranges of pressure between which the round sections switch, lowest first.

    Friction's share is 0 where nothing ``slides``.
    """
    ones = np.ones(len(exposed.limit))
    switches = distinct(exposed.limit[np.isfinite(exposed.limit)])
    bounds = [0.0, *switches.tolist(), inf]
    found: list[Stage] = []
    for low, high in pairwise(bounds):
        actions = wind_actions(
            exposed,
            np.array(1.0),
            ratio=ones,
            directionality=ones,
            gust=np.ones(len(exposed.azimuths)),
            above=exposed.limit <= low,
        )
        if loose is not None:
            actions = loose.about_its_foot(actions)
        share = standing.friction_share(actions) if slides else np.zeros_like(actions.uplift)
        found.append(Stage(actions, share, low, high))
    return found


def _least(standing: Standing, stages: list[Stage], density: float) -> list[_Found]:
    """Return the least gusts of each of `_RANGE`: force is not monotone in gust, so each is tried.

    Coefficients that are so many times as strong tip and slide at so many times less pressure. What
    tips within one range of pressure has tipped before the next begins.
    """
    weights = [standing.weight(weighing) for weighing, _ in _RANGE]
    weight = DeadLoad(np.array([w.force for w in weights]), np.array([w.centre for w in weights]))
    each = DeadLoad(weight.force[:, None, None], weight.centre[:, None, None])
    strength = np.array([strong for _, strong in _RANGE])
    tipping, sliding = [(inf, 0, 0)] * len(_RANGE), [(inf, 0)] * len(_RANGE)
    for stage in stages:
        low, high = strength * stage.low, strength * stage.high
        tips: list[LeastTipping] = []
        if any(isinf(pressure) for pressure, *_ in tipping):
            tips = least_tipping(standing, stage.actions, weight, low, high)
        bounds = low[:, None, None], high[:, None, None]
        slides = sliding_pressures(standing, stage.actions, each, stage.share, *bounds)
        for k, tip in enumerate(tips):
            tipping[k] = min(tipping[k], (tip.pressure, tip.direction, tip.line))
        for k in range(len(_RANGE)):
            d, _ = where_greatest(-slides[k])
            sliding[k] = min(sliding[k], (float(slides[k].min()), int(d)))
    return [
        _Found(_gust(tip, strong, density), _gust(slide, strong, density), at, line, slid)
        for (tip, at, line), (slide, slid), strong in zip(tipping, sliding, strength, strict=True)
    ]


def _gust(pressure: float, strength: float, density: float) -> float:
    """Return the gust in m/s of a pressure in Pa by coefficients so many times as strong."""
    return sqrt(2.0 * pressure / strength / density)


def _least_of_posts(
    posts: Posts, standing: Standing, ranges: list[Stage], density: float
) -> list[_Found]:
    """Return the least gusts of each of `_RANGE` at which a post gives way; nothing slides."""
    from .anchoring.embedded_limits import give_way_pressures  # noqa: PLC0415 - as above

    found: list[_Found] = []
    for _, strength in _RANGE:
        least, direction = inf, 0
        for stage in ranges:
            pressures = give_way_pressures(
                posts, standing.structure, stage.actions.times(strength), stage.low, stage.high
            )
            d = first_greatest(-pressures)
            least, direction = min((least, direction), (float(pressures[d]), d))
        found.append(_Found(_gust(least, 1.0, density), inf, direction, 0, 0))
    return found


def _act_at_piece(best: _Found, low: _Found) -> float:
    """Return the gust at the piece to act at: the lower of low end and reserve."""
    reserve = sqrt(RESERVE)
    return min(low.tipping, low.sliding, best.tipping / reserve, best.sliding / reserve)


def _stated(gust: float, ratio: float = 1.0) -> float | None:
    return gust / ratio if gust / ratio <= GREATEST_GUST else None
