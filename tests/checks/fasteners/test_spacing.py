"""Room for fasteners: published multiples of their diameter, worked by hand on drawn pieces."""

import pytest
from joint_designs import POST, joint

from yardfast.checks.examination import examine
from yardfast.checks.fasteners.joint_places import places
from yardfast.checks.fasteners.spacing import Near, check_spacing, nearest_of
from yardfast.checks.inputs import read_text
from yardfast.checks.sizing.better_fastened import sized
from yardfast.checks.timber.nds.room import needs_lead_holes, room_in_panel, room_in_wood
from yardfast.checks.verdict import Word
from yardfast.design.structure import build_structure
from yardfast.materials import fasteners
from yardfast.report.advice.mends import mend_of
from yardfast.report.fastening.spacing_words import spacing_slots
from yardfast.report.messages.messages import SPACING
from yardfast.report.wording.amounts import Amounts

IN = 0.0254


@pytest.mark.parametrize(
    ("name", "predrilled", "end", "edge", "along", "across"),
    [
        # NDS 2018 Commentary, Tables C12.1.5.7 and C12.1.6.6, wood side members: edge 2.5 D; end
        # pulled along the grain, and in a row along it, 15 D (10 D in lead holes); across it 10 D
        # (5 D)
        ("16d common nail", False, 2.43, 0.405, 2.43, 1.62),
        ("16d common nail", True, 1.62, 0.405, 1.62, 0.81),
        ("8d common nail", False, 1.965, 0.3275, 1.965, 1.31),
        ("#8 wood screw 2 in", True, 1.64, 0.41, 1.64, 0.82),
    ],
)
def test_room_of_what_is_driven(name, predrilled, end, edge, along, across):
    room = room_in_wood(fasteners.find_fastener(name), predrilled=predrilled)
    found = [each / IN for each in (room.end, room.edge, room.along, room.across)]
    assert found == pytest.approx([end, edge, along, across], abs=5.0e-4)


@pytest.mark.parametrize(
    ("used", "slender", "end", "along", "across"),
    [
        # NDS 2018 Tables 12.5.1A, B and D of a 1/2 in bolt: 7 D (softwood, pulled) for the full
        # value and 3.5 D for half of it; 4 D and 3 D in a row; between rows (5 l + 10 D)/8, that is
        # 25/16 in at l = 1 1/2 in, 2.5 D up to l = 2 D and 5 D from l = 6 D
        (1.0, 2.0, 3.5, 2.0, 2.0),
        (0.5, 3.0, 1.75, 1.5625, 1.5),
        (0.75, 2.0, 2.625, 1.5, 1.5),
        (0.5, 6.0, 1.75, 2.5, 1.5),
        (2.0, 9.0, 3.5, 2.5, 2.0),
    ],
)
def test_room_of_bolts_by_what_is_asked_of_them(used, slender, end, along, across):
    bolt = fasteners.find_fastener("1/2 bolt 6 in")
    room = room_in_wood(bolt, predrilled=True, used=used, slender=slender)
    found = [each / IN for each in (room.end, room.along, room.across)]
    assert found == pytest.approx([end, along, across], abs=5.0e-4)
    assert room.edge / IN == pytest.approx(2.0)  # Table 12.5.1C: 4 D from a loaded edge, always


def test_panels_are_fastened_three_eighths_from_their_edges():
    room = room_in_panel(
        fasteners.find_fastener("6d common nail"), predrilled=False
    )  # APA, from memory
    assert (room.end, room.edge) == (pytest.approx(0.375 * IN),) * 2


def of_points(points, **more):
    """Return the room of nails at points of a block, 24 by 6 in, its grain along x."""
    given = "[" + ", ".join(f"['{x} in', '{y} in']" for x, y in points) + "]"
    text = POST + joint("block", "plank", count=None, **more).rstrip() + f"\npoints = {given}\n"
    structure = build_structure(read_text(text))
    (found,) = check_spacing(structure, places(structure, "allowable"), {})
    return found


@pytest.mark.parametrize(
    ("points", "near", "has", "needs"),
    [
        ([(11.5, 0.0)], Near.END, 0.5, 1.965),
        ([(0.0, 2.9)], Near.EDGE, 0.1, 0.3275),
        ([(0.0, 0.0), (1.0, 0.0)], Near.EACH_OTHER, 1.0, 1.965),
        ([(0.0, 0.0), (0.0, 1.0)], Near.EACH_OTHER, 1.0, 1.31),
        # askew: 0.6 along and 0.8 across; 1 / sqrt((0.6/1.965)^2 + (0.8/1.31)^2)
        ([(0.0, 0.0), (0.6, 0.8)], Near.EACH_OTHER, 1.0, 1.46462),
    ],
)
def test_nails_by_hand(points, near, has, needs):
    found = of_points(points)
    assert found.nearest.near is near
    assert found.nearest.has / IN == pytest.approx(has, abs=1.0e-6)
    assert found.nearest.needs / IN == pytest.approx(needs, abs=1.0e-4)
    assert not found.check.passes
    assert found.check.utilization == pytest.approx(needs / has, rel=1.0e-4)
    assert found.thickest / IN == pytest.approx(0.131 * has / needs, rel=1.0e-4)


def test_lead_holes_do_where_two_thirds_of_the_room_are_there():
    as_driven = of_points([(0.0, 0.0), (1.4, 0.0)])
    assert not as_driven.check.passes
    assert as_driven.in_lead_holes
    assert of_points([(0.0, 0.0), (1.4, 0.0)], predrilled=True).check.passes
    assert not of_points([(0.0, 0.0), (1.2, 0.0)]).in_lead_holes


