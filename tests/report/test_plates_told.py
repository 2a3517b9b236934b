"""What a person reads of walls and roofs: which piece governs, and what is not judged."""

import json
import subprocess
import sys

import pytest

from yardfast.checks.examination import examine
from yardfast.checks.inputs import read_text
from yardfast.report.data.result import Result

HOUSE = """
[design]
name  = 'House'
units = 'imperial'
[site]
method = 'gust'
wind   = '{wind}'
ground = 'paving'
[[part]]
name = 'house'
shape = 'box'
length = '40 in'
width = '24 in'
height = '20 in'
wall = '{wall}'
{top}
material = '{material}'
[[part]]
name = 'roof'
shape = 'gable'
length = '40 in'
width = '26 in'
height = '12 in'
thickness = '1/2 in'
on = 'house'
material = 'softwood plywood'
"""


POST = """
[design]
name  = 'Bell'
units = 'imperial'
[site]
method = 'gust'
wind   = '20 mph'
ground = 'firm lawn'
[[part]]
name = 'post'
shape = 'box'
length = '3 1/2 in'
width = '3 1/2 in'
height = '10 ft'
embed = '2 ft'
material = 'southern pine'
[[part]]
name = 'bell'
shape = 'weight'
on = 'post'
mass = '{mass}'
"""


@pytest.mark.parametrize(
    ("mass", "said"),
    [
        ("250 lb", "Too slender: pressed along itself it counts as 62.4 times as long as thick"),
        ("5 lb", "62.4 times as long as thick: NDS allows 50 for a column. It is none, pressed"),
    ],
)
def test_a_post_too_slender_for_a_column_is_told_so(mass, said):
    """2.1 x 104 in over 3 1/2: K_e from a third of the depth down; NDS 2018 3.7.1.4 allows 50."""
    assert said in notes(examine(read_text(POST.format(mass=mass))), "post")


GIVEN = {"wind": "60 mph", "wall": "1/2 in", "material": "OSB", "top": "open = ['top']"}


def told(**given):
    text = HOUSE.format(**{**GIVEN, **given})
    return examine(read_text(text))


def notes(examination, name):
    checks = Result(examination).to_dict()["checks"]
    return " ".join(next(c["notes"] for c in checks if c["name"] == f"member: {name}"))


def test_notes_say_which_piece_governs_and_how_it_was_judged():
    found = told()
    assert "strips from edge to edge" in notes(found, "house")
    assert "in its upper edge, which a roof pushes outward" in notes(found, "house")
    assert "in its long wall" in notes(told(top="open = []"), "house")
    assert "strips from eave to ridge" in notes(found, "roof")
    assert "bends about" in notes(found, "house")


def test_weight_in_a_roof_is_told_beside_the_wind():
    assert "times the heavy weight" in notes(told(wind="5 mph"), "roof")
    assert "weight" not in notes(told(), "roof")


def test_the_quarter_inch_sheet_is_told_as_what_it_is():
    assert "a sheet of 1/4 in, sanded" in notes(
        told(wall="1/4 in", material="softwood plywood"), "house"
    )


def test_what_was_not_judged_says_why():
    unchecked = Result(told(material="PVC")).to_dict()["not_checked"]
    (said,) = [sentence for sentence in unchecked if "strength" in sentence]
    assert "house: no published strength of its stuff in this size is at hand" in said
    assert said.startswith("The strength of house was not checked (house: no published")


def test_members_in_the_result_carry_where_and_level():
    result = Result(told(top="open = []")).to_dict()
    house = next(one for one in result["members"] if one["part"] == "house")
    assert (house["role"], house["where"], house["level_m"]) == ("box wall", "long wall", None)


@pytest.mark.parametrize(("wind", "status", "shown"), [("10 mph", 0, False), ("200 mph", 1, True)])
def test_walls_that_are_too_weak_are_told_on_the_screen(tmp_path, wind, status, shown):
    file = tmp_path / "house.toml"
    text = HOUSE.format(**{**GIVEN, "wind": wind})
    file.write_text(text, encoding="utf-8")
    ran = subprocess.run(
        [sys.executable, "-m", "yardfast", "check", str(file)],
        capture_output=True,
        text=True,
        check=False,
    )
    assert ran.returncode == status
    assert ("house: too weak" in " ".join(ran.stdout.split())) is shown
    assert ("too weak for 200 mph" in " ".join(ran.stdout.split())) is shown
    assert json.dumps(ran.stderr) == '""'
