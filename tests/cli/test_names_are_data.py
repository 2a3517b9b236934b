"""What people call things is data in all that is written: no markup, formula, command or escape."""

import csv
import io
import json
from xml.etree import ElementTree

import pytest

from yardfast.cli import main

FORMULAS = ('=HYPERLINK("http://x.test","y")', "+1+cmd|' /C calc'!A0", "@SUM(1+1)", "-2+3")
BODY = "<script>alert(1)</script>"
LOAD = 'a ]]>&amp;<!-- <b href="x">'
DESIGN = "#panic(1) $y$ *b* \\u{41} @z %%u %s {name} \\n"


def design_of(name, foot, body, load):
    """A box on its foot; each of the names as the text of TOML."""
    quoted = [json.dumps(each) for each in (name, foot, body, load)]
    return f"""[design]
name = {quoted[0]}
units = 'imperial'
[site]
method = 'forecast'
wind = '20 mph'
exposure = 'open'
ground = 'firm lawn'
[[part]]
name = {quoted[1]}
shape = 'plate'
length = '24 in'
width = '20 in'
thickness = '2 in'
material = 'concrete'
[[part]]
name = {quoted[2]}
shape = 'box'
on = {quoted[1]}
length = '12 in'
width = '12 in'
height = '20 in'
wall = '1/2 in'
material = 'softwood plywood'
[[load]]
name = {quoted[3]}
force = '1 lbf'
at = ['0 in', '0 in', '20 in']
direction = 'left'
on = {quoted[2]}
"""


@pytest.fixture
def folder(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    text = design_of(DESIGN, FORMULAS[0], BODY, LOAD)
    (tmp_path / "piece.toml").write_text(text, encoding="utf-8")
    return tmp_path


def run(capsys, *words):
    assert main(words) in (0, 1)
    told = capsys.readouterr()
    assert all(line.isprintable() for line in (told.out + told.err).splitlines())
    return told.out


def test_programs_get_the_names_as_they_are(folder, capsys):
    found = json.loads(run(capsys, "check", "piece.toml", "--format", "json"))
    assert found["name"] == DESIGN
    assert [part["name"] for part in found["geometry"]["parts"]] == [FORMULAS[0], BODY]


@pytest.mark.parametrize("command", ["check", "size", "cuts", "compare"])
def test_a_terminal_gets_plain_lines(folder, capsys, command):
    assert run(capsys, command, "piece.toml")


@pytest.mark.parametrize("name", FORMULAS)
@pytest.mark.parametrize("command", ["label", "check"])
def test_no_cell_of_a_table_is_a_formula(tmp_path, monkeypatch, capsys, name, command):
    monkeypatch.chdir(tmp_path)
    text = design_of(name, name, BODY, name + "1")
    (tmp_path / "=1+1.toml").write_text(text, encoding="utf-8")
    run(
        capsys,
        command,
        "=1+1.toml",
        *(("--csv", "t.csv") if command == "check" else ("-o", "t.csv")),
    )
    text = (tmp_path / "t.csv").read_text(encoding="utf-8")
    rows = list(csv.reader(io.StringIO(text)))
    assert len(rows) >= 2
    assert len({len(row) for row in rows}) == 1
    assert name in text.replace('""', '"')
    cells = [cell for row in rows for cell in row if cell[:1] in ("=", "+", "-", "@", "\t", "\r")]
    assert [cell for cell in cells if not cell.lstrip("-").replace(".", "").isdigit()] == []


@pytest.mark.parametrize("command", ["draw", "cuts"])
def test_a_drawing_is_well_formed_and_names_are_text_in_it(folder, capsys, command):
    run(capsys, command, "piece.toml", "-o", "out.svg")
    every = list(ElementTree.parse(folder / "out.svg").getroot().iter())
    kinds = {each.tag.rpartition("}")[2] for each in every}
    assert not kinds & {"script", "a", "foreignObject", "image", "iframe", "set", "animate", "b"}
    assert not [key for each in every for key in each.attrib if key.lower().startswith("on")]
    said = "".join(every[0].itertext())
    assert ("#panic(1)" if command == "draw" else "<script>") in said


def test_a_pattern_for_a_machine_has_names_as_text_alone(folder, capsys):
    ezdxf = pytest.importorskip("ezdxf")
    run(capsys, "cuts", "piece.toml", "-o", "cuts.dxf")
    document = ezdxf.readfile(folder / "cuts.dxf")
    assert not document.audit().has_errors
    kinds = {each.dxftype() for each in document.modelspace()}
    assert kinds <= {"LWPOLYLINE", "LINE", "CIRCLE", "ARC", "TEXT", "MTEXT", "POLYLINE"}


def test_paper_does_nothing(folder, capsys):
    pypdf = pytest.importorskip("pypdf")
    run(capsys, "sheet", "piece.toml", "--full", "--draft", "-o", "sheet.pdf")
    paper = pypdf.PdfReader(folder / "sheet.pdf")
    assert not {"/OpenAction", "/AA", "/AcroForm"} & set(paper.trailer["/Root"].keys())
    links = [one.get_object() for page in paper.pages for one in page.get("/Annots") or []]
    assert not [one for one in links if "/URI" in (one.get("/A") or {})]
    text = "".join("".join(page.extract_text() for page in paper.pages).split())
    assert "#panic(1)$y$*b*" in text
    assert "<script>alert(1)</script>" in text
