"""Which way a piece goes over, and how the wind meets its foot, as data: sides, never bearings."""

from enum import StrEnum

import numpy as np

from ..loads.seen.directions import edge_normals
from ..units.arrays import Array
from .as_one import AsOne
from .judged.finding import Finding

_ROUND_CORNERS = 24
_NEAR_DEG = 12.0
_SAME = 0.01


class _Foot(StrEnum):
    """What kind of outline a footprint has."""

    ROUND = "round"
    REGULAR = "regular"
    SQUARE = "square"
    RECTANGLE = "rectangle"
    UNEVEN = "uneven"


class Over(StrEnum):
    """Over what a piece goes."""

    ANY_SIDE = "any side"
    ANY_CORNER = "any corner"
    CORNER = "a corner"
    LONG_SIDE = "a long side"
    SHORT_SIDE = "a short side"
    QUARTER = "one of its quarters"


class Meets(StrEnum):
    """How a wind meets the foot."""

    ANY_SIDE = "from any side"
    LONG_FACE = "on a long face"
    SHORT_FACE = "on a short face"
    FACE = "on the face"
    CORNER = "corner on"
    ASLANT = "aslant"
    QUARTER = "from one of its quarters"


QUARTERS = (
    "back",
    "back right",
    "right",
    "front right",
    "front",
    "front left",
    "left",
    "back left",
)
"""The quarters of a piece as its file has it, clockwise from above."""


def foot_of(footprint: Array) -> _Foot:
    """Return what kind of outline a footprint (k, 2) has."""
    if len(footprint) >= _ROUND_CORNERS:
        return _Foot.ROUND
    edges = np.roll(footprint, -1, axis=0) - footprint
    lengths = np.hypot(*edges.T)
    reach = np.hypot(*(footprint - footprint.mean(axis=0)).T)
    if np.ptp(reach) > _SAME * reach.max():
        return _Foot.UNEVEN
    if np.ptp(lengths) <= _SAME * lengths.max():
        return _Foot.SQUARE if len(footprint) == 4 else _Foot.REGULAR
    return _Foot.RECTANGLE if len(footprint) == 4 else _Foot.UNEVEN


def goes_over(examination: AsOne, toward_deg: float) -> Over:
    """Return over what a piece goes, turning over toward a bearing."""
    footprint = examination.structure.footprint
    foot = foot_of(footprint)
    alike = _same_every_way(examination)
    if foot is _Foot.ROUND:
        return Over.ANY_SIDE if alike else Over.QUARTER
    normal, length = _nearest_edge(footprint, toward_deg)
    if normal > _NEAR_DEG and foot is not _Foot.UNEVEN:
        return Over.ANY_CORNER if alike else Over.CORNER
    if foot is _Foot.RECTANGLE:
        long = length > _edge_lengths(footprint).mean()
        return Over.LONG_SIDE if long else Over.SHORT_SIDE
    return Over.ANY_SIDE if foot is not _Foot.UNEVEN and alike else Over.QUARTER


def meets(examination: AsOne, from_deg: float) -> Meets:
    """Return how a wind from a bearing meets the foot."""
    footprint = examination.structure.footprint
    foot = foot_of(footprint)
    off, length = _nearest_edge(footprint, from_deg)
    if foot is _Foot.ROUND:
        return Meets.ANY_SIDE if _same_every_way(examination) else Meets.QUARTER
    if foot is _Foot.UNEVEN:
        return Meets.QUARTER
    if off <= _NEAR_DEG and foot is _Foot.RECTANGLE:
        long = length > _edge_lengths(footprint).mean()
        return Meets.LONG_FACE if long else Meets.SHORT_FACE
    if off <= min(_NEAR_DEG, 0.25 * 360.0 / len(footprint)):
        return Meets.FACE
    corners = _bearings(footprint - footprint.mean(axis=0))
    near = float(_apart(corners, from_deg).min())
    return Meets.CORNER if near <= _NEAR_DEG else Meets.ASLANT


def over_found(examination: AsOne, toward_deg: float) -> Finding:
    """Return over what a piece goes toward a bearing, and at which side of it that is."""
    over = goes_over(examination, toward_deg)
    return Finding(over, {"side": quarter_of(examination, toward_deg)})


def met_by(examination: AsOne, from_deg: float) -> Finding:
    """Return how a wind from a bearing meets the foot, and at which side of the piece."""
    return Finding(meets(examination, from_deg), {"side": quarter_of(examination, from_deg)})


def quarter_of(examination: AsOne, bearing: float) -> str:
    """Return the quarter of the piece, as the file has it before its last turn, at a bearing."""
    own = bearing + np.degrees(examination.design.turn)
    return QUARTERS[int(((own + 22.5) % 360.0) // 45.0)]


def _nearest_edge(footprint: Array, bearing: float) -> tuple[float, float]:
    """Return how far (degrees) the nearest edge's normal lies off, and that edge's length."""
    off = _apart(_bearings(edge_normals(footprint)), bearing)
    i = int(off.argmin())
    return float(off[i]), float(_edge_lengths(footprint)[i])


def _edge_lengths(footprint: Array) -> Array:
    return np.hypot(*(np.roll(footprint, -1, axis=0) - footprint).T)


def _bearings(vectors: Array) -> Array:
    return np.degrees(np.arctan2(vectors[:, 0], vectors[:, 1])) % 360.0


def _apart(bearings: Array, bearing: float) -> Array:
    return np.abs((bearings - bearing + 180.0) % 360.0 - 180.0)


def _same_every_way(examination: AsOne) -> bool:
    """Return whether weight and wind are alike toward every side of the foot."""
    structure, wind = examination.structure, examination.wind
    footprint = structure.footprint
    off = structure.centre_of_mass("typical")[:2] - footprint.mean(axis=0)
    if np.hypot(*off) > _SAME * np.ptp(footprint[:, 0]):
        return False
    sides = min(len(footprint), 8) if foot_of(footprint) is _Foot.ROUND else len(footprint)
    around = np.append(wind.azimuths, wind.azimuths[0] + 360.0)
    for values in (wind.force, wind.force_height, wind.uplift):
        curve = np.append(values, values[0])
        turned = np.interp((wind.azimuths + 360.0 / sides) % 360.0, around, curve)
        if np.abs(turned - values).max() > 0.03 * max(float(np.abs(values).max()), 1.0e-9):
            return False
    return True
