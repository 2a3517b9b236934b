"""What a lattice beside and behind solid bodies adds to a silhouette: areas and moments by hand."""

import numpy as np
import pytest
import shapely

from yardfast.loads.seen.visible import silhouette


def seen(*boxes, solidity):
    """Return area, and its middle across the wind and up, of boxes seen from one direction."""
    outlines = np.array([[shapely.box(*each)] for each in boxes], dtype=object)
    found = silhouette(outlines, np.array(solidity, dtype=float)[:, None])
    return float(found.area[0]), float(found.side[0]), float(found.up[0])


def test_a_lattice_counts_by_its_solidity_where_it_stands_alone():
    """1 m2 about (0.5, 0.5) and half of 1 m2 about (1.5, 1.5): 1.5 m2 about 1.25/1.5."""
    area, side, up = seen((0, 0, 1, 1), (1, 1, 2, 2), solidity=(1.0, 0.5))
    assert area == pytest.approx(1.5, rel=1e-12)
    assert side == pytest.approx((0.5 + 0.5 * 1.5) / 1.5, rel=1e-12)
    assert up == pytest.approx((0.5 + 0.5 * 1.5) / 1.5, rel=1e-12)


def test_of_a_lattice_only_what_no_solid_covers_counts():
    """Its left half is covered: 1 m2 about (0.5, 0.5) and 0.4 of 0.5 m2 about (1.25, 0.5)."""
    area, side, up = seen((0, 0, 1, 1), (0.5, 0, 1.5, 1), solidity=(1.0, 0.4))
    assert area == pytest.approx(1.2, rel=1e-12)
    assert side == pytest.approx((0.5 + 0.2 * 1.25) / 1.2, rel=1e-12)
    assert up == pytest.approx(0.5, rel=1e-12)


def test_of_two_lattices_in_one_line_of_sight_the_denser_counts():
    """0.6 of 1 m2 about (0.5, 0.5), and 0.3 of the 0.5 m2 beyond it about (1.25, 0.5)."""
    area, side, _ = seen((0.5, 0, 1.5, 1), (0, 0, 1, 1), solidity=(0.3, 0.6))
    assert area == pytest.approx(0.6 + 0.15, rel=1e-12)
    assert side == pytest.approx((0.6 * 0.5 + 0.15 * 1.25) / 0.75, rel=1e-12)
