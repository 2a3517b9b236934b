"""What governs a stick: bending with what presses along it, that force, shear, or slenderness."""

from collections.abc import Sequence

import numpy as np

from ...materials.lumber import Lumber
from ...units.arrays import Array, Mask
from ...units.frozen import ByIdentity, replace
from ..judged.judging import Check
from .columns import column_rule
from .post_strength import PostStrength

_HARDLY = 0.01
"""Bent by so small a share of what presses it a stick is pressed alone: judgement."""

UNITS = {"bending": "N*m", "shear": "N", "pressing": "N", "pulling": "N", "slenderness": "l_e/d"}
"""Unit of what is asked, by what governs."""


class Used(ByIdentity, frozen=True):
    """The part (…) of a stick's strength used: ``most`` of all, and of what it is the most.

    ``bending`` goes with what presses or draws the stick along itself, ``along`` is that alone and
    ``bent`` bending alone; ``drawn`` tells where it is drawn rather than pressed.
    """

    most: Array
    bending: Array
    along: Array
    bent: Array
    shear: Array
    drawn: Mask

    def pressed(self, which: slice = slice(None)) -> float:
        """Return the greatest part of what it holds pressed along itself, of some of the first."""
        return float(np.where(self.drawn, 0.0, self.along)[which].max(initial=0.0))

    def governs(self, at: tuple[int | np.intp, ...]) -> str:
        """Return which it is at one place: "bending", "pressing", "pulling" or "shear"."""
        most, along, bent = (float(part[at]) for part in (self.most, self.along, self.bent))
        if self.shear[at] >= most and self.shear[at] > self.bending[at]:
            return "shear"
        if self.drawn[at]:
            return "pulling" if along > bent else "bending"
        alone = along >= most or bent <= _HARDLY * along
        return "pressing" if alone and along > 0.0 else "bending"


def stick_utilization(
    strength: PostStrength,
    force: tuple[Array, Array | float],
    moments: Sequence[tuple[Array, Array]],
    pushed: Sequence[Array],
    effective: float,
    longer: Array | float = 1.0,
) -> Used:
    """Return what a stick uses at most of several ways in which it may carry what is asked of it.

    ``force`` (…) in N along it with what it may be more or less, drawn below 0; for each way
    ``moments`` (…) in N m of both ways of its section, and ``pushed`` (…) in N sideways.
    ``effective`` and ``longer`` as of ``PostStrength.use``. Pressed alone it uses N/P_c, which the
    sum with bending squares. Source: NDS 2018 3.6.3, 3.8.1 and 3.9; AISC 360-16 D, E and H1.
    """
    by, size = force[0], np.asarray(force[1], dtype=float)
    presses = strength.along_use(by + size, effective, longer)
    draws = np.where(by - size < 0.0, strength.along_use(by - size, effective, longer), 0.0)
    along = np.maximum(presses, draws)
    bending = bent = shear = np.zeros(1)
    for moment, push in zip(moments, pushed, strict=True):
        together = strength.use_within(by, size, *moment, effective, longer)
        bending = np.maximum(bending, together)
        bent = np.maximum(bent, strength.bending_use(*moment, longer))
        shear = np.maximum(shear, push / strength.shear_force)
    # beyond what it holds the square tells more than the force, and past Euler's load nothing
    alone = (along > 1.0) & (np.isinf(bending) | (bent <= _HARDLY * along))
    most = np.maximum(np.where(alone, along, np.maximum(bending, along)), shear)
    bending, along, bent, shear = (
        np.broadcast_to(part, most.shape) for part in (bending, along, bent, shear)
    )
    return Used(most, bending, along, bent, shear, np.broadcast_to(draws > presses, most.shape))


def as_column(
    governs: str, check: Check, strength: PostStrength, effective: float, pressed: float
) -> tuple[str, Check]:
    """Return what governs a stick and its check, by its slenderness where that is beyond columns.

    Only wood that is ``pressed`` by at least a share of what it holds so is a column. ``effective``
    length in m. Source: NDS 2018 3.7.1.4.
    """
    slender, most = strength.slender(effective), column_rule("most slender")
    is_column = isinstance(strength.stuff, Lumber) and pressed >= column_rule("is a column")
    fails_by_more = check.utilization is None or check.utilization >= slender / most
    if slender <= most or not is_column or fails_by_more:
        return governs, check
    too_slender = replace(
        check,
        demand=slender,
        capacity=most,
        unit=UNITS["slenderness"],
        utilization=slender / most,
        passes=False,
        direction_deg=None,
        case="",
    )
    return "slenderness", too_slender
