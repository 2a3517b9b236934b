"""One piece by several books of wind, and two pieces beside each other: what was found of each."""

from collections.abc import Mapping

from ...design.model import Design
from ...loads.combinations import resistance_basis
from ...loads.other_books import in_every_book
from ...loads.wind.site import Site
from ...units.frozen import ByIdentity, replace
from ..examination import Examination, examine
from ..judged.judging import Kind
from ..timber.books import book_of


class Comparison(ByIdentity, frozen=True):
    """What one book, or one design, makes of a piece: SI, along the wind that pushes most.

    ``coefficient`` is the force over velocity pressure and silhouette, with gust effect and
    directionality; ``factor`` what the basis asks of what holds against what turns over.
    """

    examination: Examination
    pressure: float
    area: float
    coefficient: float
    force: float
    factor: float

    @property
    def site(self) -> Site:
        """Return the site as this book takes it."""
        return self.examination.site

    @property
    def timber(self) -> str:
        """Return what people call the book by which wood and fasteners resist here."""
        return book_of(resistance_basis(self.site)).title

    @property
    def joints(self) -> Mapping[str, float]:
        """Return how much each joint uses of what it may hold, by its name."""
        return {one.row.name: one.check.rank for one in self.examination.joints}

    @property
    def most_used(self) -> float | None:
        """Return how much what is used most of joints, seams and parts uses; None without any.

        Without end where the piece gives way before its joints are asked.
        """
        kinds = (Kind.JOINT, Kind.SEAM, Kind.MEMBER, Kind.RACKING)
        found = [one.rank for one in self.examination.checks if one.kind in kinds]
        return max(found, default=None)

    @property
    def gives_way(self) -> str:
        """Return which parts give way, or come loose, so that nothing else of it is asked."""
        gives = [one for one in self.examination.checks if one.kind is Kind.RACKING]
        found = [one for one in gives if one.utilization is None and not one.passes]
        return ", ".join(dict.fromkeys(str(name) for one in found for name in one.slots))

    @property
    def end_grain(self) -> bool:
        """Return whether fasteners stand in end grain."""
        return any(one.fasteners.driven.into == "end grain" for one in self.examination.joints)

    @property
    def thick_fasteners(self) -> bool:
        """Return whether bolts or lag screws hold it together."""
        kinds = {one.row.fastener.kind for one in self.examination.joints}
        return bool(kinds & {"bolt", "lag screw"})


def by_book(design: Design) -> tuple[Comparison, ...]:
    """Return what each book that the site allows makes of a design, its own first.

    Raises DesignError where it cannot stand at all.
    """
    own = examine(design)
    sites = in_every_book(own.site, own.structure.height)
    others = (examine(replace(design, tables={**design.tables, Site: site})) for site in sites[1:])
    return tuple(comparison_of(each) for each in (own, *others))


def comparison_of(examination: Examination) -> Comparison:
    """Return what is compared of an examination."""
    wind = examination.wind
    d = int(wind.force.argmax())
    offered = wind.pressure * float(wind.area[d])
    factors = examination.factors
    return Comparison(
        examination=examination,
        pressure=wind.pressure,
        area=float(wind.area[d]),
        coefficient=float(wind.force[d]) / offered if offered > 0.0 else 0.0,
        force=float(wind.force[d]),
        factor=factors.wind / factors.helping,
    )
