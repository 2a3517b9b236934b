"""`yardfast cuts`: the list for people and for programs, the pattern, and what is refused."""

import json
import re
import subprocess
import sys
from pathlib import Path
from xml.etree import ElementTree

import numpy as np
import pytest
from garden import EXAMPLES, each_example
from pages import words
from tower_parts import FOOT_AND_TOWER
from verdict_designs import STANDS, design_text

from yardfast.checks.examination import examine
from yardfast.checks.inputs import read
from yardfast.cli import main
from yardfast.design.cutting.cut_list import cut_list
from yardfast.design.structure import build_structure
from yardfast.report.printed import stake_places

ROOT = Path(__file__).parents[2]
TOWER = design_text(FOOT_AND_TOWER.replace("wall     = '3/4 in'", "stock    = '3/4 plywood'"))
LONG = design_text(
    """\
[[part]]
name     = 'mast'
shape    = 'shell'
sides    = 6
bottom   = '24 in'
top      = '12 in'
height   = '110 in'
stock    = '1/2 plywood'
material = 'softwood plywood'

[[part]]
name      = 'floor'
shape     = 'plate'
length    = '10 ft'
width     = '6 ft'
stock     = '1/2 plywood'
at        = ['10 ft', '0 in', '0 in']
material  = 'softwood plywood'
"""
)
MARKED = TOWER.replace("'Piece'", "'<b>&amp; %%u ^J \"x\"'").replace("'tower'", "'<i>t</i>'")
TAPERED = design_text(
    """\
[[part]]
name     = 'post'
shape    = 'solid'
sides    = 8
bottom   = '10 in'
top      = '10 in'
height   = '30 in'
material = 'western redcedar'
"""
)


@pytest.fixture
def folder(tmp_path, monkeypatch):
    texts = {"tower": TOWER, "long": LONG, "marked": MARKED, "post": TAPERED}
    texts["wrong"] = TOWER.replace("'18 in'", "18")
    for name, text in texts.items():
        (tmp_path / f"{name}.toml").write_text(text, encoding="utf-8")
    monkeypatch.chdir(tmp_path)
    return tmp_path


def said(capsys, *words):
    """Run the command; return its status, standard output and standard error."""
    status = main(["cuts", *words])
    told = capsys.readouterr()
    return status, told.out, told.err


# --- for people ----------------------------------------------------------------------------------


@each_example
def test_every_example_prints_in_80_columns_and_its_weight_is_the_designs(
    file, capsys, monkeypatch
):
    monkeypatch.chdir(file.parent)
    status, out, err = said(capsys, file.name)
    assert (status, err) == (0, "")
    assert max(map(len, out.splitlines())) <= 80
    for word in ("cut list", "Weight: the pieces come to", "Take care:", "Not in this list:"):
        assert word in out
    for banned in (" safe", "OK", "certif", "guarante", "passes"):
        assert banned not in out
    structure = build_structure(read(str(file)))
    volumes = cut_list(structure).volumes()
    for part, volume in zip(structure.design.parts, structure.part_volume, strict=True):
        assert volumes[part.name] == pytest.approx(float(volume), rel=1e-9)


def test_a_builder_reads_sizes_bevel_and_saw_setting(folder, capsys):
    _, out, _ = said(capsys, "tower.toml")
    text = " ".join(out.split())
    assert "eight panels, 7 7/16 in at the bottom, 4 1/8 in at the top, 48 3/16 in long" in text
    assert "seam edges 22.42 deg from square" in text
    assert "saw at 22.5 deg leaves under 1/64 in open inside" in text
    assert "leans in 4.8 deg from plumb" in text
    assert "eight pieces, 9 15/16 in over the long points, 5 3/8 in over the short" in text
    assert "mitred 22.5 deg" in text
    assert "one sheet 4x8 ft" in text
    assert "1 of 8 ft" in text
    assert "Cut test pieces of scrap first" in text


def test_what_is_longer_than_the_sheet_is_said_with_its_way_out(folder, capsys):
    _, out, _ = said(capsys, "long.toml")
    text = " ".join(out.split())
    assert "larger than a 4x8 ft sheet: join it of 2 lengths of" in text
    assert "or buy a 4x10 ft sheet" in text
    assert "2 lengths of 60 in and 2 widths of 36 in, the seam backed by a strip" in text
    assert "36 in, the seam backed by a strip, or buy" not in text


@each_example
def test_no_angle_of_a_cut_is_less_than_nothing_by_its_sign(file, capsys):
    out = said(capsys, str(file), "--format", "json")[1]
    assert not re.search(r"-0\.0\b(?!\d)", out)