@pytest.mark.parametrize("turn", ["30 deg", "90 deg"])
def test_turned_on_its_site_it_is_the_same(turn):
    text = POST + joint("block", "plank", "1/4 lag screw 4 in", 6, length="20 in", width="4 in")
    turned = text.replace("units = 'imperial'", f"units = 'imperial'\nturn = '{turn}'", 1)
    found, other = (_nearest(each) for each in (text, turned))
    assert (found.near, found.part) == (other.near, other.part)
    assert (found.has, found.needs) == pytest.approx((other.has, other.needs))


def _nearest(text):
    structure = build_structure(read_text(text))
    return nearest_of(structure, places(structure, "allowable"))


POSTED = """
[design]
name  = 'A post on a sill'
units = 'imperial'

[site]
method = 'gust'
wind   = '20 mph'
ground = 'paving'

[[part]]
name     = 'sill'
shape    = 'box'
length   = '36 in'
width    = '5 1/2 in'
height   = '1 1/2 in'
material = 'southern pine'

[[part]]
name     = 'post'
shape    = 'box'
on       = 'sill'
lumber   = '4x4'
height   = '24 in'
material = 'southern pine'

"""


def test_where_nothing_is_said_lag_screws_are_set_where_they_have_room():
    """4 D, an inch, from each edge of the end of a 4x4 (NDS 2018 Table 12.5.1C)."""
    text = POSTED + joint("post", "sill", "1/4 lag screw 4 in", 4, predrilled=True)
    structure = build_structure(read_text(text))
    (place,) = places(structure, "allowable")
    assert abs(place.points[:, :2]) / IN == pytest.approx(0.75)
    assert nearest_of(structure, [place]).fits


def test_they_are_set_no_farther_apart_than_they_need():
    """8d nails 20 mm from the post's edges stand 1.925 in apart: 15 D, 1.965 in, along the sill."""
    structure = build_structure(read_text(POSTED + joint("post", "sill", "8d common nail", 4)))
    (place,) = places(structure, "allowable")
    apart = 2.0 * abs(place.points[:, 0]).max() / IN
    assert 1.965 <= apart + 1.0e-6 < 1.965 * 1.006


def test_thick_ones_with_no_room_fail_and_are_told():
    text = POSTED + joint("post", "sill", "3/8 lag screw 4 in", 4, predrilled=True)
    found = examine(read_text(text))
    (check,) = (one for one in found.checks if one.name == "spacing: post to sill")
    assert not check.passes
    assert check.unit == "m"
    assert found.verdict.word is Word.COMES_APART
    remedy = mend_of(SPACING, **spacing_slots(found.spacings[0], Amounts(metric=False))).whole
    assert remedy.startswith("0.8 in from an edge of post, where 1.5 in keeps it from splitting")


def test_what_is_offered_has_room():
    """Each way to make a joint hold stands the same check when it is written into the file."""
    weak = POSTED.replace("20 mph", "60 mph") + joint("post", "sill", "1/4 lag screw 3 in", 2)
    found = examine(read_text(weak))
    (room,) = [one for one in found.checks if one.name == "spacing: post to sill"]
    assert room.passes
    for remedy in sized(found, found.joints[0]).remedies:
        again = joint("post", "sill", remedy.fastener.name, remedy.count)
        written = examine(read_text(POSTED.replace("20 mph", "60 mph") + again))
        checks = {one.name: one.passes for one in written.checks}
        assert checks["joint: post to sill"]
        assert checks["spacing: post to sill"]


@pytest.mark.parametrize(
    ("plank", "block", "times"),
    [
        ("western redcedar", "western redcedar", 10.0),
        ("southern pine", "western redcedar", 15.0),
        ("western redcedar", "southern pine", 15.0),
    ],
)
def test_the_denser_of_two_woods_asks_for_the_room(plank, block, times):
    """EN 1995-1-1 Table 8.2, nails under 5 mm along the grain: (5 + 5) d up to 420 kg/m3, (7 + 8) d
    above, whichever piece it is; 840 times 0.36 of redcedar and 0.55 of southern pine, kg/m3."""
    head, middle, end = POST.split("southern pine")
    woods = f"{head}{plank}{middle}{block}{end}"
    nail = "nail 3.1 mm x 80 mm"
    text = woods + joint("block", "plank", nail, None).rstrip()
    text += "\npoints = [['0 in', '0 in'], ['1 in', '0 in']]\n"
    structure = build_structure(read_text(text))
    found = nearest_of(structure, places(structure, "EN 1995, service"))
    assert (found.near, found.has / IN) == (Near.EACH_OTHER, pytest.approx(1.0))
    assert found.needs == pytest.approx(times * fasteners.find_fastener(nail).diameter)


@pytest.mark.parametrize(
    ("name", "gravity", "needed"),
    [
        ("1/4 lag screw 4 in", 0.36, True),
        ("1/4 lag screw 4 in", None, True),
        ("#8 wood screw 2 in", 0.5, False),
        ("#8 wood screw 2 in", 0.68, True),
        ("16d common nail", 0.68, False),
    ],
)
def test_what_needs_a_lead_hole(name, gravity, needed):
    """NDS 2018 12.1.4.2: lag screws; 12.1.5.2: wood screws in wood of G over 0.6; nails may be
    driven without (12.1.6.2)."""
    assert needs_lead_holes(fasteners.find_fastener(name), gravity) is needed
