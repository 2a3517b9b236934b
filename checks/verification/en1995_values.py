"""EN 1995-1-1 as worked examples and handbooks print it: each value from printed inputs."""

from collections.abc import Callable, Mapping
from math import radians, sqrt

from ...units.frozen import replace
from ..timber.en1995.axial import nail_depth_factor, nail_withdrawal, under_washer
from ..timber.en1995.lateral import MM, embedment_strength, in_a_row, johansen, yield_moment
from ..timber.en1995.members import both_ways, size_factor
from ..timber.en1995.stuff import MPA, Wood, en1995_number, find_class, k_mod

_COLUMNS = {
    "fm": "bending",
    "ft0": "tension",
    "fc0": "compression",
    "fc90": "across",
    "fv": "shear",
    "E0": "stiffness",
    "E005": "least_stiffness",
}


def _embedment(rho: float, d_mm: float, angle_deg: float) -> float:
    """Return N/mm2 of a bolt in softwood."""
    wood = Wood("solid", rho, hardwood=False)
    return embedment_strength(wood, d_mm * MM, 0.1, bolt=True, angle=radians(angle_deg)) / MPA


def _yield_moment(fu_N_mm2: float, d_mm: float) -> float:
    """Return N mm of a bolt of some steel."""
    of_ours = fu_N_mm2 / en1995_number("tensile strength bolt")
    return of_ours * yield_moment(d_mm * MM, "bolt") / MM


def _mode(
    mode: str, d_mm: float, side_mm: float, main_mm: float, fh1: float, fh2: float, My: float
) -> float:
    """Return N of one mode in single shear, without the rope, by N/mm2 and N mm."""
    sizes = d_mm * MM, side_mm * MM, main_mm * MM
    return float(johansen(*sizes, fh1 * MPA, fh2 * MPA, My * MM)[mode])


def _in_table(under: str, d_mm: float, angle_1_deg: float, angle_2_deg: float) -> float:
    """Return kN of a dowel with two hinges in C24, by the German annex: without the 1.15."""
    rho, moment = find_class("C24").density, _yield_moment(360.0, d_mm) * MM
    one = _embedment(rho, d_mm, angle_1_deg) * MPA
    if under != "wood":
        more = sqrt(2.0) if under == "thick plate" else 1.0
        return more * sqrt(2.0 * moment * one * d_mm * MM) / 1000.0
    other = _embedment(rho, d_mm, angle_2_deg) * MPA
    both = johansen(d_mm * MM, 1.0, 1.0, one, other, moment)["IV"]
    return float(both) / en1995_number("hinge in both") / 1000.0


def _in_a_row(count: float, apart_mm: float, d_mm: float) -> float:
    return count * in_a_row(int(count), apart_mm * MM, d_mm * MM, bolt=True)


def _under_washer(fc90: float, across_mm: float, hole_mm: float) -> float:
    """Return N on wood that bears fc90 N/mm2 across the grain."""
    wood = replace(find_class("C24"), across=fc90 * MPA)
    return under_washer(across_mm * MM, hole_mm * MM, wood)


def _short_nail(reach_mm: float, d_mm: float) -> float:
    return nail_depth_factor(reach_mm * MM, d_mm * MM)


def _size_factor(mm: float) -> float:
    return float(size_factor(mm * MM))


def _nails_apart(d_mm: float, reach_mm: float, name: str, load: float) -> float:
    """Return mm between nails driven wet that hold ``load`` N/mm, gusts in service class 3."""
    held = nail_withdrawal(d_mm * MM, reach_mm * MM, find_class(name).density, wet=True)
    k = k_mod("solid", "instantaneous", dry=False) or 0.0
    return held * k / en1995_number("gamma_M connection") / load


def _of_class(name: str, value: str) -> float:
    """Return N/mm2, or kg/m3 of its density."""
    found = find_class(name)
    return found.density if value == "rho_k" else float(getattr(found, _COLUMNS[value])) / MPA


def _drawn(name: str, b_mm: float, h_mm: float, kmod: float) -> float:
    """Return the use of a piece by 100 kN that draws it."""
    strength = find_class(name).tension * float(size_factor(h_mm * MM)) * kmod
    return _stress(b_mm, h_mm) * en1995_number("gamma_M solid") / strength


def _pressed(name: str, b_mm: float, h_mm: float, kmod: float) -> float:
    """Return the use of a piece that cannot give way by 100 kN that presses it."""
    strength = find_class(name).compression * kmod
    return _stress(b_mm, h_mm) * en1995_number("gamma_M solid") / strength


def _stress(b_mm: float, h_mm: float) -> float:
    return 1.0e5 / (b_mm * MM * h_mm * MM)


def _bent(name: str, b_mm: float, h_mm: float, kmod: float) -> float:
    """Return the use of a piece bent by 5 kN m about its strong axis and 2 kN m about the other."""
    wide, deep = b_mm * MM, h_mm * MM
    strength = find_class(name).bending * kmod / en1995_number("gamma_M solid")
    one = 5.0e3 / (wide * deep**2 / 6.0) / (strength * float(size_factor(deep)))
    other = 2.0e3 / (deep * wide**2 / 6.0) / (strength * float(size_factor(wide)))
    return float(both_ways(one, other))


EN1995_VALUES: Mapping[str, Callable[..., float]] = {
    "EN 1995 embedment": _embedment,
    "EN 1995 yield moment": _yield_moment,
    "EN 1995 mode": _mode,
    "EN 1995 dowel in a table": _in_table,
    "EN 1995 row": _in_a_row,
    "EN 1995 washer": _under_washer,
    "EN 1995 short nail": _short_nail,
    "EN 1995 nails apart": _nails_apart,
    "EN 1995 size factor": _size_factor,
    "EN 338 class": _of_class,
    "EN 1995 drawn": _drawn,
    "EN 1995 pressed": _pressed,
    "EN 1995 bent": _bent,
}
"""By the name that a row of ``verified/wood`` bears."""
