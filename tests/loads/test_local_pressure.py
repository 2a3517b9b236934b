"""Small parts of roofs and lids, and the air inside: ASCE/SEI 7 Fig. 30.3-2A, Table 26.13-1.

Printed at 10 ft2 and less, level roofs: -1.7, -2.3 and -3.2 in zones 1 to 3 (-2.3 from memory, a
copy has -2.1), zones 0.6 h and 0.2 h deep; GCpi +-0.18. Whose air is whose, and 0.6 where it stands
open to the wind, are judgements.
"""

import numpy as np
import pytest
from designs import design
from hypothesis import given
from hypothesis import strategies as st

from yardfast.design.model import Part, Place
from yardfast.design.shapes.bodies import Shell, Solid
from yardfast.design.shapes.boxes import Box
from yardfast.design.shapes.cone import Cone
from yardfast.design.shapes.flat import Frame, Plate
from yardfast.design.shapes.gables import Gable
from yardfast.design.shapes.plans import Rectangle
from yardfast.design.structure import build_structure
from yardfast.loads.asce7.components import corner_share, local_suction
from yardfast.loads.asce7.tops import ASCE7_TOPS as ASCE
from yardfast.loads.en1991.tops import EN1991_TOPS as EN
from yardfast.loads.exposed import bare
from yardfast.loads.methods import method_of
from yardfast.loads.roofs.inside_air import breathes
from yardfast.loads.roofs.tops import OPEN_SIDE, PLACES, VESSEL_FLOOR
from yardfast.loads.wind.site import Site


def test_corners_of_a_wide_level_roof():
    """10 x 8 m, 1 m up: four angles of 2 x 0.6 x 0.2 - 0.2^2 m2 in an edge zone of 0.6 m."""
    corners = 4.0 * (2.0 * 0.6 * 0.2 - 0.04)
    edge = 80.0 - 8.8 * 6.8
    assert corner_share(1.0, (10.0, 8.0)) == pytest.approx(corners / edge)
    expected = 2.3 + 0.9 * corners / edge
    assert local_suction(0.0, 1.0, (10.0, 8.0)) == pytest.approx(expected)


def test_a_small_lid_up_high_is_all_corner():
    assert local_suction(0.0, 2.0, (0.5, 0.5)) == pytest.approx(3.2)


@given(st.floats(0.0, 44.9), st.floats(0.1, 3.0), st.floats(0.2, 2.0), st.floats(0.2, 2.0))
def test_no_part_of_a_roof_takes_less_than_its_edges_nor_more_than_the_figures(slope, h, a, b):
    assert 2.3 <= local_suction(slope, h, (a, b)) <= 3.6


@given(st.floats(0.1, 4.0), st.floats(0.2, 6.0), st.floats(0.2, 6.0))
def test_a_roof_that_is_barely_sloped_is_lifted_as_a_level_one(h, a, b):
    """Between 7 and 10 degrees it grows to the 3.6 of Fig. 30.3-2B, without a jump."""
    found = [local_suction(slope, h, (a, b)) for slope in (6.999, 7.0, 7.001, 10.0)]
    assert found[0] == pytest.approx(found[2], abs=0.01)
    assert found == sorted(found)
    assert found[3] == 3.6


def test_what_stands_out_takes_the_pressure_beneath_it_by_each_book():
    """ASCE/SEI 7-16: corners 3.2 (Fig. 30.3-2A), with the pressure beneath in; edges no less than
    the strips 1.3 and 0.8 beneath. EN 1991-1-4: zone F -2.5 and the wall's 1.0 beneath (7.2.1).
    """
    assert ASCE.overhang(0.0, 2.0, (0.5, 0.5)) == pytest.approx(3.2)
    assert ASCE.overhang(30.0, 1.0, (9.0, 9.0)) >= 1.3 + 0.8
    assert EN.overhang(0.0, 1.0, (1.0, 1.0)) == pytest.approx(2.5 + 1.0)


def test_every_place_beside_the_figures_is_known_to_each_book():
    """An open silo is drawn in by 0.6 (EN 1991-1-4 7.2.9); an open side lets in 0.9 x 0.8."""
    for place in PLACES:
        assert 0.0 < ASCE.beside(place) < 4.0
    assert EN.beside(VESSEL_FLOOR) == pytest.approx(0.6)
    assert EN.beside(OPEN_SIDE) == pytest.approx(0.9 * 0.8)


