"""`yardfast draw` as typed: three kinds of picture, characters, and what is refused."""

import sys

import pytest
from pages import pages
from verdict_designs import block, design_text

from yardfast.cli import main


@pytest.fixture
def folder(tmp_path, monkeypatch):
    text = design_text(block("12 in", "12 in", "48 in", "35 lb/ft^3"), wind="46 mph")
    (tmp_path / "post.toml").write_text(text, encoding="utf-8")
    monkeypatch.chdir(tmp_path)
    return tmp_path


@pytest.mark.parametrize(
    ("ending", "head"), [("svg", b"<svg "), ("png", b"\x89PNG"), ("pdf", b"%PDF"), ("SVG", b"<svg")]
)
def test_the_ending_tells_what_is_written(folder, ending, head):
    assert main(["draw", "post.toml", "-o", f"post.{ending}"]) == 0
    assert (folder / f"post.{ending}").read_bytes().startswith(head)


def test_the_pdf_is_one_page_of_the_paper_lying(folder):
    assert main(["draw", "post.toml", "-o", "post.pdf"]) == 0
    (page,) = pages((folder / "post.pdf").read_bytes())
    assert [round(float(side)) for side in page.mediabox[2:]] == [792, 612]


def test_pictures_are_the_same_each_time(folder):
    for ending in ("svg", "png", "pdf"):
        for name in ("one", "two"):
            assert main(["draw", "post.toml", "-o", f"{name}.{ending}"]) == 0
        assert (folder / f"one.{ending}").read_bytes() == (folder / f"two.{ending}").read_bytes()


def test_refusals_name_what_is_wrong(folder, capsys):
    (folder / "mine.svg").write_text("mine")
    for words, said in (
        (["-o", "mine.svg"], "exists already"),
        (["-o", "post.jpg"], ".svg or .png or .pdf"),
        (["-o", "post"], ".svg or .png or .pdf"),
        (["-o", "no/post.svg"], "no folder"),
        ([], "--text"),
    ):
        assert main(["draw", "post.toml", *words]) == 2
        assert said in capsys.readouterr().err
    assert (folder / "mine.svg").read_text() == "mine"
    assert main(["draw", "post.toml", "-o", "mine.svg", "--force"]) == 0


def test_a_picture_as_svg_needs_no_typesetter_but_png_does(folder, capsys, monkeypatch):
    monkeypatch.setitem(sys.modules, "typst", None)
    assert main(["draw", "post.toml", "-o", "post.svg"]) == 0
    assert main(["draw", "post.toml", "-o", "post.png"]) == 2
    assert 'pip install -e ".[sheet]"' in capsys.readouterr().err
    assert not (folder / "post.png").exists()


def test_characters_and_a_picture_at_once(folder, capsys):
    assert main(["draw", "post.toml", "--text", "-o", "post.svg"]) == 0
    said = capsys.readouterr().out
    assert "from above" in said
    assert "post.svg is written" in said
