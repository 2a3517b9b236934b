"""Sheets of plywood and OSB: bending, shear and stiffness by the span rating of a thickness."""

from .. import references, units
from ..references import TableRow
from ..references.table import weakest_confidence
from ..units.frozen import ByValue

_KINDS = {
    "softwood plywood": "ply_3layer",
    "marine plywood": "ply_3layer",
    "MDO": "ply_3layer",
    "OSB": "osb",
}
"""Columns of the table: plywood as the weakest lay-up, of three layers. Marine sheets are not
span-rated; they have more layers and are taken as that too (judgement)."""

_THINNER = 1.0 / 64.0
"""Inches by which a sheet may measure less than the label of its category: half the tolerance."""


class Sheet(ByValue, frozen=True):
    """Capacity of a sheet for each m of its width: ``bending`` in N m/m, ``stiffness`` in N m2/m.

    ``shear`` in N/m is what its layers hold against rolling over each other, F_s(Ib/Q), and
    ``through`` in N/m its shear through the thickness, F_v t_v. Reference values, dry, ten years
    of load: (along, across) the grain of its face. ``unread`` names the sources of what was
    written from memory; ``material`` and ``thickness`` in m say what it is.
    """

    span_rating: str
    bending: tuple[float, float]
    stiffness: tuple[float, float]
    shear: tuple[float, float]
    through: float
    source: str
    confidence: str
    unread: str
    material: str = ""
    thickness: float = 0.0


def find_sheet(material: str, thickness: float) -> Sheet | None:
    """Return what a sheet of a material, ``thickness`` in m, carries; None where none is published.

    The thickest category that it reaches gives its span rating.
    """
    kind = _KINDS.get(material)
    inches = thickness / units.factor("in") + _THINNER
    reached = [
        row
        for row in references.table("wood/panel_span_ratings").rows
        if float(row["least_in"]) <= inches
    ]
    if kind is None or not reached:
        return None
    rating = reached[-1]
    tables = ("wood/panel_bending_apa", "wood/panel_shear_apa", "wood/panel_shear_through_apa")
    row, rolling, through = (
        references.table(table).one("span_rating", rating["span_rating"]) for table in tables
    )
    if not row[f"FbS_par_{kind}"]:
        return None
    pound, inch, foot = (units.factor(unit) for unit in ("lbf", "in", "ft"))

    def both(of: TableRow, value: str, unit: float) -> tuple[float, float]:
        along, across = (float(of[f"{value}_{way}_{kind}"]) * unit for way in ("par", "perp"))
        return along, across

    rows = (row, rating, rolling, through)
    recalled = [each["source"] for each in rows if each["confidence"] == "memory"]
    return Sheet(
        rating["span_rating"],
        both(row, "FbS", pound * inch / foot),
        both(row, "EI", pound * inch**2 / foot),
        both(rolling, "Fs", pound / foot),
        float(through[f"FvTv_{kind}"]) * pound / inch,
        row["source"],
        weakest_confidence(each["confidence"] for each in rows),
        "; ".join(dict.fromkeys(recalled)),
        material,
        thickness,
    )
