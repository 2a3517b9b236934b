"""Metals by the weakest alloy commonly sold under a name: yield strength and stiffness."""

from .. import references, units
from ..units.frozen import ByValue


class Metal(ByValue, frozen=True):
    """Yield strength and modulus of elasticity in Pa; ``safety`` on yield, ``resistance`` factor.

    ``column`` is the rule by which a pressed piece gives way, by its name in
    references/metal_columns.csv; ``stands_for`` names the alloy and temper.
    """

    name: str
    strength: float
    stiffness: float
    safety: float
    resistance: float
    column: str
    stands_for: str
    source: str
    confidence: str


def find_metal(material: str) -> Metal | None:
    """Return the strength of a material by name; None where none is published here."""
    rows = references.table("metal_strength").where("name", material)
    if not rows:
        return None
    psi, row = units.factor("psi"), rows[0]
    return Metal(
        material,
        float(row["Fy_psi"]) * psi,
        float(row["E_psi"]) * psi,
        float(row["safety"]),
        float(row["resistance"]),
        row["column"],
        row["stands_for"],
        row["source"],
        row["confidence"],
    )
