"""Splitting across the grain by EN 1995-1-1 8.1.4, by hand and on a drawn joint."""

from math import inf

import numpy as np
import pytest
from joint_designs import POST, joint
from shapely.geometry import box

from yardfast.checks.fasteners.joint_places import places
from yardfast.checks.fasteners.splitting import reaches
from yardfast.checks.fasteners.wood_around import Around
from yardfast.checks.inputs import read_text
from yardfast.checks.timber.books import titled
from yardfast.checks.timber.en1995.splitting import characteristic
from yardfast.design.structure import build_structure
from yardfast.units import INCH

EN = titled("EN 1995-1-1")


@pytest.mark.parametrize(
    ("thick", "deep", "reach", "newtons"),
    [
        # 14 b sqrt(h_e/(1 - h_e/h)), EN 1995-1-1 Eq. 8.4, in several open libraries; by hand:
        # 14 x 45 x sqrt(120/(1 - 120/195)) = 630 x sqrt(312.0) = 11,128
        (0.045, 0.195, 0.120, 11128.0),
        # at half depth 14 x 38 x sqrt(44.5/0.5) = 532 x 9.434 = 5,019
        (0.038, 0.089, 0.0445, 5018.9),
    ],
)
def test_by_hand(thick, deep, reach, newtons):
    assert characteristic(thick, deep, reach) == pytest.approx(newtons, abs=0.5)


def test_farther_in_never_splits_sooner_and_the_far_edge_not_at_all():
    found = [characteristic(0.038, 0.14, 0.01 * k) for k in range(1, 14)]
    assert found == sorted(found)
    assert characteristic(0.038, 0.14, 0.14) == inf


def test_what_it_resists_outdoors():
    """k_mod 0.7 of short-term load in service class 3 over gamma_M 1.3 (Tables 3.1 and 2.3)."""
    found = EN.splits_at("spruce-pine-fir", 0.038, 0.089, 0.0445, "EN 1995, strength", False)
    assert found == pytest.approx(5018.9 * 0.7 / 1.3, rel=1e-4)
    assert EN.splits_at("OSB", 0.018, 0.3, 0.1, "EN 1995, strength", False) == inf
    assert titled("NDS").splits_at("OSB", 0.018, 0.3, 0.1, "strength", False) == inf


def test_many_screws_hold_no_more_than_leaves_both_pieces_whole():
    """A block 24 by 6 in, its grain along x, drawn across it: its fasteners share what it holds.

    Ten lag screws reach 4 1/4 in into it, 1/2 in from an edge: 14 x 107.95 x sqrt(12.7/(1 -
    12.7/152.4)) = 5,625 N; the plank, 3/4 in thick and 24 in wide, 9 1/2 in from its nearer edge,
    14 x 19.05 x sqrt(241.3/(1 - 241.3/609.6)) = 5,330 N. Of the less
    0.7/1.3 outdoors, a tenth each.
    """
    given = ", ".join(f"['{x} in', '-2.5 in']" for x in range(-9, 10, 2))
    text = POST + joint("block", "plank", count=None, fastener="1/4 lag screw 5 in").rstrip()
    structure = build_structure(read_text(text + f"\npoints = [{given}]\n"))
    (nds,), (en,) = places(structure, "strength"), places(structure, "EN 1995, strength")
    assert nds.sets[0].holds.mode != "split"
    assert en.sets[0].holds.mode == "split"
    assert en.sets[0].holds.sideways == pytest.approx(5330.0 * 0.7 / 1.3 / 10.0, rel=1e-3)


@pytest.mark.parametrize(("apart", "together"), [(4.0, 1), (2.9, 2), (1.0, 4)])
def test_fasteners_far_apart_along_the_grain_do_not_split_it_as_one(apart, together):
    """A rail 1 1/2 in deep, a row of ten in its middle: those within 3 in of each other count."""
    rail = Around("rail", False, ((box(0.0, 0.0, 40.0 * INCH, 1.5 * INCH), np.array([1.0, 0.0])),))
    row = np.column_stack([np.arange(10) * apart, np.full(10, 0.75)]) * INCH
    ((deep, reach, found),) = reaches(rail, row)
    assert (deep, reach) == (pytest.approx(1.5 * INCH), pytest.approx(0.75 * INCH))
    assert found == together
