"""Values on which an answer rests that were written from memory, not from the printed page."""

import re
from collections.abc import Iterator
from enum import StrEnum

from ... import materials, references
from ...design.given import given_parts
from ...design.shapes.forms import Leaf
from ...loads.asce7.standard import ASCE7
from ...loads.combinations import EN1995, resistance_basis
from ...loads.methods import standard_of
from ...materials.fastener import Fastener
from ...units.frozen import ByValue
from ..examination import Examination
from ..timber.books import values_of
from ..timber.terms.capacity import Capacity
from ..timber.terms.driven import Driven

_MEMORY = "memory"


class Value(StrEnum):
    """What was written from memory."""

    DENSITY = "density"
    SIZE = "actual size"
    RATING = "what the ground bears"
    FRICTION = "friction"
    SQUARE_BODIES = "square bodies"
    ROUND_BODIES = "round bodies"
    SIDED_BODIES = "many-sided bodies"
    SIGNS = "solid signs"
    WIDE_SIGNS = "wide signs"
    LATTICES = "lattices and open frames"
    SHELTER = "shelter"
    PANELS_OF_ROOFS = "suction on single panels"
    CYLINDERS = "wind on round bodies"
    BALLS = "wind on balls"
    LATTICE_FORCES = "force on lattices"
    LATTICE_ENDS = "ends of lattices"
    SINGLE_PANELS = "pressure on single panels"
    EXPOSURE_FACTOR = "Kz"
    DIRECTIONALITY = "Kd"
    GUST_EFFECT = "gust effect factor"
    TERRAIN = "terrain categories"
    LEAST_WIND = "least wind"
    LOAD_FACTORS = "load factors"
    PUSH = "push of people"
    STRENGTH = "strength of parts"
    TIMBER = "equations of timber"
    FASTENER = "sizes and steel of fasteners"
    STAPLES = "staples as nails"
    PULLING_OUT = "what pulls out"
    PULLING_THROUGH = "what pulls heads through"
    BEARING_STEP = "rounding of dowel bearing"
    JOINT_FACTOR = "factors of joints"
    GRAVITY = "specific gravity for fasteners"
    SLIP = "stiffness sideways"
    AXIAL = "stiffness of screws"
    COMPANIONS = "named loads in wind"
    TORSION = "twist beside shear"


class FromMemory(ByValue, frozen=True):
    """A value written from memory, what it is ``of``, and the sources it was recalled from."""

    value: Value
    of: tuple[str, ...]
    sources: tuple[str, ...]


def from_memory(found: Examination) -> tuple[FromMemory, ...]:
    """Return each value written from memory on which this answer rests, once."""
    groups = (
        _densities,
        _stock,
        _ground,
        _coefficients,
        _wind,
        _factors,
        _strengths,
        _timber,
        _joints,
    )
    return tuple(dict.fromkeys(one for group in groups for one in group(found)))


def _densities(found: Examination) -> Iterator[FromMemory]:
    for part in found.design.parts:
        if part.material is None or part.mass is not None:
            continue
        of = materials.find_material(part.material)
        if of.confidence == _MEMORY:
            yield FromMemory(Value.DENSITY, (of.name,), (of.source,))


def _stock(found: Examination) -> Iterator[FromMemory]:
    for given in given_parts(found.design):
        lumber = re.sub(r"\s*[x×]\s*", "x", str(given.get("lumber", "")).casefold()).split(" ")[0]
        sheet = " ".join(str(given.get("stock", "")).replace('"', " ").casefold().split())
        for name, column, word in (
            ("wood/lumber_sizes", "nominal", lumber),
            ("wood/stock_sheets", "stock", sheet),
        ):
            for row in references.table(name).rows:
                if row[column].casefold() == word and row["confidence"] == _MEMORY:
                    yield FromMemory(Value.SIZE, (row[column],), (row["source"],))


