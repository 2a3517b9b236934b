"""Suction on tops and wind on free roofs by EN 1991-1-4: Tables 7.2, 7.4, 7.6 and 7.7.

Printed values are typed here again from the tables (read in public copies; see references/wind).
"""

from math import cos, log10, radians, sin

import numpy as np
import pytest
from designs import design
from hypothesis import given
from hypothesis import strategies as st

from yardfast.design.model import Part, Place
from yardfast.design.shapes.boxes import Box
from yardfast.design.shapes.flat import Panel, Plate
from yardfast.design.shapes.gables import Gable
from yardfast.design.shapes.plans import Rectangle
from yardfast.design.structure import build_structure
from yardfast.loads.en1991 import closed_roofs
from yardfast.loads.en1991.tops import EN1991_TOPS
from yardfast.loads.exposed import bare
from yardfast.loads.methods import method_of
from yardfast.loads.wind.site import Site

SHEET = Part("sheet", Plate(Rectangle(3.0, 3.0), 1e-6), density=500.0)


def lift_on(*parts):
    """What acts normal to the surfaces of parts by EN 1991-1-4, and the azimuths."""
    structure = build_structure(design(*parts))
    site = Site("EN 1991-1-4", 25.0, "paving", terrain="II", basis="EQU")
    found = bare(structure, [None] * len(parts), method_of(site, structure.height))
    return found.suction, found.azimuths


def at(azimuths, azimuth):
    return int(np.argmin(np.abs(azimuths - azimuth)))


def by_area(ten, one, area):
    """Figure 7.2: linear in the logarithm between 1 and 10 m2."""
    return one - (one - ten) * log10(min(max(area, 1.0), 10.0))


def test_a_lid_takes_the_zones_of_the_flat_roof():
    """A box 1.2 m square and 0.762 high: e = 1.2, F 0.3 x 0.12 at two corners, G, H to 0.6, I."""
    suction, azimuths = lift_on(Part("box", Box(1.2, 1.2, 0.762, 0.02), density=500.0))
    F, G, H, rest = (
        by_area(*each, 1.44) for each in ((1.8, 2.5), (1.2, 2.0), (0.7, 1.2), (0.2, 0.2))
    )
    expected = 2 * 0.3 * 0.12 * F + 0.6 * 0.12 * G + 1.2 * 0.48 * H + 1.2 * 0.6 * rest
    d = at(azimuths, 180.0)
    assert suction.terms[0, d, 1, 2] == pytest.approx(expected, rel=1e-9)
    moment = 0.12 * (0.6 * F + 0.6 * G) * 0.54 + 1.2 * 0.48 * H * 0.24 - 1.2 * 0.6 * rest * 0.3
    assert abs(suction.terms[0, d, 1, 6]) == pytest.approx(moment, rel=1e-9)


def test_a_tall_small_top_lies_in_the_edge_and_next_to_it():
    """Half a metre square, 2 m up: e is its width; below 1 m2 the values for 1 m2 hold."""
    starts, values = closed_roofs.flat_strips(2.0, np.array([0.5]), 0.25)
    assert starts[:, 0] == pytest.approx([0.0, 0.05, 0.25])
    assert values[:, 0] == pytest.approx([0.5 * 2.5 + 0.5 * 2.0, 1.2, 0.2])


PITCHED = {
    ("across", "F", 15.0): (0.9, 2.0),
    ("across", "G", 30.0): (0.5, 1.5),
    ("across", "H", 5.0): (0.6, 1.2),
    ("across", "J", 15.0): (1.0, 1.5),
    ("across", "I", 45.0): (0.2, 0.2),
    ("along", "F", 5.0): (1.6, 2.2),
    ("along", "G", 45.0): (1.4, 2.0),
    ("along", "H", 60.0): (0.8, 1.0),
    ("along", "I", 30.0): (0.5, 0.5),
}


@pytest.mark.parametrize(("wind", "zone", "slope"), PITCHED)
def test_pitched_roofs_take_the_printed_suction(wind, zone, slope):
    ten, one = PITCHED[wind, zone, slope]
    for area, expected in ((0.3, one), (1.0, one), (10.0, ten), (30.0, ten)):
        found = closed_roofs.pitched_suction(wind, zone, slope, area)
        assert found == pytest.approx(expected)


def test_a_closed_gable_takes_its_zones_on_either_slope():
    """A solid roof 1 m long, 0.8 across at 30 degrees on a box: e = 1 (b), area 0.8 m2.

    Windward 0.1 of 0.4 m at 1.5, the rest 0.2; leeward 0.1 and more alike at 0.5 and 0.4.
    """
    body = Part("box", Box(1.0, 0.8, 1.0, 0.02), density=500.0)
    rise = 0.4 * np.tan(radians(30.0))
    roof = Part("roof", Gable(1.0, 0.8, float(rise), 0.02), Place(on="box"), density=500.0)
    suction, azimuths = lift_on(body, roof)
    d = at(azimuths, 180.0)
    windward = 0.1 * 1.5 + 0.3 * 0.2
    leeward = 0.1 * 0.5 + 0.3 * 0.4
    assert suction.terms[1, d, 1, 2] == pytest.approx(windward + leeward, rel=1e-6)


