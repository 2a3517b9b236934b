"""Where each input of a check came from: a line of the file, a row of a table, or a default."""

from collections.abc import Iterator

from ... import materials, references
from ...checks.examination import Examination
from ...checks.judged.judging import Check, Kind
from ...design.model import Design
from ...loads.combinations import EQUILIBRIUM, STRENGTH
from ...loads.methods import standard_of
from ...statics.tables.joint_table import JointRow
from ...statics.tables.seam_table import SeamRow
from ...units.frozen import ByValue
from ..wording.filled import plain_source
from .calculation_text import four_figures

_SITE = "[site]"

_NOT_GIVEN = {
    "slope": "level ground",
    "elevation": "near the sea: the air is not thinner",
    "topographic": "no hill: 1",
}
"""Keys of the site that count though they are not given, and what is taken then."""

_OF_GROUND = {
    Kind.OVERTURNING: ("yield pressure",),
    Kind.BEARING: ("allowable pressure",),
    Kind.ANCHOR: ("undrained strength",),
    Kind.EMBEDMENT: ("allowable pressure",),
}
_RUBS = (Kind.SLIDING,)
_PARTS = (Kind.JOINT, Kind.SEAM, Kind.MEMBER, Kind.SPACING)
_OF_ALL_PARTS = (Kind.OVERTURNING, Kind.SLIDING, Kind.BEARING, Kind.PUSH, Kind.CLIMB)
_BY_TABLE = (Kind.JOINT, Kind.SPACING, Kind.ANCHOR, Kind.ANCHOR_HEAD, Kind.GUY, Kind.LOAD)


class Given(ByValue, frozen=True):
    """One input: what it is, its value as text, and where it came from.

    ``line`` is that of the file; ``table`` names a file beneath references/ and its row;
    ``confidence`` tells how well that row is known. None of both: a default.
    """

    what: str
    value: str
    line: int | None = None
    table: str | None = None
    source: str = ""
    confidence: str = ""


def inputs_of(examination: Examination, check: Check) -> list[Given]:
    """Return every input of a check: of the site, factors, ground, and the parts that it is of."""
    return [
        *_site(examination),
        *_factors(examination, check),
        *_ground(examination, check),
        *_tables(examination, check),
        *_parts(examination, check),
    ]


def _site(examination: Examination) -> Iterator[Given]:
    design, site = examination.design, examination.site
    lines = _lines(design, _SITE)
    for key, line in lines.items():
        yield Given(f"site {key}", _typed(design, line), line)
    for key, taken in _NOT_GIVEN.items():
        if key not in lines:
            yield Given(f"site {key}", taken)
    if "basis" not in lines:
        yield Given("site basis", site.basis)
    if "safety" not in lines and site.basis == "service":
        yield Given("site safety", four_figures(site.safety))
    for name in standard_of(site.method).tables(site.method):
        table = references.table(name)
        yield Given(
            f"wind by {site.method}",
            standard_of(site.method).document(site.method),
            table=name,
            source=plain_source(table.source),
            confidence=table.confidence,
        )


def _factors(examination: Examination, check: Check) -> Iterator[Given]:
    basis = examination.site.basis
    if basis == EQUILIBRIUM and check.kind in _PARTS:
        basis = STRENGTH
    row = references.table("combinations").one("basis", basis)
    for what, factor in (("factor on dead load", check.dead), ("factor on wind", check.wind)):
        yield Given(
            what,
            four_figures(factor),
            table=f"combinations: {basis}",
            source=plain_source(row["source"]),
            confidence=row["confidence"],
        )


def _ground(examination: Examination, check: Check) -> Iterator[Given]:
    ground = examination.standing.ground
    for quantity in _OF_GROUND.get(check.kind, ()):
        if (rating := ground.ratings.get(quantity)) is not None:
            yield Given(
                f"{quantity} of {ground.name}",
                f"{four_figures(rating.value)} Pa",
                table=f"ground/ground_values: {ground.name}, {quantity}",
                source=plain_source(rating.source),
                confidence=rating.confidence,
            )
    if check.kind in _RUBS:
        for kind in dict.fromkeys(patch.contact for patch in examination.structure.patches):
            rubs = ground.friction[kind]
            yield Given(
                f"friction of {kind} on {ground.name}",
                four_figures(rubs.coefficient),
                table=f"ground/ground_friction: {ground.name}, {kind}",
                source=plain_source(rubs.source),
                confidence=rubs.confidence,
            )


def _tables(examination: Examination, check: Check) -> Iterator[Given]:
    """Yield the keys of the row of a joint, anchor, guy or load that a check is of, or a seam's."""
    design = examination.design
    if check.kind in _BY_TABLE:
        for key, line in _lines(design, check.subject).items():
            yield Given(f"{check.subject}: {key}", _typed(design, line), line)
    if check.kind is Kind.SEAM:
        for row in design.several(SeamRow):
            for key, line in row.lines.items() if row.part == check.subject else ():
                if line is not None:
                    yield Given(f"seam of {row.part}: {key}", _typed(design, line), line)


def _parts(examination: Examination, check: Check) -> Iterator[Given]:
    """Yield the keys of the parts that a check is of, and what their materials are."""
    design = examination.design
    names = _parts_of(design, check)
    for part in design.parts:
        if part.name not in names:
            continue
        for key, line in _lines(design, part.name).items():
            if key != "name":
                yield Given(f"{part.name}: {key}", _typed(design, line), line)
    used = dict.fromkeys(
        part.material for part in design.parts if part.name in names and part.material
    )
    for name in used:
        found = materials.find_material(name)
        yield Given(
            f"density of {name}",
            f"light {four_figures(found.light)}, typical {four_figures(found.typical)}, "
            f"heavy {four_figures(found.heavy)} kg/m3",
            table=f"materials: {name}",
            source=plain_source(found.source),
            confidence=found.confidence,
        )


def _parts_of(design: Design, check: Check) -> frozenset[str]:
    every = frozenset(part.name for part in design.parts)
    if check.kind in _OF_ALL_PARTS:
        return every
    joints = [row for row in design.several(JointRow) if row.name == check.subject]
    if joints:
        return frozenset(name for row in joints for name in (row.of, row.to))
    return frozenset({check.subject}) & every


def _lines(design: Design, name: str) -> dict[str, int]:
    """Return the lines of the keys that a table of that name gives, in the order of the file."""
    return {key: line for (of, key), line in design.lines.items() if of == name and key is not None}


def _typed(design: Design, line: int) -> str:
    """Return what stands behind the key on a line of the file, without its comment."""
    rows = design.text.splitlines()
    typed = rows[line - 1].partition("=")[2] if line <= len(rows) else ""
    quote: str | None = None
    for place, sign in enumerate(typed):
        if sign in "'\"":
            quote = sign if quote is None else None if sign == quote else quote
        elif sign == "#" and quote is None:
            return typed[:place].strip()
    return typed.strip()
