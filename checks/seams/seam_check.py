"""Seams that the file says how to fasten, judged: what each fastener is asked, and what it holds.

A fastener stands for the length of seam up to halfway to its neighbours. It takes the shear flow of
that length across itself and the pull of its panel along itself, both at their greatest at once.
"""

from collections.abc import Sequence
from math import hypot, inf

from ...design.faults import DesignError, Fault
from ...design.model import Part
from ...design.structure import Structure
from ...loads.combinations import Factors
from ...statics.tables.fastener_key import CROWN_ACROSS
from ...statics.tables.seam_table import SeamRow
from ...units import INCH, plain
from ...units.frozen import ByIdentity
from ..fasteners.spacing import Near, Nearest, SpacingFound, spacing_found
from ..joints.combined import fastener_use
from ..judged.judging import Check, Kind
from ..timber.books import book_of, titled
from ..timber.terms.capacity import Capacity
from ..timber.terms.driven import Driven
from ..timber.terms.joint_material import stuff
from .seam_demands import Seams
from .seam_fasteners import held_along_a_seam, room_along_a_seam, through_a_panel
from .tubes import seamed_parts, slant

_SOURCE = "shear flow V Q/(2 I) and T/(2 A)"


class SeamFound(ByIdentity, frozen=True):
    """What was found of a part's seams: its check, the fastener, and what it is asked in N.

    ``tension`` along a fastener and ``shear`` across it; ``basis`` is that of judgement.
    """

    row: SeamRow
    seams: Seams
    check: Check
    driven: Driven
    holds: Capacity
    tension: float
    shear: float
    factors: Factors
    basis: str


class SeamFastened(ByIdentity, frozen=True):
    """Seams as the file fastens them: how each fastener is driven and what it holds."""

    row: SeamRow
    driven: Driven
    holds: Capacity


def fastened_seams(structure: Structure, basis: str) -> tuple[SeamFastened, ...]:
    """Return every seam that the file fastens, in its order, with what a fastener holds there.

    DesignError with all that is wrong: parts without seams, named twice, stuff for which no value
    is published.
    """
    found: list[SeamFastened] = []
    faults: list[Fault] = []
    first: dict[str, SeamRow] = {}
    for row in structure.design.several(SeamRow):
        wrong = _wrong(structure, row, first.get(row.part), basis)
        first.setdefault(row.part, row)
        if wrong is not None:
            faults.append(wrong)
            continue
        part, wall, long = _walls(structure, row.part)
        driven = through_a_panel(
            stuff(part),
            wall,
            row.cleat,
            row.made_wet,
            row.stays_dry,
            row.crown == CROWN_ACROSS,
        )
        try:
            found.append(SeamFastened(row, driven, held_along_a_seam(row, driven, long, basis)))
        except ValueError as unknown:
            faults.append(_unknown(structure, row, str(unknown), driven))
    if faults:
        raise DesignError(tuple(faults))
    return tuple(found)


def judge_seams(
    fastened: Sequence[SeamFastened], seams: Sequence[Seams], factors: Factors, basis: str
) -> tuple[SeamFound, ...]:
    """Return what was found of fastened seams under what the ``seams`` of their parts carry."""
    carry = {each.part: each for each in seams}
    return tuple(
        _judged(one.row, carry[one.row.part], one.driven, one.holds, factors, basis)
        for one in fastened
    )


def check_seam_spacing(fastened: Sequence[SeamFastened]) -> tuple[SpacingFound, ...]:
    """Return what is found of the room between fasteners along seams, by the grain of the cleat."""
    found: list[SpacingFound] = []
    for one in fastened:
        row, book = one.row, titled(one.holds.book)
        as_driven, drilled = (
            Nearest(
                Near.EACH_OTHER,
                row.part,
                row.spacing,
                room_along_a_seam(row, one.driven.side, book, predrilled=holes).along,
            )
            for holes in (row.predrilled, True)
        )
        name = f"seams of {row.part}"
        found.append(spacing_found(name, row.fastener, as_driven, drilled, book.spacing))
    return tuple(found)


