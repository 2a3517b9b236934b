"""Values on which an answer rests that were written from memory, not from the printed page."""

import re
from collections.abc import Iterator

from .. import materials, references
from ..checks.examination import Examination
from ..checks.joints.driven import Driven
from ..checks.joints.fastener_capacity import Capacity
from ..design.shapes.cutout import Cutout
from ..design.shapes.flat import Panel
from ..design.shapes.rotor import Rotor
from ..loads.asce7.standard import ASCE7
from ..loads.combinations import EN1995
from ..loads.methods import standard_of
from ..materials.fastener import Fastener
from .assumptions import first_source, plain_source
from .fastener_words import plural
from .given import given_parts
from .member_words import member_unverified
from .remark import joined

MEMORY = "memory"

_SECTIONS = "wind/asce7_cf_chimneys_tanks"
_WHAT = {
    "wind/asce7_kz_table": "the gust near the ground by surroundings (Kz)",
    "wind/asce7_kd": "directionality (Kd)",
    "wind/asce7_gust_factor": "the gust effect factor's constants",
    "wind/en1991_terrain": "the terrain categories",
}
_PUSHES = "ground/pushes"
_KINDS = {
    "square": "Square",
    "hexagonal": "Hexagonal",
    "octagonal": "Hexagonal",
    "round": "Round",
    "gable": "Square",
    "vault": "Square",
    "3 sides": "Square",
    "5 sides": "Square",
    "7 sides": "Hexagonal",
}


def unverified(examination: Examination) -> tuple[str, ...]:
    """Return a sentence for each value written from memory on which this answer rests."""
    found = (
        *_densities(examination),
        *_stock(examination),
        *_ground(examination),
        *_coefficients(examination),
        *_wind(examination),
        *_factors(examination),
        *member_unverified(examination),
        *_timber(examination),
        *_joints(examination),
    )
    return tuple(dict.fromkeys(found))


def _sentence(what: str, source: str) -> str:
    return f"{what[0].upper()}{what[1:]}: from memory of {plain_source(source)}."


def _densities(examination: Examination) -> Iterator[str]:
    for part in examination.design.parts:
        if part.material is None or part.mass is not None:
            continue
        of = materials.find(part.material)
        if of.confidence == MEMORY:
            yield _sentence(f"the density of {of.name}", first_source(of.source))


def _stock(examination: Examination) -> Iterator[str]:
    for given in given_parts(examination.design):
        lumber = re.sub(r"\s*[x×]\s*", "x", str(given.get("lumber", "")).casefold()).split(" ")[0]
        sheet = " ".join(str(given.get("stock", "")).replace('"', " ").casefold().split())
        for name, column, word in (
            ("wood/lumber_sizes", "nominal", lumber),
            ("wood/stock_sheets", "stock", sheet),
        ):
            for row in references.table(name).rows:
                if row[column].casefold() == word and row["confidence"] == MEMORY:
                    yield _sentence(f"the actual size of {row[column]}", row["source"])


def _ground(examination: Examination) -> Iterator[str]:
    ground = examination.standing.ground
    used = ["allowable pressure", "yield pressure"]
    for name in used:
        rating = ground.ratings.get(name)
        if rating is not None and rating.confidence == MEMORY:
            yield _sentence(f"the {name} of {ground.name}", rating.source)
    for kind in dict.fromkeys(patch.contact for patch in examination.structure.patches):
        row = ground.friction[kind]
        if row.confidence == MEMORY:
            yield _sentence(f"the friction of {kind} on {ground.name}", row.source)


def _coefficients(examination: Examination) -> Iterator[str]:
    if examination.site.terrain is not None:
        yield from _by_en1991(examination)
        return
    rows = references.table(_SECTIONS).rows
    for kind in dict.fromkeys(examination.exposed.kinds):
        begins = _KINDS.get(kind, "Hexagonal" if kind.endswith("sides") else None)
        if begins is None:
            continue
        for row in rows:
            if row["cross_section"].startswith(begins) and row["confidence"] == MEMORY:
                what = {"Square": "square and rectangular", "Round": "round"}.get(
                    begins, "hexagonal and octagonal"
                )
                yield _sentence(f"force coefficients of {what} bodies", row["source"])
                break
    shapes = [part.shape for part in examination.design.parts]
    panels = [shape for shape in shapes if isinstance(shape, Panel)]
    boards = [*panels, *(shape for shape in shapes if isinstance(shape, Cutout))]
    if boards:
        yield from _of_table("wind/asce7_cf_solid_signs_AB", "force coefficients of solid signs")
    if any(board.width >= 2.0 * board.height for board in boards):
        yield from _of_table("wind/asce7_cf_solid_signs_C", "coefficients of wide signs, Case C")
    lattices = any(panel.solidity < 1.0 for panel in panels)
    wheels = any(isinstance(p.shape, Rotor) for p in examination.design.parts)
    if lattices or wheels:
        yield from _of_table(
            "wind/asce7_cf_open_signs_frames", "force coefficients of lattices and open frames"
        )
    if examination.exposed.gives_shelter:
        yield from _of_table("wind/iso4302_shielding", "shelter behind one another")
    if _roles(examination) & {"lid", "roof slope", "roof panel"}:
        yield from _of_table("wind/asce7_local_roof", "suction on single panels of roofs and lids")


