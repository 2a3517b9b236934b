"""Every shape, and every way to give a size."""

from math import cos, pi, radians, sin, sqrt, tan

import pytest
from sample_file import HARBOUR_LIGHT, design, one_part, part_text

from yardfast.checks.inputs import read_text
from yardfast.design.shapes.ball import Ball
from yardfast.design.shapes.bodies import Shell, Solid
from yardfast.design.shapes.boxes import Box
from yardfast.design.shapes.cone import Cone
from yardfast.design.shapes.flat import Frame, Panel, Plate
from yardfast.design.shapes.gables import Gable
from yardfast.design.shapes.plans import Rectangle, Regular
from yardfast.design.shapes.rotor import Rotor
from yardfast.design.shapes.weight import Weight

INCH = 0.0254  # international inch, exact


def inches(value: float) -> float:
    return pytest.approx(value * INCH, rel=1e-12)


@pytest.mark.parametrize(
    ("keys", "shape"),
    [
        (
            "shape='shell'\nsides=6\nbottom='18 in'\ntop='10 in'\nheight='6 ft'\nwall='3/4 in'",
            Shell(6, inches(18), inches(10), inches(72), inches(0.75)),
        ),
        (
            "shape='solid'\nsides=0\nbottom='8 in'\ntop='0 in'\nheight='2 ft'",
            Solid(0, inches(8), 0.0, inches(24)),
        ),
        ("shape='cone'\nsides=8\nbottom='12 in'\nheight='9 in'", Cone(8, inches(12), inches(9))),
        (
            "shape='cone'\nsides=8\nbottom='12 in'\nheight='9 in'\nwall='1/2 in'",
            Cone(8, inches(12), inches(9), inches(0.5)),
        ),
        (
            "shape='box'\nlength='4 ft'\nwidth='3 ft'\nheight='30 in'",
            Box(inches(48), inches(36), inches(30)),
        ),
        (
            "shape='box'\nlength='4 ft'\nwidth='3 ft'\nheight='30 in'\nwall='3/4 in'\n"
            "open=['top', 'front']\ntop_length='0 in'\ntop_width='2 ft'",
            Box(
                inches(48),
                inches(36),
                inches(30),
                inches(0.75),
                frozenset({"top", "front"}),
                0.0,
                inches(24),
            ),
        ),
        (
            "shape='gable'\nlength='4 ft'\nwidth='3 ft'\nheight='1 ft'\nthickness='1/2 in'",
            Gable(inches(48), inches(36), inches(12), inches(0.5)),
        ),
        (
            "shape='gable'\nlength='4 ft'\nwidth='3 ft'\nheight='1 ft'",
            Gable(inches(48), inches(36), inches(12)),
        ),
        (
            "shape='plate'\nsides=8\nacross='17 in'\nthickness='3/4 in'\nhole='4 in'",
            Plate(Regular(8, inches(17)), inches(0.75), inches(4)),
        ),
        (
            "shape='plate'\nlength='4 ft'\nwidth='2 ft'\nthickness='1 in'\nsolidity=0.8",
            Plate(Rectangle(inches(48), inches(24)), inches(1), 0.0, 0.8),
        ),
        (
            "shape='panel'\nwidth='4 ft'\nheight='2 ft'\nthickness='1/2 in'",
            Panel(inches(48), inches(24), inches(0.5)),
        ),
        (
            "shape='panel'\nwidth='4 ft'\nheight='6 ft'\nthickness='1/2 in'\nsolidity=0.4\n"
            "climbers=true",
            Panel(inches(48), inches(72), inches(0.5), 0.4, True),
        ),
        (
            "shape='frame'\nsides=6\nacross='20 in'\nwidth='3 in'\nheight='2 in'",
            Frame(Regular(6, inches(20)), inches(3), inches(2)),
        ),
        (
            "shape='frame'\nlength='4 ft'\nbreadth='3 ft'\nwidth='3 in'\nheight='2 in'",
            Frame(Rectangle(inches(48), inches(36)), inches(3), inches(2)),
        ),
        ("shape='ball'\nacross='6 in'\nwall='1/8 in'", Ball(inches(6), inches(0.125))),
        (
            "shape='rotor'\nblades=12\nspan='2 ft'\nroot='2 in'\ntip='5 in'\nthickness='1/16 in'\n"
            "facing='180 deg'\nsolidity=0.9\npitch='30 deg'\nspins=false",
            Rotor(
                12,
                inches(24),
                inches(2),
                inches(5),
                inches(0.0625),
                pytest.approx(pi),
                0.9,
                pytest.approx(radians(30)),
                False,
                False,
            ),
        ),
        (
            "shape='rotor'\nblades=4\nspan='2 ft'\nroot='2 in'\ntip='5 in'\nthickness='1/2 in'\n"
            "yaws=true",
            Rotor(4, inches(24), inches(2), inches(5), inches(0.5), yaws=True),
        ),
        ("shape='weight'\nmass='20 lb'", Weight()),
    ],
)
def test_each_shape_is_built_from_its_keys(keys: str, shape: object) -> None:
    assert one_part(keys).shape == shape


