"""Racking: a frame on single screws falls over sideways, a braced one does not; sway by hand."""

from functools import cache
from math import pi

import pytest
from inside import forces_in

from yardfast.checks.examination import examine
from yardfast.checks.inputs import read_text
from yardfast.checks.judged.judging import Kind

FRAME = """
[design]
name  = 'A frame'
units = 'metric'

[site]
method = 'gust'
wind   = '{wind} m/s'
ground = 'paving'

[[part]]
name      = 'slab'
shape     = 'plate'
length    = '2.4 m'
width     = '1.2 m'
thickness = '100 mm'
material  = 'concrete'

[[part]]
name     = 'sill'
shape    = 'box'
on       = 'slab'
length   = '1.6 m'
width    = '89 mm'
height   = '89 mm'
material = 'southern pine'

[[part]]
name     = 'posts'
shape    = 'box'
on       = 'sill'
length   = '89 mm'
width    = '89 mm'
height   = '1.5 m'
at       = ['-0.6 m', '0 m', '0 m']
count    = 2
step     = ['1.2 m', '0 m', '0 m']
material = 'southern pine'

[[part]]
name     = 'beam'
shape    = 'box'
on       = 'posts'
length   = '1.6 m'
width    = '89 mm'
height   = '89 mm'
material = 'southern pine'

[[joint]]
name     = 'posts to sill'
of       = 'posts'
to       = 'sill'
fastener = '{fastener}'
count    = {count}

[[joint]]
name     = 'beam to posts'
of       = 'beam'
to       = 'posts'
fastener = '{fastener}'
count    = {count}

[[load]]
name      = 'lean'
force     = '{push} N'
at        = ['0 m', '0 m', '1.78 m']
direction = 'right'
on        = 'beam'
{more}
"""
BRACE = """
[[part]]
name     = 'brace'
shape    = 'member'
from     = ['-0.6 m', '0.0635 m', '0.3 m']
to       = ['0.6 m', '0.0635 m', '1.6 m']
width    = '38 mm'
depth    = '89 mm'
material = 'southern pine'

[[joint]]
name     = 'brace to posts'
of       = 'brace'
to       = 'posts'
fastener = '#10 wood screw 3 in'
count    = 2
"""


@cache
def found(fastener="#10 wood screw 3 in", count=1, push=60.0, wind=5.0, more=""):
    text = FRAME.format(fastener=fastener, count=count, push=push, wind=wind, more=more)
    return examine(read_text(text))


def racking(whole):
    return next((one for one in whole.checks if one.kind is Kind.RACKING), None)


def test_a_frame_with_one_screw_at_each_corner_racks_and_names_what_moves():
    """Driven into the posts' end grain it is not drawn (NDS 2018 12.2.2.2): nothing turns back."""
    check = racking(found())
    assert check is not None
    assert not check.passes
    assert check.utilization is None
    assert {"posts", "beam"} <= set(check.slots)
    assert not found().passes


def test_a_diagonal_between_its_posts_holds_it():
    """A triangle keeps its shape in its plane; one lag screw a corner turns by its bed alone."""
    one = {"fastener": "3/8 lag screw 8 in", "count": 1, "push": 200.0}
    loose, braced = racking(found(**one)), racking(found(**one, more=BRACE))
    assert loose is not None
    assert not loose.passes
    assert braced is None


def test_more_screws_sway_less():
    """1/50 of the height is told as the most (judgement)."""
    few = racking(found("3/8 lag screw 8 in", 2, push=200.0))
    assert few is not None
    assert few.capacity == pytest.approx((0.1 + 2 * 0.089 + 1.5) / 50.0, rel=1e-6)
    assert few.utilization == pytest.approx(few.demand / few.capacity)
    assert racking(found("3/8 lag screw 8 in", 4, push=200.0)) is None


