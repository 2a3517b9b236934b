"""Kinds of quantities with the units in which people write them, and what a unit is."""

from collections.abc import Mapping

from .frozen import ByValue

Dims = tuple[int, int, int, int]
"""Powers of length, mass, time and angle."""


class UnitKind(ByValue, frozen=True):
    """A kind of quantity: its name with article, dimensions, SI unit, and units as people write."""

    phrase: str
    dims: Dims
    si: str
    spellings: tuple[str, ...]


UNIT_KINDS: Mapping[str, UnitKind] = {
    "length": UnitKind("a length", (1, 0, 0, 0), "meter", ("in", "ft", "yd", "m", "cm", "mm")),
    "speed": UnitKind("a speed", (1, 0, -1, 0), "meter/second", ("mph", "kt", "m/s", "km/h")),
    "mass": UnitKind("a mass", (0, 1, 0, 0), "kilogram", ("lb", "oz", "g", "kg")),
    "force": UnitKind("a force", (1, 1, -2, 0), "newton", ("lbf", "kip", "kN", "N")),
    "pressure": UnitKind("a pressure", (-1, 1, -2, 0), "pascal", ("psf", "psi", "kPa", "Pa")),
    "density": UnitKind("a density", (-3, 1, 0, 0), "kilogram/meter**3", ("lb/ft^3", "kg/m^3")),
    "lateral bearing": UnitKind(
        "a lateral bearing per depth",
        (-2, 1, -2, 0),
        "newton/meter**3",
        ("lbf/ft^3", "psf/ft", "kPa/m"),
    ),
    "area density": UnitKind(
        "a mass per area", (-2, 1, 0, 0), "kilogram/meter**2", ("lb/ft^2", "kg/m^2")
    ),
    "line load": UnitKind("a force per length", (0, 1, -2, 0), "newton/meter", ("plf", "N/m")),
    "angle": UnitKind("an angle", (0, 0, 0, 1), "radian", ("deg", "rad")),
    "slope": UnitKind("a slope", (0, 0, 0, 1), "radian", ("deg", "rad", "%")),
}
OTHER_KINDS: Mapping[Dims, str] = {
    (0, 0, 0, 0): "a ratio",
    (2, 0, 0, 0): "an area",
    (3, 0, 0, 0): "a volume",
    (0, 0, 1, 0): "a time",
    (2, 1, -2, 0): "a moment",
    (-1, 1, 0, 0): "a mass per length",
}

BASES: Mapping[str, Dims] = {
    "[length]": (1, 0, 0, 0),
    "[mass]": (0, 1, 0, 0),
    "[time]": (0, 0, 1, 0),
    "[]": (0, 0, 0, 1),
}


class Unit(ByValue, frozen=True):
    """A unit: its name as pint spells it, what it is in SI, its dimensions."""

    name: str
    factor: float
    dims: Dims


def unit_spellings() -> list[str]:
    """Return all units in which people write quantities of these kinds."""
    return list(dict.fromkeys(s for kind in UNIT_KINDS.values() for s in kind.spellings))
