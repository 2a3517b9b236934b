"""Beams held against formulas of handbooks, equilibrium, and a finite-element solution."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from yardfast.checks.members import beam_statics


def even(w, start, end, count=400):
    """Return an even load w in N/m as forces at the middles of short pieces."""
    edges = np.linspace(start, end, count + 1)
    return w * np.diff(edges), (edges[1:] + edges[:-1]) / 2.0


def stiff_beam(F, C, s, p, length, cuts):
    """Solve a beam by Hermite elements (E I = 1): nodes at loads, supports, cuts; moment there.

    Positive as the code has it: the moment of what lies beyond a cut.
    """
    nodes = np.unique(np.concatenate([s, p, cuts, [0.0, length]]))
    n = len(nodes)
    K, load = np.zeros((2 * n, 2 * n)), np.zeros(2 * n)

    def element(h):
        return (
            np.array(
                [
                    [12, 6 * h, -12, 6 * h],
                    [6 * h, 4 * h**2, -6 * h, 2 * h**2],
                    [-12, -6 * h, 12, -6 * h],
                    [6 * h, 2 * h**2, -6 * h, 4 * h**2],
                ]
            )
            / h**3
        )

    for i, h in enumerate(np.diff(nodes)):
        K[2 * i : 2 * i + 4, 2 * i : 2 * i + 4] += element(h)
    at = np.searchsorted(nodes, s)
    np.add.at(load, 2 * at, F)
    np.add.at(load, 2 * at + 1, C)
    fixed = 2 * np.searchsorted(nodes, p)
    free = np.setdiff1d(np.arange(2 * n), fixed)
    u = np.zeros(2 * n)
    u[free] = np.linalg.solve(K[np.ix_(free, free)], load[free])
    found = {}
    for i, h in enumerate(np.diff(nodes)):
        ends = element(h) @ u[2 * i : 2 * i + 4]
        # moment that the part beyond node i puts on it, just behind any couple there
        found[i] = -ends[1]
    reactions = K[fixed] @ u - load[fixed]
    return np.array([found[i] for i in np.searchsorted(nodes, cuts)]), reactions


def test_an_even_load_between_two_supports():
    """Wood Handbook FPL-GTR-190 Table 9-1; AWC Design Aid 6 (2007) figure 1: w L^2/8, w L/2."""
    w, L = 300.0, 2.4
    F, s = even(w, 0.0, L)
    apart, joined = beam_statics.over_supports(F, 0.0 * F, s, [0.0, L], [0.0, L / 2.0])
    assert abs(apart.moment[1]) == pytest.approx(w * L**2 / 8.0, rel=1e-9)
    assert abs(apart.shear[0]) == pytest.approx(w * L / 2.0, rel=1e-9)
    np.testing.assert_array_equal(apart.moment, joined.moment)


def test_a_load_anywhere_between_two_supports():
    """AWC Design Aid 6 (2007) figure 8: P a b/L under the load, P b/L and P a/L at the supports."""
    P, a, b = 500.0, 0.7, 1.3
    apart, _ = beam_statics.over_supports([P], [0.0], [a], [0.0, a + b], [0.1, a, 1.9])
    assert abs(apart.moment[1]) == pytest.approx(P * a * b / (a + b))
    assert np.abs(apart.shear[[0, 2]]) == pytest.approx([P * b / (a + b), P * a / (a + b)])


def test_an_end_that_stands_out():
    """AWC Design Aid 6 (2007) figure 24: even load over a span and one overhang a.

    M = w a^2/2 at the support, and w (L + a)^2 (L - a)^2/(8 L^2) in the span.
    """
    w, L, a = 200.0, 2.0, 0.6
    F, s = even(w, 0.0, L + a, 2600)
    place = L / 2.0 * (1.0 - a**2 / L**2)
    apart, _ = beam_statics.over_supports(F, 0.0 * F, s, [0.0, L], [place, L])
    assert abs(apart.moment[1]) == pytest.approx(w * a**2 / 2.0, rel=1e-6)
    assert abs(apart.moment[0]) == pytest.approx(
        w * (L + a) ** 2 * (L - a) ** 2 / 8 / L**2, rel=1e-6
    )


def test_two_and_three_even_spans_in_one_piece():
    """AWC Design Aid 6 (2007) figures 29 and 36: 0.125 and 0.100 w L^2 inside."""
    w, L = 150.0, 1.5
    for spans, factor in ((2, 0.125), (3, 0.1)):
        F, s = even(w, 0.0, spans * L, 3000)
        p = L * np.arange(spans + 1)
        apart, joined = beam_statics.over_supports(F, 0.0 * F, s, p, [L])
        assert abs(joined.moment[0]) == pytest.approx(factor * w * L**2, rel=1e-5)
        assert apart.moment[0] == pytest.approx(0.0, abs=1e-9)


def test_what_three_and_four_even_supports_bear():
    """AWC Design Aid 6 (2007) figures 29 and 36 (memory): 3/8, 10/8, 3/8 and 0.4, 1.1, 1.1, 0.4."""
    w, L = 150.0, 1.5
    for shares in ([0.375, 1.25, 0.375], [0.4, 1.1, 1.1, 0.4]):
        F, s = even(w, 0.0, (len(shares) - 1) * L, 3000)
        p = L * np.arange(len(shares))
        apart, joined = beam_statics.reactions(F, 0.0 * F, s, p)
        assert joined == pytest.approx(w * L * np.array(shares), rel=1e-5)
        assert apart[:2] == pytest.approx(w * L * np.array([0.5, 1.0]), rel=1e-9)


def test_what_stands_on_a_support_goes_into_it():
    for found in beam_statics.reactions([600.0], [0.0], [2.0], [0.0, 2.0, 4.0]):
        assert found == pytest.approx([0.0, 600.0, 0.0])
    for found in beam_statics.reactions([0.0], [50.0], [2.0], [0.0, 2.0, 4.0]):
        assert found.sum() == pytest.approx(0.0)
        assert found @ [0.0, 2.0, 4.0] == pytest.approx(50.0)
    with pytest.raises(ValueError, match="2 or more"):
        beam_statics.reactions([1.0], [0.0], [0.5], [0.2])


def test_a_cantilever_with_loads_and_a_couple():
    """Sums of force times arm, beyond each cut."""
    found = beam_statics.cantilever([10.0, 4.0], [0.0, 3.0], [0.5, 1.0], [0.0, 0.6])
    assert found.moment == pytest.approx([10 * 0.5 + 4 * 1.0 + 3.0, 4 * 0.4 + 3.0])
    assert found.shear == pytest.approx([14.0, 4.0])


@settings(max_examples=60, deadline=None)
@given(st.integers(0, 10**6))
def test_a_piece_over_many_supports_against_finite_elements(seed):
    """Random spans, overhangs, forces and couples: as by an independent stiffness method."""
    rng = np.random.default_rng(seed)
    n, k = int(rng.integers(2, 6)), int(rng.integers(1, 8))
    # supports, loads and cuts on grids of their own: no element is so short that it spoils the sums
    spans = rng.integers(6, 40, n + 1)
    p, steps = 0.05 * np.cumsum(spans)[:-1], int(spans.sum())
    length = 0.05 * steps
    s = 0.05 * rng.choice(steps - 1, k, replace=False) + 0.02
    F, C = rng.normal(0.0, 100.0, k), rng.normal(0.0, 20.0, k)
    cuts = np.sort(np.concatenate([p, 0.05 * rng.choice(steps - 1, 6, replace=False) + 0.035]))
    apart, joined = beam_statics.over_supports(F, C, s, p, cuts)
    moment, reactions = stiff_beam(F, C, s, p, length, cuts)
    np.testing.assert_allclose(joined.moment, moment, atol=1e-6, rtol=1e-6)
    # statics: what the supports push back balances the loads, and their moments
    assert reactions.sum() + F.sum() == pytest.approx(0.0, abs=1e-6)
    assert reactions @ p + F @ s + C.sum() == pytest.approx(0.0, abs=1e-6)
    alone, whole = beam_statics.reactions(F, C, s, p)
    np.testing.assert_allclose(whole, -reactions, atol=1e-6, rtol=1e-6)
    assert alone.sum() == pytest.approx(F.sum(), abs=1e-6)
    assert alone @ p == pytest.approx(F @ s + C.sum(), abs=1e-6)
    worst = np.maximum(np.abs(apart.moment), np.abs(joined.moment))
    assert (worst >= np.abs(moment) - 1e-6).all()


def test_shear_is_how_fast_the_moment_changes():
    rng = np.random.default_rng(3)
    F, C, s = rng.normal(size=6), rng.normal(size=6), np.sort(rng.uniform(0.0, 4.0, 6))
    p = [0.5, 1.7, 3.1]
    cuts = rng.uniform(0.0, 4.0, 50)
    h = 1e-6
    low = beam_statics.over_supports(F, C, s, p, cuts)
    high = beam_statics.over_supports(F, C, s, p, cuts + h)
    for one, other in zip(low, high, strict=True):
        slope = (other.moment - one.moment) / h
        steps = np.abs(slope) > 1e4  # a couple or a support lies between
        signed = np.where(cuts < p[0], slope, -slope)
        np.testing.assert_allclose(one.shear[~steps], signed[~steps], atol=1e-4)


def test_how_far_it_bends():
    """Wood Handbook FPL-GTR-190 Table 9-1: 5 w L^4/(384 E I), w L^4/(8 E I)."""
    w, L, EI = 250.0, 1.8, 3000.0
    x = np.linspace(0.0, L, 2001)
    between = w * x * (L - x) / 2.0
    assert beam_statics.bent(between, x, EI, [0.0, L]) == pytest.approx(
        5.0 * w * L**4 / 384.0 / EI, rel=1e-5
    )
    out = w * (L - x) ** 2 / 2.0
    assert beam_statics.bent(out, x, EI, [0.0]) == pytest.approx(w * L**4 / 8.0 / EI, rel=1e-5)


def test_one_support_is_no_span():
    with pytest.raises(ValueError, match="2 or more"):
        beam_statics.over_supports([1.0], [0.0], [0.5], [0.2], [0.1])
