"""One piece by several books of wind, and two pieces beside each other: what was found of each."""

from collections.abc import Mapping

from ...design.model import Design
from ...loads.combinations import resistance_basis
from ...loads.other_books import in_every_book
from ...loads.wind.site import Site
from ...units.arrays import first_greatest
from ...units.frozen import ByIdentity, replace
from ..examination import Examination, examine
from ..judged.judging import Kind
from ..limits import Limits
from ..timber.books import book_of
from ..verdict import Word


class Comparison(ByIdentity, frozen=True):
    """What one book, or one ``design``, makes of a piece: SI, along the wind that pushes most.

    ``coefficient`` is the force over velocity pressure and silhouette, with gust effect and
    directionality; ``factor`` what the basis asks of what holds against what turns over.
    ``timber`` is what people call the book by which wood and fasteners resist here, ``joints`` how
    much each joint uses of what it may hold, ``most_used`` the same of what is used most of joints,
    seams and parts: None without any, without end where the piece gives way before its joints are
    asked. ``gives_way`` names the parts that give way, or come loose. Fasteners may stand in
    ``end_grain``, or be ``thick``: bolts and lag screws.
    """

    design: Design
    site: Site
    limits: Limits
    word: Word
    mass: float
    least_wind: bool
    pressure: float
    area: float
    coefficient: float
    force: float
    factor: float
    timber: str
    joints: Mapping[str, float]
    most_used: float | None
    gives_way: str
    end_grain: bool
    thick: bool


_ASKED = (Kind.JOINT, Kind.SEAM, Kind.MEMBER, Kind.RACKING)
_THICK = ("bolt", "lag screw")


def by_book(design: Design) -> tuple[Comparison, ...]:
    """Return what each book that the site allows makes of a design, its own first.

    Raises DesignError where it cannot stand at all.
    """
    own = examine(design)
    sites = in_every_book(own.site, own.structure.height)
    others = (examine(replace(design, tables={**design.tables, Site: site})) for site in sites[1:])
    return tuple(comparison_of(each) for each in (own, *others))


def comparison_of(found: Examination) -> Comparison:
    """Return what is compared of an examination."""
    wind, factors, joints = found.wind, found.factors, found.joints
    d = first_greatest(wind.force)
    offered = wind.pressure * float(wind.area[d])
    racks = [c for c in found.checks if c.kind is Kind.RACKING and c.utilization is None]
    gives = [str(name) for check in racks if not check.passes for name in check.slots]
    return Comparison(
        design=found.design,
        site=found.site,
        limits=found.limits,
        word=found.verdict.word,
        mass=found.structure.mass("typical"),
        least_wind=found.minimum_governs,
        pressure=wind.pressure,
        area=float(wind.area[d]),
        coefficient=float(wind.force[d]) / offered if offered > 0.0 else 0.0,
        force=float(wind.force[d]),
        factor=factors.wind / factors.helping,
        timber=book_of(resistance_basis(found.site)).title,
        joints={one.row.name: one.check.used for one in joints},
        most_used=max((c.used for c in found.checks if c.kind in _ASKED), default=None),
        gives_way=", ".join(dict.fromkeys(gives)),
        end_grain=any(one.fasteners.driven.into == "end grain" for one in joints),
        thick=any(one.row.fastener.kind in _THICK for one in joints),
    )
