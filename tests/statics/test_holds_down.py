"""Anchors, guys and ballast that meet nothing: each a fault that names a place that would do.

Places are plane geometry by hand; reaches are those of references/fit.csv (judgement).
"""

import numpy as np
import pytest
from designs import design, tower
from garden import EXAMPLES
from sample_file import HARBOUR_LIGHT

from yardfast.checks.anchoring.anchor_choice import with_anchors
from yardfast.checks.examination import examine
from yardfast.checks.inputs import read, read_text
from yardfast.cli.commands.new import default_file
from yardfast.cli.starting.pieces import PIECE_KINDS
from yardfast.design.faults import DesignError
from yardfast.design.model import Part, Place
from yardfast.design.shapes.boxes import Box
from yardfast.design.shapes.flat import Frame, Panel, Plate
from yardfast.design.shapes.plans import Rectangle, Regular
from yardfast.design.structure import build_structure
from yardfast.loads.wind.site import Site
from yardfast.statics.contacts.holds_down import anchor_points, holding_nothing
from yardfast.statics.tables.anchor_table import AnchorRow, BallastRow, GuyRow
from yardfast.units.frozen import replace

STAKE, BOLT = "rebar stake 1/2 in x 36 in", "bolt 1/2 in into a slab"
RING = Part("ring", Frame(Regular(8, 1.0), 0.14, 0.04), density=500.0)
BODY = Part("body", Box(0.8, 0.8, 1.0, 0.02), Place(on="ring"), density=500.0)
POST = Part("post", Box(0.4, 0.4, 1.6), density=500.0)


def with_row(row, *parts, **more):
    drawn = replace(design(*parts), **more)
    return replace(drawn, tables={**drawn.tables, type(row): (row,)})


def faults(row, *parts, **more):
    return holding_nothing(build_structure(with_row(row, *parts, **more)))


def fault(row, *parts, **more):
    (one,) = faults(row, *parts, **more)
    return one


def stakes(ring, kind=STAKE, **more):
    return AnchorRow("stakes", kind, ring=ring, count=4, **more)


# --- anchors --------------------------------------------------------------------------------------


def test_stakes_on_a_ring_wider_than_the_foot_are_told_how_wide_would_do():
    """A foot 1.0 m across its flats, stakes 0.5 m out would touch it; 0.65 m is 0.15 m off."""
    one = fault(stakes(1.3), RING, BODY)
    assert (one.part, one.key) == ("stakes", "ring")
    assert one.found == "4 of 4 stand 150 mm from the nearest part, ring"
    assert one.hint == "ring = '1000 mm'"
    assert faults(stakes(1.0), RING, BODY) == []


@pytest.mark.parametrize(("off", "holds"), [(0.0127, True), (0.0129, False)])
def test_a_stake_beside_the_foot_holds_it_with_its_head(off, holds):
    """Half of 1/2 in and 1/4 in over: 12.75 mm from its middle to the wood."""
    assert (faults(stakes(1.0 + 2.0 * off), RING, BODY) == []) is holds


def test_bolts_go_through_the_wood():
    assert faults(stakes(0.9, BOLT), RING, BODY) == []
    assert (
        fault(stakes(1.02, BOLT), RING, BODY).expected
        == "an anchor that goes through what it holds"
    )


def test_bolts_beneath_two_leaning_boards_where_nothing_lies():
    """Boards 19 mm thick that lean on each other: 40 mm in from the corners there is no wood."""
    board = Part(
        "boards",
        Panel(0.6, 1.0, 0.019),
        Place(at=(0.0, 0.3, 0.0), tilt=np.radians(17.0), mirror=frozenset("y")),
        density=600.0,
    )
    row = AnchorRow("bolts", BOLT, "corners", inset=0.04)
    one = fault(row, board)
    assert (one.part, one.key) == ("bolts", "inset")
    assert "the nearest part, boards" in one.found
    nearer = replace(row, inset=0.005)
    assert faults(nearer, board) == []


@pytest.mark.parametrize("turn", [0.0, 0.7])
def test_the_nearest_place_is_told_in_the_designs_own_axes(turn):
    """A post 0.4 m square: from 0.5 m to the right of its middle the nearest wood is 0.2 m."""
    one = fault(AnchorRow("stake", STAKE, at=(0.5, 0.05, 0.0)), POST, turn=turn)
    assert one.key == "at"
    assert one.found == "stands 300 mm from the nearest part, post"
    assert one.hint == "at = ['200 mm', '50 mm', '0 mm']"
    near = AnchorRow("stake", STAKE, at=(0.2, 0.05, 0.0))
    assert faults(near, POST, turn=turn) == []


