"""A slab without a joint that lies on two posts: which bears is not known, so each is asked it."""

import pytest
from designs import design

from yardfast.checks.examination import examine
from yardfast.design.model import Part, Place
from yardfast.design.shapes.boxes import Box
from yardfast.design.structure import build_structure
from yardfast.loads.given import GivenLoad
from yardfast.materials import fasteners
from yardfast.statics.contacts.graph import graph_of
from yardfast.statics.tables.joint_table import JointRow
from yardfast.units.frozen import replace

WOOD = {"material": "southern pine"}
FOOT = Part("foot", Box(1.2, 0.3, 0.1), **WOOD)
ROPE = GivenLoad("rope", 60.0, (0.0, 0.0, 1.02), (0.0, 1.0, 0.0), "slab")
SCREW = fasteners.find_fastener("1/4 lag screw 6 in")


def piece(on, wide=(0.089, 0.089)):
    """Return a slab over two posts, written on the one or the other."""
    posts = [
        Part(name, Box(size, 0.089, 0.9), Place(on="foot", at=(x, 0.0, 0.0)), **WOOD)
        for name, x, size in (("left", -0.4, wide[0]), ("right", 0.4, wide[1]))
    ]
    over = Place(on=on, at=(0.4 if on == "left" else -0.4, 0.0, 0.0))
    slab = Part("slab", Box(1.1, 0.2, 0.04), over, density=1200.0)
    drawn = design(FOOT, *posts, slab, wind=1.0)
    rows = tuple(
        JointRow(f"{name} to foot", name, "foot", SCREW, 4, predrilled=True)
        for name in ("left", "right")
    )
    return replace(drawn, tables={**drawn.tables, JointRow: rows, GivenLoad: (ROPE,)})


def uses(drawn):
    checks = examine(drawn).checks
    return {c.name: c.utilization for c in checks if c.name.startswith(("joint", "member"))}


def test_both_of_two_like_posts_are_asked_alike():
    found = uses(piece("left"))
    for kind in ("joint: {} to foot", "member: {}"):
        left, right = (found[kind.format(name)] for name in ("left", "right"))
        assert left == pytest.approx(right, rel=1e-6)
        assert left > 0.05


@pytest.mark.parametrize("wide", [(0.089, 0.089), (0.089, 0.06)])
def test_it_is_the_same_on_whichever_it_is_written(wide):
    one, other = uses(piece("left", wide)), uses(piece("right", wide))
    assert one.keys() == other.keys()
    for name, use in one.items():
        assert other[name] == pytest.approx(use, rel=1e-6), name


def test_where_nothing_is_passed_by_there_is_no_other_way():
    drawn = piece("left")
    assert graph_of(build_structure(drawn)).otherwise is not None
    alone = replace(drawn, parts=tuple(p for p in drawn.parts if p.name != "right"))
    assert graph_of(build_structure(alone)).otherwise is None
