"""Member, cut-out, dome, vault, gambrel, coverings and the further ways to place a part."""

from math import pi, radians, sin

import pytest
from sample_file import altered, design, one_part, part_text

from yardfast.design.model import Place
from yardfast.design.placing import place_parts
from yardfast.design.shapes.cutout import Cutout
from yardfast.design.shapes.gables import Gable
from yardfast.design.shapes.member import Member
from yardfast.design.shapes.roofs import Dome, Vault

INCH = 0.0254  # international inch, exact
POUND = 0.45359237  # international pound, exact
FOOT = 0.3048  # international foot, exact

ENDS = "shape='member'\nfrom=['0 in', '0 in', '0 in']\nto=['-1 ft', '0 in', '3 ft']"
BALL = "shape='ball'\nacross='6 in'"
TRIANGLE = "points=[['-6 in', '0 in'], ['6 in', '0 in'], ['0 in', '9 in']]\nthickness='1/2 in'"


def member(keys: str) -> Member:
    shape = one_part(f"{ENDS}\n{keys}").shape
    assert isinstance(shape, Member)
    return shape


def cutout(keys: str) -> Cutout:
    shape = one_part(f"shape='cutout'\n{keys}").shape
    assert isinstance(shape, Cutout)
    return shape


def test_a_member_reaches_from_point_to_point() -> None:
    found = member("width='2 in'\ndepth='4 in'")
    assert found.start == (0.0, 0.0, 0.0)
    assert found.end == pytest.approx((-12 * INCH, 0.0, 36 * INCH))
    assert (found.width, found.depth) == pytest.approx((2 * INCH, 4 * INCH))
    assert (found.across, found.wall, found.cut) == (0.0, None, "square")


@pytest.mark.parametrize(
    ("lumber", "width", "depth"),
    [
        ("2x4 flat", 3.5, 1.5),
        ("2x4 on edge", 1.5, 3.5),
        ("2X4, on-edge", 1.5, 3.5),
        ("4x4", 3.5, 3.5),
    ],
)
def test_lumber_stands_for_width_and_depth(lumber: str, width: float, depth: float) -> None:
    # Dressed sizes: American Softwood Lumber Standard PS 20.
    found = member(f"lumber='{lumber}'")
    assert (found.width, found.depth) == pytest.approx((width * INCH, depth * INCH))


@pytest.mark.parametrize("cut", ["square", "level", "plumb"])
def test_a_member_is_cut_as_it_says(cut: str) -> None:
    assert member(f"lumber='2x4 on edge'\ncut='{cut}'").cut == cut


def test_a_pipe_has_a_wall() -> None:
    found = member("across='2 in'\nwall='1/8 in'\nsurface='smooth'")
    assert (found.across, found.wall) == pytest.approx((2 * INCH, INCH / 8))
    # pi/4 (D2 - d2): plane geometry.
    assert found.section_area == pytest.approx(pi / 4 * (2**2 - 1.75**2) * INCH**2)


def test_a_plumb_stick_says_which_way_its_width_lies() -> None:
    keys = "shape='member'\nfrom=['1 ft','0 in','0 in']\nto=['1 ft','0 in','3 ft']\n"
    assert design(part_text(f"{keys}lumber='2x4 flat'")).notes == (
        "piece: 2x4 flat is 3 1/2 in wide and 1 1/2 in high",
        "piece: it stands plumb: its width lies along x, right and left",
    )
    assert design(part_text(f"{keys}lumber='4x4'")).notes == (
        "piece: 4x4 is 3 1/2 in wide and 3 1/2 in high",
    )


def test_points_are_right_and_up() -> None:
    found = cutout(TRIANGLE)
    corners = ((-6 * INCH, 0.0), (6 * INCH, 0.0), (0.0, 9 * INCH))
    assert found.points == tuple(pytest.approx(point) for point in corners)
    assert found.holes == ()
    # A triangle is half base times height; half an inch thick.
    assert found.moments().volume == pytest.approx(0.5 * 12 * 9 * 0.5 * INCH**3)