def test_stakes_between_legs_hold_nothing_and_those_at_their_corners_do():
    legs = Part(
        "legs", Box(0.1, 0.1, 0.5), Place(count=4, ring=1.2, start=np.pi / 4), density=500.0
    )
    top = Part("top", Plate(Rectangle(1.1, 1.1), 0.03), Place(on="legs"), density=500.0)
    one = fault(AnchorRow("stakes", STAKE, "sides"), legs, top)
    assert (one.key, one.hint) == ("where", "where = 'corners', or at = [...] for each")
    assert faults(AnchorRow("stakes", STAKE, "corners"), legs, top) == []


def test_one_anchor_stands_outermost_at_each_foot():
    """Four 0.1 m legs 1.0 by 0.8 m apart: their outer corners; turned by 45 deg about themselves,
    the corner that points out most of two; moved in 20 mm, that much from both edges."""
    legs = [
        Part(f"leg {k}", Box(0.1, 0.1, 1.0), Place(at=(0.5 * x, 0.4 * y, 0.0)), density=500.0)
        for k, (x, y) in enumerate(((-1, -1), (1, -1), (1, 1), (-1, 1)))
    ]
    stood = build_structure(design(*legs))
    for inset, x, y in ((0.0, 0.55, 0.45), (0.02, 0.53, 0.43)):
        row = AnchorRow("stakes", STAKE, where="feet", inset=inset)
        corners = {(x * a, y * b) for a in (-1, 1) for b in (-1, 1)}
        assert {tuple(p) for p in anchor_points(stood, row).round(9).tolist()} == corners
    with pytest.raises(DesignError) as wide:
        anchor_points(stood, AnchorRow("stakes", STAKE, where="feet", inset=0.06))
    assert wide.value.faults[0].key == "inset"


def test_of_a_foot_that_points_outward_with_an_edge_the_middle_of_it_is_taken():
    """Legs 0.1 m wide turned by 45 deg on a square: an edge square to the diagonal, 0.05 m out."""
    legs = [
        Part(
            f"leg {k}",
            Box(0.1, 0.1, 1.0),
            Place(at=(0.5 * x, 0.5 * y, 0.0), turn=np.pi / 4),
            density=500.0,
        )
        for k, (x, y) in enumerate(((-1, -1), (1, -1), (1, 1), (-1, 1)))
    ]
    points = anchor_points(build_structure(design(*legs)), AnchorRow("a", STAKE, where="feet"))
    assert np.hypot(*points.T) == pytest.approx([0.5 * 2**0.5 + 0.05] * 4)


def test_all_is_told_at_once_with_its_line():
    text = HARBOUR_LIGHT + (
        "\n[[anchor]]\nname = 'stakes'\nkind = 'rebar stake 1/2 in x 36 in'\nring = '40 in'\n"
        "count = 4\n[[guy]]\nname = 'ropes'\nline = 'nylon rope 6 mm'\nheight = '90 in'\n"
        "anchor = 'rebar stake 1/2 in x 36 in'\nradius = '9 ft'\ncount = 3\n"
    )
    with pytest.raises(DesignError) as wrong:
        examine(read_text(text, "light.toml"))
    found = [(one.line, one.part, one.key) for one in wrong.value.faults]
    at = [text[: text.index(what)].count("\n") + 1 for what in ("ring = '40", "height = '90")]
    assert found == [(at[0], "stakes", "ring"), (at[1], "ropes", "height")]


# --- guys -----------------------------------------------------------------------------------------


def guys(height, out=0.0, **more):
    return GuyRow("guys", "nylon rope 6 mm", STAKE, height, 2.5, 4, out=out, **more)


@pytest.mark.parametrize(
    ("row", "key", "said", "hint"),
    [
        (guys(1.8), "height", "4 of 4 are tied 200 mm from the nearest part, post", "'1600 mm'"),
        (guys(1.0, 0.5), "out", "4 of 4 are tied 300 mm from the nearest part, post", "'200 mm'"),
    ],
)
def test_guys_above_the_top_or_beside_the_piece(row, key, said, hint):
    one = fault(row, POST)
    assert (one.key, one.found) == (key, said)
    assert one.hint == f"{key} = {hint}"


