"""Where a piece stands on its site makes no difference: statics and wind know no origin."""

from pathlib import Path

import pytest

from yardfast.checks.examination import examine
from yardfast.checks.inputs import read
from yardfast.loads.given import GivenLoad
from yardfast.loads.wind.site import Site
from yardfast.statics.tables.anchor_table import AnchorRow, BallastRow, GuyRow
from yardfast.units.frozen import replace

EXAMPLES = Path(__file__).parents[2] / "examples"
ASIDE = (2.0, -1.5, 0.0)
PIECES = ("light-tower", "well", "heron", "mailbox", "signpost")
LEAST = ("light-tower-asce", 38.0)
"""Where the least wind of the standard is more than its own."""


def moved(place):
    return replace(place, at=tuple(a + b for a, b in zip(place.at, ASIDE, strict=True)))


def aside(design):
    """Return a design with all that stands on the ground, acts or holds moved alike."""
    parts = tuple(
        part
        if part.place.on or part.place.under or part.hangs_at is not None
        else replace(part, place=moved(part.place))
        for part in design.parts
    )
    tables = dict(design.tables)
    for kind in (GivenLoad, AnchorRow, BallastRow, GuyRow):
        if kind in tables:
            tables[kind] = tuple(
                row if row.at is None else moved(row) for row in design.several(kind)
            )
    return replace(design, parts=parts, tables=tables)


@pytest.mark.parametrize(("name", "wind"), [*((name, None) for name in PIECES), LEAST])
def test_a_piece_that_stands_aside_is_used_as_it_is_in_the_middle(name, wind):
    here = read(EXAMPLES / f"{name}.toml")
    if wind is not None:
        site = replace(here.table(Site), wind=wind)
        here = replace(here, tables={**here.tables, Site: site})
    one, other = examine(here), examine(aside(here))
    corner = one.structure.footprint.min(axis=0) + ASIDE[:2]
    assert other.structure.footprint.min(axis=0) == pytest.approx(corner, abs=1e-9)
    uses = [{c.name: (c.demand, c.capacity) for c in found.checks} for found in (one, other)]
    assert uses[0].keys() == uses[1].keys()
    for check, (demand, capacity) in uses[0].items():
        assert uses[1][check] == pytest.approx((demand, capacity), rel=1e-5, abs=1e-9), check
    assert other.limits.tipping == pytest.approx(one.limits.tipping, rel=1e-6)
