"""What fastens a piece, as one buys it: screws by the box, nails by weight, glue by the bottle."""

from collections.abc import Iterator

from ...checks.stated.hardware import FastenerTally, Hardware
from ...materials.bought import UnitSystem
from ...materials.hardware import bottles, fastener_boxes, glue_for, with_spares
from ...units import INCH, POUND
from ..wording.amounts import Amounts
from ..wording.faults import clean
from ..wording.remark import counted

BOXED = "{all} with spares: {boxes} of {holds}"
_WEIGHED = "{all} with spares: {weight}, some {holds} of them"
_PIECES = "{all}"
WITH_WASHERS = "{all}, each with a nut and two {across} washers"
USES = "{count} driven: {uses}"
_USE = "in {name}"
GLUE = "wood glue, for outdoors"
GLUED = "{area} of {faces}: {bottles}, if you glue them"
GLUED_JOINTS = "{area} of {faces}: {bottles}"
_FACES = "seams and mitres"
JOINTS = "joints"


def hardware_rows(
    found: Hardware, system: UnitSystem, amounts: Amounts
) -> Iterator[tuple[str, str, str]]:
    """Give each thing to buy: its name, how many of it, and what they are for."""
    for one in found.driven:
        yield clean(one.fastener.name), _bought(one, system, amounts), _uses(one)
    for area, faces, message in (
        (found.glued, JOINTS, GLUED_JOINTS),
        (found.mitres, _FACES, GLUED),
    ):
        if area > 0.0:
            bought = bottles(glue_for(area), system)
            said = f"{counted(bought.number, f'{bought.name} bottle')}"
            yield GLUE, message.format(area=_area(area, amounts), faces=faces, bottles=said), ""


def _bought(one: FastenerTally, system: UnitSystem, amounts: Amounts) -> str:
    found = fastener_boxes(one.fastener, one.count, system)
    if found.holds == 1 and found.weight is None:
        if one.washer is not None:
            return WITH_WASHERS.format(all=one.count, across=amounts.cut(one.washer))
        return _PIECES.format(all=one.count)
    spare = with_spares(one.count)
    found = fastener_boxes(one.fastener, spare, system)
    if found.weight is None:
        number = counted(found.number, "box", "boxes")
        return BOXED.format(all=spare, boxes=number, holds=f"{found.holds:,}")
    weight = found.weight * found.number
    said = f"{weight:.0f} kg" if amounts.metric else f"{weight / POUND:.0f} lb"
    return _WEIGHED.format(all=spare, weight=said, holds=found.holds * found.number)


def _uses(one: FastenerTally) -> str:
    if len(one.uses) == 1:
        return _USE.format(name=clean(one.uses[0][0]))
    return USES.format(
        count=one.count, uses=", ".join(f"{clean(name)} {count}" for name, count in one.uses)
    )


def _area(area: float, amounts: Amounts) -> str:
    if amounts.metric:
        return f"{area * 1.0e4:,.0f} cm2"
    return f"{area / INCH**2:,.0f} sq in"
