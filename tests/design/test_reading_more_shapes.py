"""Member, cut-out, dome, vault, gambrel, coverings and the further ways to place a part."""

from math import asin, pi, radians, sin, sqrt
from pathlib import Path

import pytest
from drawings import drawing, sawn, sawn_design
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
    assert note.startswith("piece: covering: asphalt shingles is 2 lb/ft^2 (ASCE 7 Table C3-1")


def test_a_covering_of_a_printed_range_takes_its_middle() -> None:
    roof = "shape='vault'\nlength='4 ft'\nwidth='2 ft'\nheight='2 ft'\ncovering="
    found = one_part(f"{roof}'ribbed steel roofing, 29 gage'").covering
    assert found == pytest.approx(0.65 * POUND / FOOT**2)  # printed as 0.6-0.7 psf


def test_a_hip_takes_a_covering() -> None:
    keys = "shape='box'\nlength='3 ft'\nwidth='2 ft'\nheight='1 ft'\ntop_width='0 in'"
    assert one_part(f"{keys}\ncovering='2 lb/ft^2'").covering > 0.0


# --- drawings -----------------------------------------------------------------------------------

HEIGHT = 20 * INCH
RECTANGLE = "<rect x='10' y='20' width='50' height='100'/>"


@pytest.mark.parametrize(
    ("inside", "area", "perimeter", "height"),
    [
        pytest.param("<circle cx='50' cy='50' r='40'/>", pi * 40**2, 2 * pi * 40, 80, id="circle"),
        pytest.param(
            "<ellipse cx='9' cy='9' rx='60' ry='30'/>", pi * 60 * 30, 2 * pi * 60, 60, id="ellipse"
        ),
        pytest.param(RECTANGLE, 5000, 300, 100, id="rectangle"),
        pytest.param(
            "<rect width='50' height='100' rx='10'/>",
            5000 - (4 - pi) * 10**2,
            300,
            100,
            id="rounded rectangle",
        ),
        pytest.param("<polygon points='0,0 30,40 -30,40'/>", 1200, 160, 40, id="triangle"),
        pytest.param(
            "<path d='M 0 0 h 80 a 20 20 0 0 1 0 40 h -80 a 20 20 0 0 1 0 -40 z'/>",
            80 * 40 + pi * 20**2,
            160 + 40 * pi,
            40,
            id="arcs",
        ),
        # A parabola's segment is 2/3 of base times height (Archimedes): a quadratic Bezier curve
        # with its control point 2 h over a base b.
        pytest.param(
            "<path d='M 0 60 Q 45 -60 90 60 Z'/>", 2 / 3 * 90 * 60, 250, 60, id="quadratic"
        ),
        # 3/20 of the control polygon's cross products; here (0,0) (0,h') (b,h') (b,0): 3/5 b h'.
        pytest.param(
            "<path d='M 0 80 C 0 0 100 0 100 80 Z'/>", 3 / 5 * 100 * 80, 300, 60, id="cubic"
        ),
        pytest.param(
            "<g transform='rotate(90) scale(2)'><rect width='50' height='100'/></g>",
            20000,
            600,
            100,
            id="turned and scaled",
        ),
        pytest.param(
            f"<defs><g id='a'>{RECTANGLE}</g></defs><use xlink:href='#a' x='9'/>",
            5000,
            300,
            100,
            id="used again",
        ),
    ],
)
def test_a_drawing_gives_its_area_to_the_stated_tolerance(
    tmp_path: Path, inside: str, area: float, perimeter: float, height: float
) -> None:
    found = sawn(tmp_path, drawing(inside))
    scale = HEIGHT / height
    # An edge lies within 1/500 of the height of its curve: the area, within that all round.
    allowed = perimeter * scale * HEIGHT / 500 + 1e-12
    assert found.outline.area == pytest.approx(area * scale**2, abs=allowed)
    left, low, right, high = found.outline.bounds
    assert (low, high) == pytest.approx((0.0, HEIGHT), abs=1e-12)
    assert left == pytest.approx(-right, abs=1e-12)


def test_straight_lines_are_taken_exactly(tmp_path: Path) -> None:
    found = sawn(tmp_path, drawing(RECTANGLE))
    assert len(found.points) == 4
    assert found.outline.area == pytest.approx(HEIGHT * HEIGHT / 2)


def test_no_edge_of_a_circle_lies_farther_off_than_stated(tmp_path: Path) -> None:
    found = sawn(tmp_path, drawing("<circle cx='50' cy='50' r='40'/>"))
    # The sagitta of a chord: r (1 - cos(pi/n)); one edge fewer a quarter would exceed it.
    assert found.outline.exterior.distance(found.outline.centroid) >= HEIGHT / 2 - HEIGHT / 500
    assert len(found.points) <= 4 * (1 + pi / 4 / asin(sqrt(1 / 500)))