POST = """
[design]
name  = 'A post on four screws'
units = 'metric'

[site]
method = 'gust'
wind   = '0.1 m/s'
ground = 'paving'

[[part]]
name      = 'plank'
shape     = 'plate'
length    = '1.2 m'
width     = '1.2 m'
thickness = '100 mm'
material  = 'southern pine'

[[part]]
name     = 'post'
shape    = 'box'
on       = 'plank'
length   = '89 mm'
width    = '89 mm'
height   = '1.8 m'
material = 'southern pine'
mass     = '0.001 g'

[[joint]]
name     = 'post to plank'
of       = 'post'
to       = 'plank'
fastener = '3/8 lag screw 8 in'
points   = [['-30 mm', '-30 mm'], ['30 mm', '-30 mm'], ['-30 mm', '30 mm'], ['30 mm', '30 mm']]

[[load]]
name      = 'push'
force     = '400 N'
at        = ['0 m', '0 m', '1.9 m']
direction = 'right'
on        = 'post'
"""


def test_sway_of_a_post_by_its_closed_form():
    """P L^3/3EI + P L^2/k_t + P/k (hand case 1), its screws a third as stiff as read.

    k_t of four screws at 30 mm and of the bed at the middles of its four quarters, b/4 off. The
    plank stands on four corners of ground that is taken not to give.
    """
    whole = read_text(POST)
    check = racking(examine(whole))
    tie = forces_in(whole).joints[0].tie
    side, L, P = 0.089, 1.8, 400.0
    lateral, axial = tie.stiffness[0, 0] / 3.0, tie.stiffness[0, 2] / 3.0
    turns = 4.0 * axial * 0.030**2 + tie.bed * side**2 * (side / 4.0) ** 2
    EI = 1.3e6 * 0.9 * 6894.757293168 * side**4 / 12.0
    sway = P * L**3 / (3.0 * EI) + P * L**2 / turns + P / (4.0 * lateral)
    assert check is not None
    assert check.load == "push"
    assert check.demand == pytest.approx(sway, rel=2e-3)
    assert check.capacity == pytest.approx(1.9 / 50.0, rel=1e-6)
    assert check.passes == (sway <= 1.9 / 50.0)


LAMP = """
[design]
name  = 'A lamp on a rod'
units = 'metric'

[site]
method = 'gust'
wind   = '1 m/s'
ground = 'paving'

[[part]]
name      = 'slab'
shape     = 'plate'
length    = '1.2 m'
width     = '1.2 m'
thickness = '100 mm'
material  = 'concrete'

[[part]]
name     = 'rod'
shape    = 'box'
on       = 'slab'
length   = '38 mm'
width    = '38 mm'
height   = '2 m'
material = 'southern pine'

[[part]]
name  = 'lamp'
shape = 'weight'
on    = 'rod'
mass  = '{mass:.3f} kg'

[[part]]
name     = 'rail'
shape    = 'box'
on       = 'slab'
at       = ['0.4 m', '0 m', '0 m']
length   = '89 mm'
width    = '89 mm'
height   = '89 mm'
material = 'southern pine'

[[part]]
name     = 'cleat'
shape    = 'box'
on       = 'rail'
length   = '89 mm'
width    = '89 mm'
height   = '38 mm'
material = 'southern pine'

[[joint]]
name     = 'cleat'
of       = 'cleat'
to       = 'rail'
fastener = '5 x 60 mm wood screw'
count    = 4
"""


@pytest.mark.parametrize(("times", "racks"), [(11.0, False), (9.0, True)])
def test_a_rod_that_its_lamp_would_bend_over_racks(times, racks):
    """Euler: pi^2 E I/(4 L^2), a third of the rod's own mass at its top (Rayleigh, 0.3 of it)."""
    of = forces_in(read_text(LAMP.format(mass=5.0)))
    (rod,) = (one for one in of.model.sticks if one.length > 1.9)
    carries = pi**2 * rod.stiffness * min(rod.inertia) / (4.0 * rod.length**2)
    alone = float(of.cases.downward.max() / of.structure.weight("typical"))
    own = 0.3 * rod.area * rod.length * 550.0
    mass = carries / times / 9.80665 / alone - own
    found = examine(read_text(LAMP.format(mass=mass)))
    assert [c.kind for c in found.checks].count(Kind.RACKING) == int(racks)
    if racks:
        (check,) = (c for c in found.checks if c.kind is Kind.RACKING)
        assert "lamp" in check.slots