def test_a_free_board_takes_table_7_6_a_quarter_from_its_windward_edge():
    """30 degrees, clear beneath: 1.2 down and 1.8 up, on 1 m2, normal to it."""
    board = Part(
        "board", Panel(1.0, 1.0, 1e-6), Place(at=(0.0, 0.0, 1.8), tilt=radians(60.0)), density=500.0
    )
    suction, azimuths = lift_on(SHEET, board)
    for azimuth in (0.0, 180.0):
        d = at(azimuths, azimuth)
        for case, c in (("roof pressed", -1.2), ("roof lifted", 1.8)):
            _, fy, fz, _, fyz = suction.terms[1, d, suction.names.index((case,))][:5]
            assert fz == pytest.approx(c * cos(radians(30.0)), rel=1e-6)
            assert abs(fy) == pytest.approx(abs(c) * sin(radians(30.0)), rel=1e-6)
            quarter = 0.25 if (fyz / fy) < 2.05 else 0.75
            assert fyz / fy == pytest.approx(1.8 + 0.5 * quarter, rel=1e-4)
    heights = [
        suction.terms[1, at(azimuths, a), 0, 4] / suction.terms[1, at(azimuths, a), 0, 1]
        for a in (0.0, 180.0)
    ]
    assert sorted(heights) == pytest.approx([1.925, 2.175], rel=1e-4)


def test_a_free_gable_takes_table_7_7_on_both_slopes_or_one():
    """30 degrees, clear: 0.9 down, 1.0 up; on one slope alone half of it, with its level part."""
    rise = 0.4 * np.tan(radians(30.0))
    roof = Part(
        "roof", Gable(1.0, 0.8, float(rise), 0.01), Place(at=(0.0, 0.0, 2.0)), density=500.0
    )
    suction, azimuths = lift_on(SHEET, roof)
    d = at(azimuths, 180.0)
    by_name = dict(zip(map(", ".join, suction.names), suction.terms[1, d], strict=True))
    assert by_name["roof pressed"][2] == pytest.approx(-0.9 * 0.8, rel=1e-6)
    assert by_name["roof lifted"][2] == pytest.approx(1.0 * 0.8, rel=1e-6)
    alone = by_name["roof lifted, windward slope alone"]
    assert alone[2] == pytest.approx(1.0 * 0.4, rel=1e-6)
    assert abs(alone[1]) == pytest.approx(1.0 * 0.4 * np.tan(radians(30.0)), rel=1e-6)


@given(st.floats(1.0, 58.0), st.floats(-1.0, 1.0), st.floats(0.2, 3.0))
def test_no_jump_as_a_closed_roof_grows_steeper(slope, facing, h):
    ends = np.array([0.1]), np.array([0.6])
    width, way = np.array([0.8]), np.array([facing])
    here, beside = (
        EN1991_TOPS.slope(one, way, ends, h, np.array([1.2]), width, 0.96)
        for one in (slope, slope + 0.01)
    )
    assert np.abs(here - beside).max() < 0.01


@pytest.mark.parametrize(
    "call",
    [
        lambda: closed_roofs.pitched_suction("across", "K", 15.0, 1.0),
        lambda: closed_roofs.pitched_suction("along", "J", 15.0, 1.0),
        lambda: closed_roofs.pitched_suction("across", "F", 15.0, 0.0),
    ],
)
def test_what_the_table_does_not_know_is_refused(call):
    with pytest.raises(ValueError, match=r"found"):
        call()


def test_wind_along_the_ridge_meets_its_zones_one_after_the_other():
    """30 degrees, 10 m2 loaded, b 2 m, h 3 m: e is 2 m; 3 m of slope along the wind.

    Corners of e/4 fill half of the width: (1.1 + 1.4)/2 over 0.2 m, then 0.8 to 1 m, 0.5 beyond
    (Table 7.4b, typed here again): (0.25 + 0.64 + 1.0)/3.
    """
    ends, width, way = (np.zeros(1), np.full(1, 3.0)), np.full(1, 2.0), np.zeros(1)
    found = closed_roofs.slope_suction(30.0, way, ends, 3.0, width, 10.0)
    assert found == pytest.approx((0.25 + 0.64 + 1.0) / 3.0)


@pytest.mark.parametrize(
    ("facing", "start", "end", "mean"),
    [
        (1.0, 0.0, 1.0, 0.2 * 0.5 + 0.8 * 0.2),  # F and G 0.5 to e/10, H 0.2
        (-1.0, 1.0, 2.0, 0.2 * 0.5 + 0.8 * 0.4),  # J 0.5 for e/10 behind the ridge, I 0.4
    ],
)
def test_wind_across_the_ridge_meets_zones_of_either_slope(facing, start, end, mean):
    """As above, Table 7.4a: b 2 m, h 3 m, each slope 1 m along the wind."""
    reach, width = (np.full(1, start), np.full(1, end)), np.full(1, 2.0)
    found = closed_roofs.slope_suction(30.0, np.full(1, facing), reach, 3.0, width, 10.0)
    assert found == pytest.approx(mean)
