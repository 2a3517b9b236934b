"""Boards that make a wall, and boards that make one board: ASCE/SEI 7-16 Fig. 29.3-1.

At s/h 1 and B/s 2 the figure prints 1.40, at s/h 0.9 1.50; Note 3 lifts the resultant 0.05 h.
"""

from types import SimpleNamespace

import numpy as np
import pytest
from designs import design, wind_alone

from yardfast.checks.acting.design_wind import design_wind
from yardfast.design.model import Part, Place
from yardfast.design.placing import place_parts
from yardfast.design.shapes.boxes import Box
from yardfast.design.shapes.flat import Panel, Plate
from yardfast.design.shapes.plans import Rectangle
from yardfast.design.structure import build_structure
from yardfast.loads.coefficients.boards import boards
from yardfast.loads.exposed import bare, expose
from yardfast.loads.methods import method_of
from yardfast.loads.wind.site import Site

BOARD = Panel(2.0, 1.0, 1e-4)


def board(*beneath, up, method="gust"):
    part = Part("board", BOARD, Place(at=(0.0, 0.0, up)), density=500.0)
    sheet = Part("sheet", Plate(Rectangle(3.0, 3.0), 1e-7), density=500.0)
    parts = (sheet, *beneath, part)
    structure = build_structure(design(*parts))
    gust = method_of(Site(method, 30.0, "paving", exposure="C"), structure.height)
    found = expose(structure, bare(structure, [None] * len(parts), gust), False)
    d = int(np.argmin(np.abs(found.azimuths - 180.0)))
    return float(found.below[-1, d] / 2.0), float(found.rise[-1])


def test_a_foot_plate_beneath_a_board_leaves_it_a_wall():
    foot = Part("foot", Plate(Rectangle(2.2, 0.4), 0.1), density=500.0)
    cf, rise = board(foot, up=0.1)
    assert cf == pytest.approx(1.40, abs=1e-3)
    assert rise == pytest.approx(0.05 * 1.1)
    plain, plain_rise = board(up=1e-9)
    assert cf == pytest.approx(plain, abs=1e-3)
    assert plain_rise == pytest.approx(0.05)


def test_every_book_that_takes_the_figure_knows_what_fills_the_space_beneath():
    foot = Part("foot", Plate(Rectangle(2.2, 0.4), 0.1), density=500.0)
    by_gust = board(foot, up=0.1)
    for method in ("forecast", "ASCE 7-22", "ASCE 7-16"):
        assert board(foot, up=0.1, method=method) == pytest.approx(by_gust, rel=1e-12)


def test_a_board_on_posts_is_a_sign():
    """s/h 1/1.111 = 0.9 but for the posts' share of the width, a tenth: 0.91."""
    post = Part("post", Box(0.1, 0.1, 1.0 / 9.0), Place(count=2, ring=1.8), density=500.0)
    cf, rise = board(post, up=1.0 / 9.0)
    assert cf == pytest.approx(1.49, abs=2e-3)
    assert rise == pytest.approx(0.05 * 0.1 * 10.0 / 9.0, abs=1e-4)


def test_no_jump_as_the_gap_closes():
    """A plinth rises beneath a board 0.3 m up by 5 mm a step: Cf moves by at most 0.01."""
    found = [
        board(Part("plinth", Box(2.0, 0.3, height), density=500.0), up=0.3)
        for height in np.arange(0.005, 0.3001, 0.005)
    ]
    steps = np.abs(np.diff(np.array(found), axis=0)).max(axis=0)
    assert steps[0] < 0.01
    assert steps[1] < 0.004
    assert found[-1] == pytest.approx((1.40, 0.065), abs=1e-3)


def test_what_stands_before_a_board_does_not_fill_what_is_beneath_it():
    box = Part("box", Box(2.0, 0.3, 0.3), Place(at=(0.0, -0.6, 0.0)), density=500.0)
    assert board(box, up=0.3) == pytest.approx(board(up=0.3))


B, S = 2.4384, 0.6096
POST = Part("posts", Box(0.09, 0.09, 0.3), Place(count=2, ring=2.0), density=500.0)
SHEET = Part("sheet", Plate(Rectangle(3.0, 3.0), 1e-7), density=500.0)


def planks(count, gap=0.0, upright=True, method="ASCE 7-22", **site):
    """The wind on ``count`` planks that make a board 96 x 24 in, 0.3 m up, ``gap`` m between."""
    size = B if upright else S
    each = (size - gap * (count - 1)) / count
    shape = Panel(each, S, 0.02) if upright else Panel(B, each, 0.02)
    parts = [POST, SHEET]
    for k in range(count):
        off = (k + 0.5) * each + k * gap - size / 2.0
        at = (off, 0.0, 0.3) if upright else (0.0, 0.0, 0.3 + off + size / 2.0 - each / 2.0)
        parts.append(Part(f"plank {k}", shape, Place(at=at), density=500.0))
    given = {"wind": 47.0, "basis": "allowable", **site}
    drawn = design(*parts, method=method, **given)
    _, exposed = wind_alone(drawn)
    book = method_of(drawn.table(Site), build_structure(drawn).height)
    return SimpleNamespace(exposed=exposed, actions=design_wind(exposed, book)[1])


