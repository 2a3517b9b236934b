"""Which input matters most: how much of what varies in an answer comes from each, by itself."""

import numpy as np

from ...units.arrays import Array
from ..spread import INPUTS

BINS = 32


class Shares:
    """Gathers answers by where each input lies, some pieces at a time.

    The share of an input is Var(E[y | x])/Var(y), the first-order index of variance (Saltelli et
    al., Global Sensitivity Analysis, 2008, Eq. 1.27 from memory), of y in ``BINS`` bins as likely
    as each other; what of it is chance, (bins - 1)/(n - bins) of what is left, is taken off.
    """

    def __init__(self) -> None:
        self._count = np.zeros((len(INPUTS), BINS))
        self._sum = np.zeros((len(INPUTS), BINS))
        self._square = 0.0

    def take(self, chances: Array, y: Array) -> None:
        """Take in answers ``y`` (n,) for inputs by their ``chances`` (n, inputs)."""
        bins = np.minimum((chances * BINS).astype(np.intp), BINS - 1)
        for k in range(len(INPUTS)):
            self._count[k] += np.bincount(bins[:, k], minlength=BINS)
            self._sum[k] += np.bincount(bins[:, k], weights=y, minlength=BINS)
        self._square += float(y @ y)

    def of(self) -> tuple[tuple[str, float], ...]:
        """Return each input's share of what varies, greatest first; none where nothing does."""
        n = float(self._count[0].sum())
        mean = float(self._sum[0].sum()) / n
        whole = max(self._square - n * mean**2, 0.0)
        if whole <= _NOTHING * max(self._square, 1.0) or n <= 2 * BINS:
            return ()
        filled = np.maximum(self._count, 1.0)
        between = (self._count * (self._sum / filled - mean) ** 2 * (self._count > 0)).sum(axis=1)
        chance = (BINS - 1) / (n - BINS) * np.maximum(whole - between, 0.0)
        shares = np.clip((between - chance) / whole, 0.0, 1.0)
        order: list[int] = np.argsort(-shares, kind="stable").tolist()
        return tuple((INPUTS[k], float(shares[k])) for k in order)


_NOTHING = 1.0e-14