def _roles(examination: Examination) -> set[str]:
    return {one.role for one in examination.members.judged}


def _by_en1991(examination: Examination) -> Iterator[str]:
    kinds = examination.exposed.kinds
    if "round" in kinds:
        yield from _rows("wind/en1991_constants", "item", "cylinder drop", "wind on round bodies")
    if "ball" in kinds:
        near = "sphere near the ground"
        yield from _rows("wind/en1991_constants", "item", near, "wind on balls near the ground")
    if "lattice" in kinds:
        yield from _of_table("wind/en1991_lattices", "force coefficients of lattices")
        yield from _of_table("wind/en1991_end_effect", "the end effect of lattices")
    if examination.exposed.gives_shelter:
        yield from _of_table("wind/iso4302_shielding", "shelter behind one another")
    if _roles(examination) & {"lid", "roof slope", "roof panel", "box wall", "wall panel"}:
        yield from _rows("wind/local_pressure", "book", "EN", "pressure on single panels")


def _wind(examination: Examination) -> Iterator[str]:
    site = examination.site
    for name in standard_of(site.method).tables(site.method):
        yield from _of_table(name, _WHAT[name])
    if site.method in ASCE7.names:
        row = references.table("wind/asce7_cf_misc_other_structures").one(
            "item", "minimum design wind, other structures"
        )
        if row["confidence"] == MEMORY:
            yield _sentence("the least wind of 16 psf", row["source"])


def _factors(examination: Examination) -> Iterator[str]:
    row = references.table("combinations").one("basis", examination.site.basis)
    if row["confidence"] == MEMORY:
        yield _sentence(f"the load factors of the {row['basis']} basis", row["source"])
    for push in references.table(_PUSHES).where("people", examination.site.people or ""):
        if push["confidence"] == MEMORY:
            yield _sentence(f"the push of {push['people']}", push["source"])


def _timber(examination: Examination) -> Iterator[str]:
    """Name the book of timber whose numbers are partly from memory, where anything rests on it."""
    if examination.site.timber != EN1995:
        return
    if examination.joints or examination.members.judged or examination.fastened_seams:
        yield _sentence("numbers of the equations for wood and fasteners", "EN 1995-1-1:2004")


def _joints(examination: Examination) -> Iterator[str]:
    """Name what of the strength of joints and seams was written from memory, where it governs."""
    for joint in examination.joints:
        of_them = joint.fasteners
        yield from _fastener(
            joint.row.fastener, joint.holds, of_them.driven, joint.tension, joint.shear
        )
    if examination.joints:
        yield from _rows("statics", "rule", "slip of dowels", "how stiff fasteners are sideways")
        screws = "axial stiffness of screws"
        yield from _rows("statics", "rule", screws, "how stiff screws are against a pull")
    if examination.loads:
        basis = examination.site.basis
        yield from _rows("companions", "basis", basis, "the factors on named loads in wind")
    if any(one.forces for one in examination.members.judged):
        yield from _of_table("wood/torsion_rules", "how twist counts beside shear")
    for seam in examination.fastened_seams:
        yield from _fastener(seam.row.fastener, seam.holds, seam.driven, seam.tension, seam.shear)


def _fastener(
    fastener: Fastener, holds: Capacity, driven: Driven, tension: float, shear: float
) -> Iterator[str]:
    if fastener.confidence == MEMORY:
        yield _sentence(
            f"sizes and steel of {plural(fastener.name)}", first_source(fastener.source)
        )
    if fastener.kind == "staple":
        rule = references.table("wood/staple_rules").one("rule", "legs as nails")
        yield _sentence("staples taken as two nails", rule["source"])
    out = tension * holds.sideways >= shear * holds.pull
    if out and holds.out <= holds.head:
        law = f"NDS reference, {fastener.withdrawal_kind}"
        yield from _rows(
            "wood/withdrawal_formulas", "law", law, f"what pulls out {plural(fastener.name)}"
        )
    elif out:
        yield from _rows("wood/pull_through", "rule", "coefficient", "what pulls heads through")
    else:
        yield from _rows(
            "wood/nds_equations", "name", "bearing step", "how dowel bearing strength is rounded"
        )
    for factor in ("CD", "CM"):
        yield from _rows(
            "wood/nds_adjustment_factors", "factor", factor, f"the factor {factor} of joints"
        )
    for material in (driven.main.name, driven.side.name):
        yield from _gravity(material)


def _gravity(material: str) -> Iterator[str]:
    for row in references.table("materials").where("name", material):
        yield from _rows(
            "wood/nds_assigned_specific_gravity",
            "species_combination",
            row["gravity_row"],
            f"the specific gravity of {material} for fasteners",
        )


def _rows(table: str, column: str, key: str, what: str) -> Iterator[str]:
    for row in references.table(table).where(column, key):
        if row["confidence"] == MEMORY:
            yield _sentence(what, row["source"])
            return


def _of_table(name: str, what: str) -> Iterator[str]:
    rows = [row for row in references.table(name).rows if row["confidence"] == MEMORY]
    if rows:
        yield _sentence(what, joined(dict.fromkeys(row["source"] for row in rows), "and"))
