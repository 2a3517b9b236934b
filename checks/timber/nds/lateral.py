"""How far a fastener can be pushed sideways before wood or steel yields: the six yield modes.

Im and Is crush the main or the side piece along the whole shank; II turns the stiff shank in both;
IIIm and IIIs bend it once and crush the main or the side piece; IV bends it twice.
"""

from collections.abc import Mapping

import numpy as np
from numpy.typing import ArrayLike, NDArray

from ....loads.printed.ranges import not_negative, positive
from ....units import INCH
from ....units.arrays import Array
from ....units.frozen import ByIdentity
from .dowel_bearing import from_quarter_inch
from .nds_numbers import nds_number

MODES = ("Im", "Is", "II", "IIIm", "IIIs", "IV")


class YieldLimits(ByIdentity, frozen=True):
    """The reference lateral value in N by each mode, all of one shape (…)."""

    modes: Mapping[str, Array]

    @property
    def value(self) -> Array:
        """Return the least of all modes in N (…): the reference lateral value Z."""
        return np.min(list(self.modes.values()), axis=0)

    @property
    def mode(self) -> NDArray[np.str_]:
        """Return the name of the mode that gives it (…), the first where several do."""
        least = np.argmin(list(self.modes.values()), axis=0)
        return np.array(list(self.modes))[least]


def single_shear(
    diameter: ArrayLike,
    side_length: ArrayLike,
    main_length: ArrayLike,
    side_bearing: ArrayLike,
    main_bearing: ArrayLike,
    bending_yield: ArrayLike,
    grain_angle: ArrayLike = 0.0,
    nominal_diameter: ArrayLike | None = None,
) -> YieldLimits:
    """Return the reference lateral value of one fastener through two pieces, by mode.

    ``diameter`` D in m: of a plain shank, or the root of a thread that bears or is sheared.
    ``side_length`` l_s and ``main_length`` l_m in m bear on the shank; ``side_bearing`` F_es and
    ``main_bearing`` F_em in Pa (``dowel_bearing``); ``bending_yield`` F_yb in Pa.
    ``grain_angle`` theta in rad is the greatest of any piece; it counts from 1/4 in on.
    ``nominal_diameter`` in m decides that limit; without it ``diameter`` does. All broadcast.
    ValueError unless all are above 0 (the angle 0 or more).
    Source: NDS 2018 12.3.1, Tables 12.3.1A and 12.3.1B.
    """
    D = positive("diameter", diameter)
    ls, lm = positive("side_length", side_length), positive("main_length", main_length)
    Fes, Fem = positive("side_bearing", side_bearing), positive("main_bearing", main_bearing)
    Fyb = positive("bending_yield", bending_yield)
    R_I, R_II, R_III = _reductions(D, grain_angle, nominal_diameter)
    Re, Rt = Fem / Fes, lm / ls
    k1 = np.sqrt(Re + 2.0 * Re**2 * (1.0 + Rt + Rt**2) + Rt**2 * Re**3)
    k1 = (k1 - Re * (1.0 + Rt)) / (1.0 + Re)
    k2 = 2.0 * Fyb * (1.0 + 2.0 * Re) * D**2 / (3.0 * Fem * lm**2)
    k2 = -1.0 + np.sqrt(2.0 * (1.0 + Re) + k2)
    return _limits(
        Im=D * lm * Fem / R_I,
        Is=D * ls * Fes / R_I,
        II=k1 * D * ls * Fes / R_II,
        IIIm=k2 * D * lm * Fem / ((1.0 + 2.0 * Re) * R_III),
        IIIs=_k3(D, ls, Fem, Re, Fyb) * D * ls * Fem / ((2.0 + Re) * R_III),
        IV=D**2 / R_III * np.sqrt(2.0 * Fem * Fyb / (3.0 * (1.0 + Re))),
    )


def main_bearing_length(penetration: ArrayLike, tip_length: ArrayLike) -> Array:
    """Return l_m = p - E/2 in m (…), at least 0.

    ``penetration`` p (…) into the main piece, tip included, and ``tip_length`` E (…), both in m;
    E is two diameters of a nail, 0 of a bolt. ValueError below 0. Source: NDS 2018 12.3.5.3.
    """
    p = not_negative("penetration", penetration)
    return np.maximum(p - not_negative("tip_length", tip_length) / 2.0, 0.0)


def _reductions(
    diameter: Array, grain_angle: ArrayLike, nominal_diameter: ArrayLike | None
) -> tuple[Array, Array, Array]:
    """Return the reduction terms R_d of modes I, II, and III and IV.

    Under 1/4 in K_D for all; from there 4, 3.6 and 3.2 K_theta; K_D K_theta where only the root of
    a thread is under 1/4 in. Source: NDS 2018 Table 12.3.1B and its note 1.
    """
    D = diameter / INCH
    nominal = diameter if nominal_diameter is None else positive("nominal", nominal_diameter)
    theta = not_negative("grain_angle", grain_angle)
    slope = nds_number("K_theta slope") / (np.pi / 2.0)
    K_theta = np.where(from_quarter_inch(nominal), 1.0 + slope * theta, 1.0)
    thin = nds_number("K_D thin up to") >= D
    growing = nds_number("K_D slope") * D + nds_number("K_D constant")
    K_D = np.where(thin, nds_number("K_D thin"), growing)
    thick = from_quarter_inch(diameter)
    printed = (nds_number(f"R_d mode {mode}") for mode in ("I", "II", "III"))
    R_I, R_II, R_III = (np.where(thick, R, K_D) * K_theta for R in printed)
    return R_I, R_II, R_III


def _k3(D: Array, ls: Array, Fem: Array, Re: Array, Fyb: Array) -> Array:
    slender = 2.0 * Fyb * (2.0 + Re) * D**2 / (3.0 * Fem * ls**2)
    return -1.0 + np.sqrt(2.0 * (1.0 + Re) / Re + slender)


def _limits(**modes: Array) -> YieldLimits:
    return YieldLimits(dict(zip(modes, np.broadcast_arrays(*modes.values()), strict=True)))