def test_up_in_a_drawing_is_up_in_the_yard(tmp_path: Path) -> None:
    found = sawn(tmp_path, drawing("<polygon points='0,0 30,40 -30,40'/>"))
    # The drawing's y points down, so the point at y = 0 is the highest, above the middle.
    x, z = max(found.points, key=lambda point: point[1])
    assert (x, z) == pytest.approx((0.0, HEIGHT), abs=1e-12)
    assert found.moments().first[2] / found.moments().volume == pytest.approx(HEIGHT / 3)


def test_left_in_a_drawing_is_left_seen_from_the_front(tmp_path: Path) -> None:
    found = sawn(tmp_path, drawing("<polygon points='0,0 0,40 30,40'/>"))
    assert found.outline.centroid.x < 0.0


def test_closed_paths_within_the_outline_are_holes(tmp_path: Path) -> None:
    inside = (
        f"{RECTANGLE}<circle cx='35' cy='70' r='20'/><rect x='12' y='22' width='5' height='5'/>"
    )
    found = sawn(tmp_path, drawing(inside))
    scale = HEIGHT / 100
    assert [len(hole) > 4 for hole in found.holes] == [True, False]
    sawn_area = found.moments().volume / found.thickness
    allowed = 2 * pi * 20 * scale * HEIGHT / 500
    assert sawn_area == pytest.approx((5000 - pi * 400 - 25) * scale**2, abs=allowed)


def test_one_path_may_hold_outline_and_hole(tmp_path: Path) -> None:
    inside = "<path d='M0 0 h50 v100 h-50 z M10 10 v20 h20 v-20 z'/>"
    found = sawn(tmp_path, drawing(inside))
    assert found.moments().volume == pytest.approx(
        (5000 - 400) * (HEIGHT / 100) ** 2 * found.thickness
    )


def test_the_note_says_how_many_corners_and_what_is_left_out(tmp_path: Path) -> None:
    inside = (
        f"{RECTANGLE}<rect x='20' y='30' width='9' height='9'/><rect x='90' width='4' height='4'/>"
    )
    (note,) = sawn_design(tmp_path, drawing(inside)).notes
    assert note == (
        "piece: outline: heron.svg is 20 in high and 10 in wide, with 8 corners "
        "(curves to 1/500 of its height) and 1 hole; 1 closed path besides left out"
    )


@pytest.mark.parametrize(
    "more",
    [
        pytest.param("<path d='M 0 0 L 400 400 L 300 0'/>", id="open path"),
        pytest.param("<line x1='0' y1='0' x2='900' y2='900'/>", id="line"),
        pytest.param("<rect width='900' height='900' style='display:none'/>", id="not displayed"),
        pytest.param("<rect width='900' height='900' visibility='hidden'/>", id="hidden"),
        pytest.param("<clipPath><rect width='900' height='900'/></clipPath>", id="clip path"),
        pytest.param("<mask><rect width='900' height='900'/></mask>", id="mask"),
        pytest.param("<symbol id='s'><rect width='900' height='900'/></symbol>", id="symbol"),
        pytest.param("<pattern><rect width='900' height='900'/></pattern>", id="pattern"),
        pytest.param("<defs><rect width='900' height='900'/></defs>", id="definition"),
        pytest.param("<text x='9' y='9'>Heron</text>", id="text"),
        pytest.param("<!-- a note --><title>Heron</title>", id="note"),
        pytest.param(RECTANGLE, id="drawn twice"),
    ],
)
def test_what_is_not_seen_as_a_closed_path_is_no_outline(tmp_path: Path, more: str) -> None:
    found = sawn(tmp_path, drawing(more + RECTANGLE))
    assert (len(found.points), found.holes) == (4, ())


def test_a_path_whose_ends_meet_is_closed(tmp_path: Path) -> None:
    found = sawn(tmp_path, drawing("<path d='M 0 0 L 30 40 L -30 40 L 0.01 0'/>"))
    assert found.outline.area == pytest.approx(0.5 * 1.5 * HEIGHT**2, rel=1e-3)


def test_a_drawing_lies_beside_the_design_or_in_a_folder(tmp_path: Path, monkeypatch) -> None:
    monkeypatch.chdir(tmp_path.parent)
    assert len(sawn(tmp_path, drawing(RECTANGLE)).points) == 4


def test_a_view_box_does_not_matter(tmp_path: Path) -> None:
    boxed = "width='40mm' height='20mm' viewBox='0 0 200 100'"
    plain = sawn(tmp_path, drawing(RECTANGLE))
    assert sawn(tmp_path, drawing(RECTANGLE, boxed)).points == tuple(
        pytest.approx(point, abs=1e-9) for point in plain.points
    )


def test_a_gentle_level_cut_is_taken() -> None:
    rise = 100 * sin(radians(3))
    keys = f"shape='member'\nfrom=['0 in','0 in','0 in']\nto=['99.86 in','0 in','{rise:.3f} in']"
    shape = one_part(f"{keys}\nwidth='2 in'\ndepth='4 in'\ncut='level'").shape
    assert isinstance(shape, Member)
    assert shape.cut == "level"
