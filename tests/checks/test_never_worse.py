"""Less wind and more ballast never make a random piece worse, but where statics itself says so."""

import re

import numpy as np
import pytest
from any_design import any_design

from yardfast.checks.examination import examine
from yardfast.checks.inputs import read_text
from yardfast.checks.judging import Kind

WHOLE = (Kind.OVERTURNING, Kind.SLIDING)
SEEDS = [
    *(0, 5, 99),
    *(pytest.param(k, marks=pytest.mark.slow) for k in (112, 113, 132, 146, 162, 184, 192)),
]
"""Of the first 200 files those in which nothing floats or stands apart; slow: examined twice."""

ON_A_FOOT = [5, 99, *(pytest.param(k, marks=pytest.mark.slow) for k in (112, 132, 146, 192))]
"""Those of them whose first part lies on the ground with the middle filled."""


def used(found, kind):
    """How far each check of a kind is used; infinite where nothing is left to resist."""
    return [
        np.inf if c.utilization is None else c.utilization for c in found.checks if c.kind is kind
    ]


@pytest.mark.parametrize("seed", SEEDS)
def test_less_wind_is_never_worse_but_where_round_sections_turn_rough(seed):
    """At less wind a round section may lie below its critical Reynolds number, where the flow
    parts sooner and its coefficient is up to twice as great (ASCE/SEI 7 Fig. 29.4-1): only a piece
    with such a section may be pushed harder by less wind."""
    text = any_design(seed)
    speed = re.search(r"wind = '([\d.]+) m/s'", text)
    one = examine(read_text(text))
    less = examine(read_text(text.replace(speed[0], f"wind = '{0.8 * float(speed[1])} m/s'", 1)))
    for kind in WHOLE:
        for more, fewer in zip(used(one, kind), used(less, kind), strict=True):
            assert fewer <= more * (1.0 + 1e-6) or np.isfinite(one.exposed.limit).any()


@pytest.mark.parametrize("seed", ON_A_FOOT)
def test_ballast_on_hard_level_ground_is_never_worse(seed):
    """W d grows with W where the line of turning does not move and the ballast lies within it.

    On ground that gives way the line moves in as the piece sinks, and on a slope a weight high up
    leans downhill: there more can be worse, and is not asked here."""
    text = re.sub(r"ground = '[^']*'", "ground = 'paving'", any_design(seed))
    text = re.sub(r"slope = '[^']*'\n?", "", text)
    text = re.sub(r"(?s)\n\[\[(anchor|guy)\]\].*?(?=\n\[|$)", "", text)  # of no use on paving
    one = examine(read_text(text))
    first = one.structure.bodies[0]
    inside = 0.5 * (first.extent[0] + first.extent[1])[:2]
    assert (one.standing.normals @ inside < one.standing.reach).all()
    more = examine(read_text(f"{text}\n[[ballast]]\nname = 'x'\nmass = '15 kg'\non = 'part 0'\n"))
    assert more.structure.mass("light") > one.structure.mass("light") + 14.9
    for kind in WHOLE:
        for before, after in zip(used(one, kind), used(more, kind), strict=True):
            assert after <= before * (1.0 + 1e-6)
