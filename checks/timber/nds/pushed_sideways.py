"""Reference value of one fastener that is pushed sideways, by the mode in which it yields."""

from math import pi

from .... import references, units
from ....materials.fastener import Fastener
from ..terms.driven import Driven, driving_rule
from .dowel_bearing import dowel_bearing
from .lateral import YieldLimits, main_bearing_length, single_shear
from .nds_numbers import nds_number


def yields(fastener: Fastener, driven: Driven, through: float, p: float) -> YieldLimits | None:
    """Return the reference lateral value in N by mode, ``through`` and ``p`` m of the two pieces.

    Two legs hold as two nails. A bolt yields at the root of its thread where that bears on more
    than a quarter of the main piece; screws always do, also lag screws, which are commonly rolled
    with a shank of about that diameter (judgement). None where nothing bears. ValueError where
    wood or steel has no value. Source: NDS 2018 12.3, 12.3.7.
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
    tip = 0.0 if fastener.kind == "bolt" else fastener.tip_length or nds_number("tip") * D
    bearing = float(main_bearing_length(p, tip))
    if bearing <= 0.0 or side_length <= 0.0:
        return None
    one = single_shear(
        _yielding(fastener, through, p),
        side_length,
        bearing,
        side_bearing,
        float(dowel_bearing(driven.main.gravity, D)),
        fastener.need("bending_yield"),
        pi / 2.0,
        D,
    )
    return YieldLimits({mode: fastener.legs * value for mode, value in one.modes.items()})


def threads_over_bearing(fastener: Fastener, through: float, p: float) -> float:
    """Return which share of a bolt's bearing length in the main piece is on its thread.

    ``through`` in m is the piece under the head, ``p`` in m that bearing length. All of it
    where the thread's length is not known.
    """
    thread, length = fastener.thread_length, fastener.length
    if thread is None or length is None:
        return 1.0
    return min(max(through + p - (length - thread), 0.0), p) / p


def _yielding(fastener: Fastener, through: float, p: float) -> float:
    """Return the diameter in m that yields; of a bolt of unknown root its shank."""
    if fastener.kind != "bolt" or fastener.root_diameter is None:
        return fastener.yielding_diameter
    on_thread = threads_over_bearing(fastener, through, p)
    if on_thread > driving_rule("threads over bearing length") + 1.0e-9:
        return fastener.root_diameter
    return fastener.diameter


def _steel_bearing() -> float:
    """Return the dowel bearing strength of thin galvanised plate, the least of steel, in Pa."""
    row = references.table("wood/dowel_bearing_other").one("case", "steel gage A653 33")
    return float(row["formula"]) * units.factor("psi")
