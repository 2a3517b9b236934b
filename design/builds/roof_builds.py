"""How the keys of each roof become its shape, and what is wrong between them."""

from ..reader.row import Row
from ..shapes.cone import Cone
from ..shapes.gables import Gable
from ..shapes.roofs import Dome, Vault
from ..shapes.shape import Shape
from .sizes import (
    ROUNDING,
    across_flats,
    largest_hollow,
    largest_lean_wall,
    length_as_shown,
    wall_fits,
)
from .stock import thickness

_FILLED = "leave out '{}', if it is solid"


def build_cone(row: Row) -> Shape | None:
    """Return a pyramid or cone, or None with its faults recorded."""
    row.need("sides", "height")
    sides, height = row.count("sides"), row.quantity("height")
    bottom, wall = across_flats(row, "bottom", sides), thickness(row, "wall", needed=False)
    if sides is None or bottom is None or height is None:
        return None
    if wall is not None:
        largest = largest_lean_wall(bottom, bottom / 2.0, height)
        if not wall_fits(row, "wall", wall, largest, _FILLED.format("wall")):
            return None
    return Cone(sides, bottom, height, wall)


def build_gable(row: Row) -> Shape | None:
    """Return a pitched roof, straight or with a knee, or None with its faults recorded."""
    row.need("length", "width", "height")
    length, width, height = (row.quantity(key) for key in ("length", "width", "height"))
    slopes = thickness(row, "thickness", needed=False)
    knees = ("knee_width", "knee_height")
    if any(row.given(key) for key in knees):
        row.need(*knees, reason=": both say where the slope breaks")
    if length is None or width is None or height is None or row.failed(*knees):
        return None
    wide, high = (row.quantity(key) for key in knees)
    if wide is not None and high is not None and not _knee_fits(row, width, height, wide, high):
        return None

    def gable(thick: float | None) -> Gable:
        return Gable(length, width, height, thick, wide, high)

    if slopes is not None:
        if wide is None:
            largest = largest_lean_wall(width, width / 2.0, height)
        else:
            largest = largest_hollow(lambda thick: _hollow(gable(thick)), min(width, height))
        if not wall_fits(row, "thickness", slopes, largest, _FILLED.format("thickness")):
            return None
    return gable(slopes)


def build_dome(row: Row) -> Shape | None:
    """Return a cap of a ball, or None with its faults recorded."""
    row.need("across", "height")
    across, height = row.quantity("across"), row.quantity("height")
    wall = thickness(row, "wall", needed=False)
    if across is None or height is None:
        return None
    if height > across / 2.0 * (1.0 + ROUNDING):
        row.refuse(
            "height",
            f"at most half of its width, {length_as_shown(row, across / 2.0)}: half a ball",
            "stand it on a 'shell' with sides = 0, or take a 'ball'",
        )
        return None
    if wall is not None and not wall_fits(row, "wall", wall, height, _FILLED.format("wall")):
        return None
    return Dome(across, min(height, across / 2.0), wall)


def build_vault(row: Row) -> Shape | None:
    """Return a half-round on straight sides, or None with its faults recorded."""
    row.need("length", "width", "height")
    length, width, height = (row.quantity(key) for key in ("length", "width", "height"))
    wall = thickness(row, "wall", needed=False)
    if length is None or width is None or height is None:
        return None
    if height < width / 2.0 * (1.0 - ROUNDING):
        row.refuse(
            "height",
            f"at least half of its width, {length_as_shown(row, width / 2.0)}: "
            "its top is half round",
            "a lower one is a 'gable'",
        )
        return None
    if wall is not None and not wall_fits(row, "wall", wall, width / 2.0, _FILLED.format("wall")):
        return None
    return Vault(length, width, max(height, width / 2.0), wall)


def _knee_fits(row: Row, width: float, height: float, wide: float, high: float) -> bool:
    """Return whether the knee lies outside the straight slope; record a fault if not."""
    if wide >= width * (1.0 - ROUNDING):
        row.refuse(
            "knee_width",
            f"less than the roof's own width at the eaves, {length_as_shown(row, width)}",
            "'knee_width' is the width from knee to knee",
        )
        return False
    if high >= height * (1.0 - ROUNDING):
        row.refuse(
            "knee_height", f"less than the roof's own height, {length_as_shown(row, height)}"
        )
        return False
    straight = height * (1.0 - wide / width)
    if high <= straight * (1.0 + 1.0e-6):
        row.refuse(
            "knee_height",
            f"more than {length_as_shown(row, straight)}, where a straight slope is as wide: below "
            "the "
            "knee a gambrel is the steeper",
            "leave out the knee, if its slopes are straight",
        )
        return False
    return True


def _hollow(roof: Gable) -> bool:
    """Return whether each slope still has an inside, above and below the knee."""
    corners = roof.hollow
    if corners is None:
        return False
    across, up = corners[1]
    return bool(across > 0.0 and up > 0.0)
