"""Reference value of one fastener that is pushed sideways, by the mode in which it yields."""

from math import pi

from ... import references, units
from ...materials.fastener import Fastener
from .dowel_bearing import dowel_bearing
from .driven import Driven
from .lateral import TIP, YieldLimits, main_bearing_length, single_shear


def yields(fastener: Fastener, driven: Driven, through: float, p: float) -> YieldLimits | None:
    """Return the reference lateral value in N by mode, ``through`` and ``p`` m of the two pieces.

    Two legs hold as two nails. None where nothing bears. ValueError where wood or steel has no
    value. Source: NDS 2018 12.3.
    """
    if driven.main.gravity is None:
        raise ValueError(driven.main.name)
    D = fastener.diameter
    if driven.plate is not None or driven.side.is_steel:
        side_length, side_bearing = driven.plate or through, _steel_bearing()
    elif driven.side.gravity is None:
        raise ValueError(driven.side.name)
    else:
        side_length, side_bearing = through, float(dowel_bearing(driven.side.gravity, D))
    tip = 0.0 if fastener.kind == "bolt" else fastener.tip_length or TIP * D
    bearing = float(main_bearing_length(p, tip))
    if bearing <= 0.0 or side_length <= 0.0:
        return None
    one = single_shear(
        fastener.yielding_diameter,
        side_length,
        bearing,
        side_bearing,
        float(dowel_bearing(driven.main.gravity, D)),
        fastener.need("bending_yield"),
        pi / 2.0,
        D,
    )
    return YieldLimits({mode: fastener.legs * value for mode, value in one.modes.items()})


def _steel_bearing() -> float:
    """Return the dowel bearing strength of thin galvanised plate, the least of steel, in Pa."""
    row = references.table("wood/dowel_bearing_other").one("case", "steel gage A653 33")
    return float(row["formula"]) * units.factor("psi")
