"""The design as it was read, for the builder to compare: every width of every part, and weight."""

from collections import Counter
from math import cos, pi, tan

from ...design.builds.shape_keys import as_any_shape
from ...design.model import Design, Part
from ...design.shapes.ball import Ball
from ...design.shapes.bodies import Shell, Solid
from ...design.shapes.boxes import Box
from ...design.shapes.cone import Cone
from ...design.shapes.cutout import Cutout
from ...design.shapes.flat import Frame, Panel, Plate
from ...design.shapes.gables import Gable
from ...design.shapes.hoop import Hoop
from ...design.shapes.member import Member
from ...design.shapes.plans import Plan, Regular
from ...design.shapes.roofs import Dome, Vault
from ...design.shapes.rotor import Rotor
from ...design.shapes.turned import Turned
from ...design.shapes.weight import Weight
from ...design.structure import Structure
from ...units.frozen import ByValue
from .amounts import Amounts
from .lines import Line, wrapped


def as_read(structure: Structure, amounts: Amounts) -> list[Line]:
    """Return what was read of every part."""
    size = _Spoken(amounts)
    copies = Counter(body.part for body in structure.bodies)
    parts = structure.design.parts
    told = "; ".join(_part(part, copies[i], size) for i, part in enumerate(parts))
    return wrapped(f"As read: {told}. {_balance(structure, amounts)}", rest="  ")


def shape_words(design: Design) -> str:
    """Return what kind of piece it is in a word or two: ``8 sides``, ``round``, ``3 parts``."""
    parts = design.parts
    plans = [plan for part in parts if (plan := part.shape.named_plan) is not None]
    sides = {plan.sides if isinstance(plan, Regular) else None for plan in plans}
    if len(sides) == 1 and (only := sides.pop()) is not None:
        return f"{only} sides" if only else "round"
    return f"{len(parts)} parts" if len(parts) > 1 else "one part"


def in_a_line(structure: Structure, amounts: Amounts) -> str:
    """Return what a piece is in a line: its kind, how tall, how heavy."""
    tall, weight = amounts.length(structure.height), amounts.mass(structure.mass("typical"))
    return f"{shape_words(structure.design)}, {tall} tall, {weight}"


def _balance(structure: Structure, amounts: Amounts) -> str:
    design = structure.design
    up = float(structure.centre_of_mass("typical")[2])
    said = f"Balance point {amounts.length(up)} up."
    weight = amounts.mass(structure.mass("typical"))
    if design.weighed is not None:
        return f"{said} Weight {weight}, as weighed."
    if not any(part.material and part.mass is None for part in design.parts):
        return f"{said} Weight {weight}, as given."
    unit = "kg" if amounts.metric else "lb"
    light, heavy = (amounts.mass(structure.mass(w)) for w in ("light", "heavy"))
    band = "" if light == heavy else f" ({light} to {heavy})"
    return f"{said} Weight {weight}{band}: if a scale says other, add  weighed = '.. {unit}'."


class _Spoken(ByValue, frozen=True):
    """Sizes with their units, a polygon's three widths in words."""

    amounts: Amounts

    def length(self, metres: float) -> str:
        return self.amounts.length(metres)

    def polygon(self, flats: str, points: str, side: str) -> str:
        return f"{flats} flat to flat ({points} over points, side {side})"

    def odd_polygon(self, sides: int, middle: str, side: str) -> str:
        return f"{sides} sides of {side}, {middle} from the middle to each"


def _part(part: Part, copies: int, size: _Spoken) -> str:
    many = f"{copies} x " if copies > 1 else ""
    deep = f", {size.length(part.embed)} of it in the ground" if part.embed > 0.0 else ""
    if part.encased is not None:
        deep += f", in concrete {size.length(part.encased)} across"
    return f"{many}{part.name} {_shape(part, size)}".rstrip() + deep


def said_of(part: Part, amounts: Amounts) -> str:
    """Return the sizes of a part's shape in words."""
    return _shape(part, _Spoken(amounts))