def test_a_blocks_faces_get_their_saw_setting(folder, capsys):
    # an octagon with one face on the table: the next is cut at 45 deg
    _, out, _ = said(capsys, "post.toml")
    assert "block of 8 sides, 10 in, 30 in high, flat to flat" in " ".join(out.split())
    assert "saw at 45 deg for the next" in " ".join(out.split())


# --- for programs --------------------------------------------------------------------------------


def test_json_names_every_panel_in_si(folder, capsys):
    status, out, err = said(capsys, "tower.toml", "--format", "json")
    found = json.loads(out)
    assert (status, err) == (0, "")
    assert set(found) >= {"panels", "lumber", "sheets", "waste_fraction", "fingerprint"}
    (panel,) = found["panels"]
    assert panel["part"] == "tower"
    assert panel["count"] == 8
    inch = 0.0254
    # by hand: 18 tan 22.5, 10 tan 22.5, sqrt(48^2 + 4^2), asin(cos lean sin 22.5)
    assert panel["bottom_m"] / inch == pytest.approx(7.45584, abs=5e-6)
    assert panel["top_m"] / inch == pytest.approx(4.14214, abs=5e-6)
    assert panel["length_m"] / inch == pytest.approx(48.16638, abs=5e-6)
    assert panel["thickness_m"] / inch == pytest.approx(0.703)
    assert panel["bevel_deg"] == pytest.approx(22.4180, abs=5e-5)
    assert panel["lean_deg"] == pytest.approx(4.7636, abs=5e-5)
    assert found["sheets"] == 1
    face = (panel["bottom_m"] + panel["top_m"]) / 2 * panel["length_m"]
    sheet = 48 * 96 * inch**2
    assert found["waste_fraction"] == pytest.approx(1 - 8 * face / sheet)


@each_example
def test_every_example_is_sound_json(file, capsys):
    status, out, _ = said(capsys, str(file), "--format", "json")
    found = json.loads(out, parse_constant=pytest.fail)
    assert status == 0
    keys = {"part", "count", "bottom_m", "top_m", "length_m", "thickness_m", "bevel_deg"}
    for panel in found["panels"]:
        assert keys | {"lean_deg"} <= set(panel)
    assert found["sheets"] == sum(group["sheets"] for group in found["stock"])
    assert (found["waste_fraction"] is None) == (found["sheets"] == 0)


def test_copies_are_counted_over_all(folder, capsys):
    more = TOWER.replace("'48 in'", "'48 in'\ncount = 2\nring = '60 in'", 1)
    (folder / "two.toml").write_text(more, encoding="utf-8")
    found = json.loads(said(capsys, "two.toml", "--format", "json")[1])
    assert [panel["count"] for panel in found["panels"]] == [16]


# --- the pattern ---------------------------------------------------------------------------------


def test_the_svg_is_to_scale_in_millimetres_and_labelled(folder, capsys):
    status, out, err = said(capsys, "tower.toml", "-o", "p.svg")
    assert (status, err) == (0, "")
    assert "p.svg is written" in out
    root = ElementTree.parse("p.svg").getroot()
    _, _, width, height = (float(number) for number in root.get("viewBox").split())
    assert root.get("width") == f"{width}mm"
    assert root.get("height") == f"{height}mm"
    outlines = [
        np.array(shape.get("points").split(), dtype=float).reshape(-1, 2)
        for shape in root.iter()
        if shape.tag.endswith("polygon")
    ]
    outer = outlines[0]
    edges = np.hypot(*(np.roll(outer, -1, axis=0) - outer).T)
    # bottom and top edge, in mm, as worked out by hand above
    assert edges[[0, 2]] == pytest.approx([7.45584 * 25.4, 4.14214 * 25.4], abs=0.002)
    assert np.ptp(outer[:, 1]) == pytest.approx(48.16638 * 25.4, abs=0.002)
    assert (outer >= 0.0).all()
    assert (outer <= [width, height]).all()
    words = [text.text for text in root.iter() if text.tag.endswith("text")]
    assert "tower: eight panels" in words
    assert "bevel 22.42 deg" in words


