"""Posts in the ground: checked by IBC 1807.3.2 as their force and height ask, in words too."""

import json
from math import sqrt

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from verdict_designs import design_text

import yardfast as yf
from yardfast.checks.anchoring.embedded_limits import depth_needed
from yardfast.checks.examination import examine
from yardfast.checks.inputs import read_text
from yardfast.cli import main
from yardfast.design.faults import DesignError

FOOT, INCH, POUND_FORCE = 0.3048, 0.0254, 4.4482216152605
PSF_PER_FOOT = POUND_FORCE / FOOT**3


def sign(embed="30 in", more="", ground="firm lawn", posts="", wind="58 mph", at="0 in"):
    return design_text(
        "[[part]]\nname = 'post'\nshape = 'box'\nlength = '3 1/2 in'\nwidth = '3 1/2 in'\n"
        f"height = '8 ft'\nembed = '{embed}'\nmaterial = 'southern pine, treated'\n"
        f"{more}\n{posts}\n"
        f"[[part]]\nname = 'board'\nshape = 'panel'\nat = ['{at}', '-2 1/4 in', '48 in']\n"
        "width = '24 in'\nheight = '12 in'\nthickness = '3/4 in'\n"
        "material = 'western redcedar'\n",
        ground=ground,
        wind=wind,
    )


def found(*args, **more):
    return examine(read_text(sign(*args, **more)))


def named(examination, name):
    return next(check for check in examination.checks if check.name == name)


HOUSE = """
[[part]]
name = 'post'
shape = 'box'
length = '3 1/2 in'
width = '3 1/2 in'
height = '8 ft'
embed = '30 in'
material = 'southern pine, treated'
MORE

[[part]]
name = 'house'
shape = 'box'
on = 'post'
length = '12 in'
width = '12 in'
height = '12 in'
wall = '1/2 in'
material = 'western redcedar'
"""


def house(more=""):
    """A birdhouse on a post, upright over it: no sign, no lean, its lid lifted evenly."""
    return examine(read_text(design_text(HOUSE.replace("MORE", more))))


def worst_by_hand(piece):
    """Force and its height from the direction in which P d + 1.09 M is most."""
    force, height = piece.wind.force, piece.wind.force_height
    worst = int((force * (30 * INCH + 1.09 * height)).argmax())
    return float(force[worst]), float(height[worst])


def test_a_post_in_earth_by_hand():
    """IBC 1807.3.2.1 solved for P: firm lawn is class 5, 100 psf/ft (IBC 2012 Table 1806.2).

    S1 = 100 x 2.5/3 psf, b the diagonal of 3 1/2 in, A = d2/(d + 1.09 h), P = A S1 b/2.34.
    """
    piece = house()
    check = named(piece, "embedment: post")
    force, h = worst_by_hand(piece)
    d, b = 30 * INCH, 3.5 * INCH * sqrt(2)
    S1 = 100 * PSF_PER_FOOT * d / 3
    assert check.demand == pytest.approx(force, rel=1e-9)
    assert check.capacity == pytest.approx(d**2 / (d + 1.09 * h) * S1 * b / 2.34, rel=1e-6)
    assert not check.passes


def test_the_depth_told_is_that_of_the_public_relation():
    piece = house()
    depth = depth_needed(piece.posts, piece.structure, piece.actions, piece.factors)[0]
    asked = [
        yf.embedment(f"{P} N", f"{h} m", "100 lbf/ft^3", f"{3.5 * INCH * sqrt(2)} m").to("m")
        for P, h in zip(piece.wind.force, piece.wind.force_height, strict=True)
    ]
    assert depth == pytest.approx(max(each.magnitude for each in asked), rel=1e-6)


def test_what_lies_in_the_ground_has_weight_and_no_wind():
    shallow, deep = found(embed="12 in"), found(embed="48 in")
    assert shallow.structure.mass("typical") == pytest.approx(deep.structure.mass("typical"))
    assert deep.wind.area.max() < shallow.wind.area.max()
    assert deep.structure.height == pytest.approx(60 * INCH)  # the board's upper edge
    side_on = deep.wind.area[np.argmin(np.abs(deep.wind.azimuths - 90.0))]
    assert side_on == pytest.approx((48 * 3.5 + 12 * 0.75) * INCH**2)


def test_its_limit_is_the_gust_at_which_a_post_is_used_up():
    piece = found()
    again = found(wind=f"{piece.limits.forecast_tipping * (1 - 1e-6)} m/s", embed="30 in")
    use = named(again, "embedment: post").utilization
    assert use == pytest.approx(1.0, rel=1e-4)
    assert piece.limits.sliding is None


