"""What the section of a post may carry, bent both ways at once."""

from dataclasses import dataclass
from math import inf, sqrt

import numpy as np

from ..design.shapes.shape import Array
from ..materials import lumber, metal
from ..materials.metal import Metal
from .bending import both_ways_use, rectangle_inertia, round_inertia
from .member_check import Stuff
from .member_strength import adjusted, metal_shear, metal_stress
from .uprights import Section

THIN_ROUND, THIN_SQUARE = 0.07, 1.12
"""A tube may buckle first from a width over wall of 0.07 E/F_y when round and 1.12 sqrt(E/F_y) when
not (AISC 360-16 Table B4.1b, from memory)."""


@dataclass(frozen=True)
class PostStrength:
    """Strength of a section: along its first and second side, as in ``Section``.

    ``moduli`` in m3 and ``bending`` in Pa of both ways, ``buckling`` F_bE in Pa of bending on edge;
    ``shear_force`` in N; ``stiffness`` E I in N m2 of both ways.
    """

    moduli: tuple[float, float]
    bending: tuple[float, float]
    buckling: float
    shear_force: float
    stiffness: tuple[float, float]
    stuff: Stuff
    is_round: bool = False

    def bending_use(self, first: Array, second: Array) -> Array:
        """Return the part (…) of its strength that moments in N m (…) along both sides use."""
        f1, f2 = np.abs(first) / self.moduli[0], np.abs(second) / self.moduli[1]
        if self.is_round:
            return np.hypot(f1, f2) / self.bending[0]
        on_edge = self.moduli[0] >= self.moduli[1]
        edge, flat = ((f1, 0), (f2, 1)) if on_edge else ((f2, 1), (f1, 0))
        return both_ways_use(
            edge[0], self.bending[edge[1]], flat[0], self.bending[flat[1]], self.buckling
        )


def post_strength(
    section: Section, material: str | None, grade: str | None, length: float, basis: str
) -> PostStrength | str:
    """Return the strength of a post of ``length`` m, or the word for why none is known."""
    if material is None:
        return "no material"
    least, wide = sorted((section.first, section.second))
    wood = lumber.find(material, least, wide, grade)
    if wood is not None and not section.is_round and section.wall is None:
        value = adjusted(wood, least, wide, length, basis)
        strong_first = section.first > section.second
        along, across = _inertia(section)
        return PostStrength(
            moduli=(2.0 * along / section.first, 2.0 * across / section.second),
            bending=(value.edgewise, value.flatwise)
            if strong_first
            else (value.flatwise, value.edgewise),
            buckling=value.buckling,
            shear_force=value.shear * least * wide / 1.5,
            stiffness=(along * value.stiffness, across * value.stiffness),
            stuff=wood,
        )
    alloy = metal.find(material)
    if alloy is None:
        return "no values"
    if _is_thin(section, alloy):
        return "thin wall"
    stress = metal_stress(alloy, basis)
    along, across = _inertia(section)
    return PostStrength(
        moduli=(2.0 * along / section.first, 2.0 * across / section.second),
        bending=(stress, stress),
        buckling=inf,
        shear_force=metal_shear(alloy, basis) * _area(section) / 2.0,
        stiffness=(along * alloy.stiffness, across * alloy.stiffness),
        stuff=alloy,
        is_round=section.is_round,
    )


def _inertia(section: Section) -> tuple[float, float]:
    """Return the moments of inertia in m4 of bending along the first side, and the second."""
    hollow = 0.0 if section.wall is None else 2.0 * section.wall
    if section.is_round:
        bore = max(section.first - hollow, 0.0) if section.wall is not None else 0.0
        both = float(round_inertia(section.first, bore))
        return both, both
    solid = _both_ways(section.first, section.second)
    inner = section.first - hollow, section.second - hollow
    if section.wall is None or min(inner) <= 0.0:
        return solid
    bore = _both_ways(*inner)
    return solid[0] - bore[0], solid[1] - bore[1]


def _both_ways(first: float, second: float) -> tuple[float, float]:
    return float(rectangle_inertia(second, first)), float(rectangle_inertia(first, second))


def _area(section: Section) -> float:
    hollow = 0.0 if section.wall is None else 2.0 * section.wall
    solid = section.first * section.second
    bore = (section.first - hollow) * (section.second - hollow) if section.wall is not None else 0.0
    return (solid - bore) * (np.pi / 4.0 if section.is_round else 1.0)


def _is_thin(section: Section, alloy: Metal) -> bool:
    if section.wall is None:
        return False
    ratio = max(section.first, section.second) / section.wall
    stiff = alloy.stiffness / alloy.strength
    return ratio > (THIN_ROUND * stiff if section.is_round else THIN_SQUARE * sqrt(stiff))
