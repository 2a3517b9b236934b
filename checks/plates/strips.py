"""Plates as strips: what holds a strip, what presses on it, and the part of its strength used.

Boards, walls, roofs, decks and figures each say which strips run where; all are judged here, as
beams of one or more spans with what stands out beyond them. Bearings have no width: a strip is as
long as it is clear of them.
"""

from collections.abc import Iterable, Iterator, Sequence

import numpy as np
from numpy.typing import ArrayLike, NDArray

from ...design.structure import GRAVITY, WEIGHINGS, Structure
from ...loads.combinations import Factors
from ...materials.lumber import Lumber, board_width
from ...materials.sheets import Sheet
from ...units.arrays import Array, distinct, where_greatest
from ...units.frozen import ByIdentity, ByValue, replace
from ..judged.judging import Check, Kind, judged
from ..members.member_check import MemberStrength, NotJudged
from ..timber.books import book_of, values_of
from ..timber.terms.answers import MemberMaterial
from .strip_beam import Bent, bend
from .strip_strength import StripStrength, edge_strength, strip_strength

Parts = NDArray[np.intp]
_SOURCE = "statics: strips between supports"
_PARTS = 8
"""Into so many elements a part of a strip is divided, for how far it moves between its nodes."""
_STIFFER_ONE_WAY = 0.3
"""Share of a span that carries what stands in its middle on a sheet of wood (judgement)."""


class PointForce(ByValue, frozen=True):
    """A force in N, and a couple in N m that turns the strip, ``at`` m along it."""

    at: float
    force: float
    couple: float = 0.0


class Acting(ByIdentity, frozen=True):
    """One unfactored load: ``pressure`` in Pa on each part (m,) of a strip or on all, and points.

    ``name`` is that of a load that the design names.
    """

    pressure: ArrayLike
    points: tuple[PointForce, ...] = ()
    name: str = ""


class Strip(ByIdentity, frozen=True):
    """A strip of a plate between ``edges`` (m + 1,) in m along it, held at ``held`` (k,) in m.

    ``width`` in m of it, of each part (m,) or of all. ``across``: it bends across the grain.
    ``whole`` in m is how wide the sheet is that it is part of, where wider. ``fast``: at its start
    it may not turn. ``lifts`` and ``presses`` are winds, each a case of its
    own; with those that press goes the weight, ``weighs``. ``named`` are loads of the design.
    ``on_edge``: it bends in its own plane, ``width`` deep, under loads along its edge.
    """

    edges: ArrayLike
    held: ArrayLike
    width: ArrayLike
    across: bool
    fast: bool = False
    lifts: tuple[Acting, ...] = ()
    presses: tuple[Acting, ...] = ()
    weighs: Acting | None = None
    named: tuple[Acting, ...] = ()
    whole: float | None = None
    on_edge: bool = False

    @property
    def length(self) -> float:
        """Return how long it is, in m."""
        return float(np.ptp(np.asarray(self.edges, dtype=float)))


class StripWays(ByIdentity, frozen=True):
    """Strips that run one way or another over one place of a plate: the better of them carries it.

    ``where`` and ``role`` as of ``MemberStrength``; ``rises``: they stand, and the level is told.
    """

    role: str
    where: str
    strips: Sequence[Strip]
    rises: bool = False


class Basis(ByIdentity, frozen=True):
    """By what strips are judged: load ``factors``, the ``basis`` of judgement, stuff, thickness.

    ``turned``: the face grain runs the other way than is taken.
    """

    factors: Factors
    basis: str
    stuff: MemberMaterial
    thickness: float
    turned: bool = False


def simple_span(span: float, width: float, across: bool, pressure: float) -> Strip:
    """Return a strip that rests at both ends, under an even wind in Pa."""
    return Strip((0.0, span), (0.0, span), width, across, lifts=(Acting(pressure),))


