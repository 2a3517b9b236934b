"""What only presses: solutions of the complementarity problem against scipy's least squares."""

import numpy as np
import pytest
from scipy.optimize import nnls

from yardfast.statics.one_way import settle


@pytest.mark.parametrize("seed", range(40))
def test_least_energy_with_releases_not_below_zero(seed):
    """z that makes z M z/2 + q z least, z >= 0: M = C^T C, least squares of C z + C^-T q."""
    rng = np.random.default_rng(seed)
    n = int(rng.integers(2, 40))
    ways, _ = np.linalg.qr(rng.normal(size=(n, n)))
    M = ways @ np.diag(rng.uniform(0.02, 1.0, n)) @ ways.T
    q = rng.normal(size=(15, n))
    found = settle(M, q)
    assert not found.lost.any()
    C = np.linalg.cholesky(M).T
    for z, each in zip(found.z, q, strict=True):
        expected, _ = nnls(C, -np.linalg.solve(C.T, each))
        assert z == pytest.approx(expected, abs=1e-9 * np.abs(each).max() / 0.02)
    w = q + found.z @ M
    assert (w > -1e-9).all()
    assert np.abs(w * found.z).max() < 1e-8


def test_wherever_it_starts_it_ends_alike():
    rng = np.random.default_rng(1)
    root = rng.normal(size=(12, 12))
    M = root @ root.T
    M /= np.linalg.eigvalsh(M)[-1]
    q = rng.normal(size=(8, 12))
    plain = settle(M, q)
    other = settle(M, q, rng.uniform(size=(8, 12)) > 0.5)
    assert other.z == pytest.approx(plain.z, abs=1e-7 * np.abs(plain.z).max())


def test_a_mechanism_that_nothing_holds_is_told():
    """Two springs that lift together meet nothing: z = (1, 1) t, M z = 0, q z < 0."""
    M = np.array([[0.5, -0.5], [-0.5, 0.5]])
    found = settle(M, np.array([[-1.0, -1.0], [1.0, -0.5], [1.0, 1.0]]))
    assert found.lost.tolist() == [True, False, False]
    assert found.z[1] == pytest.approx([0.0, 1.0])
