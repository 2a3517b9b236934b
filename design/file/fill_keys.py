"""What a body is filled with, and what is wrong between the keys of it."""

from ...materials import ballast
from ..reader.row import Row
from ..reader.schema import Key
from ..shapes.shape import Shape

FILL_WORDS = {
    "soil": "'earth'",
    "dirt": "'earth'",
    "stones": "'gravel'",
    "rocks": "'gravel'",
    "cement": "'concrete'",
}


def fills() -> list[str]:
    """Return what a body may be filled with."""
    return [name for name in ballast.ballast_names() if ballast.find_ballast(name).form == "fill"]


FILL_KEYS = (
    Key("fill", "choice", choices=fills, words=FILL_WORDS),
    Key("fill_depth", "length"),
)


def check_fill(row: Row, shape: Shape | None) -> None:
    """See to it that only an upright hollow body is filled, and no higher than it is."""
    if not row.given("fill"):
        if row.given("fill_depth"):
            row.refuse("fill_depth", "'fill' beside it", "fill = 'gravel'")
        return
    height = shape.fill_height if shape is not None else None
    if shape is not None and height is None:
        row.refuse("fill", "a hollow body: a shell, or a box with 'wall'", "")
    for key in ("under", "tilt", "hangs_at"):
        if row.given(key):
            row.refuse("fill", f"an upright body that stands, without '{key}'", "")
    depth = row.quantity("fill_depth")
    if height is not None and depth is not None and depth > height:
        row.refuse("fill_depth", "at most the body's own height", "leave it out for a full one")