def _ground(found: Examination) -> Iterator[FromMemory]:
    ground = found.standing.ground
    for name in ("allowable pressure", "yield pressure"):
        rating = ground.ratings.get(name)
        if rating is not None and rating.confidence == _MEMORY:
            yield FromMemory(Value.RATING, (name, ground.name), (rating.source,))
    for kind in dict.fromkeys(patch.contact for patch in found.structure.patches):
        row = ground.friction[kind]
        if row.confidence == _MEMORY:
            yield FromMemory(Value.FRICTION, (kind, ground.name), (row.source,))


_BEGINS = {
    **dict.fromkeys(("square", "gable", "vault", "3 sides", "5 sides"), "Square"),
    **dict.fromkeys(("hexagonal", "octagonal", "7 sides"), "Hexagonal"),
    "round": "Round",
}
_BODIES = {
    "Square": Value.SQUARE_BODIES,
    "Round": Value.ROUND_BODIES,
    "Hexagonal": Value.SIDED_BODIES,
}


def _coefficients(found: Examination) -> Iterator[FromMemory]:
    kinds, roles = found.exposed.kinds, {one.role for one in found.members.judged}
    if found.site.terrain is not None:
        yield from _by_en1991(found, roles)
        return
    rows = references.table("wind/asce7_cf_chimneys_tanks").rows
    for kind in dict.fromkeys(kinds):
        begins = _BEGINS.get(kind, "Hexagonal" if kind.endswith("sides") else None)
        row = next(
            (
                row
                for row in rows
                if begins is not None
                and row["cross_section"].startswith(begins)
                and row["confidence"] == _MEMORY
            ),
            None,
        )
        if row is not None and begins is not None:
            yield FromMemory(_BODIES[begins], (), (row["source"],))
    shapes = [part.shape for part in found.design.parts]
    boards = [form for shape in shapes if isinstance(form := shape.form, Leaf)]
    open_ = any(s.wheel is not None or (isinstance(s.form, Leaf) and s.is_lattice) for s in shapes)
    wide = any(board.width >= 2.0 * board.height for board in boards)
    for applies, name, value in (
        (boards, "wind/asce7_cf_solid_signs_AB", Value.SIGNS),
        (wide, "wind/asce7_cf_solid_signs_C", Value.WIDE_SIGNS),
        (open_, "wind/asce7_cf_open_signs_frames", Value.LATTICES),
        (found.exposed.gives_shelter, "wind/iso4302_shielding", Value.SHELTER),
        (
            roles & {"lid", "roof slope", "roof panel"},
            "wind/asce7_local_roof",
            Value.PANELS_OF_ROOFS,
        ),
    ):
        if applies:
            yield from _of_table(name, value)


def _by_en1991(found: Examination, roles: set[str]) -> Iterator[FromMemory]:
    kinds, constants = found.exposed.kinds, "wind/en1991_constants"
    if "round" in kinds:
        yield from _rows(constants, "item", "cylinder drop", Value.CYLINDERS)
    if "ball" in kinds:
        yield from _rows(constants, "item", "sphere near the ground", Value.BALLS)
    if "lattice" in kinds:
        yield from _of_table("wind/en1991_lattices", Value.LATTICE_FORCES)
        yield from _of_table("wind/en1991_end_effect", Value.LATTICE_ENDS)
    if found.exposed.gives_shelter:
        yield from _of_table("wind/iso4302_shielding", Value.SHELTER)
    if roles & {"lid", "roof slope", "roof panel", "box wall", "wall panel"}:
        yield from _rows("wind/local_pressure", "book", "EN", Value.SINGLE_PANELS)


_OF_STANDARDS = {
    "wind/asce7_kz_table": Value.EXPOSURE_FACTOR,
    "wind/asce7_kd": Value.DIRECTIONALITY,
    "wind/asce7_gust_factor": Value.GUST_EFFECT,
    "wind/en1991_terrain": Value.TERRAIN,
}


def _wind(found: Examination) -> Iterator[FromMemory]:
    method = found.site.method
    for name in standard_of(method).tables(method):
        yield from _of_table(name, _OF_STANDARDS[name])
    if method in ASCE7.names:
        least, table = (
            "minimum design wind, other structures",
            "wind/asce7_cf_misc_other_structures",
        )
        yield from _rows(table, "item", least, Value.LEAST_WIND)