def test_the_dxf_is_read_back_in_millimetres(folder, capsys):
    import ezdxf

    assert said(capsys, "tower.toml", "-o", "p.dxf")[0] == 0
    document = ezdxf.readfile("p.dxf")
    assert document.units == 4  # millimetres, by the format's $INSUNITS
    assert not document.audit().errors
    space = list(document.modelspace())
    lines = {
        layer: [e for e in space if e.dxftype() == "LWPOLYLINE" and e.dxf.layer == layer]
        for layer in ("CUT", "INNER_FACE")
    }
    (outer,) = lines["CUT"]
    points = np.array(outer.get_points("xy"))
    assert np.ptp(points[:, 1]) == pytest.approx(48.16638 * 25.4, abs=0.001)
    assert np.ptp(points[:, 0]) == pytest.approx(7.45584 * 25.4, abs=0.001)
    assert len(lines["INNER_FACE"]) == 1
    assert "tower: eight panels" in [e.dxf.text for e in space if e.dxftype() == "TEXT"]


def test_names_of_markup_are_printed_as_they_are(folder, capsys):
    assert said(capsys, "marked.toml", "-o", "p.svg")[0] == 0
    words = [text.text for text in ElementTree.parse("p.svg").getroot().iter() if text.text]
    assert '<b>&amp; %%u ^J "x": full-size pattern' in words
    assert "<i>t</i>: eight panels" in words
    assert said(capsys, "marked.toml", "-o", "p.dxf")[0] == 0


@pytest.mark.slow
def test_every_example_with_flat_pieces_gives_a_pattern(tmp_path, capsys):
    for file in EXAMPLES:
        for kind in ("svg", "dxf"):
            out = tmp_path / f"{file.stem}.{kind}"
            status, _, err = said(capsys, str(file), "-o", str(out))
            assert status == 0 or "no panels, boards or plates" in err
            assert out.exists() == (status == 0)


def test_the_same_design_gives_the_same_pattern(folder, capsys):
    for name in ("a.svg", "b.svg"):
        said(capsys, "tower.toml", "-o", name)
    assert (folder / "a.svg").read_bytes() == (folder / "b.svg").read_bytes()


# --- what is refused -----------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("words", "answer"),
    [
        (["tower.toml", "-o", "mine.svg"], "exists already"),
        (["tower.toml", "-o", "p.png"], "written as .svg or .dxf"),
        (["tower.toml", "-o", "no/p.svg"], "there is no folder no"),
        (["tower.toml", "-o", "nul\0.svg"], "no name for a file"),
        (["tower.toml", "-o", "p.svg", "--format", "json"], "one of the two"),
        (["post.toml", "-o", "p.svg"], "no panels, boards or plates"),
        (["wrong.toml", "-o", "p.svg"], "wrong.toml:"),
        (["wrong.toml"], "wrong.toml:"),
        (["nothing.toml"], "no such file"),
    ],
)
def test_what_is_wrong_is_answered_on_standard_error(folder, capsys, words, answer):
    (folder / "mine.svg").write_text("mine", encoding="utf-8")
    status, out, err = said(capsys, *words)
    assert (status, out) == (2, "")
    assert answer in err
    assert (folder / "mine.svg").read_text(encoding="utf-8") == "mine"
    assert not (folder / "p.svg").exists()


def test_force_writes_over(folder, capsys):
    (folder / "mine.svg").write_text("mine", encoding="utf-8")
    assert said(capsys, "tower.toml", "-o", "mine.svg", "--force")[0] == 0
    assert "<svg" in (folder / "mine.svg").read_text(encoding="utf-8")


@pytest.mark.parametrize(("kind", "package"), [("svg", "svg"), ("dxf", "ezdxf")])
def test_a_missing_library_is_named_with_the_way_to_it(folder, capsys, monkeypatch, kind, package):
    monkeypatch.setitem(sys.modules, package, None)
    status, out, err = said(capsys, "tower.toml", "-o", f"p.{kind}")
    assert (status, out) == (2, "")
    assert re.search(rf"needs the package '{package}'.*pip install -e '.\[sheet\]'", err)
    assert not (folder / f"p.{kind}").exists()


