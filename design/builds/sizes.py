"""Sizes as builders give them: over flats, over points, by the edge, along a slope, by stock."""

from collections.abc import Callable
from math import cos, hypot, pi, sqrt, tan

from ...units import INCH, plain
from ..bounds import SIZE, Bounds
from ..reader.row import Row
from ..reader.schema import Key

ROUNDING = 1.0e-9
"""What inches lose as metres: sizes closer than this part of themselves are alike."""


def width_keys(name: str) -> tuple[str, str, str]:
    """Return the three keys that may give one width: over flats, one edge, over points."""
    return name, f"{name}_side", f"{name}_points"


def end_keys(name: str, bounds: Bounds = SIZE) -> tuple[Key, ...]:
    """Return the keys for one width of a regular figure, however it is given."""
    return tuple(Key(key, "length", bounds=bounds) for key in width_keys(name))


def across_flats(row: Row, name: str, sides: int | None, needed: bool = True) -> float | None:
    """Return a width over flats in m (twice the apothem of ``sides``) however it was given."""
    given = [key for key in width_keys(name) if row.given(key)]
    if len(given) > 1:
        row.refuse(
            given[1],
            f"one measure of this width: '{given[0]}' is given already",
            f"leave out '{given[1]}', or '{given[0]}'",
        )
        return None
    if not given:
        if needed:
            row.need(name)
        return None
    key = given[0]
    value = row.quantity(key)
    if key == name or sides is None or value is None:
        return value if key == name else None
    if sides == 0:
        row.refuse(key, f"'{name}', the diameter, where it is round", f"{name} = '…'")
        return None
    if key.endswith("_points") and sides % 2:
        row.refuse(
            key,
            f"'{name}_side', or '{name}' (twice from the middle to a flat): of {sides} sides no "
            "two points lie opposite",
            f"{name}_side = '…'",
        )
        return None
    return _flats(row, key, value, sides)


def flats_from_side(side: float, sides: int) -> float:
    """Return the width over flats (twice the apothem) of a regular figure from its edge, in m.

    s = 2 a tan(pi/n): plane geometry.
    """
    return side / tan(pi / sides)


def flats_from_points(points: float, sides: int) -> float:
    """Return the width over flats of a regular figure of even sides from that over points, in m.

    2 a = 2 R cos(pi/n): plane geometry.
    """
    return points * cos(pi / sides)


def shell_height(row: Row, bottom: float | None, top: float | None) -> float | None:
    """Return a body's height in m, given straight up or as the length of its panels."""
    if row.given("height") and row.given("panel_length"):
        row.refuse(
            "panel_length",
            "either 'height' (straight up) or 'panel_length' (along the slope)",
            "leave out one of the two",
        )
        return None
    if not row.given("panel_length"):
        row.need("height")
        return row.quantity("height")
    along = row.quantity("panel_length")
    if along is None or bottom is None or top is None:
        return None
    inward = abs(bottom - top) / 2.0
    if along <= inward * (1.0 + ROUNDING):
        row.refuse(
            "panel_length",
            f"longer than the {length_as_shown(row, inward)} that the panels lean in",
            "or give 'height', straight up",
        )
        return None
    return sqrt(along**2 - inward**2)


def wall_fits(row: Row, key: str, wall: float, largest: float, instead: str = "") -> bool:
    """Return whether a wall leaves a hollow; record a fault naming the largest if not."""
    if wall < largest * (1.0 - ROUNDING):
        return True
    key = key if row.given(key) else "stock"
    row.refuse(key, f"less than {length_as_shown(row, largest)}, where it closes up", instead)
    return False


def largest_hollow(hollow: Callable[[float], bool], most: float) -> float:
    """Return the wall at which a body stops being hollow, by halving from ``most``, in m."""
    low, high = 0.0, most
    for _ in range(50):
        middle = (low + high) / 2.0
        low, high = (middle, high) if hollow(middle) else (low, middle)
    return high


def largest_lean_wall(width: float, lean: float, height: float) -> float:
    """Return the wall, square to itself, that fills half of ``width`` on a leaning side.

    The level thickness of a wall t that leans by ``lean`` over ``height`` is t / cos(angle).
    """
    return width / 2.0 * height / hypot(height, lean)


def length_as_shown(row: Row, length: float) -> str:
    """Return a length in the units in which the design is shown."""
    if row.reading.metric:
        return f"{plain(length * 1000.0)} mm"
    return f"{plain(length / INCH)} in"


def _flats(row: Row, key: str, value: float, sides: int) -> float | None:
    """Return a width over flats from the edge or the width over points that the key gives."""
    by_edge = key.endswith("_side")
    flats = flats_from_side(value, sides) if by_edge else flats_from_points(value, sides)
    if flats > SIZE.most:
        row.refuse(key, f"a width of {SIZE.words} over flats")
        return None
    return flats
