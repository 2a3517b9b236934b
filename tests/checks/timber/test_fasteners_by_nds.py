"""One fastener by NDS: what makes it hold nothing, and that just enough is enough."""

import pytest

from yardfast.checks.timber.books import book_of
from yardfast.checks.timber.terms.driven import Driven
from yardfast.checks.timber.terms.joint_material import joint_material_of
from yardfast.materials import fasteners
from yardfast.units.frozen import replace

INCH = 0.0254
PINE = joint_material_of("southern pine")
MADE = Driven(PINE, PINE, 3.5 * INCH, room=3.5 * INCH, into="side grain", washer=1.5 * INCH)


def capacity(name, driven):
    return book_of("allowable").capacity(fasteners.find_fastener(name), driven, "allowable")


@pytest.mark.parametrize(("room", "long"), [(3.5, True), (4.5, True), (4.51, False), (4.6, False)])
def test_a_bolt_has_to_be_as_long_as_what_it_goes_through(room, long):
    """8 in: 3.5 and 4.5 in leave it all, 4.51 no thread for a nut: it holds nothing sideways."""
    found = capacity("1/2 bolt 8 in", replace(MADE, room=room * INCH))
    assert ("too short for a nut" not in found.reasons) is long
    assert (found.sideways > 0.0) is long


@pytest.mark.parametrize(("across", "holds"), [(1.5, True), (0.5, False)])
def test_a_bolt_is_drawn_against_its_washer(across, holds):
    """Bearing under it, on what is left round a hole of 9/16 in (NDS 12.1.3.2)."""
    found = capacity("1/2 bolt 8 in", replace(MADE, washer=across * INCH))
    assert (found.out > 0.0) is holds
    assert ("no washer value" in found.reasons) is not holds


@pytest.mark.parametrize(("depth", "holds"), [(6.0, True), (5.99, False)])
def test_a_nail_reaches_six_diameters_into_the_wood(depth, holds):
    """NDS 2018 12.1.6.5 (memory): 6 D at least; just that is enough, whatever rounding makes."""
    nail = fasteners.find_fastener("16d common nail")
    through = nail.need("length") - depth * nail.diameter
    found = capacity(nail.name, replace(MADE, through=through, washer=None))
    assert ("too short" not in found.reasons) is holds
    assert (found.sideways > 0.0) is holds
    assert found.least_penetration == pytest.approx(6.0 * nail.diameter)