# Regular figures by trigonometry from the circumscribed radius R, independent of the reader's
# own tangent: edge 2 R sin(180/n), flats 2 R cos(180/n), points 2 R.
@pytest.mark.parametrize("sides", [3, 4, 5, 6, 8, 12])
def test_an_edge_gives_the_width_over_flats(sides: int) -> None:
    radius = 10.0
    edge, flats = 2 * radius * sin(pi / sides), 2 * radius * cos(pi / sides)
    keys = f"shape='solid'\nsides={sides}\nbottom_side='{edge!r} in'\ntop='1 in'\nheight='2 ft'"
    solid = one_part(keys).shape
    assert isinstance(solid, Solid)
    assert solid.bottom == inches(flats)


@pytest.mark.parametrize("sides", [4, 6, 8, 12])
def test_points_give_the_width_over_flats(sides: int) -> None:
    radius = 10.0
    keys = (
        f"shape='shell'\nsides={sides}\nbottom='30 in'\ntop_points='{2 * radius} in'\n"
        "height='2 ft'\nwall='1/2 in'"
    )
    shell = one_part(keys).shape
    assert isinstance(shell, Shell)
    assert shell.top == inches(2 * radius * cos(pi / sides))


def test_a_square_measures_its_edge_over_flats() -> None:
    keys = "shape='plate'\nsides=4\nacross_side='10 in'\nhole_side='4 in'\nthickness='1 in'"
    plate = one_part(keys).shape
    assert isinstance(plate, Plate)
    assert plate.plan == Regular(4, inches(10))
    assert plate.hole == inches(4)


def test_a_hexagon_over_points_is_fifteen_percent_more_than_over_flats() -> None:
    # 2 / sqrt(3) = 1.1547: plane geometry.
    frame = one_part("shape='frame'\nsides=6\nacross_points='20 in'\nwidth='2 in'\nheight='1 in'")
    assert isinstance(frame.shape, Frame)
    assert frame.shape.plan == Regular(6, inches(20 * sqrt(3) / 2))


def test_ends_may_be_given_differently() -> None:
    keys = "shape='cone'\nsides=5\nbottom_side='6 in'\nheight='9 in'"
    cone = one_part(keys).shape
    assert isinstance(cone, Cone)
    assert cone.bottom == inches(6 / tan(radians(36)))


def test_panel_length_stands_for_the_height() -> None:
    # 5-12-13: the panel is 13 in long and leans in by 5 in, so it rises 12 in.
    keys = (
        "shape='shell'\nsides=8\nbottom='20 in'\ntop='10 in'\npanel_length='13 in'\nwall='1/2 in'"
    )
    shell = one_part(keys).shape
    assert isinstance(shell, Shell)
    assert shell.height == inches(12)


