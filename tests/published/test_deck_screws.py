"""Deck screws beside what one maker's evaluation report allows."""

from math import pi

import pytest

import yardfast as yf
from yardfast.checks.timber.nds.pulled_out import at_its_head
from yardfast.checks.timber.terms.capacity import as_known
from yardfast.checks.timber.terms.driven import Driven
from yardfast.checks.timber.terms.joint_material import joint_material_of
from yardfast.materials import fasteners
from yardfast.units import INCH
from yardfast.units.frozen import replace


def test_a_deck_screw_holds_no_more_than_its_report_allows() -> None:
    """51 lbf sideways: #8 by 2 in through 23/32 in plywood, 1 9/32 in into spruce-pine-fir.

    Evaluation report of one maker's screw, Table 13 (2025), as quoted in a public project: major
    diameter 0.163 in, minor 0.100 in. The root of a wood screw of that number, 0.131 in, gives 81.
    """
    screw = as_known(fasteners.find_fastener("#8 deck screw 2 in"))
    assert screw.root_diameter == pytest.approx(0.100 * INCH)
    root = f"{screw.root_diameter / INCH} in"
    held = yf.lateral(root, "23/32 in", "1.199 in", 0.50, 0.42, f"{screw.bending_yield} Pa")
    assert 0.9 * 51.0 < held.value.to("lbf").magnitude < 51.0


@pytest.mark.parametrize(
    ("head", "sunk", "through", "lbf"),
    [
        (0.355, 0.0, 0.75, 690 * pi * 0.355 * 0.42**2 * 0.75),
        (0.355, 0.1, 0.75, 690 * pi * 0.355 * 0.42**2 * 0.65),
        (0.355, 0.0, 1.5, 1725 * pi * 0.355**2 * 0.42**2),
        (0.30, 0.0, 0.70, 690 * pi * 0.30 * 0.42**2 * 0.70),
    ],
)
def test_a_screws_own_head_holds_against_being_pulled_through(head, sunk, through, lbf):
    """NDS 2018 12.2.5.1, Eq. 12.2-6a and b (memory): 690 pi D_H G2 t up to 2.5 D_H of wood, beyond
    it 1725 pi D_H2 G2, in lbf and in; a flat head counts what is left under it. A maker's own
    head stands in place of the least published."""
    found = fasteners.find_fastener("#8 deck screw 2 in")
    screw = replace(found, head_diameter=head * INCH, countersink=sunk * INCH)
    pine = joint_material_of("spruce-pine-fir")
    driven = Driven(pine, pine, through * INCH, room=1.5 * INCH, into="side grain")
    held = at_its_head(as_known(screw), driven, through * INCH)
    assert held / 4.4482216152605 == pytest.approx(lbf, rel=1e-6)
