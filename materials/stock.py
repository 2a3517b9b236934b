"""What stock measures as sold: sticks by their nominal size, sheets by what people call them."""

from collections.abc import Mapping
from functools import cache

from .. import references


@cache
def lumber_sizes() -> Mapping[str, tuple[float, float]]:
    """Return thickness and width in m, dressed and dry, by nominal size such as ``'2x4'``."""
    sizes = references.table("wood/lumber_sizes")
    thickness, width = sizes.si("thickness_in").tolist(), sizes.si("width_in").tolist()
    nominal = [row["nominal"] for row in sizes.rows]
    return dict(zip(nominal, zip(thickness, width, strict=True), strict=True))


@cache
def sheet_thicknesses() -> Mapping[str, float]:
    """Return the thickness in m of sheets by name such as ``'3/4 plywood'``: its decimal label."""
    sheets = references.table("wood/stock_sheets")
    names = [row["stock"] for row in sheets.rows]
    return dict(zip(names, sheets.si("thickness_in").tolist(), strict=True))