def refastened_seams(found: SeamFound, row: SeamRow) -> SeamFound:
    """Return what is found of the same seams fastened otherwise. ValueError as ``capacity``."""
    driven = found.driven
    if row.cleat != found.row.cleat:
        driven = through_a_panel(
            driven.side,
            driven.through,
            row.cleat,
            row.made_wet,
            row.stays_dry,
            driven.crown_across,
        )
    holds = held_along_a_seam(row, driven, found.seams.long, found.basis)
    return _judged(row, found.seams, driven, holds, found.factors, found.basis)


def _judged(
    row: SeamRow, seams: Seams, driven: Driven, holds: Capacity, factors: Factors, basis: str
) -> SeamFound:
    T, V = seams.pull * row.spacing, seams.sideways * row.spacing
    used = float(fastener_use(holds.law, T, V, holds.pull, holds.sideways))
    force = hypot(T, V)
    capacity_ = min(holds.pull, holds.sideways)
    if used > 0.0:
        capacity_ = force / used if used < inf else 0.0
    check = Check(
        kind=Kind.SEAM,
        subject=row.part,
        demand=force,
        capacity=capacity_,
        unit="N",
        utilization=used if used < inf else None,
        passes=used <= 1.0,
        source=f"{holds.source}; {_SOURCE}; {factors.source}",
        dead=0.0,
        wind=factors.wind,
    )
    return SeamFound(row, seams, check, driven, holds, T, V, factors, basis)


def _walls(structure: Structure, name: str) -> tuple[Part, float, float]:
    """Return a part with seams, how thick its walls are and how long its seams, in m."""
    part = next(each for each in structure.design.parts if each.name == name)
    walls = part.shape.walls()
    assert walls is not None
    return part, walls.wall, slant(walls)


def _wrong(structure: Structure, row: SeamRow, before: SeamRow | None, basis: str) -> Fault | None:
    """Return what is wrong with a row that was read, None where nothing is."""
    if before is not None:
        line = before.lines.get("part")
        where = f"on line {line}" if line else "above"
        return _fault(
            structure, row, "part", row.part, f"one [[seam]] for each part: it has one {where}"
        )
    if row.part not in seamed_parts(structure):
        return _fault(
            structure,
            row,
            "part",
            row.part,
            "an upright shell of flat panels, or a hollow box with walls all round",
            "shape = 'shell' with sides = 3 or more, or 'box' with a wall and no open side",
        )
    part, _, long = _walls(structure, row.part)
    needs = room_along_a_seam(row, stuff(part), book_of(basis))
    end = needs.end
    room = long - 2.0 * end
    if row.spacing <= room * (1.0 + 1.0e-9):
        return None
    metric = structure.design.units == "metric"
    spacing, room_, end_, long_ = (
        f"{v * 1000.0:.0f} mm" if metric else f"{plain(v / INCH, 3)} in"
        for v in (row.spacing, room, end, long)
    )
    ends = f"{end_} from either end of a seam {long_} long"
    if room < needs.along:
        name = row.fastener.name
        return _fault(structure, row, "fastener", name, f"one of which two have room, {ends}")
    expected = f"at most {room_}: two or more, {ends}"
    return _fault(structure, row, "spacing", spacing, expected)


def _unknown(structure: Structure, row: SeamRow, name: str, driven: Driven) -> Fault:
    out = "leave the seam out: it is then listed as not judged"
    if name in (driven.side.name, driven.main.name):
        return _fault(
            structure,
            row,
            "part",
            name,
            "wood or panels that the book of timber has values for",
            out,
        )
    return _fault(
        structure,
        row,
        "fastener",
        row.fastener.name,
        "a fastener whose sizes and steel are published",
        f"{name}; or {out}",
    )


def _fault(
    structure: Structure, row: SeamRow, key: str, found: str, expected: str, hint: str = ""
) -> Fault:
    line = row.lines.get(key)
    return Fault(structure.design.file, line, f"seam of {row.part}", key, found, expected, hint)