def _shape(part: Part, size: _Spoken) -> str:
    length = size.length
    match as_any_shape(part.shape):
        case Shell(sides, bottom, top, height, wall):
            return f"{_ends(sides, bottom, top, size)}, {length(height)} high, wall {length(wall)}"
        case Solid(sides, bottom, top, height):
            return f"{_ends(sides, bottom, top, size)}, {length(height)} high, solid"
        case Cone(sides, bottom, height, wall):
            hollow = f"wall {length(wall)}" if wall is not None else "solid"
            return f"{_plan(Regular(sides, bottom), size)}, {length(height)} high, {hollow}"
        case Box() as box:
            return _box(box, size)
        case Gable(long, wide, height) | Vault(long, wide, height):
            return f"{length(long)} along the ridge, {length(wide)} wide, {length(height)} high"
        case Dome(across, height):
            return f"{length(across)} across, {length(height)} high"
        case Member() as member:
            return f"{_section(member, size)}, {length(member.length)} long"
        case Cutout() as cut:
            face = f"{length(cut.width)} by {length(cut.height)} high"
            return f"{face}, {length(cut.thickness)} thick"
        case Plate() as plate:
            hole = f", hole {length(plate.hole)}" if plate.hole > 0.0 else ""
            return f"{_plan(plate.plan, size)}, {length(plate.thickness)} thick{hole}"
        case Frame() as frame:
            lumber = f"{length(frame.width)} wide, {length(frame.height)} high"
            return f"{_plan(frame.plan, size)}, lumber {lumber}"
        case Panel() as panel:
            face = f"{length(panel.width)} by {length(panel.height)} high"
            return f"{face}, {length(panel.thickness)} thick"
        case Ball(across):
            return f"{length(across)} across"
        case Rotor() as wheel:
            turning = "spinning" if wheel.spins else "locked"
            return f"{wheel.blades} blades of {length(wheel.span)}, {turning}"
        case Turned() as turned:
            return f"turned, {length(turned.widest)} across at most, {length(turned.height)} high"
        case Hoop() as hoop:
            bar = _plan(hoop.section, size)
            tube = f", wall {length(hoop.wall)}" if hoop.wall is not None else ""
            return f"hoop {length(hoop.across)} across, bar {bar}{tube}"
        case Weight():
            return "" if part.mass is None else size.amounts.own_mass(part.mass)


def _ends(sides: int, bottom: float, top: float, size: _Spoken) -> str:
    if abs(bottom - top) < 1.0e-9:
        return _plan(Regular(sides, bottom), size)
    above = _plan(Regular(sides, top), size) if top > 0.0 else "a point"
    return f"bottom {_plan(Regular(sides, bottom), size)}, top {above}"


def _plan(plan: Plan, size: _Spoken) -> str:
    """Return the widths of an outline: of a polygon over flats, over points, and its side."""
    if not isinstance(plan, Regular):
        return f"{size.length(plan.length)} by {size.length(plan.width)}"
    if plan.sides == 0:
        return f"{size.length(plan.across)} across"
    side = size.length(plan.across * tan(pi / plan.sides))
    if plan.sides % 2:
        return size.odd_polygon(plan.sides, size.length(plan.across / 2.0), side)
    points = size.length(plan.across / cos(pi / plan.sides))
    return size.polygon(size.length(plan.across), points, side)


def _section(member: Member, size: _Spoken) -> str:
    if member.is_round:
        return f"{size.length(member.across)} across"
    return f"{size.length(member.width)} by {size.length(member.depth)}"


def _box(box: Box, size: _Spoken) -> str:
    said = f"{size.length(box.length)} by {size.length(box.width)}"
    top = box.top_plan
    if (top.length, top.width) != (box.length, box.width):
        said += f", top {size.length(top.length)} by {size.length(top.width)}"
    said += f", {size.length(box.height)} high"
    if box.wall is None:
        return f"{said}, solid"
    opened = f", open {' '.join(sorted(box.open))}" if box.open else ""
    return f"{said}, wall {size.length(box.wall)}{opened}"
