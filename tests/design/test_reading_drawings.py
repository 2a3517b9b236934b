"""A drawing becomes a board: its largest closed path, and the holes within it."""

from math import asin, pi, sqrt
from pathlib import Path

import pytest
from drawings import drawing, sawn, sawn_design

INCH = 0.0254  # international inch, exact
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