# Dressed sizes: American Softwood Lumber Standard PS 20.
@pytest.mark.parametrize(
    ("lumber", "width", "height"),
    [
        ("2x4 flat", 3.5, 1.5),
        ("2x4 on edge", 1.5, 3.5),
        ("2 x 6 on edge", 1.5, 5.5),
        ("2×4 flat", 3.5, 1.5),
        ("4x4", 3.5, 3.5),
        ("5/4x6 flat", 5.5, 1.0),
        ("1X4 Flat", 3.5, 0.75),
    ],
)
def test_a_frame_of_lumber_has_its_actual_size(lumber: str, width: float, height: float) -> None:
    frame = one_part(f"shape='frame'\nsides=8\nacross='3 ft'\nlumber='{lumber}'").shape
    assert isinstance(frame, Frame)
    assert (frame.width, frame.height) == (inches(width), inches(height))


def test_a_post_of_lumber_is_a_box_or_a_square_solid() -> None:
    assert one_part("shape='box'\nlumber='4x6'\nheight='8 ft'").shape == Box(
        inches(5.5), inches(3.5), inches(96)
    )
    assert one_part("shape='solid'\nlumber='4x4'\nheight='8 ft'").shape == Solid(
        4, inches(3.5), inches(3.5), inches(96)
    )


def test_a_sheet_has_its_actual_thickness_and_says_so() -> None:
    # A 3/4 sheet is sold as 23/32, decimal label 0.703 in: PS 1 performance categories.
    found = design(part_text("shape='panel'\nwidth='4 ft'\nheight='2 ft'\nstock='3/4 plywood'"))
    panel = found.parts[0].shape
    assert isinstance(panel, Panel)
    assert panel.thickness == inches(0.703)
    assert found.notes == ("piece: 3/4 plywood is 0.703 in thick",)


@pytest.mark.parametrize(
    ("keys", "note"),
    [
        (
            "shape='panel'\nwidth='4 ft'\nheight='2 ft'\nstock='3/4 plywood'",
            "piece: 3/4 plywood is 17.86 mm thick",
        ),
        (
            "shape='frame'\nsides=4\nacross='24 in'\nlumber='2x4 flat'",
            "piece: 2x4 flat is 88.9 mm wide and 38.1 mm high",
        ),
    ],
)
def test_metric_files_are_told_in_millimetres_how_they_were_read(keys: str, note: str) -> None:
    metric = part_text(keys).replace("units = 'imperial'", "units = 'metric'")
    assert "metric" in metric
    assert note in design(metric).notes


def test_stock_stands_for_a_wall() -> None:
    keys = "shape='cone'\nsides=8\nbottom='2 ft'\nheight='2 ft'\nstock='1/2 Plywood'"
    cone = one_part(keys).shape
    assert isinstance(cone, Cone)
    assert cone.wall == inches(0.451)  # sold as 15/32, decimal label 0.451 in: PS 1


def test_walls_may_meet_at_the_narrow_end_and_that_is_said() -> None:
    keys = "shape='shell'\nsides=4\nbottom='20 in'\ntop='1 in'\nheight='40 in'\nwall='1 in'"
    assert design(part_text(keys)).notes == (
        "piece: its walls meet at the narrow end, which is closed",
    )


@pytest.mark.parametrize(
    "written", ["36 in", "3 ft", '36"', "3'", "914.4 mm", "0.9144 m", "3'-0\""]
)
def test_a_size_is_the_same_in_every_unit(written: str) -> None:
    quoted = "'" + written + "'" if "'" not in written else '"' + written.replace('"', '\\"') + '"'
    assert one_part(f"shape='ball'\nacross={quoted}").shape == Ball(inches(36))


@pytest.mark.parametrize("said", ["3/4 inch plywood", '3/4" plywood', "3/4 in ply", "3/4 PLYWOOD"])
def test_a_sheet_is_known_in_a_builders_words(said: str) -> None:
    text = HARBOUR_LIGHT.replace("wall     = '3/4 in'", f"stock    = '{said}'")
    assert any("3/4 plywood is" in note for note in read_text(text).notes)