PAIR = "at = ['-10 in', '0 in', '0 in']\ncount = 2\nstep = ['20 in', '0 in', '0 in']"


def test_more_posts_share_and_none_is_asked_for_more():
    one = named(found(), "embedment: post")
    two = named(found(posts=PAIR), "embedment: post")
    assert two.utilization < one.utilization


def test_a_post_stands_as_deep_as_it_stands_whatever_says_so():
    """Lowered by 30 in from 12 in up it is 18 in deep: in soil, as a column, in its check."""
    said_once = found(embed="18 in")
    text = sign(embed="30 in").replace(
        "height = '8 ft'", "height = '8 ft'\nat = ['0 in', '0 in', '12 in']"
    )
    said_twice = examine(read_text(text))
    assert len(said_once.checks) == len(said_twice.checks)
    for one, other in zip(said_once.checks, said_twice.checks, strict=True):
        assert other.name == one.name
        assert other.utilization == pytest.approx(one.utilization, rel=1e-9), one.name


def test_posts_one_inside_the_other_share_a_push_and_hold_no_twist():
    """A steel spike within a wooden post, the board to one side of both: half of the wind on each.

    Two in one place have no arm against a twist, as one has none.
    """
    spike = (
        "[[part]]\nname = 'spike'\nshape = 'box'\nlength = '1 in'\nwidth = '1 in'\n"
        "height = '3 ft'\nembed = '30 in'\nmaterial = 'steel'\n"
    )

    def asked_of_wind(piece, name):
        check = named(piece, name)
        blows = piece.wind.force[piece.wind.azimuths.tolist().index(check.direction_deg)]
        return check.demand / blows

    alone, both = found(at="6 in"), found(at="6 in", posts="\n" + spike)
    half = asked_of_wind(alone, "embedment: post") / 2.0
    assert asked_of_wind(both, "embedment: post") == pytest.approx(half, rel=1e-3)
    assert asked_of_wind(both, "embedment: spike") == pytest.approx(half, rel=1e-3)


def test_paving_holds_a_post_at_the_surface():
    """IBC 1807.3.2.2: S3 at the whole depth, d2 = 4.25 M/(S3 b)."""
    piece = house("constrained = true")
    d, b = 30 * INCH, 3.5 * INCH * sqrt(2)
    M = d**2 * 100 * PSF_PER_FOOT * d * b / 4.25
    asked = float((piece.wind.force * piece.wind.force_height).max())
    assert named(piece, "embedment: post").utilization == pytest.approx(asked / M, rel=1e-6)


def test_a_post_that_may_move_is_allowed_twice_as_much():
    """IBC 1806.3.4."""
    plain, moving = found(), found(more="may_move = true")
    ratio = (
        named(plain, "embedment: post").utilization / named(moving, "embedment: post").utilization
    )
    assert ratio == pytest.approx(2.0)


@settings(max_examples=8, deadline=None)
@given(deep=st.floats(14, 38), more=st.floats(1, 10))
def test_deeper_never_gives_way_sooner(deep, more):
    shallow, sunk = found(embed=f"{deep:.3f} in"), found(embed=f"{deep + more:.3f} in")
    assert sunk.limits.tipping > shallow.limits.tipping


def test_the_result_is_the_contracts(tmp_path, capsys):
    file = tmp_path / "post.toml"
    file.write_text(sign(embed="36 in", more="encased = '16 in'", wind="46 mph"), encoding="utf-8")
    assert main(["check", str(file), "--format", "json"]) == 0
    said = json.loads(capsys.readouterr().out)
    assert said["free_standing"] is None
    assert said["needs_anchors"] is False
    assert [check["name"] for check in said["checks"]][:2] == ["embedment: post", "bearing"]
    assert said["limits"]["sliding_gust_m_s"] is None
    assert main(["check", str(file)]) == 0
    assert "STANDS BY ITS POSTS   in the 46 mph you asked" in capsys.readouterr().out


def test_a_shallow_post_is_told_how_deep_to_stand(tmp_path, capsys):
    file = tmp_path / "post.toml"
    file.write_text(sign(embed="18 in"), encoding="utf-8")
    assert main(["check", str(file)]) == 1
    out = " ".join(capsys.readouterr().out.split())
    assert "SET IT DEEPER its post gives way in the 58 mph you asked" in out
    assert "make post 10 ft 8 in long, 4 ft 2 in of it in" in out
    assert "3 ft 2 in of it in concrete" in out
    assert "10 in across" in out
    assert main(["size", str(file)]) == 0
    assert "SET IT DEEPER" in capsys.readouterr().out