def test_holes_are_outlines_within() -> None:
    found = cutout(
        f"{TRIANGLE}\nholes=[ # two\n [['-2 in','1 in'],['0 in','1 in'],['-1 in','2 in']],\n"
        "[['1 in','1 in'],['2 in','1 in'],['2 in','2 in'],['1 in','2 in']] ]"
    )
    assert [len(hole) for hole in found.holes] == [3, 4]
    assert found.moments().volume == pytest.approx((54 - 1 - 1) * 0.5 * INCH**3)


def test_a_closing_point_is_no_corner_more() -> None:
    keys = TRIANGLE.replace("['0 in', '9 in']]", "['0 in', '9 in'], ['-6 in', '0 in']]")
    assert cutout(keys) == cutout(TRIANGLE)
    (note,) = design(part_text(f"shape='cutout'\n{keys}")).notes
    assert "closes the outline" in note


def test_a_cutout_is_of_sheet_stock() -> None:
    found = cutout(TRIANGLE.replace("thickness='1/2 in'", "stock='3/4 plywood'"))
    # Sanded 3/4 in: PS 1, its actual thickness.
    assert found.thickness == pytest.approx(0.703 * INCH)


def test_points_may_run_either_way_round() -> None:
    keys = "points=[['0 in','9 in'],['6 in','0 in'],['-6 in','0 in']]\nthickness='1/2 in'"
    assert cutout(keys).moments().volume == pytest.approx(cutout(TRIANGLE).moments().volume)


def test_a_dome_is_up_to_half_a_ball() -> None:
    found = one_part("shape='dome'\nacross='24 in'\nheight='12 in'\nwall='1/2 in'").shape
    assert found == Dome(*(pytest.approx(size * INCH) for size in (24, 12, 0.5)))
    assert one_part("shape='dome'\nacross='2 ft'\nheight='3 in'\nsurface='smooth'").surface


def test_a_vault_is_half_round_at_least() -> None:
    found = one_part("shape='vault'\nlength='4 ft'\nwidth='2 ft'\nheight='1 ft'").shape
    assert found == Vault(*(pytest.approx(size * FOOT) for size in (4, 2, 1)), None)
    hollow = one_part(
        "shape='vault'\nlength='4 ft'\nwidth='2 ft'\nheight='3 ft'\nwall='1 in'"
    ).shape
    assert isinstance(hollow, Vault)
    # Straight sides 2 ft high under half a circle, less the same an inch inside.
    outer = 24 * 24 + pi / 2 * 12**2
    inner = 22 * 24 + pi / 2 * 11**2
    assert hollow.moments().volume == pytest.approx((outer - inner) * 48 * INCH**3)


def test_a_gambrel_has_a_knee() -> None:
    keys = "shape='gable'\nlength='4 ft'\nwidth='4 ft'\nheight='3 ft'"
    found = one_part(f"{keys}\nknee_width='3 ft'\nknee_height='2 ft'\nthickness='1 in'").shape
    assert isinstance(found, Gable)
    assert (found.knee_width, found.knee_height) == pytest.approx((3 * FOOT, 2 * FOOT))
    # Below the knee a trapezoid, above it a triangle.
    filled = one_part(f"{keys}\nknee_width='3 ft'\nknee_height='2 ft'").shape
    assert filled.moments().volume == pytest.approx((3.5 * 2 + 1.5 * 1) * 4 * FOOT**3)


def test_every_place_key_is_read() -> None:
    keys = (
        f"{BALL}\nat=['1 in', '-2 in', '0 in']\ntilt='-15 deg'\nturn='30 deg'\ncount=5\n"
        "step=['1 ft', '0 in', '-6 in']\nmirror=['x', 'y']"
    )
    assert one_part(keys).place == Place(
        at=(pytest.approx(INCH), pytest.approx(-2 * INCH), 0.0),
        tilt=pytest.approx(radians(-15)),
        turn=pytest.approx(radians(30)),
        count=5,
        step=(pytest.approx(FOOT), 0.0, pytest.approx(-FOOT / 2)),
        mirror=frozenset({"x", "y"}),
    )


