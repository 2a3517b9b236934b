"""What fastens a piece: counted by hand on the light tower, and held against what shops print."""

from math import cos, pi

import pytest

from yardfast.checks.inputs import read
from yardfast.checks.stated.hardware import hardware
from yardfast.design.cutting.cut_list import cut_list
from yardfast.design.structure import build_structure
from yardfast.materials import fasteners
from yardfast.materials.hardware import bottles, fastener_boxes, glue_for, with_spares
from yardfast.statics.tables.seam_table import SeamRow
from yardfast.units import INCH
from yardfast.units.frozen import replace

TOWER = "examples/light-tower.toml"


def driven(structure, pieces=1):
    return {one.fastener.name: dict(one.uses) for one in hardware(structure, pieces).driven}


@pytest.fixture(scope="module")
def tower(request):
    return build_structure(read(str(request.config.rootpath / TOWER)))


def test_each_part_has_a_screw_of_its_own_into_each_block(tower):
    assert driven(tower)["#8 wood screw 2 1/2 in"] == {"tower to foot": 16}


def test_seams_take_a_row_in_either_panel_no_farther_apart_than_is_said(tower):
    # slant of a corner: 48 up, (18 - 10)/2/cos 22.5 = 4.33 in; 15 diameters of 0.164 in at each end
    # leave 43.3 in: at 8 in apart 6 gaps, 7 screws; 2 rows at each of 8 corners
    assert driven(tower)["#8 wood screw 2 in"]["tower"] == 8 * 2 * 7


@pytest.mark.parametrize("gaps", [1, 5, 6, 9])
def test_where_the_spacing_goes_in_just_so_often_it_is_kept(tower, gaps):
    # as above: 43.275 in between the first and the last, parted into so many gaps to the hair
    corner = (48.0**2 + (4.0 / cos(pi / 8.0)) ** 2) ** 0.5 * INCH
    between = corner - 2.0 * 15.0 * fasteners.find_fastener("#8 wood screw 2 in").diameter
    (row,) = tower.design.several(SeamRow)
    rows = (replace(row, spacing=between / gaps),)
    apart = replace(tower.design, tables={**tower.design.tables, SeamRow: rows})
    assert driven(build_structure(apart))["#8 wood screw 2 in"]["tower"] == 8 * 2 * (gaps + 1)


def test_seams_without_a_cleat_take_one_row(tower):
    design = tower.design
    (row,) = design.several(SeamRow)
    bare = replace(design, tables={**design.tables, SeamRow: (replace(row, cleat=None),)})
    assert driven(build_structure(bare))["#8 wood screw 2 in"]["tower"] == 8 * 7


def test_three_of_a_kind_take_three_times_as_many(tower):
    one, three = driven(tower), driven(tower, 3)
    assert {k: {n: 3 * c for n, c in uses.items()} for k, uses in one.items()} == three
    assert [3 * cut.count for cut in hardware(tower).sawn] == [
        cut.count for cut in hardware(tower, 3).sawn
    ]


def test_no_screw_comes_out_of_its_block(tower):
    """2 1/2 in screws through 0.703 in of plywood reach 1.8 in: a 2x2, 1 1/2 in, is too thin."""
    blocks = {cut.part.name: cut.stick for cut in hardware(tower).sawn if cut.stick.face == "block"}
    foot = blocks["tower to foot"]
    assert (foot.thick / INCH, foot.wide / INCH) == pytest.approx((1.5, 2.5))
    assert foot.wide / INCH >= 2.5 - 0.703
    gallery = blocks["gallery to tower"]
    assert (gallery.thick / INCH, gallery.wide / INCH) == pytest.approx((1.5, 1.5))
    # inside the tower's top: 10 in flat to flat, less two walls that lean 4.76 deg
    assert gallery.long_point / INCH == pytest.approx(
        (10.0 - 2 * 0.703 / 0.99655) * 0.41421, abs=0.02
    )


def test_cleats_are_as_long_as_the_corner(tower):
    (cleat,) = (cut for cut in hardware(tower).sawn if cut.stick.face == "cleat")
    assert cleat.count == 8
    assert cleat.stick.long_point / INCH == pytest.approx((48.0**2 + 4.3296**2) ** 0.5, abs=1e-3)


def test_glue_is_counted_on_the_faces_of_seams_and_mitres(tower):
    # tower: 8 seams of 48.195 in, wall 0.703 in over cos 22.42; lantern: 8 of 9 in by 1/8 in over
    # cos 22.5; foot: 8 mitres of 5 1/2 by 1 1/2 in over cos 22.5; the roof's 8 seams by its slope
    by_hand = 8 * (48.195 * 0.703 / 0.92441 + 9.0 * 0.125 / 0.92388 + 5.5 * 1.5 / 0.92388)
    # the roof: corners at 5.5/cos 22.5 = 5.953 in, 8 in high; bevel 18.38
    by_hand += 8 * (5.953**2 + 8.0**2) ** 0.5 * 0.451 / 0.94899
    assert hardware(tower).mitres / INCH**2 == pytest.approx(by_hand, rel=2e-3)


@pytest.mark.parametrize(
    ("name", "printed"),
    [
        ("6d common nail", 170),
        ("8d common nail", 100),
        ("10d common nail", 65),
        ("16d common nail", 50),
        ("20d common nail", 30),
    ],
)
def test_a_pound_holds_as_many_nails_as_charts_print(name, printed):
    """A public chart of nails, "approximate number per pound"; its figures are rounded to 5 %."""
    assert fastener_boxes(fasteners.find_fastener(name), 1, "imperial").holds == pytest.approx(
        printed, rel=0.06
    )


def test_screws_are_bought_by_the_box_with_spares_and_bolts_by_the_piece():
    assert with_spares(384) == 423
    screw = fasteners.find_fastener("#8 wood screw 2 in")
    assert fastener_boxes(screw, 423, "imperial").number == 5
    bolt = fasteners.find_fastener("3/8 bolt 6 in")
    assert fastener_boxes(bolt, 36, "imperial").number == 36


def test_glue_covers_what_its_line_is_thick():
    # a gallon, 231 cu in, over 1/64 in covers 102.7 sq ft (arithmetic); our line is 0.25 mm
    area = 231 * INCH**3 / 0.00025
    assert glue_for(area) == pytest.approx(231 * INCH**3)
    assert bottles(0.0001, "imperial").name == "4 oz"
    assert (bottles(0.012, "metric").number, bottles(0.012, "metric").name) == (3, "5 litre")


def test_blocks_and_cleats_are_laid_out_along_lumber_and_are_no_part(tower):
    cuts = cut_list(tower, 1, hardware(tower).sawn)
    named = {cut.part.name for group in cuts.sticks for cut in group.cuts}
    assert {"tower to foot", "gallery to tower", "roof to eaves", "tower", "foot"} == named
    assert cuts.volumes() == cut_list(tower).volumes()
