"""Nails and screws as the public API offers them: text or quantities in, quantities out."""

from collections.abc import Mapping
from math import pi
from typing import Any

import numpy as np
from numpy.typing import NDArray

from .... import units
from ....design.bounds import Bounds
from ....loads.arguments import as_given, number_argument, si, word
from ....units.frozen import ByValue
from . import withdrawal as pulling
from .dowel_bearing import dowel_bearing
from .lateral import MODES, single_shear

_KINDS: Mapping[str, str] = {
    "nail": "smooth nail",
    "ring-shank nail": "ring-shank nail",
    "stainless nail": "stainless nail",
    "wood screw": "wood screw",
    "lag screw": "lag screw",
}
"""Kinds of fastener as asked for, and the equation of NDS that each one has."""

LIGHTEST, _HEAVIEST = 0.2, 1.0
"""Specific gravities taken; NDS prints values from 0.31 to 0.73."""

_GRAVITIES = Bounds(
    LIGHTEST,
    _HEAVIEST,
    f"from {LIGHTEST:g} to {_HEAVIEST:g}, such as 0.42; NDS prints 0.31 to 0.73",
)
_ANGLES = Bounds(0.0, pi / 2.0, "an angle from 0 to 90 deg")


class Lateral(ByValue, frozen=True):
    """The reference lateral value of one fastener: the least of its modes, and each of them.

    Of arrays, ``mode`` is an array of names.
    """

    value: units.Quantity
    mode: str | NDArray[np.str_]
    modes: Mapping[str, units.Quantity]


def withdrawal(
    kind: str, diameter: str | units.Quantity, specific_gravity: float
) -> units.Quantity:
    """Return what a fastener may be pulled with, per length that holds, as a quantity.

    The NDS reference value: allowable stress design, side grain, dry, ten years of load; for wind
    and moisture it is adjusted. ``kind`` is "nail" (smooth, bright or galvanised), "wood screw" or
    "lag screw", also "ring-shank nail" and "stainless nail". ``diameter`` is that of the shank of
    a nail, the nominal one of a screw, as text or quantity. ``specific_gravity`` is that of the
    wood which holds the point, on oven-dry volume as NDS assigns it. It holds along the shank of a
    smooth nail, along the thread of all others, without the tip of a lag screw.

    ValueError names the argument, what was found and what is expected.
    Source: NDS 2018 Eq. 12.2-1 to 12.2-5.

    >>> print(f"{yf.withdrawal('nail', '0.131 in', 0.50).to('lbf/in'):.0f}")
    32 pound_force / inch
    """
    kind = word("kind", kind, _KINDS)
    D = _length("diameter", diameter)
    G = _gravity("specific_gravity", specific_gravity)
    return units.quantity(as_given(pulling.reference_withdrawal(_KINDS[kind], D, G)), "line load")


def lateral(
    diameter: str | units.Quantity,
    side_thickness: str | units.Quantity,
    main_bearing_length: str | units.Quantity,
    specific_gravity_side: float,
    specific_gravity_main: float,
    bending_yield: str | units.Quantity,
    *,
    grain_angle_side: str | units.Quantity = "90 deg",
    grain_angle_main: str | units.Quantity = "90 deg",
) -> Lateral:
    """Return what one fastener may carry sideways through two pieces of wood, by yield mode.

    The NDS reference value for single shear: allowable stress design, dry, ten years of load.
    ``diameter`` is that of the shank, of a screw the root of its thread. ``main_bearing_length``
    is the penetration into the main piece less half the tapered tip (tip: two diameters of a
    nail). ``specific_gravity_side`` and ``..._main`` are on oven-dry volume; the dowel bearing
    strengths that they give are rounded to 50 psi. ``bending_yield`` is that of the steel. The
    angles between load and grain count from 1/4 in on; across the grain, which is taken unless
    they are given, the value is least.

    ValueError names the argument, what was found and what is expected.
    Source: NDS 2018 12.3.1 and 12.3.3, Tables 12.3.1A and 12.3.1B.

    >>> held = yf.lateral("0.162 in", "1 1/2 in", "1.676 in", 0.50, 0.50, "90000 psi")
    >>> print(f"{held.value.to('lbf'):.0f}, mode {held.mode}")
    141 pound_force, mode IV
    """
    D = _length("diameter", diameter)
    ls = _length("side_thickness", side_thickness)
    lm = _length("main_bearing_length", main_bearing_length)
    G_side = _gravity("specific_gravity_side", specific_gravity_side)
    G_main = _gravity("specific_gravity_main", specific_gravity_main)
    theta_side = _angle("grain_angle_side", grain_angle_side)
    theta_main = _angle("grain_angle_main", grain_angle_main)
    limits = single_shear(
        diameter=D,
        side_length=ls,
        main_length=lm,
        side_bearing=dowel_bearing(G_side, D, theta_side),
        main_bearing=dowel_bearing(G_main, D, theta_main),
        bending_yield=si("bending_yield", bending_yield, "pressure", above_zero=True),
        grain_angle=np.maximum(theta_side, theta_main),
    )
    return Lateral(
        value=units.quantity(as_given(limits.value), "force"),
        mode=limits.mode if limits.mode.ndim else str(limits.mode),
        modes={mode: units.quantity(as_given(limits.modes[mode]), "force") for mode in MODES},
    )


def _length(name: str, value: str | units.Quantity) -> Any:
    return si(name, value, "length", above_zero=True)


def _angle(name: str, value: str | units.Quantity) -> Any:
    return si(name, value, "angle", bounds=_ANGLES)


def _gravity(name: str, given: object) -> float:
    return number_argument(name, given, _GRAVITIES)