def test_each_book_has_its_own():
    """EN 1991-1-4: F of Table 7.2 c_pe,1 2.5; zone A 1.4 and D 1.0 of Table 7.1, c_pi 0.2, -0.3."""
    assert EN.local_suction(0.0, 1.0, (1.0, 1.0)) == pytest.approx(2.5)
    assert EN.local_suction(15.0, 1.0, (1.0, 1.0)) == pytest.approx(2.0)
    assert (EN.panel("outward"), EN.panel("inward")) == pytest.approx((1.6, 1.3))
    assert EN.panel("outward", open_to_wind=True) == pytest.approx(1.4 + 0.9 * 0.8)
    assert (ASCE.panel("outward"), ASCE.panel("inward")) == (1.3, 1.0)
    assert (ASCE.inside(False), ASCE.inside(True)) == (0.18, 0.6)


def box(*open_, **place):
    return Part("box", Box(1.0, 0.8, 0.6, 0.02, frozenset(open_)), Place(**place), density=500.0)


LID = Part("lid", Plate(Rectangle(1.0, 0.8), 0.02), Place(on="box"), density=500.0)
ROOF = Part("roof", Gable(1.0, 0.8, 0.3, 0.02), Place(on="box"), density=500.0)
POINTED = Part("roof", Cone(4, 0.8, 0.3, 0.02), Place(on="box"), density=500.0)
LEGS = Part("legs", Solid(4, 0.05, 0.05, 0.4), Place(count=4, ring=0.9), density=500.0)
RING = Part("ring", Frame(Rectangle(1.0, 0.8), 0.09, 0.04), density=500.0)
SHELL = Shell(8, 0.6, 0.6, 0.8, 0.02)

AIR = {
    "closed box": ((box(),), 0, False),
    "open top": ((box("top"),), 0, True),
    "open front": ((box("front"),), 0, True),
    "open top under a lid": ((box("top"), LID), 0, False),
    "open top under a pitched roof with open ends": ((box("top"), ROOF), 0, True),
    "that roof itself": ((box("top"), ROOF), 1, True),
    "open top under a pointed roof": ((box("top"), POINTED), 0, False),
    "open bottom on the ground": ((box("bottom"),), 0, False),
    "open bottom on legs": ((LEGS, box("bottom", on="legs")), 1, True),
    "closed bottom on legs": ((LEGS, box(on="legs")), 1, False),
    "tower on a ring on the ground under a lid": (
        (
            RING,
            Part("box", SHELL, Place(on="ring"), density=500.0),
            LID,
        ),
        1,
        False,
    ),
    "tower over an open tower": (
        (
            Part("low", SHELL, density=500.0),
            Part("high", SHELL, Place(on="low"), density=500.0),
        ),
        0,
        True,
    ),
}


@pytest.mark.parametrize("name", AIR)
def test_whose_air_stands_open_to_the_wind(name):
    parts, part, expected = AIR[name]
    structure = build_structure(design(*parts))
    i = [body.part for body in structure.bodies].index(part)
    assert breathes(structure, i) is expected


@pytest.mark.parametrize(("book", "inside"), [("gust", 0.18), ("EN 1991-1-4", 0.2)])
def test_the_air_inside_lifts_a_lid_and_presses_on_the_floor(book, inside):
    """The whole is lifted as before; the lid's joints carry what the air inside asks besides."""
    site = Site(book, 25.0, "paving", terrain="II", basis="EQU" if "EN" in book else None)
    found = []
    for parts in ((box("top"), LID), (box(),)):
        structure = build_structure(design(*parts))
        method = method_of(site, structure.height)
        found.append(bare(structure, [None] * len(parts), method).suction.terms[..., -1, 2])
    both, closed = found
    assert both[0] == pytest.approx(-inside * 0.8)
    on_lid = (both[1] - inside * 0.8) / 0.8
    assert np.all(on_lid > 0.0)
    assert both.sum(axis=0) == pytest.approx(0.8 * on_lid)
    assert closed.shape[1] == both.shape[1]
