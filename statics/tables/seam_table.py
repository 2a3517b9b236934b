"""The ``[[seam]]`` table as people write it: how the panels of a many-sided body are joined."""

from collections.abc import Mapping

from ...design.bounds import Bounds
from ...design.reader.near_names import meant, quoted_names
from ...design.reader.row import Row
from ...design.reader.schema import Key, TableSpec
from ...materials.fastener import Fastener
from ...units import INCH
from ...units.frozen import ByValue, field
from .fastener_key import (
    CROWN_WORDS,
    CROWNS,
    FASTENER_HINT,
    WOOD_WORDS,
    check_crown,
    read_fastener,
    woods,
)

SPACINGS = Bounds(0.5 * INCH, 24.0 * INCH, "from 1/2 in to 24 in (13 to 610 mm)")


class SeamRow(ByValue, frozen=True):
    """Fasteners every ``spacing`` m along each seam of a part, through each panel.

    ``cleat`` names the wood of the strip inside the corner that they go into; without one they go
    into the next panel's edge. ``made_wet`` None is the worse of wet and dry. ``lines`` are those
    of the file by key, for faults that are seen later.
    """

    part: str
    fastener: Fastener
    spacing: float
    cleat: str | None = None
    predrilled: bool = False
    made_wet: bool | None = None
    stays_dry: bool = False
    crown: str | None = None
    lines: Mapping[str, int | None] = field(default_factory=dict[str, int | None])


def _seam(row: Row) -> SeamRow | None:
    part, names = row.text("part"), row.reading.part_names
    if part is not None and part not in names:
        row.refuse("part", f"the name of a part: {quoted_names(names, part)}", meant(part, names))
    found, spacing = read_fastener(row), row.quantity("spacing")
    if found is not None:
        check_crown(row, found)
        if found.kind == "bolt":
            row.refuse("fastener", "nails, screws or staples: a bolt holds in a [[joint]]")
    if part is None or found is None or spacing is None or row.wrong:
        return None
    return SeamRow(
        part=part,
        fastener=found,
        spacing=spacing,
        cleat=row.text("cleat"),
        predrilled=bool(row.flag("predrilled")),
        made_wet=row.flag("made_wet"),
        stays_dry=bool(row.flag("stays_dry")),
        crown=row.text("crown"),
        lines={key: row.reading.scan.line(row.spot.at(key)) for key in row.data},
    )


_KEYS = (
    Key("part", "text", required=True, nth_part=0, hint="part = 'tower': the many-sided part"),
    Key("fastener", "text", required=True, hint=FASTENER_HINT),
    Key("spacing", "length", required=True, bounds=SPACINGS, hint="spacing = '6 in'"),
    Key("cleat", "choice", choices=woods, words=WOOD_WORDS),
    Key("predrilled", "flag"),
    Key("made_wet", "flag"),
    Key("stays_dry", "flag"),
    Key("crown", "choice", choices=CROWNS, words=CROWN_WORDS),
)

_WORDS = {
    **dict.fromkeys(("name", "of", "on", "parts", "shell", "body"), "'part', whose seams they are"),
    **dict.fromkeys(("nail", "screw", "staple", "by"), "'fastener'"),
    **dict.fromkeys(("nails", "screws", "staples"), "'fastener', and 'spacing' how far apart"),
    **dict.fromkeys(("count", "number", "every", "apart"), "'spacing', from one to the next"),
    **dict.fromkeys(
        ("block", "blocks", "cleats", "strip", "batten", "corner", "into", "to"),
        "'cleat', the wood of the strip inside each corner",
    ),
    "glue": "glue is not counted: leave it out",
    "wet": "'made_wet'",
    "dry": "'stays_dry', under a roof and built of dry wood",
}

SEAM = TableSpec("seam", SeamRow, _KEYS, _seam, many=True, words=_WORDS)
