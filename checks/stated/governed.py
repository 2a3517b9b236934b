"""What governed a check, as data: wind and factors, then what is told of its kind alone."""

from collections.abc import Iterable, Iterator
from enum import StrEnum
from math import isfinite

from ...loads.methods import standard_of
from ...loads.roofs.uplift import SUCTION
from ...units import figure, plain
from ..examination import MINIMUM, Examination
from ..fasteners.spacing import SpacingFound
from ..judged.finding import Finding, FindingSlot, Term
from ..judged.judging import Check, Kind, judged_by
from ..sides import met_by, over_found
from .governed_parts import of_joint, of_member, of_seam, of_spacing

_WHOLE = (Kind.OVERTURNING, Kind.SLIDING)


class Governed(StrEnum):
    """What governed a check, whatever it is of."""

    UNDER_LOAD = "a load without wind"
    UNDER_LOAD_IN_WIND = "a load in wind"
    OVER = "over what it goes"
    WIND = "the wind's side"
    WIND_OVER = "the wind's side, and over what it goes"
    CALM = "calm air"
    LEAST_WIND = "the least wind of the standard"
    WIND_CASE = "a case of the wind"
    FACTORS = "load factors"
    WIND_FACTOR = "the load factor of wind alone"
    BARE = "factor of safety"
    TIPS_FIRST = "nothing stays loaded"
    NOTHING_LEFT = "nothing resists"
    REMARKED = "a remark"
    IN_DOUBT = "fails in doubt"
    MAP_WIND = "what a pass means by a code"


def governed(found: Examination, check: Check) -> Iterator[Finding]:
    """Yield what governed a check, in the order in which it is told."""
    member = judged_by(found.members.judged, check)
    seam = judged_by(found.fastened_seams, check)
    yield from _direction(found, check)
    yield from _case(found, check)
    if member is not None:
        yield from of_member(member)
    alone = member is not None or seam is not None
    yield from _factors(check, alone)
    yield from _left(check)
    if (joint := judged_by(found.joints, check)) is not None:
        yield from of_joint(found, joint)
    yield from map(of_spacing, _spacing(found, check))
    if seam is not None:
        yield from of_seam(seam)
    if standard_of(found.site.method).is_code and check.kind in _WHOLE:
        yield Finding(Governed.MAP_WIND)


def all_governed(
    found: Examination, checks: Iterable[Check]
) -> Iterator[tuple[Check, tuple[Finding, ...]]]:
    """Yield checks of a piece, each with what governed it."""
    for check in checks:
        yield check, tuple(governed(found, check))


def remark_on(check: Check) -> Finding | None:
    """Return what is remarked of what governed a check; None where nothing is."""
    if check.remark is None:
        return None
    of = tuple(one if isinstance(one, str) else f"{one:.2f} m" for one in check.slots)
    return Finding(check.remark, {"of": of})


def _spacing(found: Examination, check: Check) -> Iterator[SpacingFound]:
    if (room := judged_by(found.spacings, check)) is not None:
        yield room


def _direction(found: Examination, check: Check) -> Iterator[Finding]:
    toward, blows = check.toward_deg, check.direction_deg
    if check.load and check.kind is not Kind.LOAD:
        calm = blows is None
        what = Governed.UNDER_LOAD if calm else Governed.UNDER_LOAD_IN_WIND
        yield Finding(what, {"load": check.load})
        return
    slots: dict[str, FindingSlot] = {}
    if toward is not None:
        slots["over"] = over_found(found, toward)
    if blows is not None:
        slots["on"] = met_by(found, blows)
        yield Finding(Governed.WIND if toward is None else Governed.WIND_OVER, slots)
    elif slots:
        yield Finding(Governed.OVER, slots)


def _case(found: Examination, check: Check) -> Iterator[Finding]:
    """Yield which wind case governed, where there is more than one."""
    names = found.actions.names
    if check.case == "calm":
        yield Finding(Governed.CALM)
    elif check.case == MINIMUM:
        yield Finding(Governed.LEAST_WIND)
    elif check.case in names:
        lifts, signs = found.exposed.suction.names, found.exposed.cases
        case = names.index(check.case)
        normal = lifts[case // len(signs)]
        parts = [signs[case % len(signs)]] if len(signs) > 1 else []
        if SUCTION in normal:
            parts.append("lifted")
        elif any(SUCTION in acts for acts in lifts):
            parts.append("not lifted")
        parts += [each for each in normal if each != SUCTION]
        terms = tuple(Term("wind case", each) for each in parts)
        if terms:
            yield Finding(Governed.WIND_CASE, {"parts": terms})


def _factors(check: Check, alone: bool) -> Iterator[Finding]:
    """Yield load factors; weight takes no part in the check of a wall, blade or seam ``alone``."""
    slots: dict[str, FindingSlot] = {"wind": f"{check.wind:.3g}"}
    if alone and check.direction_deg is None and check.dead <= 0.0 and not check.load:
        yield Finding(Governed.WIND_FACTOR, slots)
        return
    slots |= {"dead": plain(check.dead, 3), "weighing": check.weighing}
    yield Finding(Governed.FACTORS, slots | {"live": "load" if check.load else "wind"})


def _left(check: Check) -> Iterator[Finding]:
    """Yield what safety there is without factors, that nothing is left, remarks and doubts."""
    if check.bare is not None and isfinite(check.bare):
        yield Finding(Governed.BARE, {"factor": figure(check.bare, 2)})
    if check.utilization is None:
        tips = check.kind is Kind.BEARING
        yield Finding(Governed.TIPS_FIRST if tips else Governed.NOTHING_LEFT)
    if (said := remark_on(check)) is not None:
        yield Finding(Governed.REMARKED, {"remark": said})
    if check.fails_in_doubt:
        yield Finding(Governed.IN_DOUBT, {"share": f"{check.as_read:.2f}"})
