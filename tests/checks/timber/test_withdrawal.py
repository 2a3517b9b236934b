"""Withdrawal and pull-through as relations."""

import numpy as np
import pytest

from yardfast.checks.timber.nds.withdrawal import (
    HANDBOOK,
    kinds,
    mean_withdrawal,
    pull_through,
    reference_withdrawal,
)
from yardfast.checks.timber.terms.driven import holding_length

N = 1000
RANDOM = np.random.default_rng(7)
D = RANDOM.uniform(0.001, 0.02, N)
G = RANDOM.uniform(0.3, 0.75, N)
T = RANDOM.uniform(0.0, 0.06, N)


@pytest.mark.parametrize(
    ("relation", "arguments"),
    [
        *((lambda D, G, k=kind: reference_withdrawal(k, D, G), (D, G)) for kind in kinds()),
        *((lambda D, G, k=kind: mean_withdrawal(k, D, G), (D, G)) for kind in kinds(HANDBOOK)),
        (pull_through, (D, T, G)),
        (holding_length, (T, 2.0 * D, D)),
    ],
    ids=[*kinds(), *(f"mean {kind}" for kind in kinds(HANDBOOK)), "head", "length"],
)
def test_array_equals_loop_over_its_values(relation, arguments):
    one_by_one = [float(relation(*values)) for values in zip(*arguments, strict=True)]
    np.testing.assert_allclose(relation(*arguments), one_by_one, rtol=1e-13)


@pytest.mark.parametrize("kind", kinds())
def test_denser_wood_and_thicker_fasteners_hold_more(kind):
    assert np.all(reference_withdrawal(kind, D, 1.1 * G) > reference_withdrawal(kind, D, G))
    assert np.all(reference_withdrawal(kind, 1.1 * D, G) > reference_withdrawal(kind, D, G))


def test_ring_shank_holds_more_than_smooth():
    """1800 G^2 over 1380 G^2.5 is above 1 for all wood."""
    assert np.all(
        reference_withdrawal("ring-shank nail", D, G) > reference_withdrawal("smooth nail", D, G)
    )


def test_head_holds_no_more_beyond_two_and_a_half_diameters():
    D_H = 0.008
    thin, bound, thick = pull_through(D_H, [0.010, 0.020, 0.080], 0.5)
    assert bound == pytest.approx(2.0 * thin)
    assert thick == pytest.approx(bound)


def test_head_over_nothing_holds_nothing():
    assert pull_through(0.008, 0.0, 0.5) == 0.0


def test_what_holds_is_the_thread_in_the_wood_without_the_tip():
    assert holding_length(0.040) == pytest.approx(0.040)
    assert holding_length(0.040, 0.030) == pytest.approx(0.030)
    assert holding_length(0.020, 0.030) == pytest.approx(0.020)
    assert holding_length(0.040, 0.030, 0.005) == pytest.approx(0.025)
    assert holding_length(0.003, 0.030, 0.005) == 0.0


@pytest.mark.parametrize(
    ("call", "error", "named"),
    [
        (lambda: reference_withdrawal("tack", 0.003, 0.4), KeyError, "tack"),
        (lambda: reference_withdrawal("smooth nail", 0.0, 0.4), ValueError, "diameter: found 0"),
        (
            lambda: reference_withdrawal("smooth nail", [0.003, 0.003], [0.4, -1.0]),
            ValueError,
            "gravity",
        ),
        (lambda: pull_through(0.0, 0.02, 0.4), ValueError, "head_diameter"),
        (lambda: pull_through(0.008, -0.02, 0.4), ValueError, "side_thickness"),
        (lambda: holding_length(-0.01), ValueError, "penetration"),
    ],
)
def test_wrong_value_is_refused_by_name(call, error, named):
    with pytest.raises(error, match=named):
        call()
