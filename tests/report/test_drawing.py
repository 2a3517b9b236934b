"""The drawing: to scale as a ruler reads it, its marks where the result has them."""

import re
import xml.etree.ElementTree as ET
from pathlib import Path

import numpy as np
import pytest
from garden import each_example
from verdict_designs import block, design_text

import yardfast as yf
from yardfast.checks.by_direction import tipping_gusts
from yardfast.checks.examination import examine
from yardfast.checks.inputs import read_text
from yardfast.report.drawings.drawing import drawing
from yardfast.report.drawings.drawing_scale import scales
from yardfast.report.drawings.paper import LETTERS, Paper
from yardfast.report.wording.ticks import INCHES, ticks

ROOT = Path(__file__).resolve().parents[2]
SVG = "{http://www.w3.org/2000/svg}"


def drawn(text):
    return parsed(drawing(examine(read_text(text)), "a4"))


def parsed(paper, title="piece"):
    return ET.fromstring(paper.svg(title))


def scale_of(svg):
    said = " ".join(text.text for text in svg.iter(f"{SVG}text"))
    return float(re.search(r"1:(\d+(?:\.\d+)?)", said)[1])


def corners(element):
    numbers = re.findall(r"-?[\d.]+", element.get("d") or element.get("points") or "")
    return np.array(numbers, dtype=float).reshape(-1, 2)


def groups(svg):
    """Return the drawing's pictures in the order in which they are put on the sheet."""
    return list(svg.iter(f"{SVG}g"))


@pytest.mark.parametrize("high", [600, 900, 1400, 3100])
def test_the_elevation_is_as_high_and_wide_on_paper_as_the_scale_says(high):
    # 400 wide, and the wind on its 700 side: in the governing elevation the 400 side is seen
    svg = drawn(
        design_text(
            block("700 mm", "400 mm", f"{high} mm", "500 kg/m^3"),
            units="metric",
            ground="paving",
        )
    )
    outline = corners(next(groups(svg)[0].iter(f"{SVG}path")))
    assert np.ptp(outline, axis=0) * scale_of(svg) == pytest.approx([400, high], abs=2e-3 * 50)
    seen = corners(next(groups(svg)[1].iter(f"{SVG}path")))
    assert np.ptp(seen, axis=0) * scale_of(svg) == pytest.approx([700, 400], abs=2e-3 * 50)
    assert svg.get("width") == "297mm"
    assert svg.get("viewBox") == "0 0 297 210"


def test_imperial_scales_are_those_of_a_rule():
    # 1 1/2 in = 1 ft is 12 / 1.5 = 8 to one, and so on for each that is named
    for scale in scales(metric=False):
        found = re.fullmatch(r"(?:(\d+) )?(?:(\d+)/(\d+))? ?in = 1 ft", scale.words)
        plain = re.fullmatch(r"(\d+) in = 1 ft", scale.words)
        if plain:
            inches = float(plain[1])
        elif found:
            inches = float(found[1] or 0) + float(found[2]) / float(found[3])
        else:
            assert scale.words == "full size"
            continue
        assert scale.one_to == pytest.approx(12.0 / inches)


def test_balance_point_and_wind_stand_at_their_heights():
    text = design_text(block("700 mm", "400 mm", "1000 mm", "500 kg/m^3"), units="metric")
    found = examine(read_text(text))
    svg = parsed(drawing(found, "a4"))
    front, mm = groups(svg)[0], 1000.0 / scale_of(svg)
    outline = corners(next(front.iter(f"{SVG}path")))
    ground, left = outline[:, 1].max(), outline[:, 0].min()
    balance = next(front.iter(f"{SVG}circle"))
    assert ground - float(balance.get("cy")) == pytest.approx(0.5 * mm, abs=2e-3)
    height = yf.check(read_text(text)).to_dict()["wind"]["force_height_m"][0]
    heads = [corners(each) for each in front.iter(f"{SVG}polygon") if each.get("fill") == "black"]
    tips = [head[0] for head in heads]
    assert any(
        x == pytest.approx(left, abs=2e-3) and ground - y == pytest.approx(height * mm, abs=2e-3)
        for x, y in tips
    )


def test_suggested_anchors_stand_where_the_result_has_them():
    found = examine(read_text(design_text(block("12 in", "12 in", "48 in", "35 lb/ft^3"))))
    svg = parsed(drawing(found, "letter"))
    plan, mm = groups(svg)[1], 1000.0 / scale_of(svg)
    open_marks = [c for c in plan.iter(f"{SVG}circle") if c.get("fill") == "white"]
    middle = np.array([float(open_marks[0].get(k)) for k in ("cx", "cy")])
    spots = np.array([[float(c.get(k)) for k in ("cx", "cy")] for c in open_marks[1:]])
    assert found.anchors is not None
    wanted = found.anchors.held.points * [1, -1] * mm
    apart = np.linalg.norm((spots - middle)[:, None] - wanted[None], axis=-1)
    assert apart.min(axis=0) == pytest.approx(np.zeros(len(wanted)), abs=3e-3)
    assert apart.min(axis=1) == pytest.approx(np.zeros(len(spots)), abs=3e-3)
    assert any("suggested" in text.text for text in svg.iter(f"{SVG}text"))


