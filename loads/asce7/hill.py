"""Faster gusts on a hill: the topographic factor at a crest, at its greatest."""

from ... import references

_STEEPEST = 0.5
"""Height over half-width of the steepest rise that the standard tells apart (Fig. 26.8-1)."""

LANDFORMS = {"ridge": "ridge_2D", "bluff": "escarpment_2D", "hill": "hill_3D"}
"""What people call it, and the column of the table."""


def greatest_topographic_factor(landform: str, exposure: str) -> float:
    """Return K_zt at the ground on the crest of the steepest ridge, bluff or hill.

    K_zt = (1 + K1 K2 K3)^2 with K2 = K3 = 1 on the crest at the ground, and K1 = k H/Lh with k by
    landform and exposure B, C or D; a gentler rise has less. KeyError for another landform or
    exposure. ASCE/SEI 7-16 Eq. 26.8-1 and Fig. 26.8-1.
    """
    row = references.table("wind/asce7_kzt").one("parameter", f"K1/(H/Lh) Exposure {exposure}")
    return (1.0 + float(row[LANDFORMS[landform]]) * _STEEPEST) ** 2
