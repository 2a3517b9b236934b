"""Sticks from lumber: what is bought holds what is sawn, with the cuts between."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from yardfast.design.cutting.lumber_cuts import Run, lay_out, length_taken
from yardfast.design.cutting.sawn import sawn_from
from yardfast.design.cutting.sticks import mitred_lengths
from yardfast.design.shapes.bodies import Solid
from yardfast.design.shapes.boxes import Box
from yardfast.design.shapes.flat import Frame
from yardfast.design.shapes.member import Member
from yardfast.design.shapes.plans import Rectangle, Regular

LENGTHS = (2.4384, 3.048, 3.6576)
KERF = 0.003175

RUNS = st.lists(
    st.tuples(st.integers(1, 12), st.floats(0.05, 3.6), st.floats(0.0, 0.7)), min_size=1, max_size=6
)


@settings(max_examples=100, deadline=None)
@given(RUNS)
def test_every_stick_holds_its_pieces_and_none_is_lost(rows):
    runs = [
        Run(k, count, long, max(long - 0.1 * np.tan(mitre), long / 2), mitre)
        for k, (count, long, mitre) in enumerate(rows)
    ]
    found = lay_out(runs, LENGTHS, KERF)
    sawn = dict.fromkeys(range(len(runs)), 0)
    for stick in found.sticks:
        assert stick.length in LENGTHS
        pieces = [runs[kind] for kind, count in stick.pieces for _ in range(count)]
        assert length_taken(pieces, KERF) <= stick.length + 1e-8
        for kind, count in stick.pieces:
            sawn[kind] += count
    assert sawn == {k: run.count for k, run in enumerate(runs)}
    assert 0.0 <= found.waste < 1.0


def test_two_pieces_of_half_the_stick_do_not_fit_for_the_saw():
    half = Run(0, 2, 1.2192, 1.2192, 0.0)
    assert [stick.length for stick in lay_out([half], LENGTHS, KERF).sticks] == [3.048]
    short = Run(0, 2, 1.2192 - KERF / 2, 1.2192 - KERF / 2, 0.0)
    assert [stick.length for stick in lay_out([short], LENGTHS, KERF).sticks] == [2.4384]


def test_mitred_pieces_share_their_cuts():
    # eight pieces of an octagon, 10 in over the long points and 6 in over the short, turned end
    # for end: 10 + 7 (8 + kerf / cos 22.5) = 66.9 in, where long points alone would take 80.9
    inch = 0.0254
    mitre = np.radians(22.5)
    piece = Run(0, 8, 10 * inch, 6 * inch, mitre)
    taken = length_taken([piece] * 8, KERF)
    assert taken / inch == pytest.approx(10 + 7 * (8 + 0.125 / np.cos(mitre)), rel=1e-12)


def test_a_piece_longer_than_any_stick_is_named():
    found = lay_out([Run(0, 1, 4.0, 4.0, 0.0), Run(1, 1, 1.0, 1.0, 0.0)], LENGTHS, KERF)
    assert found.too_long == (0,)
    assert len(found.sticks) == 1


@pytest.mark.parametrize("sides", [3, 4, 5, 6, 8, 12])
def test_frame_pieces_make_up_the_frame(sides):
    frame = Frame(Regular(sides, 0.6), 0.1, 0.04)
    (piece,) = sawn_from(frame).sticks
    assert piece.copies == sides
    assert np.degrees(piece.mitre) == pytest.approx(180.0 / sides)
    assert piece.copies * piece.volume == pytest.approx(frame.moments().volume, rel=1e-12)
    # the mitre as drawn: half the difference of long and short point over the width
    run = (piece.long_point - piece.short_point) / 2.0
    assert np.arctan2(run, 0.1) == pytest.approx(piece.mitre, abs=1e-12)


def test_a_rectangular_frame_has_two_pairs_mitred_45():
    frame = Frame(Rectangle(1.0, 0.6), 0.1, 0.04)
    pieces = sawn_from(frame).sticks
    assert [(p.copies, p.long_point, p.short_point) for p in pieces] == [
        (2, 1.0, pytest.approx(0.8)),
        (2, 0.6, pytest.approx(0.4)),
    ]
    assert {round(np.degrees(p.mitre), 9) for p in pieces} == {45.0}
    assert sum(p.copies * p.volume for p in pieces) == pytest.approx(frame.moments().volume)


def test_an_octagon_of_two_by_six_by_hand():
    # 24 in over flats: outer edge 24 tan 22.5 = 9.941 in, inner (24 - 11) tan 22.5 = 5.385 in
    long, short = mitred_lengths(24.0, 5.5, 8)
    assert (float(long), float(short)) == (
        pytest.approx(9.941, abs=5e-4),
        pytest.approx(5.385, abs=5e-4),
    )
    many = mitred_lengths(np.linspace(10.0, 40.0, 1000), 2.0, 6)
    assert many[1][999] == pytest.approx(float(mitred_lengths(40.0, 2.0, 6)[1]))


def test_a_brace_cut_level_at_45_is_longer_from_tip_to_tip():
    brace = Member((0.0, 0.0, 0.0), (0.5, 0.0, 0.5), 0.038, 0.089, cut="level")
    (stick,) = sawn_from(brace).sticks
    assert np.degrees(stick.mitre) == pytest.approx(45.0)
    assert stick.short_point == pytest.approx(0.5 * 2**0.5)
    assert stick.long_point == pytest.approx(0.5 * 2**0.5 + 0.089)
    # as drawn: the farthest reach of its corners along its axis
    points = brace.hulls()[0].points @ brace.axes[0]
    assert stick.long_point == pytest.approx(float(np.ptp(points)))


def test_a_steep_brace_cut_plumb_reaches_as_far_as_it_is_drawn():
    brace = Member((0.0, 0.1, 0.0), (0.3, 0.5, 0.9), 0.038, 0.089, cut="plumb")
    (stick,) = sawn_from(brace).sticks
    points = brace.hulls()[0].points @ brace.axes[0]
    assert stick.long_point == pytest.approx(float(np.ptp(points)))


def test_posts_and_beams_are_sticks_and_slabs_are_not():
    assert sawn_from(Solid(4, 0.0889, 0.0889, 1.5)).sticks[0].long_point == 1.5
    assert sawn_from(Box(1.8, 0.0381, 0.1397)).sticks[0].wide == 0.1397
    assert sawn_from(Box(0.6, 0.6, 0.1)).sticks == ()
    assert sawn_from(Solid(8, 0.1, 0.1, 1.5)).sticks == ()