def _factors(found: Examination) -> Iterator[FromMemory]:
    site = found.site
    yield from _rows("combinations", "basis", site.basis, Value.LOAD_FACTORS, site.basis)
    for push in references.table("ground/pushes").where("people", site.people or ""):
        if push["confidence"] == _MEMORY:
            yield FromMemory(Value.PUSH, (push["people"],), (push["source"],))


def _strengths(found: Examination) -> Iterator[FromMemory]:
    names: dict[str, list[str]] = {}
    for one in found.members.judged:
        known = values_of(one.stuff, resistance_basis(found.site))
        if known.confidence == _MEMORY:
            names.setdefault(known.unread, []).append(one.name)
    for source, of in names.items():
        yield FromMemory(Value.STRENGTH, tuple(of), (source,))


def _timber(found: Examination) -> Iterator[FromMemory]:
    """Name the book of timber whose numbers are partly from memory, where anything rests on it."""
    rests = found.joints or found.members.judged or found.fastened_seams
    if found.site.timber == EN1995 and rests:
        yield FromMemory(Value.TIMBER, (), ("EN 1995-1-1:2004",))


def _joints(found: Examination) -> Iterator[FromMemory]:
    """Name what of the strength of joints and seams was written from memory, where it governs."""
    for joint in found.joints:
        driven, fastener = joint.fasteners.driven, joint.row.fastener
        yield from _fastener(fastener, joint.holds, driven, joint.tension, joint.shear)
    if found.joints:
        yield from _rows("statics", "rule", "slip of dowels", Value.SLIP)
        yield from _rows("statics", "rule", "axial stiffness of screws", Value.AXIAL)
    if found.loads:
        yield from _rows("companions", "basis", found.site.basis, Value.COMPANIONS)
    if any(one.forces for one in found.members.judged):
        yield from _of_table("wood/torsion_rules", Value.TORSION)
    for seam in found.fastened_seams:
        yield from _fastener(seam.row.fastener, seam.holds, seam.driven, seam.tension, seam.shear)


def _fastener(
    fastener: Fastener, holds: Capacity, driven: Driven, tension: float, shear: float
) -> Iterator[FromMemory]:
    if fastener.confidence == _MEMORY:
        yield FromMemory(Value.FASTENER, (fastener.name,), (fastener.source,))
    if fastener.kind == "staple":
        rule = references.table("wood/staple_rules").one("rule", "legs as nails")
        yield FromMemory(Value.STAPLES, (), (rule["source"],))
    out = tension * holds.sideways >= shear * holds.pull
    if out and holds.out <= holds.head:
        law = f"NDS reference, {fastener.withdrawal_kind}"
        table = "wood/withdrawal_formulas"
        yield from _rows(table, "law", law, Value.PULLING_OUT, fastener.name)
    elif out:
        yield from _rows("wood/pull_through", "rule", "coefficient", Value.PULLING_THROUGH)
    else:
        yield from _rows("wood/nds_equations", "name", "bearing step", Value.BEARING_STEP)
    for factor in ("CD", "CM"):
        table = "wood/nds_adjustment_factors"
        yield from _rows(table, "factor", factor, Value.JOINT_FACTOR, factor)
    for material in (driven.main.name, driven.side.name):
        for row in references.table("materials").where("name", material):
            table, key = "wood/nds_assigned_specific_gravity", "species_combination"
            yield from _rows(table, key, row["gravity_row"], Value.GRAVITY, material)


def _rows(table: str, column: str, key: str, value: Value, *of: str) -> Iterator[FromMemory]:
    for row in references.table(table).where(column, key):
        if row["confidence"] == _MEMORY:
            yield FromMemory(value, of, (row["source"],))
            return


def _of_table(name: str, value: Value) -> Iterator[FromMemory]:
    rows = [row for row in references.table(name).rows if row["confidence"] == _MEMORY]
    if rows:
        yield FromMemory(value, (), tuple(dict.fromkeys(row["source"] for row in rows)))