def carrying(stuff: MemberMaterial, across: float, span: float, room: float) -> float:
    """Return how wide a strip in m carries what stands ``across`` m on a plate over a ``span``.

    At least as wide as that stands, of metal and plastic half of its span, of a sheet that is
    stiffer one way three tenths; separate boards share nothing: one of them alone. Never wider
    than the ``room`` that is there. Judgement: no less is asked than by Navier's series of an
    orthotropic plate under a patch of a tenth of its span.
    """
    match stuff:
        case Lumber():
            alone = board_width()
        case Sheet():
            alone = _STIFFER_ONE_WAY * span
        case _:
            alone = span / 2.0
    return min(max(across, alone), room)


def weakest_place(
    name: str, places: Iterable[StripWays], by: Basis, count: int = 1
) -> MemberStrength | NotJudged:
    """Return the strength of a plate where it is used most; of each place the better way counts.

    Not judged where a place has no way for which a strength is published. It is told of a sheet
    whether it would pass or fail otherwise with its face grain turned.
    """
    places = list(places)
    one = _weakest(name, places, by, count)
    if isinstance(one, NotJudged) or not isinstance(by.stuff, Sheet):
        return one
    other = _weakest(name, places, replace(by, turned=True), count)
    decides = isinstance(other, MemberStrength) and other.check.passes != one.check.passes
    return replace(one, by_grain=decides)


def _weakest(
    name: str, places: Sequence[StripWays], by: Basis, count: int
) -> MemberStrength | NotJudged:
    found: list[MemberStrength] = []
    for place in places:
        ways = [judge(name, place, strip, by, count) for strip in place.strips]
        held = [one for one in ways if one is not None]
        if not held:
            return NotJudged(name, "across grain")
        found.append(min(held, key=lambda one: one.check.rank))
    loads = tuple(dict.fromkeys(load for one in found for load in one.loads))
    return replace(max(found, key=lambda one: one.check.rank), loads=loads)


def judge(
    name: str, place: StripWays, strip: Strip, by: Basis, count: int = 1
) -> MemberStrength | None:
    """Return the use of one strip; None where no strength is published for the way it bends."""
    at, part = _nodes(strip)
    width = np.broadcast_to(np.asarray(strip.width, dtype=float), part.max() + 1)[part]
    if strip.on_edge:
        strength = edge_strength(by.stuff, by.thickness, width, strip.length, by.basis)
    else:
        strength = strip_strength(
            by.stuff, by.thickness, width, strip.across != by.turned, by.basis, whole=strip.whole
        )
    if strength is None:
        return None
    cases = list(_cases(strip, by))
    plainly = [[(1.0, one) for _, one in case.acting] for case in cases]
    acting = [*(case.acting for case in cases), *plainly]
    laid = [_laid(at, part, width, each) for each in acting]
    line, force, couple = (np.array([each[k] for each in laid]) for k in range(3))
    held = np.isin(at, _rounded(strip.held))
    bent = bend(at, strength.stiffness, held, line, force, couple, fast=strip.fast)
    tires = np.array([case.tires for case in cases])
    k, element, bends, demand, holds = _most_used(bent, strength, tires)
    case = cases[k]
    utilization, passes = judged(demand, holds)
    check = Check(
        kind=Kind.MEMBER,
        subject=name,
        demand=demand,
        capacity=holds,
        unit="N*m" if bends else "N",
        utilization=utilization,
        passes=passes,
        source=f"{_SOURCE}; {values_of(by.stuff, by.basis).source}",
        weighing="heavy",
        dead=case.dead,
        wind=by.factors.live if case.load else by.factors.wind,
        load=case.load,
    )
    return MemberStrength(
        name,
        check,
        place.role,
        "bending" if bends else "shear",
        count,
        float(np.abs(bent.moved[len(cases) + k]).max()),
        by.stuff,
        where=place.where,
        level=float(at[element]) if place.rises else None,
        loads=tuple(one.name for one in strip.named),
    )


