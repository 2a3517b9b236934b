"""The direction that decides tipping, as a picture and a calculation show it."""

import numpy as np

from ...checks.as_one import AsOne
from ...checks.judged.judging import Check, Kind
from ...units.arrays import Array
from ...units.frozen import ByIdentity


class Governing(ByIdentity, frozen=True):
    """The wind and weight that tip it first, untied, on the site's axes; SI units.

    ``check`` is the check that they decide: tipping, or how far posts in the ground are used, where
    it is ``planted`` and no line of turning is drawn.
    ``toward`` (2,) is the level unit vector in which it turns over, ``line`` the index of the line
    and ``pivot`` its place along ``toward`` with only the typical weight on it. ``wind`` (2,) is
    the way the wind blows, ``direction`` its index among the wind's azimuths; ``force`` and
    ``force_height`` are those of the design's wind there. ``weight`` is typical, at ``balance``.
    """

    check: Check
    planted: bool
    toward: Array
    line: int
    pivot: float
    wind: Array
    direction: int
    force: float
    force_height: float
    weight: float
    balance: Array

    @property
    def arm(self) -> float:
        """Return how far (m) the centre of mass lies from the line that it turns about."""
        return self.pivot - float(self.toward @ self.balance[:2])


def governing(examination: AsOne) -> Governing:
    """Return what decides tipping of the piece without anchors, or its posts' hold."""
    planted = examination.free is None
    check = _of_posts(examination) if planted else examination.overturning
    standing, wind = examination.standing, examination.wind
    structure = examination.structure
    toward = -_heading(check.direction_deg or 0.0)
    if check.toward_deg is not None:
        toward = _heading(check.toward_deg)
    line = int((standing.normals @ toward).argmax())
    from_deg = check.direction_deg or 0.0
    off = np.abs((wind.azimuths - from_deg + 180.0) % 360.0 - 180.0)
    direction = int(off.argmin())
    weight = structure.weight("typical")
    pivot = standing.pivot(np.full(len(standing.normals), weight))[line]
    return Governing(
        check=check,
        planted=planted,
        toward=toward if planted else standing.normals[line],
        line=line,
        pivot=float(pivot),
        wind=-_heading(float(wind.azimuths[direction])),
        direction=direction,
        force=float(wind.force[direction]),
        force_height=float(wind.force_height[direction]),
        weight=weight,
        balance=structure.centre_of_mass("typical"),
    )


def _of_posts(examination: AsOne) -> Check:
    """Return the check of the post that is used most."""
    found = [check for check in examination.checks if check.kind is Kind.EMBEDMENT]
    return max(found, key=lambda check: check.rank)


def _heading(degrees: float) -> Array:
    """Return the plan vector (2,) of a bearing, clockwise from +y."""
    return np.array([np.sin(np.radians(degrees)), np.cos(np.radians(degrees))])
