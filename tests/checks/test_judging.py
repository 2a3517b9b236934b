"""How checks are ranked by how much of what they hold is used."""

import pytest

from yardfast.checks.judged.judging import Kind, check_demand
from yardfast.units.frozen import replace


def test_what_nothing_resists_ranks_worst_and_what_nothing_asks_least():
    """Demand and capacity in N: 5 of 10, 30 of 10, 5 of none, none of none."""
    half, thrice, lost, idle = (
        replace(check_demand(Kind.JOINT, demand, capacity, "N", ""), subject=name)
        for name, demand, capacity in (
            ("half", 5.0, 10.0),
            ("thrice", 30.0, 10.0),
            ("lost", 5.0, 0.0),
            ("idle", 0.0, 0.0),
        )
    )
    ranked = sorted((half, lost, idle, thrice), key=lambda check: check.rank)
    assert [check.subject for check in ranked] == ["idle", "half", "thrice", "lost"]
    assert [half.rank, thrice.rank] == pytest.approx([0.5, 3.0])
    assert lost.utilization is None