def test_the_design_s_own_anchors_are_black_and_not_suggested():
    anchors = "[[anchor]]\nname = 's'\nkind = 'steel stake 1 in x 36 in'\nwhere = 'corners'\n"
    svg = drawn(design_text(block("12 in", "12 in", "48 in", "35 lb/ft^3")) + anchors)
    black = [c for c in groups(svg)[1].iter(f"{SVG}circle") if c.get("fill") == "black"]
    assert len(black) == 4
    said = [text.text for text in svg.iter(f"{SVG}text")]
    assert "anchors of this design" in said
    assert not any("suggested" in text for text in said)


@each_example
def test_least_gust_by_direction_is_the_limit(file):
    found = yf.check(yf.read(file)).examination
    gusts = tipping_gusts(found)
    assert gusts.min() == pytest.approx(found.limits.tipping, rel=1e-9)
    worst = float(found.wind.azimuths[gusts.argmin()])
    assert gusts[found.wind.azimuths == found.limits.tipping_azimuth] == pytest.approx(gusts.min())
    assert 0.0 <= worst < 360.0


def test_what_stands_in_the_ground_is_drawn_dashed_to_its_depth():
    found = yf.check(yf.read(ROOT / "examples" / "fingerpost.toml")).examination
    svg = parsed(drawing(found, "letter"))
    dashed = [p for p in groups(svg)[0].iter(f"{SVG}path") if p.get("stroke-dasharray")]
    # 36 in of the 4x4 stand in the ground
    assert np.ptp(corners(dashed[0])[:, 1]) * scale_of(svg) == pytest.approx(914.4, abs=0.1)
    said = [text.text for text in svg.iter(f"{SVG}text")]
    assert "3 ft" in said
    assert not any("tips" in text for text in said)


def test_a_square_block_tips_alike_from_four_sides():
    found = examine(
        read_text(design_text(block("12 in", "12 in", "48 in", "35 lb/ft^3"), ground="paving"))
    )
    gusts = dict(zip(found.wind.azimuths.tolist(), tipping_gusts(found).tolist(), strict=True))
    assert [gusts[side] for side in (90.0, 180.0, 270.0)] == pytest.approx([gusts[0.0]] * 3)


@pytest.mark.slow
@pytest.mark.parametrize(
    "name", ["arbor", "heron", "pinwheel", "seat-box", "fingerpost", "three-pieces", "well"]
)
def test_all_that_is_drawn_lies_on_the_sheet_and_is_legible(name):
    design = yf.read(ROOT / "examples" / f"{name}.toml")
    sheet = drawing(yf.check(design).examination, "a4" if design.units == "metric" else "letter")
    svg = parsed(sheet, design.name)
    for group in groups(svg):
        x, y = map(float, re.findall(r"-?[\d.]+", group.get("transform")))
        for each in (*group.iter(f"{SVG}polygon"), *group.iter(f"{SVG}path")):
            points = corners(each) if each.tag.endswith("polygon") else np.empty((0, 2))
            assert (points >= [-x - 0.01, -y - 0.01]).all()
            assert (points <= [sheet.width - x, sheet.height - y]).all()
        for text in group.iter(f"{SVG}text"):
            assert float(text.get("font-size")) >= 0.84 * LETTERS
            assert 0.0 <= float(text.get("x")) + x <= sheet.width
            assert 0.0 <= float(text.get("y")) + y <= sheet.height
    colours = {each.get(key) for each in svg.iter() for key in ("fill", "stroke")}
    assert colours <= {None, "none", "white", "black"}


def test_words_are_escaped_and_stay_text():
    paper = Paper(10, 10)
    paper.text((1, 1), "<b>&\"'")
    (text,) = parsed(paper, "<i>").iter(f"{SVG}text")
    assert text.text == "<b>&\"'"


@pytest.mark.parametrize(
    ("low", "high", "steps", "found"),
    [
        (0.0, 41.0, (), [0, 10, 20, 30, 40]),
        (24.0, 72.0, INCHES, [24, 48, 72]),
        (0.3, 1.1, (), [0.4, 0.6, 0.8, 1.0]),
    ],
)
def test_ticks_stand_at_round_numbers(low, high, steps, found):
    assert ticks(low, high, 5 if not steps else 4, steps) == pytest.approx(found)
