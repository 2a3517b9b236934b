"""Parts that stand in the ground: how deep, in what, and what is wrong between their keys."""

from ...units import INCH
from ..bounds import SIZE, Bounds
from ..reader.row import Row
from ..reader.schema import Key
from ..shapes.shape import Shape

DEPTHS = Bounds(INCH, SIZE.most, "from 1 in (25 mm) to 100 ft (30.48 m)")
"""What goes in less than an inch is held by no earth: it stands on the ground (judgement)."""

EMBED_KEYS = (
    Key("embed", "length", bounds=DEPTHS),
    Key("encased", "length"),
    Key("constrained", "flag"),
    Key("may_move", "flag"),
)

_NOT_IN_GROUND = ("on", "under", "tilt", "loose", "hangs_at")


def check_embedded(row: Row, shape: Shape | None) -> None:
    """See to it that what stands in the ground stands on nothing else, upright."""
    if not row.given("embed"):
        for key in ("encased", "constrained", "may_move"):
            if row.given(key):
                row.refuse(key, f"'embed' beside '{key}'", "embed = '2 ft'")
        return
    for key in _NOT_IN_GROUND:
        if row.given(key):
            row.refuse(key, f"no '{key}' on a part that stands in the ground", "leave it out")
    if shape is not None and not shape.has_foot:
        row.refuse("embed", "a post, a board or a body that can stand in the ground", "")
