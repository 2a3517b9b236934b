"""What the section of a post or a beam may carry: bent both ways at once and pressed along it."""

from math import inf, sqrt

import numpy as np

from ... import references
from ...materials import lumber, metal
from ...materials.metal import Metal
from ...units.arrays import Array
from ...units.frozen import ByValue
from ..timber.books import book_of
from ..timber.nds.standard import NDS_BOOK
from ..timber.terms.answers import MemberMaterial, StickLaw
from .bending import rectangle_inertia, round_inertia
from .columns import aluminium_use, metal_column, steel_use
from .metal_strength import metal_shear, metal_stress
from .uprights import Section


class PostStrength(ByValue, frozen=True):
    """Strength of a section: along its first and second side, as in ``Section``.

    ``moduli`` in m3 and ``bending`` in Pa of both ways, ``buckling`` F_bE in Pa of bending on edge;
    ``shear_force`` in N; ``stiffness`` E I in N m2 of both ways. ``area`` in m2; ``along`` in Pa
    is what it may carry pressed along itself while it cannot give way sideways, ``drawn`` what it
    may carry drawn along itself. ``radii`` in m and ``elastic`` in Pa tell when it gives way: its
    thickness (of metal its radius of gyration) both ways, and E'_min (E of metal).
    """

    moduli: tuple[float, float]
    bending: tuple[float, float]
    buckling: float
    shear_force: float
    stiffness: tuple[float, float]
    stuff: MemberMaterial
    area: float
    along: float
    drawn: float
    radii: tuple[float, float]
    elastic: float
    safety: float = 1.0
    is_round: bool = False
    law: StickLaw = NDS_BOOK.law

    def slender(self, effective: float) -> float:
        """Return the slenderness ratio of a piece of ``effective`` length in m, its weaker way."""
        return effective / min(self.radii)

    def use(
        self,
        pressed: Array,
        first: Array,
        second: Array,
        effective: float,
        longer: Array | float = 1.0,
    ) -> Array:
        """Return the part (…) of its strength used, pressed along itself and bent both ways.

        ``pressed`` in N, drawn below 0, and moments in N m (…); ``effective`` length in m of a
        column, both ways. Where they are given ``longer`` (…) times as great as they are, since
        they last longer than wind, stiffness is as much greater by NDS: a column that gives way
        sideways does so as soon under load of any length. Source: NDS 2018 3.9.1, Eq. 3.9-1 drawn,
        3.9.2 pressed, 2.3.2 (C_D not on E_min), or EN 1995-1-1 6.2 and 6.3 by ``law``; AISC 360-16
        H1; Aluminum Design Manual 2015 H.1.
        """
        bent = self.bending_use(first, second, longer)
        if not np.any(pressed):
            return bent
        pulled = bent + np.maximum(-pressed, 0.0) / self.area / self.drawn
        fc = np.maximum(pressed, 0.0) / self.area
        gives = self._gives(effective, longer)
        if isinstance(self.stuff, Metal):
            is_aluminium = self.stuff.column.startswith("aluminium")
            both = aluminium_use if is_aluminium else steel_use
            return np.where(pressed < 0.0, pulled, both(fc / gives, bent))
        f1, f2 = np.abs(first) / self.moduli[0], np.abs(second) / self.moduli[1]
        ways = [(f, self.bending[k], effective / self.radii[k]) for k, f in enumerate((f1, f2))]
        edge, flat = ways if self.moduli[0] >= self.moduli[1] else ways[::-1]
        turns = longer * np.asarray(self.buckling)
        use = self.law.pressed(fc, gives, edge, flat, self.elastic, longer, turns)
        return np.where(pressed < 0.0, pulled, use)

    def use_within(
        self,
        pressed: Array,
        size: Array,
        first: Array,
        second: Array,
        effective: float,
        longer: Array | float = 1.0,
    ) -> Array:
        """Return the greatest ``use`` pressed by a force (…) in N, give or take ``size`` (…)."""
        more = self.use(pressed + size, first, second, effective, longer)
        if not np.any(size):
            return more
        return np.maximum(more, self.use(pressed - size, first, second, effective, longer))

    def along_use(self, pressed: Array, effective: float, longer: Array | float = 1.0) -> Array:
        """Return the part (…) of its strength that a force (…) in N along it alone uses.

        Drawn below 0; ``effective`` and ``longer`` as of ``use``. Source: NDS 2018 3.6.3, 3.8.1.
        """
        stress = np.abs(pressed) / self.area
        return stress / np.where(pressed < 0.0, self.drawn, self._gives(effective, longer))

    def _gives(self, effective: float, longer: Array | float) -> Array:
        """Return the stress in Pa (…) that a piece may be pressed by until it gives way."""
        slender = self.slender(effective)
        if isinstance(self.stuff, Metal):
            kind, strength = self.stuff.column, self.stuff.strength
            return self.safety * metal_column(kind, strength, self.elastic, slender)
        return self.law.gives(self.along, self.elastic, slender, longer)

    def bending_use(self, first: Array, second: Array, longer: Array | float = 1.0) -> Array:
        """Return the part (…) of its strength that moments in N m (…) along both sides use.

        ``longer`` as of ``use``.
        """
        f1, f2 = np.abs(first) / self.moduli[0], np.abs(second) / self.moduli[1]
        if self.is_round:
            return np.hypot(f1, f2) / self.bending[0]
        on_edge = self.moduli[0] >= self.moduli[1]
        edge, flat = ((f1, 0), (f2, 1)) if on_edge else ((f2, 1), (f1, 0))
        turns = longer * np.asarray(self.buckling)
        return self.law.bent(
            (edge[0], self.bending[edge[1]]), (flat[0], self.bending[flat[1]]), turns
        )


def post_strength(
    section: Section,
    material: str | None,
    grade: str | None,
    length: float,
    basis: str,
    between: bool = False,
) -> PostStrength | str:
    """Return the strength of a piece of ``length`` m, or the word for why none is known.

    It stands out by that length, or spans it ``between`` two supports.
    """
    if material is None:
        return "no material"
    least, wide = sorted((section.first, section.second))
    wood = lumber.find_lumber(material, least, wide, grade)
    if wood is not None and not section.is_round and section.wall is None:
        value = book_of(basis).adjusted(wood, least, wide, length, basis, between)
        if value is None:
            return "no values"
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
            area=_area(section),
            along=value.compression,
            drawn=value.tension,
            radii=(section.first, section.second),
            elastic=value.least_stiffness,
            law=book_of(basis).law,
        )
    alloy = metal.find_metal(material)
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
        area=_area(section),
        along=stress,
        drawn=stress,
        radii=(sqrt(along / _area(section)), sqrt(across / _area(section))),
        elastic=alloy.stiffness,
        safety=stress / alloy.strength,
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
    row = references.table("thin_tubes").one("section", "round" if section.is_round else "square")
    return ratio > float(row["factor"]) * (stiff if section.is_round else sqrt(stiff))
