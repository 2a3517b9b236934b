"""`yardfast sheet` as typed: what it writes, refuses, and says where something lacks."""

import sys

import pytest
from joint_designs import POST, joint
from pages import pages, words
from verdict_designs import block, design_text

from yardfast.cli import main


@pytest.fixture
def folder(tmp_path, monkeypatch):
    text = design_text(block("12 in", "12 in", "48 in", "35 lb/ft^3"), wind="46 mph")
    (tmp_path / "post.toml").write_text(text, encoding="utf-8")
    (tmp_path / "wrong.toml").write_text(text.replace("'12 in'", "12"), encoding="utf-8")
    monkeypatch.chdir(tmp_path)
    return tmp_path


def test_it_writes_a_page_of_the_units_paper(folder, capsys):
    assert main(["sheet", "post.toml", "-o", "post.pdf"]) == 0
    (page,) = pages((folder / "post.pdf").read_bytes())
    assert [float(side) for side in page.mediabox[2:]] == [612.0, 792.0]
    assert "post.pdf is written" in capsys.readouterr().out
    assert main(["sheet", "post.toml", "-o", "a4.pdf", "--paper", "a4"]) == 0
    (page,) = pages((folder / "a4.pdf").read_bytes())
    assert [round(float(side)) for side in page.mediabox[2:]] == [595, 842]


@pytest.mark.parametrize(("more", "status"), [((), 1), (("--full",), 0), (("--draft",), 0)])
def test_what_is_not_ready_to_sell_has_a_draft_or_its_calculation_alone(
    folder, capsys, more, status
):
    """Its nails do not hold."""
    text = POST.replace("46 mph", "70 mph") + joint("block", "plank", count=4)
    (folder / "nails.toml").write_text(text, encoding="utf-8")
    assert main(["sheet", "nails.toml", "-o", "nails.pdf", *more]) == status
    assert (folder / "nails.pdf").exists() is (status == 0)


def test_an_existing_file_is_kept_unless_forced(folder, capsys):
    (folder / "post.pdf").write_text("mine")
    assert main(["sheet", "post.toml", "-o", "post.pdf"]) == 2
    assert (folder / "post.pdf").read_text() == "mine"
    assert "exists already" in capsys.readouterr().err
    assert main(["sheet", "post.toml", "-o", "post.pdf", "--force"]) == 0
    assert (folder / "post.pdf").read_bytes().startswith(b"%PDF")


@pytest.mark.parametrize(
    ("output", "said"),
    [("post.doc", ".pdf"), ("nowhere/post.pdf", "no folder"), ("post\0.pdf", "no name")],
)
def test_what_cannot_be_written_is_told_first(folder, capsys, output, said):
    assert main(["sheet", "post.toml", "-o", output]) == 2
    assert said in capsys.readouterr().err
    assert sorted(file.name for file in folder.iterdir()) == ["post.toml", "wrong.toml"]


def test_a_wrong_file_gives_its_faults_and_no_page(folder, capsys):
    assert main(["sheet", "wrong.toml", "-o", "wrong.pdf"]) == 2
    assert "wrong.toml:" in capsys.readouterr().err
    assert not (folder / "wrong.pdf").exists()


def test_without_the_typesetter_it_says_how_to_get_it(folder, capsys, monkeypatch):
    monkeypatch.setitem(sys.modules, "typst", None)
    assert main(["sheet", "post.toml", "-o", "post.pdf"]) == 2
    assert 'pip install -e ".[sheet]"' in capsys.readouterr().err
    assert not (folder / "post.pdf").exists()


def test_many_sheets_are_written_beside_their_designs_with_a_line_each(folder, capsys):
    (folder / "shop.toml").write_text("maker = 'Harbour Works'\ncontact = '555 0100'\n")
    assert main(["sheet", "post.toml", "wrong.toml", "shop.toml"]) == 2
    shown = capsys.readouterr()
    assert shown.out.splitlines()[0].startswith("post.pdf is written: one page, ")
    assert "wrong.toml:" in shown.err
    assert "Harbour Works · 555 0100" in words((folder / "post.pdf").read_bytes())


def test_several_designs_want_a_folder_and_take_one(folder, capsys):
    (folder / "second.toml").write_text((folder / "post.toml").read_text())
    assert main(["sheet", "post.toml", "second.toml", "-o", "one.pdf"]) == 2
    assert "name a folder" in capsys.readouterr().err
    (folder / "pages").mkdir()
    assert main(["sheet", "post.toml", "second.toml", "-o", "pages"]) == 0
    assert sorted(p.name for p in (folder / "pages").iterdir()) == ["post.pdf", "second.pdf"]


@pytest.mark.parametrize("command", [["check"], ["sheet", "-o", "post.pdf", "--force"], ["label"]])
def test_the_country_of_the_shop_says_whom_to_ask_before_digging(folder, capsys, command):
    # references/dig_lines.csv: the one-call line of Canada is each province's own
    text = (folder / "post.toml").read_text().replace("wind = '46 mph'", "wind = '90 mph'")
    (folder / "post.toml").write_text(text)
    (folder / "shop.toml").write_text("country = 'Canada'\n")
    main([*command, "post.toml"])
    said = " ".join(capsys.readouterr().out.split())
    if command[0] == "sheet":
        said = words((folder / "post.pdf").read_bytes())
    assert "all your province's one-call line" in said
    assert "811" not in said


def test_a_faulty_shop_is_told_by_every_command(folder, capsys):
    (folder / "shop.toml").write_text("makr = 'Harbour Works'\n")
    for command in (["check"], ["sheet", "-o", "post.pdf"], ["label"], ["size"]):
        assert main([*command, "post.toml"]) == 2
        assert "shop.toml" in capsys.readouterr().err
