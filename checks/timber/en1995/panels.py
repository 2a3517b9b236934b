"""Sheets by EN 1995-1-1 with the characteristic values of EN 12369: outdoors, under wind."""

from functools import cache

import numpy as np
from numpy.typing import ArrayLike

from .... import references
from ....loads.printed.ranges import positive
from ....materials.sheets import Sheet
from ....references import TableRow
from ....units.arrays import Array
from .lateral import MM
from .stuff import MPA, design, en1995_number, wood_of


def bending(sheet: Sheet, strip: ArrayLike, basis: str, across: bool) -> Array | None:
    """Return the moment in N m per m of width (…): f_m t^2/6, less of a narrow ``strip`` (…) in m.

    ``across`` the grain of its face. None where k_mod allows the sheet no place outdoors.
    Characteristic values are of strips 300 mm wide; of narrower ones a fifth less (judgement).
    Source: EN 12369-1:2001 and EN 12369-2:2011 with EN 1995-1-1:2004 Table 3.1.
    """
    found = _of(sheet, basis)
    if found is None:
        return None
    row, share = found
    strength = MPA * float(row[f"fm_{'across' if across else 'along'}_N_mm2"])
    moment = strength * share * sheet.thickness**2 / 6.0
    return np.asarray(moment * strip_factor(strip))


def strip_factor(strip: ArrayLike) -> Array:
    """Return what a strip so many m wide (…) keeps for each m of width: judgement.

    The standard has no such factor. ValueError unless above 0.
    """
    least, full = (MM * en1995_number(f"strip {name} mm") for name in ("least", "in full from"))
    kept = en1995_number("strip keeps")
    return np.interp(positive("strip", strip), [least, full], [kept, 1.0])


def rolling_shear(sheet: Sheet, basis: str) -> float | None:
    """Return the shear in N per m of width that its layers hold, f_r t/1.5. None as ``bending``."""
    found = _of(sheet, basis)
    if found is None:
        return None
    row, share = found
    return MPA * float(row["fr_N_mm2"]) * share * sheet.thickness / 1.5


def through(sheet: Sheet, basis: str) -> float | None:
    """Return the shear in N per m through its thickness, f_v t. None as ``bending``."""
    found = _of(sheet, basis)
    if found is None:
        return None
    row, share = found
    return MPA * float(row["fv_N_mm2"]) * share * sheet.thickness


def panel_rows(sheet: Sheet) -> tuple[TableRow, ...]:
    """Return the rows that a sheet's values stand in; none where there is none."""
    row = _row(sheet.material, round(sheet.thickness / MM, 6))
    return () if row is None else (row,)


def _of(sheet: Sheet, basis: str) -> tuple[TableRow, float] | None:
    row = _row(sheet.material, round(sheet.thickness / MM, 6))
    share = None if row is None else design(row["stuff"], "panel", basis)
    return None if row is None or share is None else (row, share)


@cache
def _row(material: str, thickness: float) -> TableRow | None:
    """Return the row of a material ``thickness`` mm thick, None where none is printed."""
    wood = wood_of(material)
    rows = references.table("wood/en12369_panels").where(
        "stuff", "" if wood is None else wood.stuff
    )
    thinner = [row for row in rows if float(row["over_mm"]) < thickness]
    return thinner[-1] if thinner else None
