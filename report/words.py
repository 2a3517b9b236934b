"""Directions in a builder's words: on the face, corner on, over a long side; never a bearing."""

from typing import Literal

import numpy as np

from ..checks.examination import Examination
from ..design.shapes.shape import Array
from ..loads.directions import edge_normals

Foot = Literal["round", "regular", "square", "rectangle", "uneven"]

_ROUND_CORNERS = 24
_NEAR_DEG = 12.0
_SAME = 0.01


def foot_of(footprint: Array) -> Foot:
    """Return what kind of outline a footprint (k, 2) has."""
    if len(footprint) >= _ROUND_CORNERS:
        return "round"
    edges = np.roll(footprint, -1, axis=0) - footprint
    lengths = np.hypot(*edges.T)
    reach = np.hypot(*(footprint - footprint.mean(axis=0)).T)
    if np.ptp(reach) > _SAME * reach.max():
        return "uneven"
    if np.ptp(lengths) <= _SAME * lengths.max():
        return "square" if len(footprint) == 4 else "regular"
    return "rectangle" if len(footprint) == 4 else "uneven"


def over_what(examination: Examination, toward_deg: float) -> str:
    """Return over what a piece goes, turning over toward a bearing: ``any side``, ``a corner``."""
    footprint = examination.structure.footprint
    foot = foot_of(footprint)
    alike = _same_every_way(examination)
    if foot == "round":
        return "any side" if alike else f"its {quarter(examination, toward_deg)}"
    normal, length = _nearest_edge(footprint, toward_deg)
    if normal > _NEAR_DEG and foot != "uneven":
        return "any corner" if alike else "a corner"
    if foot == "rectangle":
        lengths = _edge_lengths(footprint)
        return "a long side" if length > lengths.mean() else "a short side"
    if foot in ("regular", "square") and alike:
        return "any side"
    return f"its {quarter(examination, toward_deg)}"


def wind_on(examination: Examination, from_deg: float) -> str:
    """Return how a wind from a bearing meets the foot: ``on the face``, ``corner on``."""
    footprint = examination.structure.footprint
    foot = foot_of(footprint)
    off, length = _nearest_edge(footprint, from_deg)
    if foot == "round":
        return "from any side" if _same_every_way(examination) else _from(examination, from_deg)
    if foot == "uneven":
        return _from(examination, from_deg)
    if off <= _NEAR_DEG and foot == "rectangle":
        long = length > _edge_lengths(footprint).mean()
        return "on a long face" if long else "on a short face"
    if off <= min(_NEAR_DEG, 0.25 * 360.0 / len(footprint)):
        return "on the face"
    centre = footprint.mean(axis=0)
    corners = _bearings(footprint - centre)
    near = float(_apart(corners, from_deg).min())
    return "corner on" if near <= _NEAR_DEG else "aslant"


def quarter(examination: Examination, bearing: float) -> str:
    """Return the side of the piece, as the file has it before its last turn, at a bearing."""
    own = bearing + np.degrees(examination.design.turn)
    names = (
        "back",
        "back right",
        "right",
        "front right",
        "front",
        "front left",
        "left",
        "back left",
    )
    return f"{names[int(((own + 22.5) % 360.0) // 45.0)]} side"


def _from(examination: Examination, from_deg: float) -> str:
    return f"from its {quarter(examination, from_deg)}"


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


def _same_every_way(examination: Examination) -> bool:
    """Return whether weight and wind are alike toward every side of the foot."""
    structure, wind = examination.structure, examination.wind
    footprint = structure.footprint
    off = structure.centre_of_mass("typical")[:2] - footprint.mean(axis=0)
    if np.hypot(*off) > _SAME * np.ptp(footprint[:, 0]):
        return False
    sides = min(len(footprint), 8) if foot_of(footprint) == "round" else len(footprint)
    around = np.append(wind.azimuths, wind.azimuths[0] + 360.0)
    for values in (wind.force, wind.force_height, wind.uplift):
        curve = np.append(values, values[0])
        turned = np.interp((wind.azimuths + 360.0 / sides) % 360.0, around, curve)
        if np.abs(turned - values).max() > 0.03 * max(float(np.abs(values).max()), 1.0e-9):
            return False
    return True
