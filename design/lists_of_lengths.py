"""Lists of lengths: an offset, the points of an outline, and several outlines."""

from typing import cast

from .kind_words import Listener, mistyped, read_quantity, typed
from .schema import Key

Corners = tuple[tuple[float, float], ...]


def read_offset(key: Key, value: object, to: Listener) -> tuple[float, float, float] | None:
    """Return three signed lengths in m, or None with a fault recorded."""
    items = cast("list[object]", value) if isinstance(value, list) else []
    if len(items) != 3:
        mistyped(key, cast(object, value), to)
        return None
    along = Key(key.name, "length", bounds=key.limits())
    found = [read_quantity(along, item, to) for item in items]
    x, y, z = found
    return (x, y, z) if x is not None and y is not None and z is not None else None


def read_outline(key: Key, value: object, to: Listener) -> Corners | None:
    """Return an outline's points, signed lengths (x, z) in m, or None with faults recorded."""
    if not isinstance(value, list):
        mistyped(key, value, to)
        return None
    return _points(key, cast("list[object]", value), "", to)


def read_outlines(key: Key, value: object, to: Listener) -> tuple[Corners, ...] | None:
    """Return several outlines, or None with faults recorded."""
    if not isinstance(value, list):
        mistyped(key, value, to)
        return None
    items = cast("list[object]", value)
    if items and all(_is_point(item) for item in items):
        hint = f"one more pair of brackets: {key.name} = [[ … ]], a list for each"
        mistyped(key, items, to, hint)
        return None
    found: list[Corners | None] = []
    for number, item in enumerate(items, 1):
        if isinstance(item, list):
            found.append(_points(key, cast("list[object]", item), f"hole {number}, ", to))
        else:
            to.fault(key.name, typed(item), f"hole {number}: a list of points")
            found.append(None)
    whole = tuple(corners for corners in found if corners is not None)
    return whole if len(whole) == len(found) else None


class _Among:
    """Passes on what is said of one value among many, with where it stands."""

    def __init__(self, to: Listener, where: str) -> None:
        self._to = to
        self._where = where

    @property
    def metric(self) -> bool:
        return self._to.metric

    def fault(self, key: str | None, found: str, expected: str, hint: str = "") -> None:
        self._to.fault(key, found, f"{self._where}: {expected}", hint)

    def note(self, text: str) -> None:
        self._to.note(f"{self._where}: {text}")


def _points(key: Key, items: list[object], where: str, to: Listener) -> Corners | None:
    along = Key(key.name, "length", bounds=key.limits())
    points: list[tuple[float, float]] = []
    for number, item in enumerate(items, 1):
        here = _Among(to, f"{where}point {number}")
        pair = cast("list[object]", item) if isinstance(item, list) else []
        if len(pair) != 2:
            here.fault(key.name, typed(cast(object, item)), "two lengths: right and up")
            continue
        x, z = (read_quantity(along, length, here) for length in pair)
        if x is not None and z is not None:
            points.append((x, z))
    return tuple(points) if len(points) == len(items) else None


def _is_point(item: object) -> bool:
    pair = cast("list[object]", item) if isinstance(item, list) else []
    return len(pair) == 2 and not any(isinstance(each, list) for each in pair)
