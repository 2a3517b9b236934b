"""The numbers behind a check, step by step, taken from the same relations as the check itself."""

from math import cos, sin

import numpy as np

from ...design.structure import Weighing
from ...loads.actions import wind_actions
from ...loads.methods import air_density, method_of
from ...units.arrays import Array, distinct, first_greatest
from ...units.frozen import ByValue, replace
from ..examination import MINIMUM, Examination
from ..judged.judging import Check
from ..limits import stages
from ..stability.tipping import tipping_pressure
from ..stability.wind_moments import WindMoments


class Turning(ByValue, frozen=True):
    """Turning over about one line, unfactored, in SI.

    The wind's ``wind_moment`` and its ``uplift`` at ``uplift_arm`` stand against ``weight`` at
    ``arm`` and ``height``; ``pivot`` is the line's place, ``over`` and ``hold`` are the moments.
    """

    force: float
    wind_moment: float
    uplift: float
    uplift_arm: float
    weight: float
    arm: float
    height: float
    pivot: float
    over: float
    hold: float


class Gripping(ByValue, frozen=True):
    """Sliding, unfactored, SI: the wind's level ``force`` and ``uplift``, friction's ``share``."""

    force: float
    uplift: float
    share: float
    weight: float


class PartWind(ByValue, frozen=True):
    """What one part takes of the governing wind, all its copies: SI, along the wind.

    ``product`` is coefficient times area, ``pressure`` that at the first copy, ``height`` that of
    the force.
    """

    part: int
    kind: str
    area: float
    product: float
    pressure: float
    directionality: float
    force: float
    height: float


def turning(examination: Examination) -> Turning:
    """Return the numbers of the check against tipping of the piece without anchors."""
    check = examination.overturning
    q, d, c = _governing(examination, check)
    standing, actions, wind = examination.standing, examination.actions, examination.factors.wind
    weighing: Weighing = "light"
    e = _line(examination, check)
    uplift = float(actions.uplift[q, d, c])
    pressing = check.dead * standing.structure.weight(weighing) - wind * uplift
    pivots = standing.pivot(np.full(len(standing.normals), pressing))
    pivot, normal = float(pivots[e]), standing.normals[e]
    lifted = float(actions.lifting[q, d, c] @ normal)
    return Turning(
        force=float(np.hypot(*actions.force[q, d, c])),
        wind_moment=float(actions.tilting[q, d, c] @ normal),
        uplift=uplift,
        uplift_arm=pivot - lifted / uplift if uplift > 0.0 else 0.0,
        weight=standing.structure.weight(weighing),
        arm=pivot - float(normal @ standing.structure.steady_centre(weighing)[:2]),
        height=float(standing.structure.steady_centre(weighing)[2]),
        pivot=pivot,
        over=float(standing.winds(actions).over(pivots)[q, d, c, e]),
        hold=float(standing.hold(weighing, pivots)[e]),
    )


def gripping(examination: Examination) -> Gripping:
    """Return the numbers of the check against sliding of the piece without anchors."""
    check = examination.sliding
    q, d, c = _governing(examination, check)
    actions = examination.actions
    share = examination.standing.friction_share(actions)
    return Gripping(
        force=float(np.hypot(*actions.force[q, d, c])),
        uplift=float(actions.uplift[q, d, c]),
        share=float(share[q, d, c]),
        weight=examination.structure.weight("light"),
    )


def part_winds(examination: Examination) -> list[PartWind]:
    """Return what each part takes in the direction and case that govern tipping.

    Nothing where the least wind of a standard governs: it acts on the whole outline.
    """
    check, exposed = examination.overturning, examination.exposed
    if check.case == MINIMUM:
        return []
    q, d, c = _governing(examination, check)
    case = c % len(exposed.cases)
    method = method_of(examination.site, examination.structure.height)
    ratio = method.pressure(exposed.pressure_height) / examination.wind.pressure
    pressure = _pressure(examination, ratio, q)
    along = exposed.wind[d]
    switched = exposed.limit / ratio < pressure
    product = np.where(switched, exposed.above[:, d], exposed.below[:, d])
    found: list[PartWind] = []
    for part in range(len(examination.design.parts)):
        own = np.array([body.part == part for body in examination.structure.bodies])
        alone = replace(
            exposed, below=exposed.below * own[:, None], above=exposed.above * own[:, None]
        )
        actions = wind_actions(
            alone,
            np.array(pressure),
            ratio=ratio,
            directionality=examination.wind.directionality,
            gust=examination.wind.gust_factor,
            above=switched,
        )
        force = float(actions.force[d, case] @ along)
        first = int(own.argmax())
        found.append(
            PartWind(
                part=part,
                kind=exposed.kinds[first],
                area=float(exposed.area[own, d].sum()),
                product=float((product * exposed.case[:, case, d])[own].sum()),
                pressure=float(pressure * ratio[first]),
                directionality=float(examination.wind.directionality[first]),
                force=force,
                height=float(actions.tilting[d, case] @ along) / force if force else 0.0,
            )
        )
    return found


def tipping_at(examination: Examination) -> tuple[float, float, float] | None:
    """Return hold in N m, moment of 1 Pa in N m and their pressure in Pa at which the whole tips.

    As in the limit: typical weight, no factors. None where nothing tips it.
    """
    standing = examination.standing
    found: tuple[float, float, float] | None = None
    for stage in stages(standing, examination.exposed):
        tips = tipping_pressure(standing, stage.actions, "typical", stage.low, stage.high)
        if not np.isfinite(tips.pressure) or (found and tips.pressure >= found[2]):
            continue
        d, e = tips.direction, tips.line
        lift = np.repeat(stage.actions.uplift[..., None], len(standing.normals), axis=-1)
        pivot = standing.pivot(standing.structure.weight("typical") - tips.pressure * lift)
        over = WindMoments.of(stage.actions, standing.normals).over(pivot)[d, :, e]
        hold = np.broadcast_to(standing.hold("typical", pivot), lift.shape)[d, :, e]
        c = int(np.where(over > 0.0, hold / np.where(over > 0.0, over, 1.0), np.inf).argmin())
        found = float(hold[c]), float(over[c]), tips.pressure
    return found


def density(examination: Examination) -> float:
    """Return the density of the air in kg/m3."""
    return air_density(examination.site)


def slope_parts(examination: Examination) -> tuple[float, float]:
    """Return sine and cosine of the ground's slope."""
    return sin(examination.standing.slope), cos(examination.standing.slope)


def _governing(examination: Examination, check: Check) -> tuple[int, int, int]:
    """Return the gust, direction and case that govern a check, as indices of the actions."""
    actions = examination.actions
    c = actions.names.index(check.case)
    d = int(np.abs(actions.azimuths - (check.direction_deg or 0.0)).argmin())
    size = np.hypot(actions.tilting[:, d, c, 0], actions.tilting[:, d, c, 1])
    return first_greatest(size), d, c


def _line(examination: Examination, check: Check) -> int:
    toward = np.radians(check.toward_deg or 0.0)
    return int((examination.standing.normals @ [np.sin(toward), np.cos(toward)]).argmax())


def _pressure(examination: Examination, ratio: Array, q: int) -> float:
    """Return the pressure in Pa at the top of the gust of that index: switches, then the top."""
    switch = examination.exposed.limit / ratio
    top = examination.wind.pressure
    return float(np.append(distinct(switch[switch < top]), top)[q])