def test_the_list_needs_no_drawing_library(folder):
    code = (
        "import sys; from yardfast.cli import main; main(['cuts', 'tower.toml']); "
        "print([m for m in ('svg', 'ezdxf', 'pint', 'scipy', 'matplotlib') if m in sys.modules])"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.splitlines()[-1] == "[]"


def test_several_of_a_kind_are_laid_out_together(tmp_path, capsys):
    file = str(ROOT / "examples" / "light-tower.toml")
    assert main(["cuts", file, "--format", "json"]) == 0
    one = json.loads(capsys.readouterr().out)
    assert main(["cuts", file, "--count", "3", "--format", "json"]) == 0
    three = json.loads(capsys.readouterr().out)
    assert [panel["count"] for panel in three["panels"]] == [
        3 * panel["count"] for panel in one["panels"]
    ]
    for alone, several in zip(one["volumes"], three["volumes"], strict=True):
        assert several["cut_m3"] == pytest.approx(3.0 * alone["cut_m3"])
    assert three["sheets"] < 3 * one["sheets"]
    main(["cuts", file, "--count", "3"])
    assert "cut list, for three pieces" in capsys.readouterr().out


@pytest.mark.parametrize("number", ["0", "-1", "1.5", "many", "101"])
def test_a_number_of_pieces_is_a_whole_one(number, capsys):
    assert main(["cuts", str(ROOT / "examples" / "light-tower.toml"), "--count", number]) == 2
    assert "how many pieces, 1 to 100" in capsys.readouterr().err


# --- what fastens it, and where it is held -------------------------------------------------------


def test_the_list_says_which_fasteners_blocks_and_cleats_to_buy(capsys):
    file = str(ROOT / "examples" / "light-tower.toml")
    assert main(["cuts", file, "--count", "3"]) == 0
    text = " ".join(capsys.readouterr().out.split())
    assert "tower to foot: 24 blocks, 4 15/16 in long" in text
    assert "tower: 24 cleats, 48 3/16 in long" in text
    assert "#8 wood screw 2 in 423 with spares: five boxes of 100" in text
    assert "384 driven: gallery to tower 48, tower 336" in text
    assert "wood glue, for outdoors" in text
    assert main(["cuts", file, "--count", "3", "--format", "json"]) == 0
    found = json.loads(capsys.readouterr().out)
    counts = {one["fastener"]: one["count"] for one in found["hardware"]}
    assert counts["#8 wood screw 2 in"] == 384
    assert {row["piece"] for row in found["lumber"]} == {"piece", "block", "cleat"}


def test_the_page_for_the_saw_has_stops_tilts_mitres_and_a_box_a_row(tmp_path, capsys):
    out = tmp_path / "shop.pdf"
    assert main(["cuts", str(ROOT / "examples" / "light-tower.toml"), "-o", str(out)]) == 0
    assert "a page to tick off, for one piece, letter" in capsys.readouterr().out
    said = words(out.read_bytes())
    # the tower's panels: 48 3/16 in, 22.42 deg bevel set at 22.5, ends 4.76 deg; taper by hand:
    # atan((7.456 - 4.142) / 2 / 48.166) = 1.97 deg
    for each in ("48 3/16 in", "tilt 22.5 deg", "exactly 22.42 deg", "taper 2 deg a side"):
        assert each in said
    assert "9 15/16 in" in said
    assert "mitre 22.5 deg" in said
    assert "one box of 100" in said


@pytest.fixture(scope="module")
def places():
    found = stake_places.stake_places(examine(read(str(ROOT / "examples" / "light-tower.toml"))))
    assert found is not None
    return found


def test_stakes_are_set_out_by_distances(places):
    # an octagon 24 in flat to flat, in the middle of every other side: 12 in out, 12 sqrt 2 apart
    for one in stake_places.stake_object(places)["places"]:
        assert np.hypot(one["right_m"], one["back_m"]) == pytest.approx(12 * 0.0254)
        assert one["next_m"] == pytest.approx(12 * 2**0.5 * 0.0254)
    lines = [line.text for line in stake_places.stake_lines(places)]
    assert "12 in right" in " ".join(lines)
    assert max(map(len, lines)) <= 80
    said = words(stake_places.stake_page(places, "letter"))
    assert "Four steel stakes 1 in x 36 in" in said
    assert "17 in" in said


def test_the_template_of_the_stakes_is_full_size(tmp_path, capsys):
    file, out = str(ROOT / "examples" / "light-tower.toml"), tmp_path / "s.svg"
    assert main(["cuts", file, "--stakes", "-o", str(out)]) == 0
    root = ElementTree.parse(out).getroot()
    spots = np.array(
        [
            (float(each.get("cx")), float(each.get("cy")))
            for each in root.iter()
            if each.tag.endswith("circle") and float(each.get("r")) == 8.0
        ]
    )
    assert len(spots) == 4
    apart = np.hypot(*(np.roll(spots, -1, axis=0) - spots).T)
    assert apart == pytest.approx([12 * 2**0.5 * 25.4] * 4, abs=0.01)


def test_nothing_is_set_out_for_a_piece_that_nothing_is_to_hold_yet(tmp_path, capsys):
    file = tmp_path / "stands.toml"
    file.write_text(STANDS, encoding="utf-8")
    for more in ([], ["-o", str(tmp_path / "s.pdf")]):
        assert main(["cuts", str(file), "--stakes", *more]) == 1
        assert "STANDS BY ITSELF" in capsys.readouterr().err
    assert not (tmp_path / "s.pdf").exists()