def dead_pressure(structure: Structure, part: int, area: float) -> float:
    """Return the weight in Pa of one copy of a part over an area in m2, as heavy as it may be."""
    heavy = structure.body_mass[WEIGHINGS.index("heavy"), structure.of == part]
    return float(heavy[0]) * GRAVITY / area


class _Case(ByIdentity, frozen=True):
    """Factored loads that act at once, and as they are; ``tires`` as of ``wind_over``."""

    acting: tuple[tuple[float, Acting], ...]
    dead: float = 0.0
    tires: float = 1.0
    load: str = ""


def _cases(strip: Strip, by: Basis) -> Iterator[_Case]:
    """Return the load cases of a strip. Weight and people count as much more as wood tires."""
    factors, weighs = by.factors, strip.weighs or Acting(0.0)
    wood = isinstance(by.stuff, (Lumber, Sheet))

    def tires(load: str) -> float:
        return book_of(by.basis).wind_over(load, by.basis) if wood else 1.0

    heavy = factors.hurting if strip.weighs else 0.0
    for one in strip.lifts:
        yield _Case(((factors.wind, one),))
    for one in strip.presses:
        yield _Case(((factors.wind, one), (factors.hurting, weighs)), heavy)
    if strip.weighs:
        yield _Case(((factors.alone, weighs),), factors.alone, tires("permanent"))
    for one in strip.named:
        acting = (factors.live, one), (factors.hurting, weighs)
        yield _Case(acting, heavy, tires("normal"), one.name)


def _rounded(places: ArrayLike) -> Array:
    exact: Array = np.asarray(places, dtype=float)
    return exact.round(9)


def _nodes(strip: Strip) -> tuple[Array, Parts]:
    """Return the nodes (n + 1,) in m along a strip, and of which part each element (n,) is."""
    edges = _rounded(strip.edges)
    parts = _PARTS if edges.size < _PARTS else 1
    between = np.linspace(edges[:-1], edges[1:], parts, endpoint=False).ravel()
    loads = (*strip.lifts, *strip.presses, *strip.named, strip.weighs or Acting(0.0))
    points = [point.at for load in loads for point in load.points]
    at = distinct(_rounded(np.concatenate([edges, between, _rounded(strip.held), points])))
    at = at[(at >= edges[0]) & (at <= edges[-1])]
    middle = 0.5 * (at[1:] + at[:-1])
    return at, np.clip(np.searchsorted(edges, middle) - 1, 0, edges.size - 2)


def _laid(
    at: Array, part: Parts, width: Array, acting: Sequence[tuple[float, Acting]]
) -> tuple[Array, Array, Array]:
    """Return loads with their factors on the nodes of a strip: N/m (n,), N and N m (n + 1,)."""
    line, force, couple = np.zeros(part.size), np.zeros(at.size), np.zeros(at.size)
    for factor, one in acting:
        pressure = np.asarray(one.pressure, dtype=float)
        line += factor * width * (pressure[part] if pressure.ndim else pressure)
        for point in one.points:
            k = int(np.abs(at - point.at).argmin())
            force[k] += factor * point.force
            couple[k] += factor * point.couple
    return line, force, couple


def _most_used(
    bent: Bent, strength: StripStrength, tires: Array
) -> tuple[int, int, bool, float, float]:
    """Return case and element where a strip is used most, whether by bending, demand, capacity.

    The first loads of ``bent`` are the factored ones.
    """
    some = slice(tires.size)
    moment = np.abs(bent.moment[some]).max(axis=-1) * tires[:, None]
    shear = np.abs(bent.shear[some]).max(axis=-1) * tires[:, None]
    use = moment / strength.moment, shear / strength.shear
    bends = bool(use[0].max() >= use[1].max())
    asked, holds = (moment, strength.moment) if bends else (shear, strength.shear)
    k, element = where_greatest(use[0 if bends else 1])
    return k, element, bends, float(asked[k, element]), float(holds[element])
