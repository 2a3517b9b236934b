"""A piece that is turned in its yard, and the wind with it, is the same piece.

Its wind comes from directions in steps of 5 degrees, so that a turn by such steps asks the same.
"""

from math import radians
from pathlib import Path

import pytest

from yardfast.checks.examination import examine
from yardfast.checks.inputs import read
from yardfast.units.frozen import replace

EXAMPLES = Path(__file__).parents[2] / "examples"

# Fasteners that are set where they just have room stand there to within the fit of a search: what
# has such joints is held to that.
ALIKE = {
    "boathouse": 1e-6,
    "light-tower": 1e-6,
    "heron": 1e-6,
    "signpost": 1e-3,
    "footbridge": 1e-3,
}


def uses(design):
    checks = examine(design).checks
    return {(one.kind, one.subject): one.utilization or 0.0 for one in checks}


@pytest.mark.slow
@pytest.mark.parametrize(("name", "near"), ALIKE.items())
def test_turning_the_piece_with_its_wind_changes_no_use(name, near):
    design = read(str(EXAMPLES / f"{name}.toml"))
    still = uses(design)
    turned = uses(replace(design, turn=design.turn + radians(5.0)))
    assert turned == {key: pytest.approx(use, rel=near) for key, use in still.items()}
