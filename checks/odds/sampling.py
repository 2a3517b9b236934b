"""Chances spread evenly over all inputs: scrambled Sobol points, in repeats that tell the error."""

import warnings
from collections.abc import Iterator
from typing import Any, cast

import numpy as np

from ...units.arrays import Array
from ..spread import INPUTS

REPEATS = 8
"""So many scrambles, each by itself an answer: how they differ is the error of all together."""

_BLOCK = 2**17
"""So many pieces are worked out at a time: what waits takes memory."""

_LEAST = 1.0e-12


def sample_blocks(samples: int, seed: int) -> Iterator[tuple[int, Array]]:
    """Yield which scramble, and the chances (n, inputs) of some of its pieces, ``samples`` in all.

    The same for the same ``seed``. Owen's scrambles of Sobol's sequence (scipy.stats.qmc): the
    error of a smooth answer falls nearly as 1/n. Fewer samples than scrambles are one each.
    """
    from scipy.stats import qmc  # noqa: PLC0415 - half a second that a check does without

    repeats = min(REPEATS, samples)
    seeds = np.random.SeedSequence(seed).spawn(repeats)
    for k, own in enumerate(seeds):
        left = samples // repeats + (k < samples % repeats)
        points = cast(Any, qmc).Sobol(len(INPUTS), seed=np.random.default_rng(own))
        while left > 0:
            n = min(left, _BLOCK)
            with warnings.catch_warnings():
                # a number that is no power of two costs balance, which the repeats tell
                warnings.simplefilter("ignore", UserWarning)
                chances = np.asarray(points.random(n), dtype=np.float64)
            left -= n
            yield k, np.clip(chances, _LEAST, 1.0 - _LEAST)
