"""Twist of straight pieces: the shear stress that it makes, and how much wood holds of it."""

from functools import cache
from math import pi

import numpy as np
from numpy.typing import ArrayLike

from ... import references
from ...materials.metal import Metal
from ...units.arrays import Array
from ..timber.terms.answers import MemberMaterial
from .uprights import Section


def torsion_stress(section: Section, torque: ArrayLike) -> Array:
    """Return the greatest shear stress in Pa (…) of torques (…) in N m on a section.

    3 T/(a b^2) (1 + 0.6095 r + 0.8865 r^2 - 1.8023 r^3 + 0.91 r^4) of a rectangle, a its longer
    side and r = b/a; 16 T D/(pi (D^4 - d^4)) of a round one; T/(2 A t) of a tube.
    Source: Saint-Venant's solution, within 0.3 % of it, as Roark's Formulas for Stress and Strain
    fits it.
    """
    T = np.abs(np.asarray(torque, dtype=float))
    long, short = max(section.first, section.second), min(section.first, section.second)
    wall = section.wall
    if section.is_round:
        bore = 0.0 if wall is None else section.first - 2.0 * wall
        return 16.0 * T * section.first / (pi * (section.first**4 - bore**4))
    if wall is not None:
        return T / (2.0 * (long - wall) * (short - wall) * wall)
    series = sum(_rule(f"power {k}") * (short / long) ** k for k in range(5))
    return 3.0 * T * series / (long * short**2)


def torsion_share(section: Section, stuff: MemberMaterial) -> float:
    """Return k_shape, how much more of its shear strength a section holds in twist; 1 of metal.

    Source: EN 1995-1-1:2004 6.1.8, of two editions the lesser; NDS has no value.
    """
    if isinstance(stuff, Metal):
        return 1.0
    if section.is_round:
        return _rule("round")
    long, short = max(section.first, section.second), min(section.first, section.second)
    return min(1.0 + _rule("by sides") * long / short, _rule("at most"))


@cache
def _rule(name: str) -> float:
    return float(references.table("wood/torsion_rules").one("rule", name)["value"])
