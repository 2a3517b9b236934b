"""Posts too shallow are told how long to be, and nothing is sized by asking less wind."""

import re

import pytest
from verdict_designs import design_text

from yardfast.cli import main
from yardfast.units import read_dimension

POST = (
    "[[part]]\nname = 'post'\nshape = 'box'\nlumber = '4x4'\nheight = '{long}'\nembed = '34 in'\n"
    "material = 'southern pine, treated'\n"
    "[[part]]\nname = 'sign'\nshape = 'panel'\non = 'post'\nat = ['0 in', '0 in', '-24 in']\n"
    "width = '30 in'\nheight = '20 in'\nthickness = '3/4 in'\nmaterial = 'western redcedar'\n"
)


@pytest.fixture
def run(tmp_path, capsys):
    def run(text, *arguments):
        file = tmp_path / "piece.toml"
        file.write_text(text, encoding="utf-8")
        main([arguments[0], str(file), *arguments[1:]])
        return " ".join(capsys.readouterr().out.split())

    return run


@pytest.mark.parametrize("command", ["check", "size"])
def test_a_deeper_post_is_told_with_its_whole_length(run, command):
    out = run(design_text(POST.format(long="100 in")), command)
    size = r"((?:\d+ ft)? ?(?:[\d/ ]+ in)?)"
    said = re.findall(rf"(?:make post|or) {size} long, {size} of it in", out)
    assert len(said) == 2
    for long, deep in said:
        # 100 in less 34 in in the ground: what stands above stays as it is
        assert read_dimension(long, "length").value - read_dimension(
            deep, "length"
        ).value == pytest.approx(66 * 0.0254)


def test_less_wind_is_never_the_next_step(run):
    out = run(design_text(POST.format(long="100 in")), "size", "--all")
    assert "wind" in out
    assert "--remedy 'wind'" not in out