def test_a_row_and_its_mirror_stand_where_they_should() -> None:
    text = part_text(
        f"{BALL}\nat=['1 ft','0 in','0 in']\ncount=2\nstep=['1 ft','0 in','0 in']\nmirror=['x']"
    )
    places = sorted(round(float(body.origin[0]) / FOOT, 9) for body in place_parts(design(text)))
    assert places == [-2.0, -1.0, 1.0, 2.0]


def test_a_part_hangs_under_another() -> None:
    text = altered(
        "name     = 'roof'\nshape    = 'cone'\non       = 'gallery'",
        "name     = 'roof'\nshape    = 'cone'\nunder    = 'gallery'",
    )
    found = design(text)
    assert (found.parts[3].place.under, found.parts[3].place.on) == ("gallery", None)
    bodies = place_parts(found)
    assert bodies[3].top == pytest.approx(bodies[2].bottom)


def test_loose_and_hanging_parts_say_so() -> None:
    assert one_part(f"{BALL}\nloose=true").loose
    assert not one_part(f"{BALL}\nloose=false").loose
    assert one_part(f"{BALL}\nhangs_at='5 ft'").hangs_at == pytest.approx(5 * FOOT)
    plain = one_part(BALL)
    assert (plain.loose, plain.hangs_at, plain.covering) == (False, None, 0.0)


@pytest.mark.parametrize(
    ("covering", "pounds"),
    [
        # ASCE 7 Table C3-1, psf; a pound of weight is a pound of mass.
        ("asphalt shingles", 2.0),
        ("Asphalt  Shingles", 2.0),
        ("wood shingles", 3.0),
        ("slate 1/4 in", 10.0),
        ("copper or tin", 1.0),
        ("2.5 lb/ft^2", 2.5),
        ("40 oz/ft^2", 2.5),
    ],
)
def test_a_covering_is_named_or_weighed(covering: str, pounds: float) -> None:
    roof = f"shape='cone'\nsides=8\nbottom='3 ft'\nheight='2 ft'\ncovering='{covering}'"
    assert one_part(roof).covering == pytest.approx(pounds * POUND / FOOT**2)


def test_a_named_covering_is_repeated_back_with_its_source() -> None:
    roof = "shape='dome'\nacross='3 ft'\nheight='1 ft'\ncovering='asphalt shingles'"
    (note,) = design(part_text(roof)).notes
    assert note.startswith(
        "piece: covering: asphalt shingles is 2 lb/ft^2 (ASCE/SEI 7-05 Table C3-1"
    )


def test_a_covering_of_a_printed_range_takes_its_middle() -> None:
    roof = "shape='vault'\nlength='4 ft'\nwidth='2 ft'\nheight='2 ft'\ncovering="
    found = one_part(f"{roof}'ribbed steel roofing, 29 gage'").covering
    assert found == pytest.approx(0.65 * POUND / FOOT**2)  # printed as 0.6-0.7 psf


def test_a_hip_takes_a_covering() -> None:
    keys = "shape='box'\nlength='3 ft'\nwidth='2 ft'\nheight='1 ft'\ntop_width='0 in'"
    assert one_part(f"{keys}\ncovering='2 lb/ft^2'").covering > 0.0


def test_a_gentle_level_cut_is_taken() -> None:
    rise = 100 * sin(radians(3))
    keys = f"shape='member'\nfrom=['0 in','0 in','0 in']\nto=['99.86 in','0 in','{rise:.3f} in']"
    shape = one_part(f"{keys}\nwidth='2 in'\ndepth='4 in'\ncut='level'").shape
    assert isinstance(shape, Member)
    assert shape.cut == "level"