@pytest.mark.parametrize(
    ("text", "said"),
    [
        (sign(more="on = 'board'"), "no 'on' on a part that stands in the ground"),
        (sign(more="tilt = '5 deg'"), "no 'tilt' on a part that stands in the ground"),
        (sign(embed="9 ft"), "less than its height"),
        (sign(ground="paving"), "a ground that a post can be set in"),
        (
            sign(
                posts="[[anchor]]\nname = 'a'\nkind = 'screw anchor 30 in'\nat = ['0 in', '0 in']"
            ),
            "",
        ),
        (sign().replace("embed = '30 in'", "encased = '10 in'"), "'embed' beside 'encased'"),
    ],
)
def test_what_cannot_be_is_told(text, said):
    with pytest.raises(DesignError) as caught:
        examine(read_text(text))
    assert any(said in fault.expected for fault in caught.value.faults)


def test_a_push_and_a_load_are_judged_by_the_posts():
    text = sign(embed="24 in").replace("[site]", "[site]\npeople = 'public'")
    text += "\n[[load]]\nname = 'lean'\nforce = '40 lbf'\nat = ['0 in', '0 in', '48 in']\n"
    text += "direction = '90 deg'\n"
    piece = examine(read_text(text))
    names = [check.name for check in piece.checks]
    assert "push" in names
    load = named(piece, "load: lean")
    assert load.slots == ("embedment: post",)
    assert not load.passes
    assert named(piece, "push").demand == pytest.approx(250.0)


HANGS = """
[[load]]
name = 'pot'
force = '{pounds} lbf'
at = ['{out} in', '0 in', '60 in']
direction = 'down'
"""


def hung(pounds, out):
    text = design_text(HOUSE.replace("MORE", "")) + HANGS.format(pounds=pounds, out=out)
    return named(examine(read_text(text)), "load: pot")


def test_what_hangs_off_the_post_bends_it_by_hand():
    """Eq. 18-1 with P = 0: u = 2.34 x 1.09 M/(d2 S1 b), M = 250 lbf x 36 in."""
    check = hung(250, 36)
    d, b = 30 * INCH, 3.5 * INCH * sqrt(2)
    M = 250 * POUND_FORCE * 36 * INCH
    S1 = 100 * PSF_PER_FOOT * d / 3
    assert check.utilization == pytest.approx(2.34 * 1.09 * M / (d**2 * S1 * b), rel=1e-6)
    assert (check.unit, check.slots) == ("N*m", ("embedment: post",))
    assert not check.passes


def test_what_presses_on_the_post_sinks_it_by_hand():
    """In its middle it bends nothing: its weight and the load over the end, 3 1/2 in square."""
    piece, check = house(), hung(2000, 0)
    weight = piece.structure.weight("heavy") + 2000 * POUND_FORCE
    assert check.demand == pytest.approx(weight / (3.5 * INCH) ** 2, rel=1e-6)
    assert check.slots == ("bearing",)


def test_a_roof_off_the_post_is_lifted_and_bends_it_more():
    """Suction at an arm bends the post: the same roof in the middle asks it for less."""
    roof = (
        "[[part]]\nname = 'roof'\nshape = 'plate'\non = 'post'\nat = ['{out} in', '0 in']\n"
        "length = '60 in'\nwidth = '48 in'\nthickness = '3/4 in'\nmaterial = 'softwood plywood'\n"
    )
    post = HOUSE.split("[[part]]")[1].replace("MORE", "encased = '18 in'")

    def use(out):
        text = design_text("[[part]]" + post + roof.format(out=out))
        return examine(read_text(text.replace("'0 in']\nlength", "'0 in', '0 in']\nlength")))

    middle, off = use(0), use(20)
    assert named(off, "embedment: post").utilization > named(middle, "embedment: post").utilization
    drawn = named(middle, "pull-out")
    assert drawn.demand == pytest.approx(middle.wind.uplift.max() * middle.factors.wind, rel=1e-6)


def test_a_lean_leaves_less_for_a_push():
    assert found(at="13 in").limits.push < found(at="0 in").limits.push


def test_no_depth_is_told_where_none_is_enough():
    piece = found(wind="290 mph")
    depth = depth_needed(piece.posts, piece.structure, piece.actions, piece.factors)
    assert np.isinf(depth).all()
