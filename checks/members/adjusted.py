"""Design values of one piece of lumber, adjusted for its place and its load, by any book."""

from ...units.frozen import ByValue


class Adjusted(ByValue, frozen=True):
    """Adjusted design values in Pa: F'_b bent on edge and on the flat, F'_v, by NDS or EN 1995.

    ``buckling`` is F_bE of bending on edge; ``stiffness`` E' for how far it bends. ``compression``
    is F_c*, along the grain but for C_P, ``tension`` F'_t and ``least_stiffness`` E'_min.
    """

    edgewise: float
    flatwise: float
    shear: float
    buckling: float
    stiffness: float
    compression: float
    tension: float
    least_stiffness: float
