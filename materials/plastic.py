"""Plastic sheet: the stress and the modulus that its makers publish for design."""

from .. import references, units
from ..units.frozen import ByValue


class Plastic(ByValue, frozen=True):
    """Stress in Pa that a sheet may bear for long without crazing, and modulus of elasticity in Pa.

    ``stands_for`` names the sort.
    """

    name: str
    stress: float
    stiffness: float
    stands_for: str
    source: str
    confidence: str


def find_plastic(material: str) -> Plastic | None:
    """Return the design stress of a material by name; None where none is published here."""
    rows = references.table("plastic_strength").where("name", material)
    if not rows:
        return None
    psi, row = units.factor("psi"), rows[0]
    return Plastic(
        material,
        float(row["stress_psi"]) * psi,
        float(row["E_psi"]) * psi,
        row["stands_for"],
        row["source"],
        row["confidence"],
    )
