"""Pieces on sheets: never over each other, never over the edge, none lost; waste told truly."""

import numpy as np
import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st

from yardfast.design.cutting.blanks import Blank, saw_gap
from yardfast.design.cutting.nesting import nest

WIDTH, LENGTH = 1.22, 2.44
KERF = 0.003
ROUNDING = 1.0e-8


@st.composite
def blanks(draw):
    found = []
    for kind in range(draw(st.integers(1, 7))):
        length = draw(st.floats(0.05, LENGTH))
        bottom = draw(st.floats(0.03, WIDTH))
        taper = draw(st.one_of(st.just(0.0), st.floats(-0.6, 0.6)))
        top = min(max(bottom - length * taper, 0.0), WIDTH)
        gap = draw(st.sampled_from([KERF, 0.0042]))
        found += [Blank(kind, bottom, top, length, gap)] * draw(st.integers(1, 6))
    return found


def polygons(sheet):
    return [shapely.Polygon(one.corners()) for one in sheet]


@pytest.mark.slow
@settings(max_examples=120, deadline=None)
@given(blanks())
def test_pieces_lie_apart_by_the_saw_and_within_the_sheet(pieces):
    layout = nest(pieces, WIDTH, LENGTH)
    sheet_area = shapely.box(-ROUNDING, -ROUNDING, WIDTH + ROUNDING, LENGTH + ROUNDING)
    for sheet in layout.sheets:
        lying = polygons(sheet)
        for i, one in enumerate(lying):
            assert sheet_area.covers(one)
            for j in range(i):
                gap = max(sheet[i].blank.gap, sheet[j].blank.gap)
                assert one.distance(lying[j]) >= gap - ROUNDING


@pytest.mark.slow
@settings(max_examples=40, deadline=None)
@given(blanks())
def test_every_piece_is_laid_down_once_at_its_own_size(pieces):
    layout = nest(pieces, WIDTH, LENGTH)
    laid = [one for sheet in layout.sheets for one in sheet]
    assert sorted(one.blank.kind for one in laid) == sorted(piece.kind for piece in pieces)
    for one in laid:
        assert shapely.Polygon(one.corners()).area == pytest.approx(one.blank.area, rel=1e-9)
    assert all(sheet for sheet in layout.sheets)


@pytest.mark.slow
@settings(max_examples=40, deadline=None)
@given(blanks())
def test_no_fewer_sheets_than_the_area_needs_and_not_many_more(pieces):
    layout = nest(pieces, WIDTH, LENGTH)
    assert len(layout.sheets) >= layout.least_sheets
    # the emptiest sheet that takes no second like piece: 0.85 m to 0.11 m wide, 1.23 m long (twice
    # is too long, and 0.85 / 2 + 0.48 + 0.85 / 2 too wide), a fifth of the sheet
    assert len(layout.sheets) <= 6 * layout.least_sheets + 1


def test_flipped_trapezoids_lie_closer_than_their_widest_ends():
    # six, 300 mm to 100 mm: side by side unflipped 4 go across 1220 mm, flipped
    # 300/2 + (n - 1) (200 + gap) + 300/2 <= 1220 lets 5 go
    piece = Blank(0, 0.3, 0.1, 1.0, KERF)
    layout = nest([piece] * 10, WIDTH, LENGTH)
    assert len(layout.sheets) == 1
    first = [one for one in layout.sheets[0] if one.start < 0.5]
    assert len(first) >= 5


def test_a_row_turned_to_lie_along_the_edge_holds_one_more():
    # eight panels of a tower, 189 to 105 mm: their means and cuts come to 8 x 147 + 7 x 3.2 mm
    # = 1,200 mm, which fits 1,219 mm only where the first one's slanted edge runs along the sheet's
    piece = Blank(0, 0.18938, 0.10521, 1.2249, 0.00318)
    straight = 0.18938 + 7 * (0.14729 + 0.0032)
    assert straight > 1.2192
    layout = nest([piece] * 8, 1.2192, 2.4384)
    assert len(layout.sheets) == 1
    slope = np.arctan2((0.18938 - 0.10521) / 2, 1.2249)
    assert {round(abs(one.off_grain), 9) for one in layout.sheets[0]} == {round(slope, 9)}


def test_what_lies_behind_a_turned_row_keeps_the_wider_of_their_gaps():
    taper = [Blank(0, 0.375, 0.75, 1.5, KERF)] * 2
    plain = [Blank(1, 1.0, 1.0, 1.0, KERF), Blank(2, 1.0, 1.0, 0.5, 0.0042)]
    layout = nest([*taper, *plain], WIDTH, LENGTH)
    for sheet in layout.sheets:
        for k, one in enumerate(sheet):
            for other in sheet[:k]:
                gap = max(one.blank.gap, other.blank.gap)
                apart = shapely.Polygon(one.corners()).distance(shapely.Polygon(other.corners()))
                assert apart >= gap - ROUNDING


def test_rectangles_that_tile_the_sheet_waste_only_the_saw():
    # 2 by 4 pieces of half and a quarter of the sheet, less the cuts between them
    piece = Blank(0, (WIDTH - KERF) / 2, (WIDTH - KERF) / 2, (LENGTH - 3 * KERF) / 4, KERF)
    layout = nest([piece] * 8, WIDTH, LENGTH)
    assert len(layout.sheets) == 1
    assert layout.area / (WIDTH * LENGTH) > 0.99


def test_a_piece_as_large_as_the_sheet_takes_one_each():
    assert len(nest([Blank(0, WIDTH, WIDTH, LENGTH, KERF)] * 3, WIDTH, LENGTH).sheets) == 3


def test_a_piece_larger_than_the_sheet_is_refused():
    with pytest.raises(ValueError, match="too large"):
        nest([Blank(0, WIDTH + 0.001, 0.1, 1.0, KERF)], WIDTH, LENGTH)


def test_nothing_needs_no_sheet():
    assert nest([], WIDTH, LENGTH).sheets == ()


def test_a_tilted_blade_takes_more_of_the_face():
    assert saw_gap(0.003, np.radians(45.0)) == pytest.approx(0.003 * 2**0.5)
