"""The blades of a wheel at its hub, bent flat by the wind."""

import numpy as np
from numpy.typing import ArrayLike

from ...design.shapes.rotor import Rotor
from ...design.structure import Structure
from ...loads.coefficients import rotor
from ...loads.combinations import Factors
from ...loads.printed.ranges import not_negative, positive
from ...materials import metal, sheets
from ...units.arrays import Array
from ...units.frozen import ByValue
from ..acting.local_wind import LocalWind
from ..judged.judging import Check, Kind, judged
from ..timber.books import book_of, values_of
from ..timber.nds.member_strength import sheet_stiffness
from ..timber.terms.answers import MemberMaterial
from .bending import cantilever_deflection, rectangle_inertia, rectangle_modulus
from .member_check import MemberStrength, NotJudged
from .metal_strength import metal_stress

_SOURCE = "statics: a cantilever from the hub's middle under its share of the wheel's thrust"


class _Root(ByValue, frozen=True):
    """What a blade's root may carry in N m, its E I in N m2, and on whose word."""

    moment: float
    stiffness: float
    stuff: MemberMaterial


def thrust_reach(span: ArrayLike, root: ArrayLike, tip: ArrayLike, spins: ArrayLike) -> Array:
    """Return how far out in m (…) the thrust on one blade acts, from the hub's middle.

    Held still the pressure is even: at the middle of its trapezoid, L/3 (b + 2 t)/(b + t), with
    ``span`` L, ``root`` b and ``tip`` t (…) in m. Where it ``spins`` (…) thrust may grow with the
    distance: at 2/3 L, or further out with a wider tip. ValueError unless L is above 0 and b + t.
    Source: plane geometry; momentum theory's even thrust over the disc.
    """
    L, b, t = positive("span", span), not_negative("root", root), not_negative("tip", tip)
    still = L / 3.0 * (b + 2.0 * t) / positive("root and tip", b + t)
    return np.where(spins, np.maximum(still, 2.0 / 3.0 * L), still)


def check_blades(
    structure: Structure, i: int, local: LocalWind, factors: Factors, basis: str
) -> MemberStrength | NotJudged | None:
    """Return the bending of a wheel's blades where they join the hub; None for any other body."""
    body = structure.bodies[i]
    wheel, part = body.shape.wheel, structure.design.parts[body.part]
    if wheel is None:
        return None
    if wheel.solidity < 1.0:
        return NotJudged(part.name, "lattice")
    if part.material is None:
        return NotJudged(part.name, "no material")
    root = _root(part.material, wheel, basis)
    if root is None:
        return NotJudged(part.name, "no values")
    filled = wheel.blade_area / wheel.disc_area
    coefficient = float(rotor.spinning(filled) if wheel.spins else rotor.locked(filled))
    thrust = coefficient * wheel.disc_area * local.pressure[i] / wheel.blades
    reach = float(thrust_reach(wheel.span, wheel.root, wheel.tip, wheel.spins))
    demand = float(factors.wind * thrust * reach)
    utilization, passes = judged(demand, root.moment)
    check = Check(
        kind=Kind.MEMBER,
        subject=part.name,
        demand=demand,
        capacity=root.moment,
        unit="N*m",
        utilization=utilization,
        passes=passes,
        source=f"{_SOURCE}; {values_of(root.stuff, basis).source}",
        weighing="typical",
        dead=0.0,
        wind=factors.wind,
    )
    bends = float(cantilever_deflection(thrust, reach, wheel.span, root.stiffness))
    return MemberStrength(part.name, check, "blade", "bending", wheel.blades, bends, root.stuff)


def _root(material: str, wheel: Rotor, basis: str) -> _Root | None:
    """Return the strength of a blade's root: metal, or a sheet with its grain along the blade."""
    alloy = metal.find_metal(material)
    if alloy is not None:
        modulus = float(rectangle_modulus(wheel.root, wheel.thickness))
        inertia = float(rectangle_inertia(wheel.root, wheel.thickness))
        return _Root(modulus * metal_stress(alloy, basis), inertia * alloy.stiffness, alloy)
    sheet = sheets.find_sheet(material, wheel.thickness)
    if sheet is None:
        return None
    bending = book_of(basis).sheet_bending(sheet, wheel.root, basis, across=False)
    if bending is None:
        return None
    moment = float(bending) * wheel.root
    return _Root(moment, sheet_stiffness(sheet, across=False) * wheel.root, sheet)
