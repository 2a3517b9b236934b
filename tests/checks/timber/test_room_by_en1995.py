"""The room of fasteners by EN 1995-1-1, its tables worked by hand for a push from any side."""

import pytest

from yardfast.checks.timber.books import titled
from yardfast.materials import fasteners

MM = 1.0e-3
EN = titled("EN 1995-1-1")


@pytest.mark.parametrize(
    ("name", "predrilled", "gravity", "end", "edge", "along", "across"),
    [
        # EN 1995-1-1 Table 8.2 (in open programs that cite it), alpha 0 or 90 degrees, d in mm:
        # rho_k <= 420, d < 5: (10 + 5) d, (5 + 2) d, (5 + 5) d, 5 d
        ("nail 3.1 mm x 80 mm", False, 0.42, 46.5, 21.7, 31.0, 15.5),
        # d >= 5: (10 + 5) d, (5 + 5) d, (5 + 7) d, 5 d
        ("nail 5.5 mm x 140 mm", False, 0.42, 82.5, 55.0, 66.0, 27.5),
        # 420 < rho_k: (15 + 5) d, (7 + 2) d, (7 + 8) d, 7 d; southern pine, 840 x 0.55 = 462
        ("nail 3.1 mm x 80 mm", False, 0.55, 62.0, 27.9, 46.5, 21.7),
        # in lead holes, d < 5: (7 + 5) d, (3 + 2) d, (4 + 1) d, (3 + 1) d
        ("nail 3.1 mm x 80 mm", True, 0.55, 37.2, 15.5, 15.5, 12.4),
        # Table 8.4, M12: max(7 d, 80), max(2 + 2, 3) d, (4 + 1) d, 4 d
        ("M12 bolt 150 mm", True, 0.42, 84.0, 48.0, 60.0, 48.0),
        ("M10 bolt 150 mm", True, 0.42, 80.0, 40.0, 50.0, 40.0),
        # a coach screw as a bolt (8.7.1), and drawn by Table 8.6: 10 d, 4 d, 7 d, 5 d
        ("M8 lag screw 100 mm", True, 0.42, 80.0, 32.0, 56.0, 40.0),
    ],
)
def test_room_in_wood(name, predrilled, gravity, end, edge, along, across):
    found = EN.room(fasteners.find_fastener(name), predrilled=predrilled, gravity=gravity)
    given = [each / MM for each in (found.end, found.edge, found.along, found.across)]
    assert given == pytest.approx(
        [end, edge, along, across], abs=0.02
    )  # sizes are held in inches to 1e-4


def test_the_denser_wood_needs_no_less_room_and_lead_holes_no_more():
    nail = fasteners.find_fastener("16d common nail")
    light, dense = (EN.room(nail, predrilled=False, gravity=each) for each in (0.36, 0.73))
    drilled = EN.room(nail, predrilled=True, gravity=0.73)
    for side in ("end", "edge", "along", "across"):
        assert getattr(light, side) <= getattr(dense, side)
        assert getattr(drilled, side) <= getattr(dense, side)


def test_what_is_drilled():
    """8.3.1.1 (2): nails in wood over 500 kg/m3; 10.4.5: screws thicker than 6 mm."""
    assert EN.needs_lead_holes(fasteners.find_fastener("16d common nail"), 0.73)
    assert not EN.needs_lead_holes(fasteners.find_fastener("16d common nail"), 0.42)
    assert EN.needs_lead_holes(fasteners.find_fastener("M8 lag screw 100 mm"), 0.42)
    assert not EN.needs_lead_holes(fasteners.find_fastener("5 x 60 mm wood screw"), 0.42)


def test_nails_in_a_sheet():
    """8.3.1.3: 0.85 of the spacing, 3 + 4 sin of a loaded edge: 7 d."""
    nail = fasteners.find_fastener("nail 3.1 mm x 80 mm")
    found = EN.room(nail, predrilled=False, sheet=True, gravity=0.42)
    assert found.edge / MM == pytest.approx(21.7)
    assert found.across / MM == pytest.approx(0.85 * 31.0)
