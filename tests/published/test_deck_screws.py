"""Deck screws beside what one maker's evaluation report allows."""

import pytest

import yardfast as yf
from yardfast.checks.timber.terms.capacity import as_known
from yardfast.materials import fasteners
from yardfast.units import INCH


def test_a_deck_screw_holds_no_more_than_its_report_allows() -> None:
    """51 lbf sideways: #8 by 2 in through 23/32 in plywood, 1 9/32 in into spruce-pine-fir.

    Evaluation report of one maker's screw, Table 13 (2025), as quoted in a public project: major
    diameter 0.163 in, minor 0.100 in. The root of a wood screw of that number, 0.131 in, gives 81.
    """
    screw = as_known(fasteners.find_fastener("#8 deck screw 2 in"))
    assert screw.root_diameter == pytest.approx(0.100 * INCH)
    root = f"{screw.root_diameter / INCH} in"
    held = yf.lateral(root, "23/32 in", "1.199 in", 0.50, 0.42, f"{screw.bending_yield} Pa")
    assert 0.9 * 51.0 < held.value.to("lbf").magnitude < 51.0
