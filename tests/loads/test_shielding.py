"""Shelter behind something else."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from yardfast.loads.coefficients.shielding import shielding

solidities = st.floats(0.0, 1.0)
gaps = st.floats(0.0, 9.0)


def test_shielding_is_linear_both_ways():
    """ISO 4302 (memory): between 0.2, 0.3 and 1, 2: (0.75 + 0.59 + 0.80 + 0.63)/4."""
    assert shielding(0.25, 1.5) == pytest.approx((0.75 + 0.59 + 0.80 + 0.63) / 4)


def test_shielding_is_held_at_the_edges_of_the_table():
    assert shielding([0.6, 0.8, 1.0], [0.0, 0.2, 1.0]) == pytest.approx([0.10, 0.10, 0.10])


@given(solidities, st.floats(6.0, 100.0))
def test_nothing_is_sheltered_from_six_widths_on(eps, gap):
    assert shielding(eps, gap) == 1.0


@given(gaps)
def test_nothing_shelters_nothing(gap):
    assert shielding(0.0, gap) == 1.0


@given(solidities, gaps, gaps)
def test_farther_behind_is_never_sheltered_more(eps, a, b):
    near, far = sorted((a, b))
    assert shielding(eps, near) <= shielding(eps, far) + 1e-12


@given(solidities, solidities, gaps)
def test_more_solid_in_front_never_shelters_less(a, b, gap):
    thin, dense = sorted((a, b))
    assert shielding(dense, gap) <= shielding(thin, gap) + 1e-12


@pytest.mark.parametrize(
    ("eps", "gap", "named"),
    [(1.2, 1.0, "solidity_in_front: found 1.2"), (0.5, -1.0, "gap_over_width: found -1")],
    ids=["solidity", "gap"],
)
def test_what_the_table_does_not_cover_is_refused_by_name(eps, gap, named):
    with pytest.raises(ValueError, match=named):
        shielding(eps, gap)
