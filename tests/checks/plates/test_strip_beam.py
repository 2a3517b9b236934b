"""Strips over several supports: against closed forms, stiffness matrices, and statics."""

import numpy as np
import pytest
from beam_elements import solve_by_elements
from hypothesis import given, settings
from hypothesis import strategies as st

from yardfast.checks.plates.strip_beam import bend

EI = 1500.0


def even(length, held, w=200.0, fast=False, n=16):
    """A strip of one stiffness under an even load, held at ``held`` in m."""
    at = np.unique(np.round(np.concatenate([np.linspace(0.0, length, n + 1), held]), 12))
    marks = np.isin(np.round(at, 12), np.round(held, 12))
    m = at.size - 1
    return bend(at, np.full(m, EI), marks, np.full(m, w), np.zeros(m + 1), fast=fast)


def moments(bent):
    return float(bent.moment.max()), float(-bent.moment.min())


@pytest.mark.parametrize(
    ("length", "held", "fast", "most", "moved"),
    [
        (1.2, (0.0, 1.2), False, 1 / 8, 5 / 384),
        (1.2, (0.0,), True, 1 / 2, 1 / 8),
        (1.2, (0.0, 1.2), True, 1 / 8, 1 / 185),
        (2.4, (0.0, 1.2, 2.4), False, 1 / 8, 1 / 185),
        (3.6, (0.0, 1.2, 2.4, 3.6), False, 1 / 10, 1 / 145),
    ],
    ids=["one span", "cantilever", "propped", "two spans", "three spans"],
)
def test_even_load_as_the_design_aid_prints_it(length, held, fast, most, moved):
    """American Wood Council, Design Aid 6 (2007), figures 1, 12, 18, 29 and 36 (memory): w s^2, s
    one span, w s^4/(E I)."""
    bent = even(length, held, fast=fast, n=48)
    s = 1.2
    assert max(moments(bent)) == pytest.approx(most * 200.0 * s**2, rel=1e-9)
    assert np.abs(bent.moved).max() == pytest.approx(
        moved * 200.0 * s**4 / EI, rel=0.0073
    )  # three digits printed


def test_greatest_moment_lies_between_nodes_where_there_is_no_shear():
    """A propped strip: 9 w s^2/128 in the span (Design Aid 6, figure 18), in one element alone."""
    bent = even(1.2, (0.0, 1.2), fast=True, n=1)
    low, high = sorted(moments(bent))
    assert high == pytest.approx(200.0 * 1.2**2 / 8.0)
    assert low == pytest.approx(9.0 / 128.0 * 200.0 * 1.2**2)


@settings(max_examples=60, deadline=None)
@given(st.integers(0, 10_000), st.integers(2, 12), st.booleans())
def test_any_strip_is_what_a_stiffness_matrix_makes_of_it(seed, n, fast):
    rng = np.random.default_rng(seed)
    at = np.concatenate([[0.0], np.cumsum(rng.uniform(0.05, 0.6, n))])
    stiffness = rng.uniform(100.0, 4000.0, n)
    held = rng.random(n + 1) < 0.4
    held[[0, int(rng.integers(1, n + 1))]] = True
    line, force, couple = (
        rng.normal(size=(3, n)) * 300.0,
        rng.normal(size=(3, n + 1)) * 80.0,
        rng.normal(size=(3, n + 1)) * 20.0,
    )
    bent = bend(at, stiffness, held, line, force, couple, fast=fast)
    for k in range(3):
        moved, moment, shear = solve_by_elements(
            at, stiffness, held, line[k], force[k], couple[k], fast=fast
        )
        np.testing.assert_allclose(bent.moved[k], moved, atol=1e-7 * np.abs(moved).max() + 1e-12)
        size = np.abs(moment).max()
        np.testing.assert_allclose(bent.moment[k][:, [0, 2]], moment, atol=1e-7 * size)
        np.testing.assert_allclose(bent.shear[k], shear, atol=1e-7 * np.abs(shear).max())
    np.testing.assert_allclose(
        bent.held.sum(axis=-1), -(line * np.diff(at)).sum(axis=-1) - force.sum(axis=-1), atol=1e-6
    )


def test_many_supports_are_as_exact():
    bent = even(6.0, tuple(np.linspace(0.0, 6.0, 25)), n=96)
    inside = bent.moment[40:56]
    assert inside.max() == pytest.approx(200.0 * 0.25**2 / 12.0, rel=1e-6)


@pytest.mark.parametrize("held", [(False, False, True), (False, False, False)])
def test_what_turns_freely_is_refused(held):
    with pytest.raises(ValueError, match="rests on two places"):
        bend([0.0, 0.5, 1.0], [1.0, 1.0], np.array(held), [1.0, 1.0], [0.0, 0.0, 0.0])