@pytest.mark.parametrize("upright", [True, False])
@pytest.mark.parametrize(
    ("method", "site"),
    [("ASCE 7-22", {"exposure": "C"}), ("gust", {}), ("EN 1991-1-4", {"terrain": "II"})],
)
def test_planks_that_abut_are_one_board(method, site, upright):
    """Force, height and twist: Case A from everywhere, B and C too on face and back.

    Slantwise the edge of the plank at the end takes its share of B and C, under 1 % of the force.
    """
    if method.startswith("EN"):
        site = {"basis": "EQU", "wind": 25.0, **site}
    one, four = (planks(n, upright=upright, method=method, **site) for n in (1, 4))
    assert one.exposed.cases == four.exposed.cases
    every = np.arange(0.0, 360.0, 5.0)
    for values in ("force", "tilting", "twist"):
        whole, parts = (
            getattr(found.actions, values)[:, np.searchsorted(found.exposed.azimuths, every)]
            for found in (one, four)
        )
        assert parts[:, :, 0] == pytest.approx(whole[:, :, 0], rel=1e-6, abs=1e-6)
        assert parts[:, ::36] == pytest.approx(whole[:, ::36], rel=1e-6, abs=1e-6)


def test_a_plank_of_case_c_takes_its_own_strip():
    """B/s 4: 2.90 up to s and 1.90 to 2 s from the windward edge (printed), s/h 0.67: no less."""
    found = planks(4, method="gust").exposed
    d, c = int(np.argmin(np.abs(found.azimuths - 180.0))), found.cases.index("C left")
    force = np.sort((found.below * found.case[:, c])[2:, d]) / S**2
    assert force[-1] == pytest.approx(2.90, rel=1e-6)
    assert force[-2] == pytest.approx(1.90, rel=1e-6)


def test_gaps_lessen_the_force_by_what_the_figure_allows():
    """Note 2: 1 - (1 - eps)^1.5 on the gross area; a fifth of it open: 0.9106."""
    gap = 0.2 * B / 3.0
    whole, open_ = (planks(n, gap=g, method="gust") for n, g in ((1, 0.0), (4, gap)))
    d = int(np.argmin(np.abs(whole.exposed.azimuths - 180.0)))
    ratio = open_.exposed.below[2:, d].sum() / whole.exposed.below[2:, d].sum()
    assert ratio == pytest.approx(1.0 - 0.2**1.5, rel=1e-6)


def test_boards_with_more_air_between_stand_for_themselves():
    """Three tenths and more open: each of B/s 0.7 and not the whole."""
    near, far = (planks(2, gap=share * B, method="gust").exposed for share in (0.29, 0.31))
    assert near.case.shape[1] == 5  # with Case C, since the whole is four times as wide as high
    assert far.case.shape[1] == 3


def test_a_board_across_another_and_one_behind_are_not_one_with_it():
    across = Part("a", Panel(S, S, 0.02), Place(at=(0.0, 0.6, 0.3), turn=np.pi / 2), density=500.0)
    behind = Part("b", Panel(S, S, 0.02), Place(at=(S, 0.1, 0.3)), density=500.0)
    plain = Part("c", Panel(S, S, 0.02), Place(at=(0.0, 0.0, 0.3)), density=500.0)
    assert [one.several for one in boards(place_parts(design(across, behind, plain)))] == [
        False
    ] * 3


@pytest.mark.parametrize("count", range(2, 30))
def test_boards_that_lap_cover_the_whole_and_no_more(count):
    """Slats of 120 mm every 95 mm leave no opening: solid over gross area is 1, in the gust of a
    forecast as in the Eurocode, which both refuse more."""
    slats = (
        Part(f"slat {k}", Panel(2.0, 0.12, 0.018), Place(at=(0.0, -0.002 * k, 0.095 * k)), 500.0)
        for k in range(count)
    )
    for one in boards(place_parts(design(*slats))):
        assert one is not None
        assert one.several
        assert 1.0 - 1e-12 < one.share <= 1.0


def test_what_lies_twice_in_one_place_fills_no_gap():
    """Three boards a metre square, two of them in one place, 1.5 m clear of the third: faces of 3
    m2 cover 2 of 3.5 m2, 57 %, where a board that is one has 70 (Fig. 29.3-1 Note 2: gaps up to
    30 %). Without the gap they are one."""
    for clear, together in ((1.5, False), (0.2, True)):
        parts = [
            Part(f"board {k}", Panel(1.0, 1.0, 0.02), Place(at=(x, 0.0, 1.0)), density=500.0)
            for k, x in enumerate((0.0, 0.0, 1.0 + clear))
        ]
        found = boards(place_parts(design(*parts)))
        assert (found[0].width == pytest.approx(2.0 + clear)) is together
