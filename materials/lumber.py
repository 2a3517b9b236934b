"""Graded lumber: the reference design values of a material's species, by grade and size."""

from .. import references, units
from ..references import TableRow
from ..references.table import weakest_confidence
from ..units.frozen import ByValue

GRADES = ("No. 2", "stud")
_LOWEST = "stud"
"""The lowest grade commonly sold of 2 to 4 in lumber: taken where a part names none (judgement)."""

_SLACK = 1.02
"""How much over a printed size a piece may measure and still be of it: 90 mm is a 4x4."""


class Lumber(ByValue, frozen=True):
    """Reference design values in Pa of one species, grade and size; dry, ten years of load.

    ``bending`` F_b with the size factor C_F that belongs to it, ``shear`` F_v parallel to grain,
    ``compression`` F_c and ``tension`` F_t along it with their own size factors,
    ``stiffness`` E (mean) and ``least_stiffness`` E_min. ``timber`` is 5 in and thicker.
    """

    species: str
    grade: str
    bending: float
    size_factor: float
    shear: float
    tension: float
    tension_factor: float
    compression: float
    compression_factor: float
    stiffness: float
    least_stiffness: float
    timber: bool
    source: str
    confidence: str

    @property
    def wet_stiffness(self) -> float:
        """Return E' in Pa of wood that is wet in use. Source: NDS 2018 4.3.3, C_M of E."""
        thickness = "5 in and over" if self.timber else "2 to 4 in"
        rows = references.table("wood/wet_service_CM").where("thickness", thickness)
        factor = next(float(row["CM"]) for row in rows if row["property"] == "E, Emin")
        return self.stiffness * factor


def find_lumber(
    material: str, least: float, wide: float, grade: str | None = None
) -> Lumber | None:
    """Return the design values of a piece ``least`` by ``wide`` m of a material; None without any.

    ``grade`` is one of ``GRADES``; without it the lowest for which there are values. None where
    the material is no graded lumber, or none is graded in that size. KeyError for a material that
    is not known.
    """
    species = references.table("materials").one("name", material)["gravity_row"]
    wanted = (grade,) if grade is not None else (_LOWEST, *GRADES)
    for one in wanted:
        for row in references.table("wood/lumber_design_values").where("species", species):
            if row["grade"] == one and _is_of_size(row, least, wide):
                return _lumber(row, least, wide)
    return None


def find_boards(material: str, thickness: float, grade: str | None = None) -> Lumber | None:
    """Return the design values of boards ``thickness`` m thick, up to 5 1/2 in wide, laid flat.

    From 3/4 in up to 1 1/2 in they are those of 2 in lumber, as for stress-rated boards (NDS
    Supplement 2018 Tables 4A and 4B, footnote 2); the boards of a yard seldom bear such a stamp.
    None as ``find_lumber``, and for thinner ones. KeyError as there.
    """
    if thickness < _board_limit("thinnest stress-rated board") / _SLACK:
        return None
    least = max(thickness, _board_limit("thinnest dimension lumber"))
    return find_lumber(material, least, max(least, _board_limit("width of boards")), grade)


def board_width() -> float:
    """Return how wide in m a board is taken where none is given."""
    return _board_limit("width of boards")


def _board_limit(limit: str) -> float:
    row = references.table("wood/board_limits").one("limit", limit)
    return float(row["size_in"]) * units.factor("in")


def _is_of_size(row: TableRow, least: float, wide: float) -> bool:
    inch = units.factor("in")
    thinnest, thickest = float(row["thickness_least_in"]), float(row["thickness_most_in"])
    within = thinnest / _SLACK <= least / inch <= thickest * _SLACK
    return within and wide / inch <= float(row["width_most_in"]) * _SLACK


def _lumber(row: TableRow, least: float, wide: float) -> Lumber | None:
    psi, inch = units.factor("psi"), units.factor("in")
    factors = references.table("wood/size_factor_CF").where("rule", row["size_factor"])
    fitting = [each for each in factors if wide / inch <= float(each["depth_most_in"]) * _SLACK]
    if not fitting:
        return None
    thick = "4_in" if least / inch > 2.5 * _SLACK else "2_3_in"
    return Lumber(
        species=row["species"],
        grade=row["grade"],
        bending=float(row["Fb_psi"]) * psi,
        size_factor=float(fitting[0][f"CF_Fb_{thick}_thick"]),
        shear=float(row["Fv_psi"]) * psi,
        tension=float(row["Ft_psi"]) * psi,
        tension_factor=float(fitting[0]["CF_Ft"]),
        compression=float(row["Fc_psi"]) * psi,
        compression_factor=float(fitting[0]["CF_Fc"]),
        stiffness=float(row["E_Mpsi"]) * 1.0e6 * psi,
        least_stiffness=float(row["Emin_Mpsi"]) * 1.0e6 * psi,
        timber=row["size_factor"] == "timber",
        source=row["source"],
        confidence=weakest_confidence((row["confidence"], fitting[0]["confidence"])),
    )