@pytest.mark.parametrize(
    ("out", "holds"), [(0.0, True), (0.2, True), (0.225, True), (0.226, False)]
)
def test_a_guy_is_tied_round_a_part_or_within_an_inch_of_it(out, holds):
    assert (faults(guys(1.0, out), POST) == []) is holds


def test_a_guy_in_the_middle_of_four_posts_is_tied_to_nothing():
    posts = Part("posts", Box(0.1, 0.1, 2.0), Place(count=4, ring=1.2), density=500.0)
    top = Part("top", Plate(Rectangle(1.3, 1.3), 0.03), Place(on="posts"), density=500.0)
    assert fault(guys(1.0), posts, top).part == "guys"
    assert faults(guys(1.0, 0.6), posts, top) == []
    assert faults(guys(2.01), posts, top) == []


# --- ballast --------------------------------------------------------------------------------------


def laid(row, *parts, **more):
    """Return what is said of ballast, through the whole door, as a file's reader would."""
    try:
        examine(with_row(row, *parts, **more))
    except DesignError as wrong:
        return [(one.part, one.key, one.found, one.hint) for one in wrong.faults]
    return []


def test_ballast_in_the_open_middle_of_a_ring_lies_on_nothing():
    """The ring's hole is 0.72 m across its flats: its wood begins 0.36 m from the middle."""
    ((part, key, found, hint),) = laid(BallastRow("bags", 18.0, 1, on="ring"), RING, BODY)
    assert (part, key) == ("bags", "at")
    assert found.startswith("lies 360 mm from the nearest part, ring")
    assert hint.startswith("at = [")
    ((_, _, found, hint),) = laid(
        BallastRow("bags", 18.0, 4, on="ring", at=(0.2, 0.0, 0.0)), RING, BODY
    )
    assert found == "lies 160 mm from the nearest part, ring"
    assert hint == "at = ['360 mm', '0 mm', '0 mm']; lay as many opposite, as a row of their own"
    assert laid(BallastRow("bags", 18.0, 4, on="ring", at=(0.43, 0.0, 0.0)), RING, BODY) == []


def test_several_bags_without_a_place_are_laid_round_the_ring():
    assert laid(BallastRow("bags", 18.0, 4, on="ring"), RING, BODY) == []


def test_ballast_beside_what_it_lies_on():
    plate = Part("foot", Plate(Rectangle(0.8, 0.8), 0.04), density=600.0)
    post = Part("post", Box(0.1, 0.1, 1.0), Place(on="foot"), density=500.0)
    assert laid(BallastRow("bag", 18.0, 1, on="foot", at=(0.39, 0.0, 0.0)), plate, post) == []
    ((_, key, found, hint),) = laid(
        BallastRow("bag", 18.0, 1, on="foot", at=(0.5, 0.0, 0.0)), plate, post, turn=0.3
    )
    assert (key, found) == ("at", "lies 100 mm from the nearest part, foot")
    assert hint == "at = ['400 mm', '0 mm', '0 mm']"


# --- what is offered ------------------------------------------------------------------------------


def offered(drawn):
    """Yield a design with each of the anchors and guys that are offered for it."""
    found = examine(drawn)
    if found.free is None:
        return
    if found.anchors is not None:
        yield with_anchors(drawn, found.anchors.row)
    if found.guys is not None:
        yield found.guys.added_to(drawn)


OFFERED = {
    **{file.stem: read(file) for file in EXAMPLES},
    **{f"{kind} of new": read_text(default_file(kind)) for kind in PIECE_KINDS},
    "balls": design(*tower(0, 0.5, 0.3, 0.2, 1.2), wind=30.0),
}
SOON = ("light-tower", "seat-box", "heron", "balls")
"""Those of which anchors are soon found; the others in the slow part."""


@pytest.mark.parametrize("ground", ["paving", "firm lawn"])
@pytest.mark.parametrize(
    "name",
    [pytest.param(one, marks=() if one in SOON else pytest.mark.slow) for one in OFFERED],
)
def test_all_anchors_and_guys_that_are_offered_meet_the_piece(name, ground):
    drawn = OFFERED[name]
    if any(part.embed > 0.0 for part in drawn.parts):
        pytest.skip("posts carry it")
    site = replace(drawn.table(Site), ground=ground)
    bare = {**drawn.tables, Site: site, AnchorRow: ()}  # its own are of its own ground
    for tied in offered(replace(drawn, tables=bare)):
        structure = build_structure(tied)
        assert holding_nothing(structure) == []
        for row in tied.several(AnchorRow):
            assert len(anchor_points(structure, row)) > 2
