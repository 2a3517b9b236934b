"""Seams by EN 1995-1-1: fasteners near each other in a row along the grain hold less each."""

import pytest

from yardfast.checks.seams.seam_fasteners import held_along_a_seam, through_a_panel
from yardfast.checks.timber.terms.joint_material import joint_material_of
from yardfast.materials import fasteners
from yardfast.statics.tables.seam_table import SeamRow

NAIL = fasteners.find_fastener("nail 3.1 mm x 80 mm")
DRIVEN = through_a_panel(joint_material_of("softwood plywood"), 0.018, "spruce-pine-fir")
EN = "EN 1995, strength"


def _held(spacing, count, basis=EN):
    row = SeamRow("box", NAIL, spacing, "spruce-pine-fir")
    return held_along_a_seam(row, DRIVEN, spacing * (count - 1), basis)


@pytest.mark.parametrize(
    ("diameters", "power"),
    # Table 8.1: 14 d apart and more each holds in full, 10 d 0.85, 7 d 0.7; between in proportion
    [(20.0, 1.0), (14.0, 1.0), (12.0, 0.925), (10.0, 0.85), (7.0, 0.7)],
)
def test_a_row_of_ten(diameters, power):
    spacing = diameters * NAIL.diameter
    alone = _held(spacing, 1).sideways
    assert _held(spacing, 10).sideways == pytest.approx(alone * 10.0 ** (power - 1.0), rel=2e-3)


def test_nds_knows_no_such_loss_of_nails():
    near, far = (_held(each * NAIL.diameter, 10, "strength") for each in (7.0, 20.0))
    assert near.sideways == far.sideways > 0.0
