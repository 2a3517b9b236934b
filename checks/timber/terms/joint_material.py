"""What a fastener meets in a part: how far the wood reaches along it, and how its grain runs."""

from .... import materials
from ....design.model import Part
from ....design.placing import Body
from ....units.arrays import Array
from ....units.frozen import ByValue

STEEL = ("steel", "stainless steel")

_ALONG = 0.7
"""Cosine above which a fastener counts as driven along an axis."""


class Met(ByValue, frozen=True):
    """What a fastener meets: ``thickness`` in m along it, and ``into`` in the words of a joint."""

    thickness: float
    into: str


class JointMaterial(ByValue, frozen=True):
    """A part's material for fasteners: its specific gravities, None where none is published.

    ``gravity`` is that of NDS, on oven-dry volume, ``gravity_at_12`` on the volume at 12 %.
    ``withdrawal_gravity`` is the one for what pulls out: of panels' faces it is lower.
    """

    name: str
    is_steel: bool
    gravity: float | None
    gravity_at_12: float | None
    withdrawal_gravity: float | None


def stuff(part: Part) -> JointMaterial:
    """Return what a part is made of, as fasteners find it."""
    return joint_material_of(part.material)


def joint_material_of(material: str | None) -> JointMaterial:
    """Return a material as fasteners find it, by its name."""
    if material is None:
        return JointMaterial("what has no material named", False, None, None, None)
    of = materials.find_material(material)
    return JointMaterial(
        of.name,
        of.name in STEEL,
        of.specific_gravity,
        of.gravity_at_12,
        of.withdrawal_gravity,
    )


def met(body: Body, part: Part, direction: Array) -> Met:
    """Return what a fastener finds in a body that it enters along ``direction`` (3,).

    Of sheets, their face or edge; of wood the grain runs along the longest of a solid piece, round
    a frame, up the walls of a hollow body (so that they end in end grain): judgement, and told
    as assumed. Of a ball nobody knows: end grain. ValueError for a wheel or a point.
    """
    sheet = part.material is not None and materials.find_material(part.material).kind == "panel"
    thickness, edge = body.shape.reach(body.rotation.T @ direction, sheet=sheet)
    if sheet:
        return Met(thickness, "panel edge" if edge else "panel face")
    return Met(thickness, "end grain" if edge else "side grain")
