"""Seams by EN 1995-1-1: fasteners near each other in a row along the grain hold less each."""

from math import ceil

import pytest

from yardfast.checks.seams.seam_fasteners import (
    CLEAT,
    held_along_a_seam,
    spacings_into_a_cleat,
    through_a_panel,
)
from yardfast.checks.timber.books import book_of
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


@pytest.mark.parametrize("sideways", [500.0, 3000.0, 12000.0, 30000.0])
def test_how_far_apart_is_told_holds_with_as_many_as_that_makes(sideways):
    """Of nails so near that each of the row holds less: what N/m is pushed, times the spacing, is
    what one of so many holds (8.3.1.1 (8)), to the thousandth to which it is sought."""
    long = 1.0
    found = spacings_into_a_cleat("softwood plywood", 0.018, sideways, 0.0, EN, long)
    told = [each for each in found if each.spacing is not None and each.spacing < long]
    assert told
    for each in told:
        one = fasteners.find_fastener(each.fastener)
        driven = through_a_panel(joint_material_of("softwood plywood"), 0.018, CLEAT)
        count = ceil(long / each.spacing) + 1
        holds = book_of(EN).capacity(one, driven, EN, count, each.spacing)
        assert sideways * each.spacing <= holds.sideways * (1.0 + 2e-3)
