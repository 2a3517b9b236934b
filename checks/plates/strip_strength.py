"""What a strip of a plate may carry, along its grain and across it."""

import numpy as np
from numpy.typing import ArrayLike

from ... import references
from ...design.model import Part
from ...loads.combinations import level_of
from ...materials import lumber, metal, plastic, sheets
from ...materials.lumber import Lumber, board_width
from ...materials.metal import Metal
from ...materials.plastic import Plastic
from ...materials.sheets import Sheet
from ...units.arrays import Array
from ...units.frozen import ByIdentity
from ..members.bending import rectangle_inertia, rectangle_modulus
from ..members.member_check import NotJudged
from ..members.metal_strength import metal_shear, metal_stress
from ..timber.books import book_of
from ..timber.nds.member_strength import sheet_stiffness
from ..timber.terms.answers import MemberMaterial


class StripStrength(ByIdentity, frozen=True):
    """What a strip (…) may carry: ``moment`` in N m and ``shear`` in N; its ``stiffness`` in N m2.

    A shear of infinity is not judged.
    """

    moment: Array
    shear: Array
    stiffness: Array


def plate_material_of(part: Part, thickness: float) -> MemberMaterial | NotJudged:
    """Return the published strength of what a plate ``thickness`` m thick is made of."""
    if part.material is None:
        return NotJudged(part.name, "no material")
    found = (
        sheets.find_sheet(part.material, thickness)
        or metal.find_metal(part.material)
        or plastic.find_plastic(part.material)
        or lumber.find_boards(part.material, thickness, part.grade)
    )
    return NotJudged(part.name, "no values") if found is None else found


def strip_strength(
    stuff: MemberMaterial,
    thickness: float,
    width: ArrayLike,
    across: bool,
    basis: str,
    *,
    whole: float | None = None,
) -> StripStrength | None:
    """Return what strips ``width`` (…) and ``thickness`` m thick carry; None for no published one.

    ``across``: they bend across the grain of the face, or of the boards: for that no strength of
    solid wood is published. ``whole`` in m is how wide the sheet is of which it is a part. Wet in
    use, under wind. ValueError unless sizes are above 0.
    """
    b, t = np.asarray(width, dtype=float), np.full_like(width, thickness, dtype=float)
    match stuff:
        case Sheet():
            bending = book_of(basis).sheet_bending(
                stuff, b if whole is None else whole, basis, across
            )
            rolling = book_of(basis).sheet_rolling_shear(stuff, basis, across)
            if bending is None or rolling is None:
                return None
            return StripStrength(bending * b, rolling * b, sheet_stiffness(stuff, across) * b)
        case Metal():
            stress, shear, stiffness = (
                metal_stress(stuff, basis),
                metal_shear(stuff, basis),
                stuff.stiffness,
            )
        case Plastic():
            stress, shear = stuff.stress * _over_allowable(basis), np.inf
            stiffness = stuff.stiffness
        case Lumber():
            if across:
                return None
            value = book_of(basis).adjusted(stuff, thickness, thickness, thickness, basis)
            if value is None:
                return None
            stress, shear, stiffness = value.flatwise, value.shear, value.stiffness
    return StripStrength(
        rectangle_modulus(b, t) * stress,
        b * t * shear / 1.5,
        rectangle_inertia(b, t) * stiffness,
    )


def edge_strength(
    stuff: MemberMaterial, thickness: float, depth: ArrayLike, length: float, basis: str
) -> StripStrength | None:
    """Return what a plate ``depth`` (…) m deep carries that bends in its own plane.

    Of a sheet the stress that its face bears the weaker way (judgement: in its plane half of its
    layers or more lie along it, of the weaker way bent a third), and its shear through the
    thickness. Of boards the uppermost alone, held at both ends ``length`` m apart. Wet in use,
    under wind; None for no published strength.
    """
    d, t = np.asarray(depth, dtype=float), np.full_like(depth, thickness, dtype=float)
    match stuff:
        case Sheet():
            bent = [
                book_of(basis).sheet_bending(stuff, np.ones(1), basis, across)
                for across in (False, True)
            ]
            through = book_of(basis).sheet_through(stuff, basis)
            found = [float(each[0]) for each in bent if each is not None]
            if len(found) < len(bent) or through is None:
                return None
            stiff = min(sheet_stiffness(stuff, across) for across in (False, True))
            moment = min(found) * d**2 / t
            return StripStrength(moment, through * d / 1.5, stiff * (d / t) ** 3)
        case Metal():
            stress, shear = metal_stress(stuff, basis), metal_shear(stuff, basis)
            stiffness = stuff.stiffness
        case Plastic():
            stress, shear = stuff.stress * _over_allowable(basis), np.inf
            stiffness = stuff.stiffness
        case Lumber():
            d = np.minimum(d, board_width())
            value = book_of(basis).adjusted(
                stuff, thickness, float(d.min()), length, basis, between=True
            )
            if value is None:
                return None
            stress, shear, stiffness = value.edgewise, value.shear, value.stiffness
    return StripStrength(
        rectangle_modulus(t, d) * stress, t * d * shear / 1.5, rectangle_inertia(t, d) * stiffness
    )


def twist_strength(stuff: MemberMaterial, thickness: float, width: ArrayLike, basis: str) -> Array:
    """Return the torque in N m that a thin section ``width`` (…) and ``thickness`` m thick holds.

    tau b t^2/3 with the shear strength of lumber and metal, b F_v t_v t/3 of sheets, and half of
    the bending stress of plastic (judgement). Wet in use, under wind. ValueError unless sizes are
    above 0. Source: de Saint-Venant's thin rectangle; of wood EN 1995-1-1 6.1.8 without its shape
    factor, as NDS has no value; sheets as ``sheet_bending``.
    """
    b = np.asarray(width, dtype=float)
    match stuff:
        case Sheet():
            return (book_of(basis).sheet_through(stuff, basis) or 0.0) * b * thickness / 3.0
        case Metal():
            shear = metal_shear(stuff, basis)
        case Plastic():
            shear = 0.5 * stuff.stress * _over_allowable(basis)
        case Lumber():
            value = book_of(basis).adjusted(stuff, thickness, thickness, thickness, basis)
            shear = 0.0 if value is None else value.shear
    return shear * b * thickness**2 / 3.0


def _over_allowable(basis: str) -> float:
    """Return by how much resistances of a basis stand above allowable values."""
    return float(references.table("combinations").one("basis", level_of(basis))["soil"])
