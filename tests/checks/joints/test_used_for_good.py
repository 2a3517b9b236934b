"""What lasts asks a fastener for more, but where nothing of it depends on how long (NDS 2.3.2)."""

import numpy as np
import pytest

from yardfast.checks.fasteners.fastener_sets import FastenerSet
from yardfast.checks.joints.most_used import held_for, used_by
from yardfast.checks.timber.terms.capacity import Capacity


def capacity(for_good):
    return Capacity(
        out=800.0,
        head=1000.0,
        sideways=500.0,
        mode="IV",
        penetration=0.05,
        least_penetration=0.02,
        holding=0.05,
        mean_out=None,
        factor_out=1.6,
        factor_sideways=1.6,
        comes_out=True,
        for_good=for_good,
    )


@pytest.mark.parametrize(("for_good", "asked"), [(False, 640.0), (True, 400.0)])
def test_a_pull_that_lasts_counts_1_6_times_but_against_what_washers_bear(for_good, asked):
    """C_D 1.6 under wind and 1.0 for what lasts: 400 N asks as much as 640 N in a gust, of 800 N;
    bearing across the grain has no C_D (ANSI/AWC NDS-2018 2.3.2, 3.10.2)."""
    fastener = FastenerSet(capacity(for_good), None, "", "", np.array([[0.0, 0.0, 1.0]]))
    none = np.zeros((1, 1))
    used = used_by(fastener, np.full((1, 1), 1.6), np.full((1, 1), 1.6 * 400.0), none)
    assert used[0, 0] == pytest.approx(asked / 800.0, rel=1e-12)


@pytest.mark.parametrize(("for_good", "out", "factor"), [(False, 500.0, 1.0), (True, 800.0, 1.6)])
def test_what_is_held_of_a_load_that_lasts(for_good, out, factor):
    """800 / 1.6 = 500 N out, 1000 / 1.6 = 625 N at the head, 500 / 1.6 = 312.5 N sideways."""
    held = held_for(capacity(for_good), 1.6)
    assert (held.out, held.head, held.sideways) == pytest.approx((out, 625.0, 312.5), rel=1e-12)
    assert (held.factor_out, held.factor_sideways) == pytest.approx((factor, 1.0), rel=1e-12)
